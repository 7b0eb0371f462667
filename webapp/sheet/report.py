"""What the sheet gives out: the plan as a tree for programs, and the job sheet as text for people."""

import gc
import json
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any

from webapp.errors import JobFileError
from webapp.inputs.table import INPUTS
from webapp.sheet.heat import heat_says, not_checked
from webapp.sheet.labels import GRAINS, called, in_sentence
from webapp.sheet.levels import LEVELS
from webapp.sheet.reasons import because, begins_with, row_title, sentence, ways_out
from webapp.sheet.runner import Blank, Cell, CheckResult, Row, calculate
from webapp.sheet.wiring import Sheet, kind_of, load_sheet
from webapp.showing import show, unit_shown
from webapp.units import canonical_units

SIGNS = {"stop": "STOP", "caution": "Caution", "note": "Note"}
# What the plan as text says of each row, by level.
LINES: dict[str, tuple[str, ...]] = {
    "job": ("dew_point", "dew_margin", "working_time", "usable_time", "pour_time", "wet_edge_time"),
    "colour": ("total_face_volume", "coats_to_pour", "cups", "cup_limit", "colour_need", "spread_rate"),
    "face": ("face_area", "face_volume", "face_share", "cups_on_piece", "join_age"),
    "cup": (
        "reading_a",
        "reading_b",
        "reading_a_mass",
        "reading_b_mass",
        "mix_volume",
        "worst_ratio_deviation",
        "pour_by",
        "earliest_gel_time",
        "latest_gel_time",
        "peak_temperature",
        "other_peak_temperature",
        "tint_limit_drops",
        "starting_drops",
        "pour_end",
        "first_mist_due",
        "second_mist_due",
        "tack_free_due",
        "recoat_opens_due",
        "recoat_closes_due",
        "cured_due",
        "top_coat_due",
    ),
}


def plan(job: dict[str, Any]) -> dict[str, Any]:
    """Return the job with `cells` and `checks` at every row; values are in canonical units."""
    sheet = load_sheet()
    with _nothing_collected():
        return _planned(job, calculate(job, sheet), Words(sheet, _units(sheet)))


def plan_as_json(job: dict[str, Any]) -> str:
    """Return the plan as strict JSON on one line: with indents it takes as long to write as to work out.

    It is all ASCII, so no name can steer a terminal, and half a character of one is still JSON.
    """
    try:
        return json.dumps(plan(job), allow_nan=False)
    except ValueError as error:
        raise JobFileError(
            "A number in the job file is past all measure. Correct it, then try again."
        ) from error


@contextmanager
def _nothing_collected() -> Iterator[None]:
    # A plan throws nothing away, and a large one would be searched for what it threw away again and again.
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_enabled:
            gc.enable()


@dataclass(frozen=True)
class Words:
    """What a plan says of its cells: their units, and why they are blank, as one blank empties many."""

    sheet: Sheet
    units: dict[str, str]
    names: dict[int, str] = field(default_factory=dict)

    def because(self, blank: Blank | None, name: str, row: Row) -> str | None:
        """Return why a cell is blank: a sentence where the blank begins, elsewhere its name; else None."""
        if blank is None:
            return None
        if blank.row is row and (blank.name == name or blank.kind == "empty"):
            return because(blank)
        if id(blank) not in self.names:
            self.names[id(blank)] = begins_with(blank)
        return self.names[id(blank)]


def _units(sheet: Sheet) -> dict[str, str]:
    units = canonical_units()
    kinds = {node.name: kind_of(node.name, sheet) for node in sheet.nodes if node.kind != "check"}
    return {name: units[kind].symbol if kind in units else "" for name, kind in kinds.items()}


def _planned(source: dict[str, Any], row: Row, words: Words) -> dict[str, Any]:
    out = dict(source)
    for level, rows in row.rows.items():
        if LEVELS[level].is_worked_out:
            out[level] = _planned({}, rows[0], words)
        else:
            out[LEVELS[level].rows] = [_planned(each.source, each, words) for each in rows]
    out["cells"] = {name: _cell(name, cell, row, words) for name, cell in row.cells.items()}
    out["checks"] = [_check(result, row, words) for result in row.checks]
    return out


def _cell(name: str, cell: Cell, row: Row, words: Words) -> dict[str, Any]:
    reason = words.because(cell.blank, name, row)
    out = {"value": cell.value, "unit": words.units[name], "blank_because": reason}
    if cell.winner:
        out["from"] = cell.winner
    return out


def _check(result: CheckResult, row: Row, words: Words) -> dict[str, Any]:
    check = words.sheet.book.checks[result.name]
    return {
        "name": result.name,
        "severity": check.severity,
        "beside": check.beside,
        "state": result.state,
        "says": sentence(check.says, row),
        "would_do": ways_out(check, row) if result.state == "wrong" else [],
        "unchecked_because": words.because(result.blank, result.name, row),
    }


def job_sheet_text(job: dict[str, Any]) -> str:
    """Return the job sheet as plain text: the room, each colour with its cups, and what to mind."""
    sheet = load_sheet()
    root = calculate(job, sheet)
    units = job.get("units") or {}
    told: set[str] = set()
    card = (job.get("card") or {}).get("name") or "Resin card without a name"
    lines = [root.name or "Job without a name", card, *_lines(root, units, sheet, told)]
    for colour in root.rows["colour"]:
        lines += ["", _capital(row_title(colour)), *_lines(colour, units, sheet, told)]
        for face in colour.rows["face"]:
            lines += [f"  {_capital(row_title(face))}"]
            lines += [f"  {line}" for line in _lines(face, units, sheet, told)]
        cup = colour.rows["cup"][0]
        said = [f"  {each}" for each in (heat_says(cup, units), *not_checked(colour)) if each]
        lines += ["  Each cup", *_lines(cup, units, sheet, told), *said]
    lines += ["", "Follow the maker's data sheet and safety data sheet, local codes and your instructor."]
    return "\n".join(lines) + "\n"


def _lines(row: Row, units: dict[str, str], sheet: Sheet, told: set[str]) -> list[str]:
    lines = []
    for name in LINES[row.level]:
        cell = row.cells.get(name)
        if cell is not None:
            lines.append(f"  {called(name) + ':':<29} {_said(name, cell, units, sheet, told)}")
    for result in row.checks:
        check = sheet.book.checks[result.name]
        if result.state == "wrong":
            lines.append(f"  {SIGNS[check.severity]}: {sentence(check.says, row)}")
            lines += [f"    to fix: {way}" for way in ways_out(check, row)]
        elif result.state == "unchecked" and result.blank and check.severity == "stop":
            lines.append(f"  Not checked: {in_sentence(result.name)}{_why(result.blank, told)}")
    return lines


def _why(blank: Blank, told: set[str]) -> str:
    """Return why a line is blank, after its words: told once, and named from then on."""
    why = because(blank)
    if why in told:
        return f" ({begins_with(blank)})"
    told.add(why)
    return f". {why}"


def _said(name: str, cell: Cell, units: dict[str, str], sheet: Sheet, told: set[str]) -> str:
    if cell.blank:
        return f"blank{_why(cell.blank, told)}"
    kind = kind_of(name, sheet)
    text = show(cell.value, kind, unit_shown(kind, units), GRAINS.get(name, ""))
    if kind == "volume":
        other = "mL" if text.endswith("fl oz") else "fl oz"
        text += f" ({show(cell.value, kind, other)})"
    return f"{text} ({in_sentence(cell.winner)})" if cell.winner and name not in INPUTS else text


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
