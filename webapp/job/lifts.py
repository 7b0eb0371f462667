"""How a job of an older version becomes one of this version, a step for each version that ever landed.

Each step is a table, printed for the phone: `static/keeping/lift.js` is the twin. Version 2 keeps with a cup
the stages that it was begun with.
"""

from typing import Any

from webapp.bench.walk import has

VERSION = 2

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

LIFTS: dict[int, dict[str, Any]] = {1: {"walk": WALK_OF_VERSION_1}}
"""What a job of each older version lacks: `walk` gives its cups their stages."""


def lift(job: dict[str, Any]) -> dict[str, Any]:
    """Return a job of an older version as one of this version; nothing that was in it is lost."""
    for version in range(job["version"], VERSION):
        job = _lifted(job, LIFTS[version]) | {"version": version + 1}
    return job


def _lifted(job: dict[str, Any], step: dict[str, Any]) -> dict[str, Any]:
    colours = job.get("colours")
    if not isinstance(colours, list):
        return job
    return job | {"colours": [_with_stages(colour, step["walk"]) for colour in colours]}


def _with_stages(colour: Any, walk: tuple[tuple[str, str], ...]) -> Any:
    if not isinstance(colour, dict) or not isinstance(colour.get("cups"), list):
        return colour
    return colour | {"cups": [_walked(cup, walk) for cup in colour["cups"]]}


def _walked(cup: Any, walk: tuple[tuple[str, str], ...]) -> Any:
    if not isinstance(cup, dict):
        return cup
    plan = cup.get("plan")
    if isinstance(plan, dict) and plan.get("version") in LIFTS and plan["version"] is not True:
        cup = cup | {"plan": lift(plan)}
    return cup | {"stages": [name for name, only in walk if has(cup, only)]}
