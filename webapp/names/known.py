"""All names that there are: of the sheet, of its tables, of the rendered pages, of the phone's scripts."""

from collections.abc import Iterable, Iterator, Sequence

from webapp.bench import stage, stages, walk
from webapp.inputs.entry import LEVELS_OF_SECTION
from webapp.inputs.table import INPUTS
from webapp.kinds import KINDS
from webapp.names.asked import ANY, Asked
from webapp.names.pages import MARKS, Element
from webapp.sheet import choices
from webapp.sheet.levels import LEVELS, ancestors, children
from webapp.sheet.wiring import GATHERERS, Sheet, provided

Row = tuple[str, str, str]
"""A kind, a level, and a name of that kind on it."""

TEXTS = {
    "job": ("name", "card_name"),
    "colour": ("name", "swatch"),
    "face": ("name",),
    "opening": ("name",),
}
"""What a person types on each level beside the inputs: it enters no formula."""

FROZEN_LEVELS = ("job", "colour", "cup")
"""The levels whose cells are frozen with a cup."""


def known_before_wiring() -> Iterator[Row]:
    """Yield what a choice, a pick or a check may name: it is wired by these names."""
    kinds = provided()
    for level in LEVELS:
        for each in ancestors(level):
            for (at, name), kind in kinds.items():
                if at == each and kind != "check":
                    yield "cell in reach", level, name
                if at in children(each) and kind != "check":
                    yield from (("cell in reach", level, f"{gatherer}_{name}") for gatherer in GATHERERS)
            yield from (("choice in reach", level, row.name) for row in _choosing() if each in row.levels)
    for row in _choosing():
        yield from ((f"option of {row.name}", ANY, option) for option, _ in row.options)
    for quantity, choice in choices.CHOICES.items():
        yield from ((f"option with a cell of {quantity}", ANY, option) for option in choice.cells)
    for quantity, pick in {**choices.GREATEST_OF, **choices.LEAST_OF, **choices.FIRST_OF}.items():
        yield from ((f"cell that {quantity} picks from", ANY, cell) for cell in pick.of)


def known_by_sheet(sheet: Sheet) -> Iterator[Row]:
    """Yield the sheet's cells, inputs and checks on their levels, and what its tables hold."""
    for node in sheet.nodes:
        kind = "check" if node.kind == "check" else "cell"
        yield kind, node.level, node.name
        if kind == "check":
            yield "figure with a check beside it", node.level, sheet.book.checks[node.name].beside
            yield from (("check in or below the row", each, node.name) for each in ancestors(node.level))
        else:
            yield from (("cell of the rows below", each, node.name) for each in ancestors(node.level)[1:])
            if node.level in FROZEN_LEVELS:
                yield "cell of a cup", ANY, node.name
    for row in sheet.inputs.values():
        kinds = ("input", "choice") if row.kind == "choice" else ("input",)
        yield from ((kind, level, row.name) for kind in kinds for level in row.levels)
        yield f"input of the section {row.section}", ANY, row.name
    yield from (("input", level, name) for level, names in TEXTS.items() for name in names)
    for level in LEVELS:
        yield from (("level in reach", level, each) for each in (*ancestors(level), *children(level)))
        yield from (("level below", level, each) for each in children(level))


def known_by_tables() -> Iterator[Row]:
    """Yield what stands in the package's own tables: sections, stages, taps, units, marks."""
    tables: dict[str, Iterable[str]] = {
        "section": LEVELS_OF_SECTION,
        "stage": (each.name for each in stages.STAGES),
        "kind of cup": ("", *walk.ONLY),
        "tap": walk.TAPS,
        "start of a clock": (stage.CONTACT, stage.END_OF_POUR, stage.OWN_START),
        "bound of a clock": (stage.DUE, stage.LATEST, stage.EARLIEST),
        "unit": (unit.name for kind in KINDS.values() for unit in kind.units),
        "mark": MARKS,
    }
    return ((kind, ANY, name) for kind, names in tables.items() for name in names)


def known_by_pages(elements: Sequence[Element], steps: Iterable[str]) -> Iterator[Row]:
    """Yield what stands in the pages: templates, parts, buttons, ids and drawn marks."""
    yield from (("step", ANY, name) for name in steps)
    for element in elements:
        for attribute, value in element.attributes.items():
            if attribute == "id":
                kind, _, name = value.partition("-")
                yield "id", ANY, value
                if element.tag == "symbol":
                    yield f"drawn {kind}", ANY, name
                elif element.tag == "template":
                    yield "template", ANY, value
            elif attribute in GIVEN:
                yield GIVEN[attribute], ANY, value


GIVEN = {"data-part": "part", "data-act": "button"}
"""What a mark gives to the scripts, beside what it asks of them."""


def known_by_asking(asked: Iterable[Asked]) -> Iterator[Row]:
    """Yield what is of use, since somebody asks for it; a script that asks for a button acts on it."""
    for each in asked:
        yield f"use of the {each.kind}", ANY, each.name
        if each.kind == "button":
            yield "action", ANY, each.name


def _choosing() -> list:
    return [row for row in INPUTS.values() if row.kind == "choice"]
