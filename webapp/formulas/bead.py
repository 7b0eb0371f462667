"""The bead over a narrow stroke: a film too narrow to stand level, pinned at both sides."""

import math

from webapp.formulas.book import formula, valid_range
from webapp.units import Centimetres, Radians, Ratio, SquareCentimetres, Truth


@formula(level="face")
def narrow_bead_height(stroke_width: Centimetres, edge_angle: Radians) -> Centimetres:
    """Greatest height of a bead over a stroke so narrow that weight plays no part: a circular segment.

    Range: an upper bound at any width; within a twentieth under half a capillary length.

    Example: 10 mm wide at 90 degrees is half round, 5 mm high.

    >>> round(narrow_bead_height(1.0, math.pi / 2), 6)
    0.5

    Source: geometry of a circular segment.
    """
    return stroke_width / 2 * math.tan(edge_angle / 2)


@valid_range(says="A bead's edge angle must be under 180 degrees.")
def narrow_bead_height_range(edge_angle: Radians) -> Truth:
    """True for an edge angle that a bead can stand at."""
    return edge_angle < math.pi


@formula(level="face")
def narrow_bead_section(stroke_width: Centimetres, edge_angle: Radians) -> SquareCentimetres:
    """Greatest section of a bead over a stroke so narrow that weight plays no part: a circular segment.

    Range: an upper bound at any width; wide strokes hold less.

    Example: 1 cm wide at 60 degrees is 0.20473 cm2.

    >>> round(narrow_bead_section(1.0, math.radians(60)), 5)
    0.20473

    Source: geometry of a circular segment, (p - sin p cos p)/(4 sin² p) of the width's square.
    """
    fullness = (edge_angle - math.sin(edge_angle) * math.cos(edge_angle)) / (4 * math.sin(edge_angle) ** 2)
    return stroke_width**2 * fullness


@valid_range(says="A bead's edge angle must be under 180 degrees.")
def narrow_bead_section_range(edge_angle: Radians) -> Truth:
    """True for an edge angle that a bead can stand at."""
    return edge_angle < math.pi


@formula(level="face")
def wide_bead_section(
    stroke_width: Centimetres, capillary_length: Centimetres, edge_angle: Radians
) -> SquareCentimetres:
    """Greatest section of the bead over a stroke so wide that its middle stands level.

    Range: strokes wider than 8 capillary lengths, some 14 mm.

    Example: 16 capillary lengths wide at 90 degrees is 0.0806 of the width's square.

    >>> round(wide_bead_section(16.0, 1.0, math.pi / 2) / 16**2, 4)
    0.0806

    Source: 2-D Young-Laplace, the wide limit: height x width - 2 a² sin p; checked with SciPy.
    """
    height = 2 * capillary_length * math.sin(edge_angle / 2)
    return height * stroke_width - 2 * capillary_length**2 * math.sin(edge_angle)


@valid_range(says="The stroke is narrower than 8 capillary lengths, so its bead is not level in the middle.")
def wide_bead_section_range(stroke_width: Centimetres, capillary_length: Centimetres) -> Truth:
    """True for strokes wide enough for a level middle."""
    return stroke_width >= 8 * capillary_length


@formula(level=())
def level_bead_width(capillary_length: Centimetres) -> Centimetres:
    """Width over which the middle of a bead is as good as level, and more width changes its edges no more.

    Range: any liquid; the middle is then out of level by less than 1e-8.

    Example: 2 mm of capillary length, 80 mm.

    >>> level_bead_width(0.2)
    8.0

    Source: 2-D Young-Laplace: the middle's curvature fades with exp(-width/(2 a)); 40 capillary lengths.
    """
    return 40 * capillary_length


@formula(level=())
def half_round_curvature(stroke_width: Centimetres, capillary_length: Centimetres) -> Ratio:
    """Curvature of a half round over the stroke, in 1/capillary length: no bead is more curved at its apex.

    Range: any stroke.

    Example: a half round over 4 mm with 2 mm of capillary length has a radius of 2 mm: 1.

    >>> half_round_curvature(0.4, 0.2)
    1.0

    Source: geometry.
    """
    return 2 * capillary_length / stroke_width


