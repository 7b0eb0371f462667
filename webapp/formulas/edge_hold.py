"""Will the edge hold? How deep a film stands at a panel's edge before it runs over."""

import math

from webapp.formulas.book import check, formula
from webapp.formulas.rules import edge_climb, edge_settle
from webapp.units import (
    Centimetres,
    CentimetresPerSecondSquared,
    DynesPerCentimetre,
    GramsPerCubicCentimetre,
    Radians,
    Share,
    Truth,
)


@formula(level="job")
def capillary_length(
    surface_tension: DynesPerCentimetre,
    mixed_density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> Centimetres:
    """Length under which the pull of a film's skin is stronger than its weight.

    Range: any liquid; mixes 0.17 to 0.21 cm.

    Example: water, 72.8 mN/m and 0.998 g/cm3, is 2.727 mm.

    >>> round(capillary_length(72.8, 0.998, 980.665), 4)
    0.2727

    Source: de Gennes, Brochard-Wyart, Quéré, Capillarity and Wetting Phenomena, ch. 2 (from memory).
    """
    return (surface_tension / (mixed_density * gravity)) ** 0.5


@formula(level="face")
def edge_angle(wetting_angle: Radians, panel_edge_angle: Radians) -> Radians:
    """Steepest angle at which a film stands on a sharp edge before it runs down the side.

    Range: at most a half turn.

    Example: wetting angle 30 degrees on a square edge is 120 degrees.

    >>> round(math.degrees(edge_angle(math.radians(30), math.radians(90))), 6)
    120.0

    Source: Gibbs' criterion: Oliver, Huh, Mason, J. Colloid Interface Sci. 59 (1977) 568 (from memory);
    restated in Tsoumpas et al., Langmuir 30 (2014).
    """
    return min(wetting_angle + math.pi - panel_edge_angle, math.pi)


@formula(level="face")
def sharp_edge_hold_depth(capillary_length: Centimetres, edge_angle: Radians) -> Centimetres:
    """Deepest film that a sharp edge can hold, an upper bound.

    Range: films wider than some 14 mm; narrow strokes hold less, as a bead.

    Example: a puddle of water, 2.727 mm, at 90 degrees stands 3.857 mm deep.

    >>> round(sharp_edge_hold_depth(0.2727, math.pi / 2), 4)
    0.3857

    Source: de Gennes, Brochard-Wyart, Quéré, Capillarity and Wetting Phenomena, ch. 2 (from memory).
    """
    return 2 * capillary_length * math.sin(edge_angle / 2)


@formula(level="face")
def chamfered_edge_hold_depth(capillary_length: Centimetres, wetting_angle: Radians) -> Centimetres:
    """Deepest film that an edge chamfered at 45 degrees can hold, an upper bound.

    Range: a chamfer wider than the film is deep.

    Example: 2 mm of capillary length and a wetting angle of 15 degrees hold 2 mm, as 2 sin 30 degrees is 1.

    >>> round(chamfered_edge_hold_depth(0.2, math.radians(15)), 6)
    0.2

    Source: Gibbs' criterion with a corner of 135 degrees: edge angle = wetting angle + 45 degrees.
    """
    return 2 * capillary_length * math.sin((wetting_angle + math.pi / 4) / 2)


@formula(level="face")
def rounded_edge_hold_depth(
    capillary_length: Centimetres, wetting_angle: Radians, edge_radius: Centimetres
) -> Centimetres:
    """Deepest film that a rounded edge can hold, an upper bound; easing an edge costs depth.

    The film may stand anywhere on the quarter round; it holds deepest where one more degree gives no more.

    Range: a quarter round on a square edge.

    Example: 35 mN/m, 1.10 g/cm3 (capillary length 1.8013 mm), 30 degrees, eased by 1 mm, hold 2.126 mm.

    >>> round(rounded_edge_hold_depth(0.18013, math.radians(30), 0.1), 4)
    0.2126

    Source: Gibbs' criterion on a quarter round, the greatest over b of 2 a sin((wetting angle + b)/2)
    - r (1 - cos b); computed.
    """
    first_lean = edge_climb(0.0, math.pi / 4, wetting_angle, capillary_length, edge_radius)
    second_lean = edge_climb(first_lean, math.pi / 8, wetting_angle, capillary_length, edge_radius)
    third_lean = edge_climb(second_lean, math.pi / 16, wetting_angle, capillary_length, edge_radius)
    near_lean = edge_climb(third_lean, math.pi / 32, wetting_angle, capillary_length, edge_radius)
    nearer_lean = edge_settle(near_lean, wetting_angle, capillary_length, edge_radius)
    nearest_lean = edge_settle(nearer_lean, wetting_angle, capillary_length, edge_radius)
    lean = edge_settle(nearest_lean, wetting_angle, capillary_length, edge_radius)
    return 2 * capillary_length * math.sin((wetting_angle + lean) / 2) - edge_radius * (1 - math.cos(lean))


@formula(level="face")
def raised_edge_hold_depth(
    raised_edge_height: Centimetres, capillary_length: Centimetres, edge_angle: Radians
) -> Centimetres:
    """Deepest film that a taped or raised edge can hold: its own height and what its top holds.

    Range: tape that stands upright and leaks nowhere.

    Example: tape 1 mm above the face, with 2 mm of capillary length at 60 degrees, holds 1 + 2 = 3 mm.

    >>> round(raised_edge_hold_depth(0.1, 0.2, math.radians(60)), 6)
    0.3

    Source: Gibbs' criterion on the top of the raised edge; geometry.
    """
    return raised_edge_height + 2 * capillary_length * math.sin(edge_angle / 2)


@formula(level="face")
def safe_edge_depth(edge_hold_depth: Centimetres, edge_hold_share: Share) -> Centimetres:
    """Depth to plan to, so that the edge holds even when the film lets go early.

    Range: as the edge's hold.

    Example: an edge that holds 3.31 mm at most is planned to 2.648 mm.

    >>> round(safe_edge_depth(0.331, 0.8), 6)
    0.2648

    Source: the pinned layer can let go inside Gibbs' fan (arXiv:1907.03499): plan to 0.8 of the bound.
    """
    return edge_hold_depth * edge_hold_share


@check(
    level="face",
    severity="caution",
    says="A coat of {cell:coat_depth} may run over the edge, which holds {cell:safe_edge_depth} safely. "
    "Pour thinner coats, or tape the edge.",
    beside="safe_edge_depth",
    would_do=(
        "Pour it in more coats: the {label:planned_coats} is {cell:planned_coats}.",
        "Tape the edge, so that it stands up.",
        "Keep the edge sharp: easing it costs depth.",
    ),
)
def edge_may_spill(coat_depth: Centimetres, safe_edge_depth: Centimetres) -> Truth:
    """True where a coat is deeper than its edge safely holds.

    >>> edge_may_spill(0.3175, 0.25), edge_may_spill(0.15875, 0.25)
    (True, False)
    """
    return coat_depth > safe_edge_depth
