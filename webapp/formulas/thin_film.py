"""Thin film: how deep a film must be to stay closed by itself, and the holes that open in a thinner one."""

import math

from webapp.formulas.book import check, formula, valid_range
from webapp.units import Centimetres, Radians, Truth


@formula(level="job")
def unaided_depth(capillary_length: Centimetres, wetting_angle: Radians) -> Centimetres:
    """Depth from which on a film stays closed by itself: an undisturbed puddle of it is as deep.

    Range: a dry, clean ground.
    Example: 32 mN/m, 1.10 g/mL and 25°: 0.746 mm.

    >>> round(unaided_depth(0.17223, math.radians(25)) * 10, 3)
    0.746

    Source: de Gennes, Brochard-Wyart, Quere, Capillarity and Wetting Phenomena, ch. 2 (from memory).
    """
    return 2 * capillary_length * math.sin(wetting_angle / 2)


@formula(level="face")
def critical_hole_diameter(
    coat_depth: Centimetres, unaided_depth: Centimetres, capillary_length: Centimetres
) -> Centimetres:
    """Width of a dry spot from which on it opens further; smaller ones close.

    Range: a film of 0.15 to 0.95 of the depth that stays closed by itself.
    Example: 32 mN/m, 1.10 g/mL and 25°: in a film of 0.5 mm a hole of 3.0 mm.

    >>> round(critical_hole_diameter(0.05, 0.07456, 0.17223) * 10, 1)
    3.0

    Source: a fit to K0(R/a)/K1(R/a), within 1.2%; form measured: Sykes et al., J. Phys. III France 4 (1994)
    775; idea: Taylor, Michael, J. Fluid Mech. 58 (1973) 625 (from memory).
    """
    q = coat_depth / unaided_depth
    return capillary_length * q / (1 - q) * (1 - 0.380 * (1 - q) - 0.190 * (1 - q) ** 2)


@valid_range(says="Such a film closes by itself, or is too thin for this figure.")
def critical_hole_diameter_range(coat_depth: Centimetres, unaided_depth: Centimetres) -> Truth:
    """A film of 0.15 to 0.95 of the depth that stays closed by itself."""
    return abs(coat_depth / unaided_depth - 0.55) <= 0.4


@check(
    level="face",
    severity="caution",
    says="A coat of only {cell:coat_depth} opens by itself: holes form around dust and dry spots.",
    beside="coat_depth",
    would_do=(
        "Wet out the whole background by hand first.",
        "Keep dust off: a dry spot wider than {cell:critical_hole_diameter} opens by itself.",
        "Pour a coat of {cell:unaided_depth} or deeper.",
    ),
)
def film_too_thin(coat_depth: Centimetres, unaided_depth: Centimetres) -> Truth:
    """True where a coat is less deep than what stays closed by itself.

    >>> film_too_thin(0.05, 0.0746), film_too_thin(0.1, 0.0746)
    (True, False)
    """
    return coat_depth < unaided_depth
