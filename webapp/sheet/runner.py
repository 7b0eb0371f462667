"""Fills the cells of a job: the generic runner that `static/sheet/sheet.js` is the twin of.

A blank argument leaves a cell blank; every blank cell knows why. Nothing here knows a formula by name.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from typing import Any

from webapp.errors import QuantityError
from webapp.inputs.entry import Input
from webapp.quantities import read_choice, read_input
from webapp.sheet.levels import LEVELS, children
from webapp.sheet.wiring import Node, Sheet, load_sheet


@dataclass(frozen=True, slots=True)
class Blank:
    """Why a cell is blank: missing, refused, out of range, not computable, or a level without rows."""

    kind: str
    name: str
    row: "Row"
    says: str = ""


@dataclass(frozen=True, slots=True)
class Cell:
    """A figure of a row, or why there is none; where it came from, and the winner among the picked."""

    value: Any = None
    blank: Blank | None = None
    origin: str = "formula"
    winner: str = ""
    typed: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class CheckResult:
    """What came of a check on one row: wrong, right, or unchecked with what is missing."""

    name: str
    state: str
    blank: Blank | None = None


@dataclass(slots=True)
class Row:
    """One row: what stands in the job for it, what was typed in its inputs, the rows below, and the cells.

    The top row alone has the units.
    """

    level: str
    id: str
    name: str
    position: int
    source: dict[str, Any]
    typed: dict[str, Any]
    parent: "Row | None" = None
    rows: dict[str, list["Row"]] = field(default_factory=dict)
    cells: dict[str, Cell] = field(default_factory=dict)
    checks: list[CheckResult] = field(default_factory=list)
    touched: bool = False
    units: dict[str, str] = field(default_factory=dict)
    line: tuple["Row", ...] = field(default=(), repr=False, compare=False)

    def __post_init__(self) -> None:
        """Keep the line of rows from this one up, so that none is looked for cell by cell."""
        self.line = (self, *self.parent.line) if self.parent else (self,)

    def above(self, steps: int) -> "Row":
        """Return the row so many levels up."""
        return self.line[steps]

    def everything(self) -> Iterator["Row"]:
        """Walk this row and all rows below it."""
        yield self
        for rows in self.rows.values():
            for row in rows:
                yield from row.everything()


CellOf = Callable[[Row], Cell]


def calculate(job: dict[str, Any], sheet: Sheet | None = None) -> Row:
    """Return the job's rows with every cell filled or blank with its reason."""
    sheet = sheet or load_sheet()
    root = rows_of(job, sheet)
    by_level: dict[str, list[Row]] = {level: [] for level in LEVELS}
    for row in root.everything():
        by_level[row.level].append(row)
    root.units = units = job.get("units") or {}
    for node in sheet.nodes:
        rows = by_level[node.level]
        if node.when:
            steps, by, option = node.when
            rows = [row for row in rows if row.line[steps].cells[by].value == option]
        if node.kind == "check":
            for row in rows:
                row.checks.append(_check(node, row, sheet))
        else:
            cell_of = CELLS[node.kind](node, sheet, units)
            for row in rows:
                row.cells[node.name] = cell_of(row)
    return root


def rows_of(job: dict[str, Any], sheet: Sheet) -> Row:
    """Build the tree of rows of a job, each knowing what was typed in it and whether it was touched."""
    inputs = {
        level: {each.name: each for each in sheet.inputs.values() if level in each.levels} for level in LEVELS
    }
    return _new_row("job", {**job, "id": "job"}, 1, None, inputs)


def _new_row(
    level: str,
    source: dict[str, Any],
    position: int,
    parent: Row | None,
    inputs: dict[str, dict[str, Input]],
) -> Row:
    sections = LEVELS[level].sections
    groups = [source.get(key) or {} for key in sections] if sections else [source]
    own = inputs[level]
    typed = {name: text for group in groups for name, text in group.items() if name in own}
    names = (str(source.get("id") or ""), str(source.get("name") or ""))
    row = Row(level, *names, position, source, typed, parent)
    for below in children(level):
        key = LEVELS[below].rows
        sources = (source.get(key) or []) if key else [{"id": f"{row.id}-{below}"}]
        row.rows[below] = [_new_row(below, each, place, row, inputs) for place, each in enumerate(sources, 1)]
    row.touched = any(
        not _is_blank(text) and own[name].kind != "choice" for name, text in typed.items()
    ) or any(below.touched for rows in row.rows.values() for below in rows)
    return row


def _is_blank(typed: Any) -> bool:
    return typed is None or (isinstance(typed, str) and not typed.strip())


