"""The levels of a sheet, in one table: which rows stand below which, and what an empty level means."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Level:
    """A level: its parent, the key of its rows in the job, its word, and what a parent without rows has."""

    name: str
    parent: str | None
    rows: str
    word: str
    empty: str = ""


LEVELS: dict[str, Level] = {
    "job": Level("job", None, "", "job"),
    "colour": Level("colour", "job", "colours", "color", "no color yet"),
    "face": Level("face", "colour", "faces", "face", "no face yet"),
    "opening": Level("opening", "face", "openings", "cut-out"),
    "cup": Level("cup", "colour", "", "cup"),
}


def ancestors(level: str) -> tuple[str, ...]:
    """Return a level and the levels above it, the nearest first.

    >>> ancestors("opening")
    ('opening', 'face', 'colour', 'job')
    """
    parent = LEVELS[level].parent
    return (level, *ancestors(parent)) if parent else (level,)


def children(level: str) -> tuple[str, ...]:
    """Return the levels right below a level, in the table's order."""
    return tuple(each.name for each in LEVELS.values() if each.parent == level)
