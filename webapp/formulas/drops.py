"""Drops: how much one drop of a tint is, counted or from the dropper's tip."""

from webapp.formulas.book import formula, valid_range
from webapp.formulas.rules import falling_drop
from webapp.units import (
    Centimetres,
    CentimetresPerSecondSquared,
    Count,
    CubicCentimetres,
    DynesPerCentimetre,
    GramsPerCubicCentimetre,
    Truth,
)


@formula(level="colour")
def counted_drop_volume(counted_volume: CubicCentimetres, counted_drops: Count) -> CubicCentimetres:
    """One drop of your own bottle, from drops counted into a measure.

    Range: at least one drop.
    Example: 40 drops to 1 mL are 0.025 mL each.

    >>> counted_drop_volume(1, 40)
    0.025

    Source: arithmetic.
    """
    return counted_volume / counted_drops


@formula(level="colour")
def dropper_drop_volume(
    tip_diameter: Centimetres,
    tint_surface_tension: DynesPerCentimetre,
    tint_density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> CubicCentimetres:
    """One drop of a dropper, from the width of its wet tip; a tint's drop is about a third of water's.

    Range: tips no wider than twice the cube root of the drop; slow drops from a tip held upright.
    Example: water from a tip 3 mm across falls in drops of 0.0475 mL, 21 to the mL.

    >>> round(dropper_drop_volume(0.3, 72.8, 0.9982, 980.665), 4)
    0.0475

    Source: Tate (1864); the part that falls by Harkins and Brown, J. Am. Chem. Soc. 41 (1919) 499, a cubic
    fit to their table (from memory).
    """
    return falling_drop(tip_diameter / 2, tint_surface_tension, tint_density, gravity)


@valid_range(says="The tip is too wide for its drops to be worked out. Count drops into a measure instead.")
def dropper_drop_volume_range(
    tip_diameter: Centimetres,
    tint_surface_tension: DynesPerCentimetre,
    tint_density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> Truth:
    """Tips no wider than twice the cube root of the drop, as far as the table goes."""
    drop = falling_drop(tip_diameter / 2, tint_surface_tension, tint_density, gravity)
    return (tip_diameter / 2) ** 3 / drop <= 1
