"""How a quantity is shown: in which unit, with how many figures; `static/sheet/quantities.js` is the twin."""

from decimal import ROUND_HALF_UP, Decimal
from math import gcd

from webapp.conversions import conversions, from_canonical
from webapp.kinds import JOB_UNITS, KINDS

# What a conversion leaves a hair under a half is rounded as the half that it is: 3.175 mm.
HALF_UP = 1 + 1e-12
# Past these, a figure is not read but passed over: nobody measures it.
MOST_SHOWN = 10**15
MOST_DAYS = 10_000
# A reading is shown in the unit that it is a round figure of: a cup may be marked in another than the job's.
OTHER_MARKS = {"mL": "fl oz", "fl oz": "mL"}
# Units that a rule or a cup divides by halving.
HALVED = ("in", "in/ft")
WHOLE = ("degC", "degF")
# Signs that stand close to their figure: 45°, 40%.
ATTACHED = ("°", "%")


def unit_shown(kind: str, units: dict[str, str]) -> str:
    """Return the unit in which a person who chose these job units reads a kind of quantity."""
    if kind in JOB_UNITS:
        chosen = units.get(kind)
        return chosen if chosen in JOB_UNITS[kind] else JOB_UNITS[kind][0]
    if with_other := KINDS[kind].shown_with:
        other, table = with_other
        return table[unit_shown(other, units)]
    return KINDS[kind].units[0].name


def show(value: float, kind: str, unit: str, grain: str = "") -> str:
    """Show a canonical value in a unit with the figures that matter, as people measure.

    A length in inches that stands on a 1/32 reads as a fraction; any other in thousandths below half an inch,
    to 1/16 from there. Degrees are whole, grams too, in tenths under 20. Of grain "mark" is what is measured
    out: it is shown as it was computed, and so is what is of grain "either" where it is a round figure of a
    unit. Of grain "guess" is a time that is known to two figures at best.

    >>> show(147.4836, "volume", "mL"), show(147.4836, "volume", "fl oz"), show(88.75, "volume", "mL", "mark")
    ('147 mL', '4.99 fl oz', '88.75 mL')
    >>> show(273.5551481, "volume", "fl oz", "either"), show(278.3123456, "volume", "fl oz", "either")
    ('9 1/4 fl oz', '9.41 fl oz')
    >>> show(0.15875, "length", "in"), show(0.3429, "length", "in"), show(1.5707963, "angle", "deg")
    ('1/16 in', '0.135 in', '90°')
    """
    if kind == "time":
        return show_duration(value, grain)
    marked = _on_marks(value, kind, unit) if grain in ("mark", "either") else None
    if marked or grain == "mark":
        return _show_mark(value, kind, marked or unit)
    finer, limit = conversions(kind)[unit].unit.finer or (unit, 0.0)
    if 0 < abs(from_canonical(value, unit, kind)) < limit:
        unit = finer
    return with_unit(as_measured(from_canonical(value, unit, kind), kind, unit), unit, kind)


def with_unit(figure: str, unit: str, kind: str) -> str:
    """Write a figure with its unit behind it, as the unit is shown."""
    shown = conversions(kind)[unit].unit.shown
    return f"{figure}{shown}" if shown in ATTACHED else f"{figure} {shown}".strip()


def as_measured(value: float, kind: str, unit: str) -> str:
    """Write a figure in a unit with as many places as people measure it to."""
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
    places = 1 if unit.startswith("thou") and size >= 1 else None
    return rounded(value, places if KINDS[kind].places is None else KINDS[kind].places)


def _on_marks(value: float, kind: str, unit: str) -> str | None:
    """Return the unit of which a value is a round figure: the one asked for, the other of a cup, or None."""
    units = [each for each in (unit, OTHER_MARKS.get(unit)) if each]
    return next((each for each in units if _is_round(from_canonical(value, each, kind), each)), None)


def _show_mark(value: float, kind: str, unit: str) -> str:
    """Show what is measured out as it was computed."""
    figure = from_canonical(value, unit, kind)
    text = _fraction(figure, 32) if unit == "fl oz" and _is_on(figure, 32) else rounded(figure, 4)
    return with_unit(text, unit, kind)


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
    ('40 s', '2 min 30 s', '27 min', '1 hr 10 min', '25 hr')
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
        return sign + _two(minutes, 60, "hr", "min")
    return sign + _two(int(Decimal(size / 3600).quantize(Decimal(1), ROUND_HALF_UP)), 24, "d", "hr")


def _two(amount: int, base: int, large: str, small: str) -> str:
    parts = [f"{count} {name}" for count, name in ((amount // base, large), (amount % base, small)) if count]
    return " ".join(parts) or f"0 {small}"
