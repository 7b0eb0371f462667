"""How a job of an older version becomes one of this version, a step for each version that ever landed.

Each step is a table, printed for the phone: `static/keeping/lift.js` is the twin. Version 2 keeps with a cup
the stages that it was begun with. Version 3 tells the ratio's tolerance that a card states from the assumed
one, and asks how long a square foot takes instead of how much is spread in a minute. Version 4 reads every
bare number in the job's own units: where some fields took millimetres, that is written behind them. It has
ids of letters, digits and _ alone. Version 5 keeps what happened to a cup as entries with ids, which are only
ever added to.
"""

import re
from collections import Counter
from functools import partial
from typing import Any

from webapp.bench.walk import has
from webapp.errors import QuantityError
from webapp.quantities import read_quantity
from webapp.showing import rounded, unit_shown

VERSION = 5

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

ROWS_WITH_IDS = ("colours", "faces", "openings", "cups")

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
        "ids": "[^A-Za-z0-9_]",
    },
    4: {"entries": {"reason_of": "make_ready", "no_taps": ("calendar",)}},
}
"""What a job of each older version lacks.

`walk` gives its cups their stages, `renamed` an input of a section another name; `paces` turns a rate
of a kind, with the unit of a bare number, into the time for an area; `bare` says of which kind an input of a
section or of a list of rows is, and in which unit a bare number of it was meant. `ids` are the signs that an
id no longer has: their numbers stand in their place. `entries` makes
entries of its cups' taps and of the reason for a stage; a tap of `no_taps` becomes an entry of that kind.
"""


def lift(job: dict[str, Any]) -> dict[str, Any]:
    """Return a job of an older version as one of this version; nothing that can be read in it is lost.

    It is checked only then: whatever else stands in it is left as it is.
    """
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
    if foreign := step.get("ids"):
        job = _with_plain_ids(job, re.compile(foreign))
    colours = job.get("colours")
    if not isinstance(colours, list):
        return job
    return job | {"colours": [_with_cups(colour, step) for colour in colours]}


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


def _with_plain_ids(row: Any, foreign: re.Pattern[str]) -> Any:
    """Return a row with an id that a page can ask for, and so its rows and cups."""
    if not isinstance(row, dict):
        return row
    if isinstance(row.get("id"), str):
        row = row | {"id": foreign.sub(lambda sign: f"_{ord(sign[0]):x}", row["id"])}
    lists = {key: row[key] for key in ROWS_WITH_IDS if isinstance(row.get(key), list)}
    return row | {key: [_with_plain_ids(each, foreign) for each in rows] for key, rows in lists.items()}


def _is_older(version: Any) -> bool:
    return isinstance(version, int) and not isinstance(version, bool) and version in LIFTS


def _with_cups(colour: Any, step: dict[str, Any]) -> Any:
    if not isinstance(colour, dict) or not isinstance(colour.get("cups"), list):
        return colour
    return colour | {"cups": [_cup(cup, step) for cup in colour["cups"]]}


def _cup(cup: Any, step: dict[str, Any]) -> Any:
    if not isinstance(cup, dict):
        return cup
    plan = cup.get("plan")
    if isinstance(plan, dict) and _is_older(plan.get("version")):
        cup = cup | {"plan": lift(plan)}
    if "walk" in step:
        cup = cup | {"stages": [name for name, only in step["walk"] if has(cup, only)]}
    return _with_entries(cup, **step["entries"]) if "entries" in step else cup


def _with_entries(cup: dict[str, Any], reason_of: str, no_taps: tuple[str, ...]) -> dict[str, Any]:
    """Return a cup with its taps and its reason as entries; two copies of a cup get the same ids."""
    taps = [] if cup.get("taps") is None else cup["taps"]
    if not isinstance(taps, list):
        return cup
    ids: Counter[str] = Counter()
    entries = [_entry(tap, no_taps, ids) for tap in taps]
    reason = cup.get("reason")
    kept = {
        key: value
        for key, value in cup.items()
        if key != "taps" and (key != "reason" or value not in ("", None))
    }
    if isinstance(reason, str) and reason:
        del kept["reason"]
        moments = [entry["at"] for entry in entries if _is_tap_of(entry, reason_of)]
        at = (moments or [cup.get("begun")])[0]
        named = {"id": _entry_id("reason", at, ids), "at": at, "kind": "reason"}
        entries.append(named | {"stage": reason_of, "says": reason})
    return kept | {"entries": entries}


def _entry(tap: Any, no_taps: tuple[str, ...], ids: Counter[str]) -> Any:
    if not isinstance(tap, dict):
        return tap
    stage, at = tap.get("stage"), tap.get("at")
    rest = {key: value for key, value in tap.items() if key != "stage"}
    kind = {"kind": stage} if stage in no_taps else {"kind": "tap", "stage": stage}
    return rest | kind | {"id": _entry_id(stage, at, ids)}


def _is_tap_of(entry: Any, stage: str) -> bool:
    return isinstance(entry, dict) and entry.get("stage") == stage and "at" in entry


def _entry_id(name: Any, at: Any, ids: Counter[str]) -> str:
    """Return an id made of a name and the digits of a moment, which no entry before it has."""
    digits = "".join(each for each in at if each in "0123456789") if isinstance(at, str) else ""
    stem = f"{name}-{digits}" if isinstance(name, str) else digits
    ids[stem] += 1
    return stem if ids[stem] == 1 else f"{stem}-{ids[stem]}"
