"""The grammar of typed quantities, and how a quantity is shown; `static/sheet/quantities.js` is the twin.

    quantity: number [unit], or number unit followed by smaller ones: 5' 3 1/2", 1 h 30 min, 1 lb 4 oz
    number:   12   12.5   12,5   3/16   12 3/8   12-3/8
    unit:     one of our own spellings for the kind asked for; a bare number takes the field's unit

pint never sees typed text: it reads `12 3/8 in` as 4.5 in and `1,5 cm` as 15 cm.
"""

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cache, lru_cache
from math import gcd
from typing import Any

from webapp.errors import QuantityError
from webapp.inputs.entry import Input
from webapp.units import ShownUnit, conversions, from_canonical, to_canonical

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

EXAMPLES = {
    "length": "12 3/8 in",
    "area": "280 in2",
    "volume": "300 mL",
    "mass": "150 g",
    "time": "30 min",
    "temperature": "74 degF",
    "share": "48 %",
}
TAKEN_AS = {
    "volume": {"oz": "US fl oz", "ounces": "US fl oz", "cup": "US cup", "cups": "US cups"},
    "length": {"mil": "thousandths of an inch", "mils": "thousandths of an inch"},
}
COMPOUND_KINDS = ("length", "mass", "time")
SHOWN_WITH = {
    "area": ("length", {"in": "in2", "mm": "cm2", "cm": "cm2"}),
    "coverage": ("length", {"in": "in2/fl oz", "mm": "cm2/mL", "cm": "cm2/mL"}),
    "spread rate": ("length", {"in": "in2/min", "mm": "cm2/min", "cm": "cm2/min"}),
    "slope": ("length", {"in": "in/ft", "mm": "mm/m", "cm": "mm/m"}),
    "temperature difference": ("temperature", {"degF": "degF", "degC": "degC"}),
}
# A unit gives way to a finer one under this many of it: nobody reads 0.0062 in.
FINER = {"in": ("thou", 0.01), "cm": ("mm", 0.1), "in/ft": ("thou/ft", 0.01)}
# A reading is shown in the unit that it is a round figure of: a cup may be marked in another than the job's.
OTHER_MARKS = {"mL": "fl oz", "fl oz": "mL"}
# Units that a rule or a cup divides by halving.
HALVED = ("in", "in/ft")
WHOLE = ("degC", "degF")
JOB_UNITS = {"length": ("in", "mm", "cm"), "volume": ("mL", "fl oz"), "temperature": ("degF", "degC")}

# What a conversion leaves a hair under a half is rounded as the half that it is: 3.175 mm.
HALF_UP = 1 + 1e-12

LONGEST = 40
# Past these, a figure is not read but passed over: nobody measures it.
MOST_SHOWN = 10**15
MOST_DAYS = 10_000
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
        if last and (found is None or kind not in COMPOUND_KINDS or not _smaller(found, last, kind)):
            raise QuantityError(_two_numbers(text, kind))
        if found is None and left:
            raise QuantityError(_two_numbers(text, kind) if NUMBER.match(left) else _no_such_unit(left, kind))
        note = _note(spelling, kind) or note
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
        if reading.value == 0:
            raise QuantityError(f"{each.label} cannot be 0. Type at least {each.least}, or leave it blank.")
        shown = _echo(typed, reading, each.kind)
        raise QuantityError(f"{shown} is less than {each.least}. Check the number and the unit.")
    if most is not None and not reading.value <= most * (1 + 1e-9):
        shown = _echo(typed, reading, each.kind)
        raise QuantityError(f"{shown} is more than {each.most}. Check the number and the unit.")
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


def unit_of_input(each: Input, units: dict[str, str]) -> str:
    """Return the unit that a bare number in an input's field takes."""
    return each.unit if each.unit is not None else unit_shown(each.kind, units)


def unit_shown(kind: str, units: dict[str, str]) -> str:
    """Return the unit in which a person who chose these job units reads a kind of quantity."""
    if kind in JOB_UNITS:
        chosen = units.get(kind)
        return chosen if chosen in JOB_UNITS[kind] else JOB_UNITS[kind][0]
    if kind in SHOWN_WITH:
        other, table = SHOWN_WITH[kind]
        return table[unit_shown(other, units)]
    return next(iter(conversions(kind)))


def show(value: float, kind: str, unit: str, grain: str = "") -> str:
    """Show a canonical value in a unit with the figures that matter, as people measure.

    A length in inches that stands on a 1/32 reads as a fraction; any other in thousandths below half an inch,
    to 1/16 from there. Degrees are whole, grams too, in tenths under 20. Of grain "mark" is what is measured
    out: it is shown as it was computed. Of grain "guess" is a time that is known to two figures at best.

    >>> show(147.4836, "volume", "mL"), show(147.4836, "volume", "fl oz"), show(88.75, "volume", "mL", "mark")
    ('147 mL', '4.99 fl oz', '88.75 mL')
    >>> show(0.15875, "length", "in"), show(0.3429, "length", "in"), show(1.5707963, "angle", "deg")
    ('1/16 in', '0.135 in', '90°')
    """
    if kind == "time":
        return show_duration(value, grain)
    if grain == "mark":
        return _show_mark(value, kind, unit)
    finer, limit = FINER.get(unit, (unit, 0.0))
    if 0 < abs(from_canonical(value, unit, kind)) < limit:
        unit = finer
    named = _named(unit, kind)
    figure = _as_measured(from_canonical(value, unit, kind), kind, unit)
    return f"{figure}{named.shown}" if named.shown == "°" else f"{figure} {named.shown}".strip()


