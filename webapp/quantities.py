"""The grammar of typed quantities; `static/sheet/quantities.js` is the twin, and of `webapp/showing.py` too.

    quantity: number [unit], or number unit followed by smaller ones: 5' 3 1/2", 1 h 30 min, 1 lb 4 oz
    number:   12   12.5   12,5   3/16   12 3/8   12-3/8
    unit:     one of our own spellings for the kind asked for; a bare number takes the field's unit

pint never sees typed text: it reads `12 3/8 in` as 4.5 in and `1,5 cm` as 15 cm.
"""

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from math import ceil, floor, log10
from typing import Any

from webapp.conversions import conversions, from_canonical, to_canonical
from webapp.errors import QuantityError
from webapp.inputs.entry import Input
from webapp.kinds import KINDS, ShownUnit
from webapp.showing import as_measured, rounded, unit_shown, with_unit

REPLACEMENTS = (
    *((vulgar, f" {over}/{under}") for vulgar, over, under in (
        ("½", 1, 2), ("¼", 1, 4), ("¾", 3, 4),
        ("⅛", 1, 8), ("⅜", 3, 8), ("⅝", 5, 8), ("⅞", 7, 8),
        ("⅓", 1, 3), ("⅔", 2, 3), ("⅙", 1, 6), ("⅚", 5, 6),
        ("⅕", 1, 5), ("⅖", 2, 5), ("⅗", 3, 5), ("⅘", 4, 5),
    )),
    ("⁄", "/"), ("″", '"'), ("”", '"'), ("“", '"'), ("′", "'"), ("’", "'"), ("''", '"'),
    ("−", "-"), ("–", "-"), ("\u00a0", " "), ("\u202f", " "), ("\t", " "),
    ("²", "2"), ("³", "3"), ("µ", "u"), ("μ", "u"),
)  # fmt: skip

# What the table says in metric reads in these, for a job of them, and in larger ones from so many on.
CUSTOMARY = {"in": "ft", "in2": "ft2", "fl oz": "gal", "in/ft": "", "in2/fl oz": "", "degF": ""}
LARGER_FROM = 120
LONGEST = 40
# The faces of a job share most of what is typed.
READINGS_KEPT = 4096
NUMBER = re.compile(
    r"(?:(?P<whole>\d+)(?: +|-))?(?P<over>\d+)/(?P<under>\d+)|(?P<decimal>\d+(?:[.,]\d+)*|[.,]\d+)"
)
THOUSANDS = re.compile(r"[1-9]\d{0,2}(?:,\d{3})+")


@dataclass(frozen=True)
class Reading:
    """What a typed quantity says: the canonical value, the unit it was read in, a note on what was taken."""

    value: Any
    unit: str = ""
    note: str = ""


@lru_cache(maxsize=READINGS_KEPT)
def read_quantity(text: str, kind: str, unit: str) -> Reading:
    """Read a typed quantity of a kind; a bare number is in `unit`. A QuantityError says what to type.

    >>> read_quantity("12 3/8", "length", "in").value
    31.4325
    """
    left = _plain(text)
    if len(left) > LONGEST:
        raise QuantityError(f"That is too long to read. Type one quantity, {_such_as(kind)}.")
    negative = left.startswith("-")
    left = left.lstrip("+-").lstrip() if left[:1] in ("+", "-") else left
    total, last, note = 0.0, None, ""
    while left:
        number, left = _number(left, text, kind)
        found, left, spelling = _unit(left, kind)
        if found is None and last and last.name == "ft" and kind == "length":
            found = _named("in", kind)
        if last and (found is None or not KINDS[kind].is_compound or not _smaller(found, last, kind)):
            raise QuantityError(_two_numbers(text, kind))
        if found is None and left:
            two = NUMBER.match(left)
            raise QuantityError(_two_numbers(text, kind) if two else _no_such_unit(left, kind, unit))
        taken = found.taken_as.get(spelling) if found else None
        note = f"{spelling} taken as {taken}" if taken else note
        last = found or _named(unit, kind)
        total += to_canonical(-number if negative and not total else number, last.name, kind)
        if negative and left:
            raise QuantityError(f'"{text.strip()}" cannot be read. Type one quantity, {_such_as(kind)}.')
    if last is None:
        raise QuantityError(f"Type a number, {_such_as(kind)}.")
    return Reading(total, last.name, note)


