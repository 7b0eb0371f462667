"""The bead over a stroke: its height, section and profile, from the book's formulas of its skin.

`static/sheet/bead-profile.js` is the twin. The values are cells of the sheet, in canonical units.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from webapp.formulas.bead import (
    bead_drop,
    bead_edge_stretch,
    bead_run,
    bead_section,
    bead_slope,
    half_round_curvature,
    level_bead_width,
)
from webapp.numerics import area_under, root_near

Values = Mapping[str, float]

BEAD_ASKS = ("stroke_width", "capillary_length", "edge_angle")
STRIPS = 16
POINTS = 24


@dataclass(frozen=True)
class Bead:
    """The largest bead over a stroke: centimetres, square centimetres, and its half profile (out, up)."""

    apex_curvature: float
    height: float
    section: float
    profile: tuple[tuple[float, float], ...]


def bead_profile(values: Values) -> Bead:
    """Return the bead that stands over a stroke just before it runs over, from the values of BEAD_ASKS."""
    capillary_length, edge_angle = values["capillary_length"], values["edge_angle"]
    curvature = apex_curvature(values)
    height = bead_drop(curvature, edge_angle, capillary_length)
    section = bead_section(curvature, height, values["stroke_width"], capillary_length, edge_angle)
    return Bead(curvature, height, section, _profile(curvature, height, values))


def apex_curvature(values: Values) -> float:
    """Return the apex curvature, in 1/capillary length, with which the bead is as wide as the stroke."""
    capillary_length, edge_angle = values["capillary_length"], values["edge_angle"]
    greatest = half_round_curvature(values["stroke_width"], capillary_length)
    width = min(values["stroke_width"], level_bead_width(capillary_length))

    def narrower(exponent: float) -> float:
        curvature = math.exp(exponent)
        edge = bead_edge_stretch(curvature, edge_angle)
        half = area_under(lambda stretch: bead_run(stretch, curvature, capillary_length), 0.0, edge, STRIPS)
        return 2 * half / width - 1

    return math.exp(root_near(narrower, math.log(greatest), 1e-11))


def _profile(curvature: float, height: float, values: Values) -> tuple[tuple[float, float], ...]:
    capillary_length = values["capillary_length"]
    edge = bead_edge_stretch(curvature, values["edge_angle"])
    out, stretch = 0.0, 0.0
    points = [(0.0, height)]
    for number in range(1, POINTS + 1):
        further = edge * number / POINTS
        out += area_under(lambda each: bead_run(each, curvature, capillary_length), stretch, further, 1)
        stretch = further
        drop = bead_drop(curvature, bead_slope(stretch, curvature), capillary_length)
        points.append((out, height - drop))
    return tuple(points)
