"""The names that stand in the package's tables: stages, choices, fields, lines of the plan, checks."""

import inspect
from collections.abc import Iterator
from functools import cache
from types import ModuleType

from webapp import forms
from webapp.bench import stages, walk
from webapp.formulas import book as formula_book
from webapp.formulas.book import Book, Formula, marks_in
from webapp.inputs.table import INPUTS
from webapp.names.asked import ANY, Asked
from webapp.sheet import choices, report

Row = tuple[str, str, str, tuple[str, ...]]
"""A kind, a name of that kind, its level, and the words in the source on the way to it."""


def asked_by_choices() -> list[Asked]:
    """Return every name that a choice or a pick holds; those are needed before a sheet can be wired."""
    return list(_asked(choices, "a choice", _choices()))


def asked_by_tables(book: Book) -> list[Asked]:
    """Return every name that stands in one of the package's other tables."""
    return [
        *_asked(stages, "a stage", _stages()),
        *_asked(walk, "the walk of a cup", _walk()),
        *_asked(forms, "the fields", _forms()),
        *_asked(report, "the plan as text", _report()),
        *_asked(formula_book, "a check's severity", _severities()),
        *_checks(book),
    ]


def _asked(module: ModuleType, by: str, rows: Iterator[Row]) -> Iterator[Asked]:
    for kind, name, level, way in rows:
        line = _line(module, (*way, f'"{name}"'))
        yield Asked(kind, name, by, level, _file(module), line)


def _choices() -> Iterator[Row]:
    for quantity, choice in choices.CHOICES.items():
        options = dict(INPUTS[choice.by].options) if choice.by in INPUTS else {}
        for level in choice.levels:
            yield "choice in reach", choice.by, level, (f'"{quantity}"',)
            yield from (
                ("cell in reach", cell, level, (f'"{quantity}"', f'"{option}"'))
                for option, cell in choice.cells.items()
            )
        yield from ((f"option of {choice.by}", option, ANY, (f'"{quantity}"',)) for option in choice.cells)
        yield from (
            (f"option with a cell of {quantity}", option, ANY, (f'"{quantity}"',)) for option in options
        )
    for quantity, pick in {**choices.GREATEST_OF, **choices.LEAST_OF, **choices.FIRST_OF}.items():
        yield from (("cell in reach", cell, pick.level, (f'"{quantity}"',)) for cell in pick.of)
        yield from (
            (f"cell that {quantity} picks from", cell, ANY, (f'"{quantity}"',)) for cell in pick.needed
        )


def _stages() -> Iterator[Row]:
    for stage in (each for each in stages.STAGES if not each.retired):
        way = (f'"{stage.name}"',)
        beside = [cell for each in stage.beside for cell in each.cells]
        cells = (*stage.figures, *beside, *stage.duration)
        yield from (("cell of a cup", cell, ANY, way) for cell in cells)
        for kind, name in (
            ("start of a clock", stage.counts_from),
            ("bound of a clock", stage.bound),
            ("kind of cup", stage.only),
        ):
            if name or kind == "kind of cup":
                yield kind, name, ANY, way
        yield from (("check", check, ANY, ("HEAT_CHECKS",)) for check in stage.heat_checks)
        for line in stage.lines:
            yield from (("cell of a cup", cell, ANY, (f'"{line.name}"',)) for cell in line.cells)
            yield from (("check", check, ANY, (f'"{line.name}"',)) for check in line.checks)


def _walk() -> Iterator[Row]:
    for start, name in walk.MOMENTS.items():
        yield "start of a clock", start, ANY, ("MOMENTS",)
        yield "stage", name, ANY, ("MOMENTS",)
    yield "stage", walk.LAST_HAND_STAGE, ANY, ("LAST_HAND_STAGE",)


def _forms() -> Iterator[Row]:
    for section, groups in forms.GROUPS.items():
        yield "section", section, ANY, ("GROUPS",)
        yield from (
            (f"input of the section {section}", name, ANY, ("GROUPS", f'"{section}"', f'"{title}"'))
            for title, names in groups
            for name in names
        )
    for name, (by, options) in forms.ONLY_WITH.items():
        yield "input", name, ANY, ("ONLY_WITH",)
        yield "choice", by, ANY, ("ONLY_WITH", f'"{name}"')
        yield from ((f"option of {by}", option, ANY, ("ONLY_WITH", f'"{name}"')) for option in options)


def _report() -> Iterator[Row]:
    for level, lines in report.LINES.items():
        yield from (("cell", name, level, ("LINES",)) for name in lines)


def _severities() -> Iterator[Row]:
    yield from (("drawn mark", severity, ANY, ("SEVERITIES",)) for severity in formula_book.SEVERITIES)


def _checks(book: Book) -> Iterator[Asked]:
    for name, check in book.checks.items():
        by = f"the check {name}, beside"
        for level in check.formula.levels:
            file = f"webapp/formulas/{check.formula.step}.py"
            yield Asked("cell in reach", check.beside, by, level, file, check.formula.line)
            for text in (check.says, *check.would_do):
                yield from _spoken_of(text, f"the check {name}", level, check.formula)
    for name, outside in book.ranges.items():
        for level in book.formulas[outside.of].levels:
            yield from _spoken_of(outside.says, f"the range {name}", level, outside.formula)


def _spoken_of(text: str, by: str, level: str, formula: Formula) -> Iterator[Asked]:
    """Yield the names that a sentence speaks of."""
    file = f"webapp/formulas/{formula.step}.py"
    for kind, name in marks_in(text):
        yield Asked("cell in reach", name, f"{by}, {kind} in a sentence", level, file, formula.line)


@cache
def _lines(module: ModuleType) -> tuple[str, ...]:
    return tuple(inspect.getsource(module).splitlines())


def _file(module: ModuleType) -> str:
    return f"{module.__name__.replace('.', '/')}.py"


def _line(module: ModuleType, way: tuple[str, ...]) -> int:
    """Return the line of the last of some words, each at or behind the one before."""
    at = 0
    lines = _lines(module)
    for word in way:
        at = next((each for each in range(at, len(lines)) if word in lines[each]), at)
    return at + 1
