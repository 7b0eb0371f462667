"""How a quantity is shown: in which unit, with how many figures; `static/sheet/quantities.js` is the twin."""

from decimal import ROUND_HALF_UP, Decimal

from webapp.conversions import conversions, from_canonical
from webapp.kinds import JOB_UNITS, KINDS

# What a conversion leaves a hair under a half is rounded as the half that it is: 3.175 mm.
HALF_UP = 1 + 1e-12
# Past these, a figure is not read but passed over: nobody measures it.
MOST_SHOWN = 10**15
MOST_DAYS = 10_000


def unit_shown(kind: str, units: dict[str, str]) -> str:
    """Return the unit in which a person who chose these job units reads a kind of quantity."""
    if kind in JOB_UNITS:
        chosen = units.get(kind)
        return chosen if chosen in JOB_UNITS[kind] else JOB_UNITS[kind][0]
    if with_other := KINDS[kind].shown_with:
        other, table = with_other
        return table[unit_shown(other, units)]
    return KINDS[kind].units[0].name


def show(value: float, kind: str, unit: str) -> str:
    """Show a canonical value in a unit with three figures that matter, never more than a person can use.

    >>> show(147.4836, "volume", "mL"), show(147.4836, "volume", "fl oz"), show(0.25, "share", "%")
    ('147 mL', '4.99 fl oz', '25 %')
    >>> show(0.15875, "length", "in"), show(0.015875, "length", "in"), show(1.5707963, "angle", "deg")
    ('0.0625 in', '6.25 thou', '90°')
    """
    if kind == "time":
        return show_duration(value)
    finer, limit = conversions(kind)[unit].unit.finer or (unit, 0.0)
    if 0 < abs(from_canonical(value, unit, kind)) < limit:
        unit = finer
    named = conversions(kind)[unit].unit
    figure = rounded(from_canonical(value, unit, kind), KINDS[kind].places)
    return f"{figure}{named.shown}" if named.shown == "°" else f"{figure} {named.shown}".strip()


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


def show_duration(seconds: float) -> str:
    """Show a time as a person says it.

    >>> show_duration(40), show_duration(150), show_duration(1620), show_duration(4200), show_duration(90000)
    ('40 s', '2 min 30 s', '27 min', '1 h 10 min', '25 h')
    """
    sign, size = ("-" if seconds < 0 else ""), abs(seconds)
    if size < 9.5:
        return f"{sign}{rounded(size, 1 if size >= 1 else 2)} s"
    if size < 600:
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