def read_input(typed: Any, each: Input, units: dict[str, str]) -> Reading:
    """Read what was typed for an input of the table, within its bounds; a number is in the canonical unit."""
    unit = unit_of_input(each, units)
    if isinstance(typed, bool) or not isinstance(typed, str | int | float):
        raise QuantityError(f"Type a quantity, {_such_as(each.kind)}.")
    if isinstance(typed, str):
        reading = read_quantity(typed, each.kind, unit)
    else:
        reading = Reading(float(typed), unit)
    least, most = bounds(each)
    if least is not None and least >= 0 > reading.value:
        raise QuantityError(f"{each.label} cannot be negative. Type it without the minus sign.")
    if least is not None and reading.value < least * (1 - 1e-9):
        end = bound_text(each, "least", unit)
        if reading.value == 0:
            raise QuantityError(f"{each.label} cannot be 0. Type at least {end}, or leave it blank.")
        shown = _echo(typed, reading, each.kind)
        raise QuantityError(f"{shown} is less than {end}. Check the number and the unit.")
    if most is not None and not reading.value <= most * (1 + 1e-9):
        shown, end = _echo(typed, reading, each.kind), bound_text(each, "most", unit)
        raise QuantityError(f"{shown} is more than {end}. Check the number and the unit.")
    if each.kind == "count" and reading.value != int(reading.value):
        raise QuantityError(f"{each.label} is a whole number. Type one, such as 2.")
    return reading


def read_choice(typed: Any, each: Input) -> Reading:
    """Read a choice: one of the input's options by its value."""
    if typed not in [value for value, _ in each.options]:
        names = ", ".join(label for _, label in each.options)
        raise QuantityError(f"Choose one of: {names}.")
    return Reading(typed)


@cache
def bounds(each: Input) -> tuple[float | None, float | None]:
    """Return an input's least and most in the canonical unit; None where it has no such bound."""
    unit = each.unit if each.unit is not None else next(iter(conversions(each.kind)))
    ends = (each.least, each.most)
    least, most = (None if end is None else read_quantity(end, each.kind, unit).value for end in ends)
    return least, most


@cache
def bound_text(each: Input, end: str, unit: str) -> str:
    """Return an input's "least" or "most" as a job whose bare numbers are in a unit reads it.

    It is rounded inward to two figures or to wholes, so that what it says is accepted.

    >>> from webapp.inputs.table import INPUTS
    >>> bound_text(INPUTS["width"], "least", "in"), bound_text(INPUTS["width"], "most", "in")
    ('0.04 in', '98 ft')
    >>> bound_text(INPUTS["width"], "least", "cm"), bound_text(INPUTS["air_temperature"], "most", "degF")
    ('1 mm', '122 °F')
    """
    text = getattr(each, end)
    if unit not in CUSTOMARY:
        return _as_in_the_table(text, each.kind)
    value = read_quantity(text, each.kind, unit).value
    if CUSTOMARY[unit] and abs(from_canonical(value, unit, each.kind)) >= LARGER_FROM:
        unit = CUSTOMARY[unit]
    size = from_canonical(value, unit, each.kind)
    places = max(0, 1 - floor(log10(abs(size)))) if size else 0
    # What a conversion leaves is no reason to go a step further in.
    steps = size * 10**places
    inward = ceil(steps - 1e-6) if end == "least" else floor(steps + 1e-6)
    return with_unit(rounded(inward / 10**places, places), unit, each.kind)


@cache
def default_text(each: Input, unit: str) -> str:
    """Return an input's default as a job whose bare numbers are in a unit reads it.

    >>> from webapp.inputs.table import INPUTS
    >>> [default_text(INPUTS["residual_film"], unit) for unit in ("in", "mm")]
    ['0.008 in', '0.2 mm']
    """
    if each.kind in ("choice", "text"):
        return each.default or ""
    if unit not in CUSTOMARY or each.default is None:
        return _as_in_the_table(each.default or "", each.kind)
    size = from_canonical(read_quantity(each.default, each.kind, unit).value, unit, each.kind)
    return with_unit(as_measured(size, each.kind, unit), unit, each.kind)