def _input(node: Node, sheet: Sheet, units: dict[str, str]) -> CellOf:
    each = sheet.inputs[node.name]
    read = (
        partial(read_choice, each=each)
        if each.kind == "choice"
        else partial(read_input, each=each, units=units)
    )
    fallback = Cell(read(each.default).value, origin="default") if each.default is not None else None

    def cell_of(row: Row) -> Cell:
        typed = row.typed.get(node.name)
        if not _is_blank(typed):
            text = typed if isinstance(typed, str) else ""
            try:
                reading = read(typed)
            except QuantityError as error:
                return Cell(blank=Blank("refused", node.name, row, str(error)), origin="typed", typed=text)
            return Cell(reading.value, origin="typed", typed=text, note=reading.note)
        if node.asks:
            [(steps, name)] = node.asks
            taken = row.line[steps].cells[name]
            return Cell(taken.value, taken.blank, "fallback", winner=name)
        return fallback or Cell(blank=Blank("missing", node.name, row), origin="typed")

    return cell_of


def _constant(node: Node, sheet: Sheet, _units: dict[str, str]) -> CellOf:
    cell = Cell(sheet.constants[node.name].canonical, origin="constant")
    return lambda row: cell


def _formula(node: Node, sheet: Sheet, _units: dict[str, str]) -> CellOf:
    function = sheet.book.formulas[node.name].function
    inside = sheet.book.ranges[f"{node.name}_range"] if node.range is not None else None

    def cell_of(row: Row) -> Cell:
        values = []
        for steps, name in node.asks:
            cell = row.line[steps].cells[name]
            if cell.blank:
                return Cell(blank=cell.blank)
            values.append(cell.value)
        try:
            if inside and not inside.formula.function(*[values[each] for each in node.range or ()]):
                return Cell(blank=Blank("range", node.name, row, inside.says))
            value = function(*values)
        except (ArithmeticError, ValueError, TypeError):
            value = math.nan
        if isinstance(value, complex) or not math.isfinite(value):
            return Cell(blank=Blank("arithmetic", node.name, row))
        return Cell(value)

    return cell_of


def _check(node: Node, row: Row, sheet: Sheet) -> CheckResult:
    cells = [row.above(steps).cells[name] for steps, name in node.asks]
    blank = _first_blank(cells)
    if blank:
        return CheckResult(node.name, "unchecked", blank)
    try:
        wrong = sheet.book.checks[node.name].formula.function(*[cell.value for cell in cells])
    except (ArithmeticError, ValueError, TypeError):
        return CheckResult(node.name, "unchecked", Blank("arithmetic", node.name, row))
    return CheckResult(node.name, "wrong" if wrong else "right")


def _choice(node: Node, row: Row) -> Cell:
    steps, by = node.asks[0]
    chosen = row.above(steps).cells[by]
    if chosen.blank:
        return Cell(blank=chosen.blank, origin="choice")
    wanted = node.cells[chosen.value]
    steps, name = next(each for each in node.asks[1:] if each[1] == wanted)
    cell = row.above(steps).cells[name]
    return Cell(cell.value, cell.blank, "choice", winner=wanted)


def _pick(node: Node, row: Row) -> Cell:
    best: Cell | None = None
    first: Blank | None = None
    for steps, name in node.asks:
        cell = row.above(steps).cells[name]
        if cell.blank:
            first = first or cell.blank
            if name in node.needed or cell.blank.kind == "refused":
                return Cell(blank=cell.blank, origin=node.kind)
        elif best is None or _wins(node.kind, cell.value, best.value):
            best = Cell(cell.value, origin=node.kind, winner=name)
    return best or Cell(blank=first, origin=node.kind)


def _wins(kind: str, value: float, best: float) -> bool:
    if kind == "first_of":
        return False
    return value > best if kind == "greatest_of" else value < best


def _gather(node: Node, row: Row) -> Cell:
    name = node.asks[0][1]
    rows = [each for each in row.rows[node.below] if each.touched or LEVELS[node.below].is_worked_out]
    if not rows and (node.kind != "total" or LEVELS[node.below].empty):
        return Cell(blank=Blank("empty", node.below, row), origin=node.kind)
    cells = [each.cells[name] for each in rows]
    blank = _first_blank(cells)
    if blank:
        return Cell(blank=blank, origin=node.kind)
    values = [cell.value for cell in cells]
    if node.kind == "total":
        return Cell(sum(values), origin="total")
    return Cell(max(values) if node.kind == "most" else min(values), origin=node.kind)


def _first_blank(cells: list[Cell]) -> Blank | None:
    return next((cell.blank for cell in cells if cell.blank), None)


def _row_by_row(cell_of: Callable[[Node, Row], Cell]) -> Callable[[Node, Sheet, dict[str, str]], CellOf]:
    return lambda node, sheet, units: partial(cell_of, node)


# For each kind of node, what gives the function that fills the cell of a row: what is the same in every row
# is looked up once.
CELLS: dict[str, Callable[[Node, Sheet, dict[str, str]], CellOf]] = {
    "input": _input,
    "constant": _constant,
    "formula": _formula,
    "choice": _row_by_row(_choice),
    "greatest_of": _row_by_row(_pick),
    "least_of": _row_by_row(_pick),
    "first_of": _row_by_row(_pick),
    "total": _row_by_row(_gather),
    "most": _row_by_row(_gather),
    "least": _row_by_row(_gather),
}
