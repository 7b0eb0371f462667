"""How a cup walks through the stages: which it has, where hands leave it, and what its taps may be called."""

from dataclasses import asdict
from typing import Any

from webapp.bench.ready import READY_LINES
from webapp.bench.stage import CONTACT, END_OF_POUR, Only
from webapp.bench.stages import ANOTHER_COAT, CLEAN_CUP, STAGES, TINTED

ONLY: dict[str, Only] = {
    TINTED: Only(("plan", "colours", 0, "tint"), is_not="clear"),
    CLEAN_CUP: Only(("amounts", "vessels_per_cup"), is_not=1),
    ANOTHER_COAT: Only(("coat",), under=("amounts", "coats_to_pour")),
}
"""The kinds of cup that some stages are only for; what a kind means is never changed."""

MOMENTS = {CONTACT: "part_b", END_OF_POUR: "pour"}
"""The stages whose taps are the contact and the end of the pour."""

LAST_HAND_STAGE = "cover"
"""The last stage that a person stands by for; what follows only cures."""

OTHER_TAPS = {
    "starting_drops": "first drops",
    "drop": "one drop",
    "set_aside": "set aside",
    "finished": "done with",
}
"""Taps that end no stage, with what they are called: drops put in, a cup given up or done with."""

TAPS = (*(stage.name for stage in STAGES), *(line.name for line in READY_LINES), *OTHER_TAPS)
"""Every name that a tap of a stored cup may carry."""

ENTRIES: dict[str, tuple[str, ...]] = {
    "tap": ("stage", "count"),
    "back": ("of",),
    "reason": ("stage", "says"),
    "calendar": (),
}
"""The kinds of entry of a stored cup, each with what it has beside its id and its moment.

Entries are only ever added to: a step back is a `back` of a tap, and a step forward a `back` of that one.
"""


def hand_stages() -> tuple[str, ...]:
    """Return the stages that a person stands by for."""
    names = [stage.name for stage in STAGES]
    return tuple(names[: names.index(LAST_HAND_STAGE) + 1])


def has(cup: dict[str, Any], only: str) -> bool:
    """Say whether a cup is of a kind; what the cup does not say tells nothing apart.

    >>> has({"amounts": {"vessels_per_cup": 1}}, "clean_cup"), has({"amounts": {}}, "clean_cup")
    (False, True)
    """
    if not only:
        return True
    rule = ONLY[only]
    value = _at(cup, rule.path)
    if not rule.under:
        return bool(value != rule.is_not)
    other = _at(cup, rule.under)
    return _is_number(value) and _is_number(other) and value < other


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _at(group: Any, path: tuple[str | int, ...]) -> Any:
    for step in path:
        if isinstance(group, dict):
            group = group.get(step)
        elif isinstance(group, list) and isinstance(step, int) and step < len(group):
            group = group[step]
        else:
            return None
    return group


def stages_table() -> list[dict[str, Any]]:
    """Return the stages as plain dictionaries in their order, ready to be baked."""
    by_hand = hand_stages()
    return [{**asdict(stage), "by_hand": stage.name in by_hand} for stage in STAGES]