def _as_in_the_table(text: str, kind: str) -> str:
    figure, _, name = text.partition(" ")
    return with_unit(figure, name, kind) if name else text


def unit_of_input(each: Input, units: dict[str, str]) -> str:
    """Return the unit that a bare number in an input's field takes."""
    return each.unit if each.unit is not None else unit_shown(each.kind, units)


def units_of_input(each: Input) -> list[str]:
    """Return each unit that a bare number in an input's field takes in some job, the metric ones last."""
    other = KINDS[each.kind].shown_with
    names = KINDS[each.kind].job_units or (tuple(dict.fromkeys(other[1].values())) if other else ())
    if each.unit is not None or not names:
        return [unit_of_input(each, {})]
    return sorted(names, key=lambda name: name not in CUSTOMARY)


def _plain(text: str) -> str:
    for found, instead in REPLACEMENTS:
        text = text.replace(found, instead)
    return text.strip()


def _number(left: str, text: str, kind: str) -> tuple[float, str]:
    match = NUMBER.match(left)
    if match is None:
        raise QuantityError(f'"{text.strip()}" does not start with a number. Type one, {_such_as(kind)}.')
    left = left[match.end() :].lstrip(" ")
    if match["decimal"] is None:
        if int(match["under"]) == 0:
            raise QuantityError("A fraction over 0 has no value. Type it again, such as 3/16.")
        return int(match["whole"] or 0) + int(match["over"]) / int(match["under"]), left
    digits = match["decimal"]
    if THOUSANDS.fullmatch(digits):
        plain, point = digits.replace(",", ""), digits.replace(",", ".", 1)
        either = f"Type {plain} or {point}." if digits.count(",") == 1 else f"Type {plain}."
        raise QuantityError(f'"{digits}" can be read two ways. {either}')
    if len(re.findall("[.,]", digits)) > 1:
        raise QuantityError(f'"{digits}" is no number. Type one, {_such_as(kind)}.')
    return float(digits.replace(",", ".")), left


@cache
def spellings(kind: str) -> tuple[tuple[str, str], ...]:
    """Return every spelling of a kind's units in lower case with the unit's name, the longest first."""
    rows = [
        (spelling.lower(), row.unit.name)
        for row in conversions(kind).values()
        for spelling in dict.fromkeys((row.unit.name, *row.unit.spellings))
        if spelling
    ]
    return tuple(sorted(dict(rows).items(), key=lambda row: (-len(row[0]), row[0])))


def _unit(left: str, kind: str) -> tuple[ShownUnit | None, str, str]:
    if not left:
        return None, left, ""
    lower = left.lower()
    for spelling, name in spellings(kind):
        after = lower[len(spelling) :]
        if lower.startswith(spelling) and (not after or not re.match(r"[a-z/^]", after)):
            return _named(name, kind), left[len(spelling) :].lstrip(" "), spelling
    return None, left, ""


def _named(name: str, kind: str) -> ShownUnit:
    return conversions(kind)[name].unit


def _smaller(unit: ShownUnit, than: ShownUnit, kind: str) -> bool:
    return conversions(kind)[unit.name].factor < conversions(kind)[than.name].factor


def _no_such_unit(left: str, kind: str, unit: str) -> str:
    inches = KINDS[kind].inches
    units = [each for each in KINDS[kind].units if (each.name in inches if unit in inches else each.name)]
    names = [each.shown if each.shown.isascii() else each.name for each in units]
    if not names:
        return f'"{left}" does not belong here. Type a bare number, such as 2.'
    return f'"{left}" is no unit of {kind} here. Use {", ".join(names)}.'


def _two_numbers(text: str, kind: str) -> str:
    return f'"{text.strip()}" holds two numbers. Type one quantity, {_such_as(kind)}.'


def _such_as(kind: str) -> str:
    return f"such as {KINDS[kind].example}"


def _echo(typed: Any, reading: Reading, kind: str) -> str:
    text = typed.strip() if isinstance(typed, str) else rounded(from_canonical(typed, reading.unit, kind))
    return with_unit(text, reading.unit, kind) if re.fullmatch(r"[-+\d.,/ ]+", text) else text
