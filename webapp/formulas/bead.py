"""The bead over a narrow stroke: a film too narrow to stand level, pinned at both sides."""

import math

from webapp.formulas.book import formula, valid_range
from webapp.units import Centimetres, Radians, Ratio, SquareCentimetres, Truth


@formula(level="face")
def narrow_bead_height(stroke_width: Centimetres, edge_angle: Radians) -> Centimetres:
    """Greatest height of a bead over a stroke so narrow that weight plays no part: a circular segment.

    Range: an upper bound at any width; within a fiftieth under half a capillary length.

    Example: 10 mm wide at 90 degrees is half round, 5 mm high.

    >>> round(narrow_bead_height(1.0, math.pi / 2), 6)
    0.5

    Source: geometry of a circular segment.
    """
    return stroke_width / 2 * math.tan(edge_angle / 2)


@valid_range(says="a bead's edge angle must be under 180 degrees")
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


@valid_range(says="a bead's edge angle must be under 180 degrees")
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


@valid_range(says="the stroke is narrower than 8 capillary lengths, so its bead is not level in the middle")
def wide_bead_section_range(stroke_width: Centimetres, capillary_length: Centimetres) -> Truth:
    """True for strokes wide enough for a level middle."""
    return stroke_width >= 8 * capillary_length


@formula(level=())
def bead_slope(stretch: Ratio, apex_curvature: Ratio) -> Radians:
    """Slope of a bead's skin, by the stretch that runs from none at the apex and spreads the flat middle out.

    Range: apex curvature times sinh of the stretch at most 2.

    Example: apex curvature 1 at a stretch of asinh 1 = 0.881374 slopes by 60 degrees, as sin 30° is a half.

    >>> round(math.degrees(bead_slope(0.881374, 1.0)), 3)
    60.0

    Source: 2-D Young-Laplace; with 2 sin(slope/2) = curvature x sinh(stretch).
    """
    return 2 * math.asin(apex_curvature * (math.exp(stretch) - math.exp(-stretch)) / 4)


@formula(level=())
def bead_edge_stretch(apex_curvature: Ratio, edge_angle: Radians) -> Ratio:
    """Stretch at a bead's edge, where its skin reaches the edge angle.

    Range: edge angle up to a half turn.

    Example: apex curvature 1 and an edge angle of 60 degrees end at asinh 1 = 0.881374.

    >>> round(bead_edge_stretch(1.0, math.radians(60)), 6)
    0.881374

    Source: 2-D Young-Laplace; the turned-round form of the slope.
    """
    rise = 2 * math.sin(edge_angle / 2) / apex_curvature
    return math.log(rise + (rise**2 + 1) ** 0.5)


@formula(level=())
def bead_run(stretch: Ratio, apex_curvature: Ratio) -> Ratio:
    """Way sideways along a bead's skin for each unit of stretch, in capillary lengths.

    Range: slopes under a half turn.

    Example: at the apex the skin runs straight: 1.

    >>> bead_run(0.0, 0.5)
    1.0

    Source: 2-D Young-Laplace: cos(slope)/(curvature² + 4 sin²(slope/2))^0.5 of each unit of slope.
    """
    slope = 2 * math.asin(apex_curvature * (math.exp(stretch) - math.exp(-stretch)) / 4)
    return math.cos(slope) / math.cos(slope / 2)


@formula(level=())
def bead_drop(apex_curvature: Ratio, bead_slope: Radians) -> Ratio:
    """How far a bead's skin lies under its apex where it has a slope, in capillary lengths.

    Range: any slope up to a half turn.

    Example: a level middle (curvature 0) and 90 degrees drop by the square root of 2.

    >>> round(bead_drop(0.0, math.pi / 2), 6)
    1.414214

    Source: 2-D Young-Laplace: (curvature² + 4 sin²(slope/2))^0.5 - curvature.
    """
    return (apex_curvature**2 + 4 * math.sin(bead_slope / 2) ** 2) ** 0.5 - apex_curvature


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
