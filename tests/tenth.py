"""A tenth of what would take too long, which a seed alone decides."""

import zlib
from collections.abc import Sequence
from typing import TypeVar

Case = TypeVar("Case")


def tenth(count: int) -> int:
    """Return a tenth, rounded up."""
    return -(-count // 10)


def tenth_of(cases: Sequence[Case], seed: str) -> list[Case]:
    """Return the tenth of some cases that the seed decides."""
    return sorted(cases, key=lambda case: zlib.crc32(f"{seed} {case}".encode()))[: tenth(len(cases))]
