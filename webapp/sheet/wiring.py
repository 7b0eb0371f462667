"""Orders formulas, choices and totals into the nodes of a sheet, by the names they ask for.

A formula asks by parameter name; the name is looked for on its own level, then on the levels above.
`total_X`, `most_X` and `least_X` gather X from the rows right below. The order is found once, at bake.
"""

from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from functools import cache
from graphlib import CycleError, TopologicalSorter

from webapp.errors import SheetError
from webapp.formulas.book import Book, load_book
from webapp.formulas.constant import Constant
from webapp.formulas.constants import CONSTANTS
from webapp.inputs.entry import Input
from webapp.inputs.table import INPUTS
from webapp.sheet.choices import CHOICES, FIRST_OF, GREATEST_OF, LEAST_OF, Choice, Pick
from webapp.sheet.levels import LEVELS, ancestors, children

GATHERERS = ("total", "most", "least")
PICKS = ("greatest_of", "least_of", "first_of")
Key = tuple[str, str]


@dataclass(frozen=True)
class Node:
    """One cell of every row of a level: what kind it is and what it asks for.

    `asks` holds (steps up, name) in the order of the parameters; `cells` a choice's cell by option;
    `when` the choosing input (steps up, name) and the option without which the cell does not exist;
    `below` the level gathered from; `needed` what blanks a pick; `range` which asks a range looks at.
    """

    level: str
    name: str
    kind: str
    asks: tuple[tuple[int, str], ...] = ()
    cells: dict[str, str] = field(default_factory=dict)
    when: tuple[int, str, str] | None = None
    below: str = ""
    needed: tuple[str, ...] = ()
    range: tuple[int, ...] | None = None


@dataclass(frozen=True)
class Sheet:
    """The nodes in an order in which each stands behind all that it asks for, and what they refer to."""

    nodes: tuple[Node, ...]
    book: Book
    inputs: dict[str, Input]
    constants: dict[str, Constant]


@dataclass(frozen=True)
class _Providers:
    book: Book
    inputs: dict[str, Input]
    constants: dict[str, Constant]
    choices: dict[str, Choice]
    greatest_of: dict[str, Pick]
    least_of: dict[str, Pick]
    first_of: dict[str, Pick]

    def picks(self) -> dict[str, tuple[str, Pick]]:
        """Return the picks by name, each with its kind."""
        tables = (self.greatest_of, self.least_of, self.first_of)
        return {
            name: (kind, each)
            for kind, table in zip(PICKS, tables, strict=True)
            for name, each in table.items()
        }

    def by_key(self) -> dict[Key, str]:
        """Return what provides each (level, name); two providers of one name are an error."""
        found: dict[Key, str] = {}
        for level, name, kind in self._all():
            if level not in LEVELS:
                raise SheetError(f"{name}: there is no level {level!r}; the levels are {', '.join(LEVELS)}")
            if (level, name) in found:
                raise SheetError(
                    f"{name} on the level {level} is provided twice: as {found[level, name]} and as {kind}"
                )
            found[level, name] = kind
        return found

    def _all(self) -> list[tuple[str, str, str]]:
        rows = [("job", name, "constant") for name in self.constants]
        rows += [(level, each.name, "input") for each in self.inputs.values() for level in each.levels]
        rows += [
            (level, each.name, "formula") for each in self.book.formulas.values() for level in each.levels
        ]
        rows += [
            (level, each.formula.name, "check")
            for each in self.book.checks.values()
            for level in each.formula.levels
        ]
        rows += [(level, name, "choice") for name, each in self.choices.items() for level in each.levels]
        rows += [(each.level, name, kind) for name, (kind, each) in self.picks().items()]
        return rows


def wire(
    book: Book,
    inputs: dict[str, Input],
    constants: dict[str, Constant],
    choices: dict[str, Choice],
    greatest_of: dict[str, Pick],
    least_of: dict[str, Pick],
    first_of: dict[str, Pick] | None = None,
) -> Sheet:
    """Wire a book into a sheet; a circle, a double, or a name that nobody provides is a SheetError."""
    providers = _Providers(book, inputs, constants, choices, greatest_of, least_of, first_of or {})
    kinds = providers.by_key()
    wired: dict[Key, Node] = {}
    waiting: list[tuple[Key, tuple[str, ...]]] = [(key, ()) for key in kinds]
    while waiting:
        key, chain = waiting.pop(0)
        if key in wired:
            continue
        node, asked = _node(key, kinds, providers, chain)
        wired[key] = node
        waiting += [(each, (*chain, key[1])) for each in asked if each not in wired]
    gated = {key: _gate(node, wired) for key, node in wired.items()}
    return Sheet(tuple(gated[key] for key in _order(gated)), book, inputs, constants)


