"""Sentences for what a sheet has to say: why a cell is blank, and how a row is named."""

from webapp.inputs.table import INPUTS
from webapp.sheet.labels import called
from webapp.sheet.levels import LEVELS
from webapp.sheet.runner import Blank, Row

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
    if blank.kind in ("refused", "range"):
        return blank.says
    if blank.kind == "empty":
        title = row_title(row)
        return f"{title[:1].upper()}{title[1:]} has {LEVELS[blank.name].empty}."
    section = INPUTS[blank.name].section if blank.name in INPUTS else ""
    place = SECTIONS.get(section, "") if row.level == "job" else f", {row_title(row)}"
    if blank.kind == "missing":
        return f"{called(blank.name)} is missing{place}."
    return f"{called(blank.name)} cannot be worked out from these figures{place}."