def _as_measured(value: float, kind: str, unit: str) -> str:
    size = abs(value)
    if size >= MOST_SHOWN:
        return rounded(value)
    if unit in HALVED:
        if _is_on(size, 32):
            return _fraction(value, 32)
        return _fraction(value, 16) if size >= 0.5 else rounded(value, 3)
    if unit in WHOLE and size >= 1:
        return rounded(value, 0)
    if unit == "g" and size >= 1:
        return rounded(value, 0 if size >= 20 else 1)
    return rounded(value, 2 if kind == "money" else 1 if unit.startswith("thou") and size >= 1 else None)


def _show_mark(value: float, kind: str, unit: str) -> str:
    """Show what is measured out as it was computed, in the unit in which it is a round figure."""
    units = [each for each in (unit, OTHER_MARKS.get(unit)) if each]
    own = next((each for each in units if _is_round(from_canonical(value, each, kind), each)), unit)
    figure = from_canonical(value, own, kind)
    is_halved = own == "fl oz" and _is_on(figure, 32)
    return f"{_fraction(figure, 32) if is_halved else rounded(figure, 4)} {_named(own, kind).shown}"


def _is_round(figure: float, unit: str) -> bool:
    return _is_on(figure, 32 if unit == "fl oz" else 10_000) or _is_on(figure, 1000)


def _is_on(figure: float, parts: int) -> bool:
    """Whether a figure stands on so many parts of one, but for what a conversion leaves."""
    return abs(figure) < MOST_SHOWN and abs(figure * parts - round(figure * parts)) < 1e-6


def _fraction(value: float, parts: int) -> str:
    """Write a figure as whole and fraction, to the nearest of so many parts: 12 3/8."""
    count = int(abs(value) * parts * HALF_UP + 0.5)
    whole, over = divmod(count, parts)
    shared = gcd(over, parts)
    texts = [str(whole)] if whole or not over else []
    if over:
        texts.append(f"{over // shared}/{parts // shared}")
    return ("-" if value < 0 and count else "") + " ".join(texts)


def rounded(value: float, places: int | None = None) -> str:
    """Round half away from nought to three figures that matter, or to places; no zeros at the end."""
    size = abs(value)
    if size >= MOST_SHOWN:
        return f"{'under -' if value < 0 else 'over '}{MOST_SHOWN}"
    if places is None:
        places = next((n for n, floor in enumerate((100, 10, 1, 0.1, 0.01, 0.001)) if size >= floor), 6)
    exact = Decimal(value * HALF_UP).quantize(Decimal(1).scaleb(-places), ROUND_HALF_UP)
    text = f"{exact:f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def show_duration(seconds: float, grain: str = "") -> str:
    """Show a time as a person says it; a guess under ten minutes in half minutes or five seconds.

    >>> show_duration(40), show_duration(150), show_duration(1620), show_duration(4200), show_duration(90000)
    ('40 s', '2 min 30 s', '27 min', '1 h 10 min', '25 h')
    >>> show_duration(0.73), show_duration(43, "guess"), show_duration(463, "guess")
    ('under 1 s', '40 s', '7 min 30 s')
    """
    sign, size = ("-" if seconds < 0 else ""), abs(seconds)
    if 0 < size < 1:
        return "0 s" if sign else "under 1 s"
    if grain == "guess" and 10 <= size < 600:
        step = 30 if size >= 60 else 5
        size = int(size / step * HALF_UP) * step
    if size < 599.5:
        return sign + _two(int(Decimal(size).quantize(Decimal(1), ROUND_HALF_UP)), 60, "min", "s")
    if size >= MOST_DAYS * 86400:
        return f"{'under -' if seconds < 0 else 'over '}{MOST_DAYS} d"
    minutes = int(Decimal(size / 60).quantize(Decimal(1), ROUND_HALF_UP))
    if minutes < 48 * 60:
        return sign + _two(minutes, 60, "h", "min")
    return sign + _two(int(Decimal(size / 3600).quantize(Decimal(1), ROUND_HALF_UP)), 24, "d", "h")


def _two(amount: int, base: int, large: str, small: str) -> str:
    parts = [f"{count} {name}" for count, name in ((amount // base, large), (amount % base, small)) if count]
    return " ".join(parts) or f"0 {small}"


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


def _no_such_unit(left: str, kind: str) -> str:
    names = [row.unit.name for row in conversions(kind).values() if row.unit.name]
    if not names:
        return f'"{left}" does not belong here. Type a bare number, such as 2.'
    return f'"{left}" is no unit of {kind} here. Use {", ".join(names)}.'


def _two_numbers(text: str, kind: str) -> str:
    return f'"{text.strip()}" holds two numbers. Type one quantity, {_such_as(kind)}.'


def _note(spelling: str, kind: str) -> str:
    taken = TAKEN_AS.get(kind, {}).get(spelling)
    return f"{spelling} taken as {taken}" if taken else ""


def _such_as(kind: str) -> str:
    return f"such as {EXAMPLES.get(kind, '2')}"


def _echo(typed: Any, reading: Reading, kind: str) -> str:
    text = typed.strip() if isinstance(typed, str) else rounded(from_canonical(typed, reading.unit, kind))
    return f"{text} {reading.unit}".strip() if re.fullmatch(r"[-+\d.,/ ]+", text) else text
