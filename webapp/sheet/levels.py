"""The levels of a sheet, in one table: which rows stand below which, what they hold, where they come from.

The phone's copy is printed from here; nothing else in either language knows a level's key, its parent or its
sections. A level whose rows come from somewhere new gets a field that says so, and one branch where both
languages make a new row.
"""

from dataclasses import asdict, dataclass
from typing import Any

from webapp.inputs.entry import LEVELS_OF_SECTION


@dataclass(frozen=True)
class Level:
    """A level of rows.

    `parent` is the level above; `rows` the key of a parent's rows in the job, "" where each parent has the
    one row that is worked out for it; `word` what a row is called, `first_name` how a new one is named;
    `empty` what is said of a parent without rows, where that leaves a figure blank; `marks` what a row has
    beside id, name and inputs; `records` its lists of what happened, which no formula reads. `most` rows
    stand in one parent, `most_in_job` in the whole job: past those a phone is no longer quick.
    """

    name: str
    parent: str | None
    rows: str
    word: str
    first_name: str = ""
    empty: str = ""
    marks: tuple[str, ...] = ()
    records: tuple[str, ...] = ()
    most: int = 1
    most_in_job: int = 1

    @property
    def is_worked_out(self) -> bool:
        """Whether the level's one row in each parent is no row of the job."""
        return self.parent is not None and not self.rows

    @property
    def sections(self) -> tuple[str, ...]:
        """The sections whose inputs stand in groups of their own, as the job's do."""
        return sections_of(self.name) if self.parent is None else ()


LEVELS: dict[str, Level] = {
    "job": Level("job", None, "", "job"),
    "colour": Level(
        "colour",
        "job",
        "colours",
        "color",
        "Color",
        "no color yet",
        marks=("swatch",),
        records=("cups",),
        most=40,
        most_in_job=40,
    ),
    "face": Level("face", "colour", "faces", "face", "Face", "no face yet", most=200, most_in_job=1000),
    "opening": Level("opening", "face", "openings", "cut-out", "Cut-out", most=40, most_in_job=2000),
    "cup": Level("cup", "colour", "", "cup"),
}

MOST_RECORDED = 1000
"""How many cups a job's record holds."""


def sections_of(level: str) -> tuple[str, ...]:
    """Return the sections whose inputs a row of a level has.

    >>> sections_of("job")
    ('room', 'card', 'bench')
    """
    return tuple(section for section, levels in LEVELS_OF_SECTION.items() if level in levels)


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


def held(level: str) -> tuple[str, ...]:
    """Return the levels below whose rows stand in a row of the job.

    >>> held("colour")
    ('face',)
    """
    return tuple(each for each in children(level) if LEVELS[each].rows)


def row_keys(level: str) -> tuple[str, ...]:
    """Return the keys of a row of the job, its inputs aside.

    >>> row_keys("colour")
    ('id', 'name', 'swatch', 'faces', 'cups')
    """
    each = LEVELS[level]
    return ("id", "name", *each.marks, *(LEVELS[below].rows for below in held(level)), *each.records)


def levels_table() -> dict[str, dict[str, Any]]:
    """Return the levels as plain dictionaries for the phone; their bounds stand in a job file's shape."""
    bounds = ("most", "most_in_job")
    return {
        name: {
            **{key: value for key, value in asdict(level).items() if key not in bounds},
            "sections": level.sections,
            "below": children(name),
            "held": held(name),
            "keys": row_keys(name),
        }
        for name, level in LEVELS.items()
    }
