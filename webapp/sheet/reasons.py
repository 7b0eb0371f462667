"""Sentences for why a cell is blank and what a check found; `static/sheet/reasons.js` is the twin."""

import re

from webapp.formulas.book import MARK, Check, marks_in
from webapp.inputs.table import INPUTS
from webapp.sheet.labels import GRAINS, called, in_sentence, uncapitalized
from webapp.sheet.levels import LEVELS
from webapp.sheet.runner import Blank, Cell, Row
from webapp.sheet.wiring import kind_of, load_sheet
from webapp.showing import show, unit_shown

SECTIONS = {"room": " in the room", "card": " on the resin card", "bench": " on the bench"}


def row_title(row: Row) -> str:
    """Name a row as a person would: "face Ground", "color 2", "cut-out 1 of face Ground"."""
    if row.level == "job":
        return "the job"
    if row.level == "cup":
        return f"the cups of {row_title(row.above(1))}"
    word = LEVELS[row.level].word
    title = row.name if row.name.lower().startswith(word) else f"{word} {row.name or row.position}"
    return f"{title} of {row_title(row.above(1))}" if row.level == "opening" else title


def because(blank: Blank) -> str:
    """Return the sentence that says why a cell is blank."""
    row = blank.row
    if blank.kind == "refused":
        return blank.says
    if blank.kind == "range":
        return sentence(blank.says, row)
    if blank.kind == "empty":
        title = row_title(row)
        return f"{title[:1].upper()}{title[1:]} has {LEVELS[blank.name].empty}."
    section = INPUTS[blank.name].section if blank.name in INPUTS else ""
    place = SECTIONS.get(section, "") if row.level == "job" else f", {row_title(row)}"
    if blank.kind == "missing":
        return f"{called(blank.name)} is missing{place}."
    return f"{called(blank.name)} cannot be worked out from these figures{place}."


def begins_with(blank: Blank) -> str:
    """Name the row in which a blank begins, for those that it empties.

    It reads "Width, face Ground", or "no face yet, color 2".
    """
    begun = LEVELS[blank.name].empty if blank.kind == "empty" else called(blank.name)
    return begun if blank.row.level == "job" else f"{begun}, {row_title(blank.row)}"


def sentence(text: str, row: Row | None = None) -> str:
    """Fill a sentence's marks: what a name is called, and what its cell reads from a row in the job's units.

    Without a row, or where a cell is blank, its name in brackets stands for it.

    >>> sentence("{label:cup_limit} is {cell:cup_limit}, by {label:cup_diameter}.")
    'Cup limit is [cup limit], by cup width.'
    """
    if "{" not in text:
        return text

    def filled(mark: re.Match[str]) -> str:
        kind, name = mark.groups()
        if kind == "label":
            begins = re.search(r"(^|[.?!] )$", text[: mark.start()])
            return called(name) if begins else in_sentence(name)
        cell = _seen_from(row, name)
        if row is None or cell is None or cell.value is None:
            return f"[{in_sentence(name)}]"
        return _read(name, cell, row)

    return MARK.sub(filled, text)


def ways_out(check: Check, row: Row) -> list[str]:
    """Return what would do against a check, without the ways that speak of a blank cell."""
    return [sentence(way, row) for way in check.would_do if _is_known(way, row)]


def _is_known(text: str, row: Row) -> bool:
    cells = [_seen_from(row, name) for kind, name in marks_in(text) if kind == "cell"]
    return all(cell and cell.value is not None for cell in cells)


def _seen_from(row: Row | None, name: str) -> Cell | None:
    """Return the cell of this name on the row or the nearest above it."""
    return next((each.cells[name] for each in row.line if name in each.cells), None) if row else None


def _read(name: str, cell: Cell, row: Row) -> str:
    if name in INPUTS and INPUTS[name].kind == "choice":
        return uncapitalized(dict(INPUTS[name].options)[cell.value])
    kind = kind_of(name, load_sheet())
    return show(cell.value, kind, unit_shown(kind, row.line[-1].units), GRAINS.get(name, ""))