def _node(
    key: Key, kinds: dict[Key, str], providers: _Providers, chain: tuple[str, ...]
) -> tuple[Node, list[Key]]:
    level, name = key
    kind = kinds.get(key)
    if kind is None:
        gatherer, _, of = name.partition("_")
        below = next(each for each in children(level) if (each, of) in kinds)
        return Node(level, name, gatherer, asks=((-1, of),), below=below), [(below, of)]
    names, details = _asked_names(name, kind, providers)
    found = [_look_up(each, level, kinds, (*chain, name)) for each in names]
    steps = ancestors(level)
    asks = tuple((steps.index(each[0]), each[1]) for each in found)
    return Node(level, name, kind, asks=asks, **details), found


def _asked_names(name: str, kind: str, providers: _Providers) -> tuple[list[str], dict]:
    """Return the names a node asks for, and the node's other details."""
    if kind == "input":
        fallback = providers.inputs[name].fallback_input
        return [fallback] if fallback else [], {}
    if kind == "formula":
        parameters = list(providers.book.formulas[name].parameters)
        range_of = providers.book.ranges.get(f"{name}_range")
        if range_of is None:
            return parameters, {}
        return parameters, {"range": tuple(parameters.index(each) for each in range_of.formula.parameters)}
    if kind == "check":
        return list(providers.book.checks[name].formula.parameters), {}
    if kind == "choice":
        choice = providers.choices[name]
        return [choice.by, *choice.cells.values()], {"cells": choice.cells}
    if kind in PICKS:
        _, pick = providers.picks()[name]
        return list(pick.of), {"needed": pick.needed}
    return [], {}


def _look_up(name: str, level: str, kinds: dict[Key, str], chain: tuple[str, ...]) -> Key:
    """Find who provides a name for a level: the level itself, those above, or a gatherer from below."""
    for each in ancestors(level):
        if (each, name) in kinds:
            return each, name
        gatherer, _, of = name.partition("_")
        if gatherer in GATHERERS and any((below, of) in kinds for below in children(each)):
            return each, name
    askers = " < ".join(reversed(chain))
    near = get_close_matches(name, sorted({each for _, each in kinds}), n=3)
    hint = f"; near misses: {', '.join(near)}" if near else ""
    raise SheetError(f"nobody provides {name} for the level {level}; asked for by {askers}{hint}")


def _targets(node: Node) -> list[Key]:
    steps = ancestors(node.level)
    return [(node.below if up < 0 else steps[up], name) for up, name in node.asks]


def _chooser(node: Node) -> list[Key]:
    """Return the choosing input without whose option the node has no cell: it is filled first."""
    return [(ancestors(node.level)[node.when[0]], node.when[1])] if node.when else []


def _order(wired: dict[Key, Node]) -> list[Key]:
    sorter: TopologicalSorter[Key] = TopologicalSorter()
    for key in sorted(wired):
        sorter.add(key, *_targets(wired[key]), *_chooser(wired[key]))
    try:
        return list(sorter.static_order())
    except CycleError as error:
        circle = " < ".join(name for _, name in error.args[1])
        raise SheetError(f"these formulas ask for each other in a circle: {circle}") from error


def _gate(node: Node, wired: dict[Key, Node]) -> Node:
    """Tie a formula that only one choice asks for to its option, so that other options leave no cell."""
    if node.kind != "formula":
        return node
    askers = [each for each in wired.values() if (node.level, node.name) in _targets(each)]
    if len(askers) != 1 or askers[0].kind != "choice" or askers[0].level != node.level:
        return node
    choice = askers[0]
    options = [option for option, cell in choice.cells.items() if cell == node.name]
    if len(options) != 1:
        return node
    return replace(node, when=(*choice.asks[0], options[0]))


def provided() -> dict[Key, str]:
    """Return what provides each (level, name) of the whole book, before anything is wired."""
    return _providers().by_key()


def _providers() -> _Providers:
    constants = {each.name: each for each in CONSTANTS}
    return _Providers(load_book(), INPUTS, constants, CHOICES, GREATEST_OF, LEAST_OF, FIRST_OF)


def kind_of(name: str, sheet: Sheet) -> str:
    """Return the kind of quantity of a cell: its own, or that of what it is chosen or gathered from."""
    if name in sheet.inputs:
        return sheet.inputs[name].kind
    if name in sheet.constants:
        return sheet.constants[name].kind
    if name in sheet.book.formulas:
        return sheet.book.formulas[name].unit.kind
    node = next(each for each in sheet.nodes if each.name == name)
    return kind_of(node.asks[1 if node.kind == "choice" else 0][1], sheet)


@cache
def load_sheet() -> Sheet:
    """Return the sheet of the whole formula book."""
    constants = {each.name: each for each in CONSTANTS}
    return wire(load_book(), INPUTS, constants, CHOICES, GREATEST_OF, LEAST_OF, FIRST_OF)
