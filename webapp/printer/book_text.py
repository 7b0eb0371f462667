"""The formula book as a readable page of text: what each formula gives, from what, and by which source."""

from textwrap import fill

from webapp.formulas.book import Book, Check, Formula
from webapp.printer.steps import steps_in_order
from webapp.sheet.labels import called
from webapp.sheet.reasons import sentence
from webapp.sheet.wiring import Sheet
from webapp.units import Unit


def book_text(sheet: Sheet) -> str:
    """Return the whole book as text, one step of the trade after the other, then the constants."""
    book = sheet.book
    steps = steps_in_order(each.step for each in book.everything().values())
    pages = [_step(step, title, book) for step, title in steps.items()]
    constants = [
        f"{each.label} ({each.name}): {each.shown}\n{_indented('Source: ' + each.source)}"
        for each in sheet.constants.values()
    ]
    title = f"The formula book: {len(book.formulas)} formulas, {len(book.checks)} checks\n"
    return "\n".join([title, *pages, _heading("Constants"), "\n\n".join(constants), ""])


def _step(step: str, title: str, book: Book) -> str:
    ranges = {each.of: sentence(each.says) for each in book.ranges.values()}
    formulas = [
        _formula(each, ranges.get(each.name, "")) for each in book.formulas.values() if each.step == step
    ]
    checks = [
        f"{called(name)} (check, {each.severity}, beside {each.beside})\n{_indented(_said(each))}"
        for name, each in book.checks.items()
        if each.formula.step == step
    ]
    return _heading(title) + "\n" + "\n\n".join([*formulas, *checks]) + "\n"


def _formula(each: Formula, range_says: str) -> str:
    level = ", ".join(each.levels) or "called by the integrators"
    inputs = ", ".join(f"{name} [{_symbol(unit)}]" for name, unit in each.parameters.items()) or "nothing"
    lines = [f"{called(each.name)} ({each.name})", f"    level: {level}; unit: {_symbol(each.unit)}"]
    lines += [_indented(each.summary), _indented(f"from {inputs}")]
    if each.example:
        lines.append(_indented(f"Example: {each.example}"))
    if range_says:
        lines.append(_indented(f"Blank outside its range: {range_says}"))
    return "\n".join([*lines, _indented(f"Source: {each.source}")])


def _said(check: Check) -> str:
    ways = [f"Would do: {sentence(way)}" for way in check.would_do]
    return " ".join([sentence(check.says), *ways])


def _symbol(unit: Unit) -> str:
    return unit.kind if unit.symbol == "1" else unit.symbol


def _heading(title: str) -> str:
    return f"{title}\n{'-' * len(title)}"


def _indented(text: str) -> str:
    return fill(text, width=100, initial_indent="    ", subsequent_indent="    ")
