"""Grooves and pockets: what carved lines and sunk grounds take besides the level film."""

import math

from webapp.formulas.book import formula, valid_range
from webapp.units import Centimetres, CubicCentimetres, Radians, SquareCentimetres, Truth


@formula(level="face")
def no_groove_section() -> SquareCentimetres:
    """Section of the grooves of a face that has none.

    Range: a face without grooves.

    Example: no groove takes nothing.

    >>> no_groove_section()
    0

    Source: arithmetic.
    """
    return 0


@formula(level="face")
def no_groove_depth() -> Centimetres:
    """A face without grooves has none to fill.

    Example: no depth.

    >>> no_groove_depth()
    0

    Source: definition.
    """
    return 0


@formula(level="face")
def v_groove_section(groove_width: Centimetres, groove_angle: Radians) -> SquareCentimetres:
    """Section of a groove cut with a V-bit, from its width at the top.

    Range: included angles under 180 degrees.

    Example: 1 wide with 60 degrees included is 0.433013 (in inches as in centimetres).

    >>> round(v_groove_section(1.0, math.radians(60)), 6)
    0.433013

    Source: geometry.
    """
    return groove_width**2 / (4 * math.tan(groove_angle / 2))


@formula(level="face")
def v_groove_depth(groove_width: Centimetres, groove_angle: Radians) -> Centimetres:
    """Depth of a groove cut with a V-bit, from its width at the top.

    Range: included angles under 180 degrees.

    Example: 10 mm wide with 90 degrees included is 5 mm deep.

    >>> round(v_groove_depth(1.0, math.radians(90)), 6)
    0.5

    Source: geometry.
    """
    return groove_width / (2 * math.tan(groove_angle / 2))


@formula(level="face")
def round_groove_section(groove_width: Centimetres, bit_diameter: Centimetres) -> SquareCentimetres:
    """Section of a round-bottomed groove, from its width at the top and the bit.

    Range: no wider than the bit.

    Example: a bit of 0.5 leaving 0.4 in width cuts 0.0279560.

    >>> round(round_groove_section(0.4, 0.5), 7)
    0.027956

    Source: geometry of a circular segment.
    """
    half_angle = math.asin(groove_width / bit_diameter)
    return bit_diameter**2 / 4 * (half_angle - math.sin(half_angle) * math.cos(half_angle))


@valid_range(says="The groove is wider than the bit that cut it.")
def round_groove_section_range(groove_width: Centimetres, bit_diameter: Centimetres) -> Truth:
    """True for a groove no wider than its bit."""
    return groove_width <= bit_diameter


@formula(level="face")
def round_groove_depth(groove_width: Centimetres, bit_diameter: Centimetres) -> Centimetres:
    """Depth of a round-bottomed groove, from its width at the top and the bit.

    Range: no wider than the bit.

    Example: a bit of 0.5 leaving 0.4 in width cuts 0.1 deep.

    >>> round(round_groove_depth(0.4, 0.5), 9)
    0.1

    Source: geometry of a circular segment.
    """
    return bit_diameter / 2 - (bit_diameter**2 / 4 - groove_width**2 / 4) ** 0.5


@valid_range(says="The groove is wider than the bit that cut it.")
def round_groove_depth_range(groove_width: Centimetres, bit_diameter: Centimetres) -> Truth:
    """True for a groove no wider than its bit."""
    return groove_width <= bit_diameter


@formula(level="face")
def groove_volume(groove_section: SquareCentimetres, groove_length: Centimetres) -> CubicCentimetres:
    """What the grooves of one piece take besides the level film.

    Range: grooves of one section.

    Example: 2 m of grooves with a section of 0.25 cm2 take 50 cm3.

    >>> groove_volume(0.25, 200.0)
    50.0

    Source: geometry.
    """
    return groove_section * groove_length


@formula(level="face")
def pocket_volume(face_area: SquareCentimetres, pocket_depth: Centimetres) -> CubicCentimetres:
    """What a ground sunk below the film takes on one piece, before the film begins.

    Range: a pocket of one depth under the whole face.

    Example: 1000 cm2 sunk by 1 mm take 100 cm3.

    >>> pocket_volume(1000.0, 0.1)
    100.0

    Source: geometry.
    """
    return face_area * pocket_depth
