"""The steps of the trade that the formula book is grouped by, in the order of the work."""

from collections.abc import Iterable

STEPS = {
    "conditions": "Room and dew point",
    "working_time": "Working time",
    "ratio": "Ratio",
    "areas": "Areas",
    "openings": "Cut-outs",
    "edges": "Edges all around",
    "lettering": "Lettering",
    "grooves": "Grooves and pockets",
    "film": "Film",
    "cups": "Cups",
    "readings": "Readings of a cup",
    "cup_heat": "Heat in the cup",
    "heat_rates": "Rates of that heat",
    "drops": "Drops",
    "tint": "Tint",
    "hiding": "Hiding",
    "level": "Level",
    "edge_hold": "Will the edge hold?",
    "bead": "Beads over narrow strokes",
    "flow": "Flow and leveling",
    "bubbles": "Bubbles",
    "schedule": "Schedule of the day",
    "cure": "Cure",
    "cost": "Cost and stock",
}


def steps_in_order(names: Iterable[str]) -> dict[str, str]:
    """Return steps with their titles in the order of the work; one that has no title yet comes last.

    >>> steps_in_order(["sanding", "film", "ratio"])
    {'ratio': 'Ratio', 'film': 'Film', 'sanding': 'Sanding'}
    """
    found = sorted(set(names))
    known = {name: title for name, title in STEPS.items() if name in found}
    return known | {name: name.replace("_", " ").capitalize() for name in found if name not in STEPS}
