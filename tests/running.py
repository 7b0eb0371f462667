"""How tests are run: on two workers, of what takes long a tenth, and last what needs the machine alone.

Tests marked `long` take minutes together: of each file's a tenth runs, chosen by `--seed`; all with `--all`.
Tests marked `quiet` come last, one at a time, and nothing else runs meanwhile.
"""

import fcntl
import os
from collections import defaultdict
from collections.abc import Generator, Sequence
from typing import Any

import pytest

from tests.tenth import tenth, tenth_of

SEED = "16"
_chosen: dict[str, Any] = {"all": False, "seed": SEED}


def pytest_addoption(parser: pytest.Parser) -> None:
    """Take `--all` and `--seed`."""
    group = parser.getgroup("long", "tests that take long")
    group.addoption("--all", action="store_true", help="run all that is marked long, and draw every example")
    group.addoption("--seed", default=SEED, help="what chooses the tenth of the tests that are marked long")


def pytest_configure(config: pytest.Config) -> None:
    """Keep the choice, which test modules ask for as they are read."""
    _chosen.update(all=config.getoption("--all"), seed=config.getoption("--seed"))
    config.addinivalue_line(
        "markers", "long: takes minutes with its like; a seeded tenth runs, all with --all"
    )
    config.addinivalue_line("markers", "quiet: needs the machine alone; runs last, nothing else meanwhile")


def drawn(count: int) -> int:
    """Return how many of so many examples to draw: a tenth, or every one with `--all`."""
    return count if _chosen["all"] else tenth(count)


def taken(cases: Sequence[Any]) -> Sequence[Any]:
    """Return the cases to try: the tenth that the seed chooses, or every one with `--all`."""
    return cases if _chosen["all"] else tenth_of(cases, _chosen["seed"])


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave out what the seed has not chosen, put what needs quiet last, and keep a file on one worker."""
    long = [each.nodeid for each in items if each.get_closest_marker("long")]
    left_out = set() if config.getoption("--all") else left_out_of(long, config.getoption("--seed"))
    config.hook.pytest_deselected(items=[each for each in items if each.nodeid in left_out])
    items[:] = [each for each in items if each.nodeid not in left_out]
    items.sort(key=lambda each: each.get_closest_marker("quiet") is not None)
    for item in items:
        if group := worker_group(item):
            item.add_marker(pytest.mark.xdist_group(group))


def left_out_of(names: list[str], seed: str) -> set[str]:
    """Return which long tests to leave out: of each file's, all but the tenth that the seed chooses."""
    by_file: dict[str, list[str]] = defaultdict(list)
    for name in names:
        by_file[name.partition("::")[0]].append(name)
    return set(names) - {name for those in by_file.values() for name in tenth_of(those, seed)}


def worker_group(item: pytest.Item) -> str:
    """Return what goes to one worker: all that is quiet; a file whose tests share what was built for them."""
    if item.get_closest_marker("quiet"):
        return "quiet"
    return "" if item.nodeid.startswith("e2e/") else item.path.stem


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Let tests run beside each other, but none beside one that needs the machine alone."""
    alone = item.get_closest_marker("quiet") is not None
    lock = os.open(item.config.rootpath, os.O_RDONLY)
    try:
        fcntl.flock(lock, fcntl.LOCK_EX if alone else fcntl.LOCK_SH)
        return (yield)
    finally:
        os.close(lock)
