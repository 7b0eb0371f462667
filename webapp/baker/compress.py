"""Compressed twins: the brotli and gzip copies beside each file, since the server compresses nothing."""

import gzip
import hashlib
from collections.abc import Mapping
from pathlib import Path

import brotli

COMPRESSED_TYPES = (".html", ".js", ".css", ".svg", ".txt", ".webmanifest")
SUFFIXES = (".br", ".gz")

Twins = Mapping[str, bytes]


def compress(content: bytes) -> Twins:
    """Return the twins of a content by suffix, small and the same bytes every time.

    Brotli's last step would take three times as long for 2% less.
    """
    return {".br": brotli.compress(content, quality=10), ".gz": gzip.compress(content, 9, mtime=0)}


def fingerprint(content: bytes) -> str:
    """Return the name under which the twins of a content are known."""
    return hashlib.sha256(content).hexdigest()


def known_twins(folder: Path) -> dict[str, Twins]:
    """Return the twins that an earlier bake left in a folder, by fingerprint, so that none is made twice."""
    found: dict[str, Twins] = {}
    for path in sorted(folder.rglob("*.br")) if folder.is_dir() else []:
        original = path.with_suffix("")
        twins = {suffix: Path(f"{original}{suffix}") for suffix in SUFFIXES}
        if original.is_file() and all(twin.is_file() for twin in twins.values()):
            content = original.read_bytes()
            read = {suffix: twin.read_bytes() for suffix, twin in twins.items()}
            if _are_twins(content, read):
                found[fingerprint(content)] = read
    return found


def _are_twins(content: bytes, twins: Twins) -> bool:
    try:
        return brotli.decompress(twins[".br"]) == content and gzip.decompress(twins[".gz"]) == content
    except (brotli.error, OSError, EOFError):
        return False


def twins_of(path: str, content: bytes, known: Mapping[str, Twins]) -> Twins:
    """Return the twins that belong beside a file; a picture that is packed already has none."""
    if not path.endswith(COMPRESSED_TYPES):
        return {}
    return known.get(fingerprint(content)) or compress(content)
