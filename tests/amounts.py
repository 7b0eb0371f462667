"""Amounts drawn by hypothesis: whatever a person may enter, and whatever a formula may be handed."""

import math
from typing import Any

from hypothesis import strategies as st

from webapp.formulas.constants import CONSTANTS
from webapp.inputs.entry import Input
from webapp.inputs.table import INPUTS
from webapp.quantities import bounds, read_input

CONSTANT_VALUES = {each.name: each.canonical for each in CONSTANTS}
# What stands in a sheet where nobody has typed anything: constants, and inputs that have a default.
USUAL_VALUES = CONSTANT_VALUES | {
    name: read_input(each.default, each, {}).value
    for name, each in INPUTS.items()
    if each.default and each.kind != "choice"
}
NEVER_NEGATIVE = ("volume", "area", "mass", "density", "count", "money", "coverage", "rate")
ANY_AMOUNT = {
    "share": (0, 1),
    "temperature": (230, 340),
    "temperature difference": (-60, 60),
    "angle": (0, math.pi),
    "slope": (0, 0.2),
    "ratio": (1e-5, 1e5),
}
ANY_OTHER_AMOUNT = (0, 1e7)


def within(each: Input) -> st.SearchStrategy[Any]:
    """Draw what a person may enter for an input: a number in its canonical unit, inside its bounds."""
    if each.kind == "choice":
        return st.sampled_from([value for value, _ in each.options])
    least, most = (math.nan if end is None else end for end in bounds(each))
    if each.kind == "count":
        return st.integers(int(least), int(most)).map(float)
    return st.floats(least, most)


def argument(name: str, kind: str) -> st.SearchStrategy[float]:
    """Draw an argument of a formula: an input inside its bounds, a constant as it is, or any amount."""
    if name in CONSTANT_VALUES:
        return st.just(CONSTANT_VALUES[name])
    if name in INPUTS:
        return within(INPUTS[name])
    least, most = ANY_AMOUNT.get(kind, ANY_OTHER_AMOUNT)
    return st.integers(0, 10000).map(float) if kind == "count" else st.floats(least, most)
