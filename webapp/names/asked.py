"""A name that is asked for, the names that there are, and the sentence that refuses one that nobody knows."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

ANY = ""
"""The level of a name that stands on no level, or of which only the phone knows on which one."""

MOST_NEAR = 3


@dataclass(frozen=True)
class Asked:
    """A name as it stands somewhere: what it should be the name of, on which level, and what asks for it.

    `file` and `line` say where. The line of a rendered page helps nobody, so there `template` holds the id of
    the template that the name stands in, and the line is looked for when the name is refused.
    """

    kind: str
    name: str
    by: str
    level: str = ANY
    file: str = ""
    line: int = 0
    template: str = ""


class Known:
    """All names that there are, by kind and level."""

    def __init__(self, rows: Iterable[tuple[str, str, str]]) -> None:
        """Take rows of kind, level and name; what stands on a level is known without one too."""
        self._names: dict[tuple[str, str], set[str]] = defaultdict(set)
        self._levels: dict[tuple[str, str], list[str]] = defaultdict(list)
        for kind, level, name in rows:
            self._names[kind, level].add(name)
            self._names[kind, ANY].add(name)
            if level:
                self._levels[kind, name].append(level)

    def has(self, asked: Asked) -> bool:
        """Tell whether a name that is asked for is there."""
        return asked.name in self._names.get((asked.kind, asked.level), ())

    def near(self, asked: Asked) -> list[str]:
        """Return the names of that kind and level that look like the one asked for."""
        names = sorted(self._names.get((asked.kind, asked.level), ()))
        return get_close_matches(asked.name, names, n=MOST_NEAR)

    def levels_of(self, asked: Asked) -> list[str]:
        """Return the other levels on which the name is known."""
        return self._levels.get((asked.kind, asked.name), [])


def refusal(asked: Asked, known: Known, where: str) -> str:
    """Return why a name is refused: where it stands, the level asked, and near misses.

    >>> known = Known([("cell", "face", "face_area")])
    >>> refusal(Asked("cell", "fase_area", "data-cell", "face"), known, "rows.html:58")
    "rows.html:58: data-cell: there is no cell 'fase_area' on the level face; near misses: face_area"
    """
    level = f" on the level {asked.level}" if asked.level else ""
    elsewhere = known.levels_of(asked)
    stands = f"; it stands on the level {' and '.join(elsewhere)}" if elsewhere else ""
    near = known.near(asked)
    hint = f"; near misses: {', '.join(near)}" if near else ""
    return f"{where}: {asked.by}: there is no {asked.kind} {asked.name!r}{level}{stands}{hint}"
