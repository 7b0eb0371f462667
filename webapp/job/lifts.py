"""How a job of an older version becomes one of this version, a step for each version that ever landed.

Each step is a table, printed for the phone: `static/keeping/lift.js` is the twin. Version 2 keeps with a cup
the stages that it was begun with. Version 3 tells the ratio's tolerance that a card states from the assumed
one, and asks how long a square foot takes instead of how much is spread in a minute. Version 4 reads every
bare number in the job's own units: where some fields took millimetres, that is written behind them.
"""

from functools import partial
from typing import Any

from webapp.bench.walk import has
from webapp.errors import QuantityError
from webapp.quantities import read_quantity
from webapp.showing import rounded, unit_shown

VERSION = 4

WALK_OF_VERSION_1: tuple[tuple[str, str], ...] = (
    ("make_ready", ""),
    ("part_a", ""),
    ("part_b", ""),
    ("fill", ""),
    ("mix", ""),
    ("tint", "tinted"),
    ("clean_cup", "clean_cup"),
    ("pour", ""),
    ("first_mist", ""),
    ("second_mist", ""),
    ("cover", ""),
    ("tack_free", ""),
    ("recoat_opens", "another_coat"),
    ("recoat_closes", "another_coat"),
    ("cured", ""),
    ("top_coat", ""),
)
"""The stages that version 1 had, each with the kind of cup that it was for."""

SQUARE_FOOT = 929.0304
"""In square centimetres: 12 in of 2.54 cm, squared."""

LIFTS: dict[int, dict[str, Any]] = {
    1: {"walk": WALK_OF_VERSION_1},
    2: {
        "renamed": (("card", "ratio_tolerance", "stated_ratio_tolerance"),),
        "paces": (("bench", "spread_rate", "square_foot_time", "spread rate", "cm2/min", SQUARE_FOOT),),
    },
    3: {
        "bare": (
            ("card", "greatest_coat_depth", "length", "mm"),
            ("card", "stated_coverage", "coverage", "in2/fl oz"),
            ("bench", "cup_diameter", "length", "mm"),
            ("bench", "residual_film", "length", "mm"),
            ("bench", "bench_slope", "slope", "mm/m"),
            ("bench", "ripple_length", "length", "mm"),
            ("bench", "bubble_diameter", "length", "mm"),
            ("colours", "tip_diameter", "length", "mm"),
            ("colours", "tested_depth", "length", "mm"),
        ),
    },
}
"""What a job of each older version lacks.

`walk` gives its cups their stages, `renamed` an input of a section another name; `paces` turns a rate
of a kind, with the unit of a bare number, into the time for an area; `bare` says of which kind an input of a
section or of a list of rows is, and in which unit a bare number of it was meant.
"""


def lift(job: dict[str, Any]) -> dict[str, Any]:
    """Return a job of an older version as one of this version; nothing that can be read in it is lost."""
    for version in range(job["version"], VERSION):
        job = _lifted(job, LIFTS[version]) | {"version": version + 1}
    return job


def _lifted(job: dict[str, Any], step: dict[str, Any]) -> dict[str, Any]:
    for section, old, new in step.get("renamed", ()):
        job = _changed(job, section, old, new, _as_it_is)
    for section, old, new, kind, unit, area in step.get("paces", ()):
        job = _changed(job, section, old, new, partial(_time_for, kind=kind, unit=unit, area=area))
    for section, name, kind, unit in step.get("bare", ()):
        change = partial(_spelled_out, kind=kind, unit=unit, units=job.get("units"))
        job = _changed(job, section, name, name, change)
    colours = job.get("colours")
    if not isinstance(colours, list):
        return job
    return job | {"colours": [_with_cups(colour, step.get("walk")) for colour in colours]}


def _changed(job: dict[str, Any], section: str, old: str, new: str, change: Any) -> dict[str, Any]:
    group = job.get(section)
    if isinstance(group, list):
        return job | {section: [_changed_in(row, old, new, change) for row in group]}
    return job | {section: _changed_in(group, old, new, change)} if section in job else job


def _changed_in(group: Any, old: str, new: str, change: Any) -> Any:
    if not isinstance(group, dict) or old not in group:
        return group
    kept = {name: value for name, value in group.items() if name != old}
    value = change(group[old])
    return kept if value is None else kept | {new: value}


def _as_it_is(value: Any) -> Any:
    return value


def _time_for(rate: Any, kind: str, unit: str, area: float) -> str | None:
    """Return the minutes that an area takes at a rate, as text; None where the rate cannot be read."""
    each_second = _read(rate, kind, unit) if isinstance(rate, str) else rate
    is_number = isinstance(each_second, int | float) and not isinstance(each_second, bool)
    return f"{rounded(area / each_second / 60)} min" if is_number and each_second > 0 else None


def _spelled_out(typed: Any, kind: str, unit: str, units: Any) -> Any:
    """Return a bare number with the unit that it was meant in, unless the job reads it in that one anyhow."""
    if not isinstance(typed, str) or (isinstance(units, dict) and unit_shown(kind, units) == unit):
        return typed
    spelled, meant = f"{typed.rstrip()} {unit}", _read(typed, kind, unit)
    # "5 ft 3" takes a unit too, and would then be another amount.
    return spelled if meant is not None and _read(spelled, kind, unit) == meant else typed


def _read(text: str, kind: str, unit: str) -> Any:
    try:
        return read_quantity(text, kind, unit).value
    except QuantityError:
        return None


def _with_cups(colour: Any, walk: tuple[tuple[str, str], ...] | None) -> Any:
    if not isinstance(colour, dict) or not isinstance(colour.get("cups"), list):
        return colour
    return colour | {"cups": [_with_plan(cup, walk) for cup in colour["cups"]]}


def _with_plan(cup: Any, walk: tuple[tuple[str, str], ...] | None) -> Any:
    if not isinstance(cup, dict):
        return cup
    plan = cup.get("plan")
    if isinstance(plan, dict) and plan.get("version") in LIFTS and plan["version"] is not True:
        cup = cup | {"plan": lift(plan)}
    return cup if walk is None else cup | {"stages": [name for name, only in walk if has(cup, only)]}
