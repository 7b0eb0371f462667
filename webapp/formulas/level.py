"""Level: how far a tilted bench or a heap puts the film's depth out."""

import math

from webapp.formulas.book import check, formula
from webapp.units import Centimetres, Radians, Share, Slope, Truth


@formula(level="job")
def bench_angle(bench_slope: Slope) -> Radians:
    """Angle of the bench's slope, for a level or a phone that reads in degrees.

    Range: any slope.

    Example: 1/16 in per ft, 1 in 192, is 0.2984 degrees.

    >>> round(math.degrees(bench_angle(1 / 192)), 4)
    0.2984

    Source: geometry.
    """
    return math.atan(bench_slope)


@formula(level="face")
def tilt_difference(span: Centimetres, bench_slope: Slope) -> Centimetres:
    """Difference in depth between the two ends of a face on a tilted bench.

    Range: while the high edge is still wet.

    Example: 24 in at 1/16 in per ft differ by 0.125 in, 0.3175 cm.

    >>> round(tilt_difference(60.96, 1 / 192), 4)
    0.3175

    Source: geometry.
    """
    return span * bench_slope


@formula(level="face")
def allowed_difference(coat_depth: Centimetres, allowed_share: Share) -> Centimetres:
    """Difference in depth that you allow between the two ends of a face.

    Range: any coat.

    Example: 1/16 in that may vary by a tenth, 0.15875 mm.

    >>> round(allowed_difference(0.15875, 0.1), 6)
    0.015875

    Source: arithmetic; the share is our choice.
    """
    return coat_depth * allowed_share


@formula(level="face")
def allowed_slope(coat_depth: Centimetres, span: Centimetres, allowed_share: Share) -> Slope:
    """Steepest bench on which the depth of a coat varies by no more than the share that you allow.

    Range: any face.

    Example: 1/16 in that may vary by a tenth over 24 in allows 0.26 mm in a metre.

    >>> round(allowed_slope(0.15875, 60.96, 0.1), 5)
    0.00026

    Source: geometry.
    """
    return coat_depth * allowed_share / span


@formula(level="face")
def dry_edge_slope(coat_depth: Centimetres, span: Centimetres) -> Slope:
    """Slope at which the high edge of a face just falls dry: the difference is twice the depth.

    Range: any face.

    Example: 1/16 in over 24 in, 5.208 mm in a metre.

    >>> round(dry_edge_slope(0.15875, 60.96), 6)
    0.005208

    Source: geometry: a level film on a tilted board is a wedge.
    """
    return 2 * coat_depth / span


@check(
    level="face",
    severity="caution",
    says="The {label:bench_slope} is {cell:bench_slope}; a film this deep allows "
    "{cell:allowed_slope}. Shim the bench until it is level.",
    beside="tilt_difference",
)
def bench_not_level(bench_slope: Slope, allowed_slope: Slope) -> Truth:
    """True where the bench is steeper than the film allows.

    >>> bench_not_level(0.005208, 0.00026), bench_not_level(0.0002, 0.00026)
    (True, False)
    """
    return abs(bench_slope) > allowed_slope


@check(
    level="face",
    severity="caution",
    says="The {label:bench_slope} is {cell:bench_slope}: at {cell:dry_edge_slope} the high edge of "
    "the face runs dry. Level the bench before you mix.",
    beside="tilt_difference",
)
def high_edge_dry(bench_slope: Slope, dry_edge_slope: Slope) -> Truth:
    """True where the bench is so steep that the film leaves the high edge.

    >>> high_edge_dry(0.0053, 0.005208), high_edge_dry(0.0052, 0.005208)
    (True, False)
    """
    return abs(bench_slope) >= dry_edge_slope


@formula(level="face")
def longest_side(width: Centimetres, height: Centimetres) -> Centimetres:
    """Longest way across a face that is as wide and as high as given.

    Range: any face with a width and a height.

    Example: 12 by 24 in spans 24 in, 60.96 cm.

    >>> longest_side(30.48, 60.96)
    60.96

    Source: geometry.
    """
    return max(width, height)


@formula(level="face")
def triangle_span(base: Centimetres, height: Centimetres) -> Centimetres:
    """The longest way across a triangle, near enough for its level: its base or its height.

    Range: a top that stands over the base.
    Example: a base of 40 cm and a height of 30 cm is 40 cm across.

    >>> triangle_span(40, 30)
    40

    Source: geometry.
    """
    return max(base, height)


@formula(level="face")
def arch_top_span(width: Centimetres, side_height: Centimetres, rise: Centimetres) -> Centimetres:
    """The longest way across a face with an arched top: its width or its full height.

    Range: any.
    Example: 36 in wide with sides of 20 in and a rise of 6 in is 36 in across, whatever the unit.

    >>> arch_top_span(36, 20, 6)
    36

    Source: geometry.
    """
    return max(width, side_height + rise)


@formula(level="face")
def trapezoid_span(top_width: Centimetres, bottom_width: Centimetres, height: Centimetres) -> Centimetres:
    """The longest way across a trapezoid: its wider side or its height.

    Range: any.
    Example: 20 cm and 30 cm wide, 10 cm high, is 30 cm across.

    >>> trapezoid_span(20, 30, 10)
    30

    Source: geometry.
    """
    return max(max(top_width, bottom_width), height)
