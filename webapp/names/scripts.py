"""What the phone's scripts and styles ask of the page by name, and the names that they give to it."""

import re
from collections.abc import Iterator, Mapping

from webapp.names.asked import ANY, Asked

# What a script asks for, as it is written there; the name is the pattern's only group. A pattern begins with
# plain letters, so that it is found quickly, and counts only where they begin a word.
ASKS: tuple[tuple[str, str, str], ...] = (
    ("part", "part()", r'part\("([^"]+)"'),
    ("button", "buttonOf()", r'buttonOf\("([^"]+)"'),
    ("template", "clone()", r'clone\("([^"]+)"'),
    ("template", "clone()", r'clone\([^;\n]* \? "([^"]+)" : "'),
    ("template", "clone()", r'clone\([^;\n]* \? "[^"]+" : "([^"]+)"'),
    ("drawn mark", "icon()", r'icon\("([^"]+)"'),
    ("drawn mark", "#mark-", r'"#mark-([^"$]+)"'),
    ("action", "data-act", r'"data-act": "([^"]+)"'),
    ("action", "act", r'act: "([^"]+)"'),
    ("action", "act", r'act = "([^"]+)"'),
    ("action", "say()", r'say\((?:[^()"]|"[^"]*")*, "[^"]*", "([^"]+)"\)'),
    ("action", "showToast()", r'showToast\((?:[^()"]|\(\)|"[^"]*")*, "[^"]*", "([^"]+)"\)'),
    ("cell", "cells", r"cells\??\.(?!length\b)([a-z]\w*)\b(?!\()"),
    ("cell", "amounts", r"amounts\??\.([a-z]\w*)\b(?!\()"),
    ("tap", "tapped()", r'tapped\([\w.]+, "([^"]+)"'),
    ("tap", "stage", r'stage === "(?!string")([^"]+)"'),
    ("tap", "stage.name", r'stage\.name === "([^"]+)"'),
    ("bound of a clock", "bound", r'bound [!=]== "([^"]+)"'),
)

# Lists of names that a script asks for one by one.
LISTS: tuple[tuple[str, str], ...] = (
    ("step", "FIRST_STEPS"),
    ("cell", "ALSO_FROZEN"),
    ("cell", "EDGE_ASKS"),
    ("cell", "CLASS_FROM"),
)

# What a script gives to the page by name: the keys of a table, all at once or one at a time.
GIVES: tuple[tuple[str, str], ...] = (
    ("sentence", "say"),
    ("picture", "draw"),
    ("action", "acts"),
)

# Names that a script tells apart by itself, in a comparison.
TELLS: tuple[tuple[str, str], ...] = (
    ("way of reading", r'as === "([^"]+)"'),
    ("unit", r'unit === "([^"]+)"'),
)

# Of the marks that stand in pages, those that styles and scripts select by their value.
SELECTED = {"act": "button", "step": "step", "part": "part", "as": "way of reading", "template": "template"}

SELECTOR = re.compile(r"\[data-([a-z-]+)=[\"']?([\w-]+)[\"']?\]")

_COMMENT = re.compile(r"/\*.*?\*/|^[ \t]*//[^\n]*|(?<=[;,{}]) //[^\n]*", re.DOTALL | re.MULTILINE)
_GIVEN = {kind: rf'{table}(?:\.([\w$]+) = |\["([^"]+)"\] = |(?:,|:| =) \{{)' for kind, table in GIVES}
_KEY = re.compile(r"\s*(?:async\s+)?(?:\"([^\"]*)\"|([\w$]+))\s*(?=[:(,}])")
_STEP = re.compile(r"\"(?:\\.|[^\"\\\n])*\"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`|[{}()\[\],]", re.DOTALL)


def bare(source: str) -> str:
    """Return a script without its comments, every line where it was."""
    return _COMMENT.sub(lambda found: re.sub(r"[^\n]", " ", found[0]), source)


def asked_by_scripts(scripts: Mapping[str, str]) -> Iterator[Asked]:
    """Yield every name that scripts or styles ask for, by their addresses in `static/`."""
    for address, source in scripts.items():
        for kind, by, pattern in ASKS:
            for found in _matches(pattern, source):
                yield _asked(kind, found[1], by, address, source, found.start(1))
        yield from _asked_by_lists(address, source)
        for found in SELECTOR.finditer(source):
            mark, value = found.groups()
            if mark in SELECTED:
                yield _asked(SELECTED[mark], value, f"[data-{mark}]", address, source, found.start(2))


def _asked_by_lists(address: str, source: str) -> Iterator[Asked]:
    for kind, name in LISTS:
        for listed in _matches(rf"{name} = \[([^\]]*)\]", source):
            for found in re.finditer(r'"([^"]+)"', listed[1]):
                yield _asked(kind, found[1], name, address, source, listed.start(1) + found.start(1))


def given_by_scripts(scripts: Mapping[str, str]) -> Iterator[Asked]:
    """Yield what scripts give to the page by name, each as a wish to be used by somebody."""
    for address, source in scripts.items():
        for kind, pattern in _GIVEN.items():
            for found in _matches(pattern, source):
                single = found[1] or found[2]
                keys = [(single, found.start())] if single else keys_of(source, found.end())
                for name, place in keys:
                    yield _asked(kind, name, "a script", address, source, place)


def told_apart(scripts: Mapping[str, str]) -> Iterator[tuple[str, str, str]]:
    """Yield the names that scripts tell apart in comparisons, as rows of what is known."""
    for source in scripts.values():
        for kind, pattern in TELLS:
            for found in _matches(pattern, source):
                yield kind, ANY, found[1]


def _matches(pattern: str, source: str) -> Iterator[re.Match[str]]:
    return (
        found
        for found in re.finditer(pattern, source)
        if not re.match(r"\w", source[found.start() - 1 : found.start()])
    )


def _asked(kind: str, name: str, by: str, address: str, source: str, place: int) -> Asked:
    return Asked(kind, name, by, file=f"static/{address}", line=source.count("\n", 0, place) + 1)


def keys_of(source: str, start: int) -> list[tuple[str, int]]:
    """Return the keys of an object, and their places, from behind its opening brace.

    >>> table = '{ one: () => { two: 2 }, "thr-ee": f(4, { five }), six() {}, ...rest };'
    >>> [name for name, _ in keys_of(table, 1)]
    ['one', 'thr-ee', 'six']
    """
    keys: list[tuple[str, int]] = []
    depth, place = 0, start
    while depth >= 0:
        found = (
            _KEY.match(source, place) if depth == 0 and (place == start or source[place - 1] == ",") else None
        )
        if found:
            group = found.lastindex or 0
            keys.append((found[group], found.start(group)))
            place = found.end()
        step = _STEP.search(source, place)
        if step is None:
            break
        depth += {"{": 1, "(": 1, "[": 1, "}": -1, ")": -1, "]": -1}.get(step[0], 0)
        place = step.end()
    return keys