@formula(level=())
def bead_slope(stretch: Ratio, apex_curvature: Ratio) -> Radians:
    """Slope of a bead's skin, by a stretch that runs from 0 at the apex and spreads its flat middle out.

    Range: slopes up to a half turn.

    Example: apex curvature 1 at a stretch of 1 slopes by sinh 1 = 1.1752012.

    >>> round(bead_slope(1.0, 1.0), 7)
    1.1752012

    Source: a change of variable that keeps the integral of the profile smooth.
    """
    return apex_curvature * (math.exp(stretch) - math.exp(-stretch)) / 2


@formula(level=())
def bead_edge_stretch(apex_curvature: Ratio, edge_angle: Radians) -> Ratio:
    """Stretch at a bead's edge, where its skin reaches the edge angle.

    Range: edge angles up to a half turn.

    Example: apex curvature 1 reaches the slope 1.1752012 at a stretch of 1.

    >>> round(bead_edge_stretch(1.0, 1.1752012), 6)
    1.0

    Source: the same change of variable, turned round.
    """
    steepness = edge_angle / apex_curvature
    return math.log(steepness + (steepness**2 + 1) ** 0.5)


@formula(level=())
def bead_run(stretch: Ratio, apex_curvature: Ratio, capillary_length: Centimetres) -> Centimetres:
    """Way sideways along a bead's skin for each unit of stretch.

    Range: slopes up to a half turn.

    Example: at the apex it is the capillary length, and where the skin stands upright it is none.

    >>> bead_run(0.0, 0.5, 0.2)
    0.2
    >>> abs(bead_run(1.0, math.pi / 2 / 1.1752011936, 0.2)) < 1e-9
    True

    Source: 2-D Young-Laplace: a cos(slope)/(curvature² + 4 sin²(slope/2))^0.5 for each unit of slope.
    """
    slope = apex_curvature * (math.exp(stretch) - math.exp(-stretch)) / 2
    slope_rate = apex_curvature * (math.exp(stretch) + math.exp(-stretch)) / 2
    steepness = (apex_curvature**2 + 4 * math.sin(slope / 2) ** 2) ** 0.5
    return capillary_length * math.cos(slope) * slope_rate / steepness


@formula(level=())
def bead_drop(apex_curvature: Ratio, bead_slope: Radians, capillary_length: Centimetres) -> Centimetres:
    """How far a bead's skin lies under its apex where it has a slope; at the edge, the bead's height.

    Range: slopes up to a half turn.

    Example: a level middle and 1 mm of capillary length drop by 1.414214 mm to where the skin is upright.

    >>> round(bead_drop(0.0, math.pi / 2, 0.1), 7)
    0.1414214

    Source: 2-D Young-Laplace: a ((curvature² + 4 sin²(slope/2))^0.5 - curvature).
    """
    steepness = (apex_curvature**2 + 4 * math.sin(bead_slope / 2) ** 2) ** 0.5
    return capillary_length * (steepness - apex_curvature)


@formula(level=())
def bead_section(
    apex_curvature: Ratio,
    bead_height: Centimetres,
    stroke_width: Centimetres,
    capillary_length: Centimetres,
    edge_angle: Radians,
) -> SquareCentimetres:
    """Section of a bead over a stroke.

    Range: a bead whose skin meets the stroke's edges at the edge angle.

    Example: 16 capillary lengths wide, level in the middle and 1.41421 high at 90 degrees: 20.627.

    >>> round(bead_section(0.0, 1.41421, 16.0, 1.0, math.pi / 2), 3)
    20.627

    Source: 2-D Young-Laplace, the balance of weight and pull: (p + h) w/a - 2 sin(edge angle), in a².
    """
    level = (apex_curvature * capillary_length + bead_height) * stroke_width
    return level - 2 * capillary_length**2 * math.sin(edge_angle)
