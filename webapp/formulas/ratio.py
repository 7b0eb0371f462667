"""Ratio: part A to part B by volume and by mass, and the two parts of each cup."""

from webapp.formulas.book import formula
from webapp.units import CubicCentimetres, Grams, GramsPerCubicCentimetre, GramsPerMole, Ratio, Share


@formula(level="job")
def volume_ratio_as_stated(stated_ratio_a: Ratio, stated_ratio_b: Ratio) -> Ratio:
    """Ratio of A to B by volume where the card states it by volume.

    Range: any.
    Example: 2 parts to 1 is 2.

    >>> volume_ratio_as_stated(2, 1)
    2.0

    Source: the resin card.
    """
    return stated_ratio_a / stated_ratio_b


@formula(level="job")
def volume_ratio_from_mass(
    stated_ratio_a: Ratio,
    stated_ratio_b: Ratio,
    density_a: GramsPerCubicCentimetre,
    density_b: GramsPerCubicCentimetre,
) -> Ratio:
    """Ratio of A to B by volume where the card states it by mass.

    Range: any.
    Example: 2.421 to 1 by mass with densities 1.15 and 0.95 is 2 to 1 by volume.

    >>> round(volume_ratio_from_mass(2.421, 1, 1.15, 0.95), 3)
    2.0

    Source: arithmetic: volume is mass over density.
    """
    return (stated_ratio_a / density_a) / (stated_ratio_b / density_b)


@formula(level="job")
def mass_ratio_from_volume(
    stated_ratio_a: Ratio,
    stated_ratio_b: Ratio,
    density_a: GramsPerCubicCentimetre,
    density_b: GramsPerCubicCentimetre,
) -> Ratio:
    """Ratio of A to B by mass where the card states it by volume.

    Range: any.
    Example: 2 to 1 by volume with densities 1.15 and 0.95 is 2.421 to 1 by mass.

    >>> round(mass_ratio_from_volume(2, 1, 1.15, 0.95), 3)
    2.421

    Source: arithmetic: mass is volume times density.
    """
    return (stated_ratio_a * density_a) / (stated_ratio_b * density_b)


@formula(level="job")
def mass_ratio_as_stated(stated_ratio_a: Ratio, stated_ratio_b: Ratio) -> Ratio:
    """Ratio of A to B by mass where the card states it by mass.

    Range: any.
    Example: 100 parts to 40 is 2.5.

    >>> mass_ratio_as_stated(100, 40)
    2.5

    Source: the resin card.
    """
    return stated_ratio_a / stated_ratio_b


@formula(level="job")
def part_a_share(volume_ratio: Ratio) -> Share:
    """Share of part A in the mix, by volume.

    Range: any.
    Example: 3 to 1 by volume is 75% of A.

    >>> part_a_share(3)
    0.75

    Source: arithmetic.
    """
    return volume_ratio / (1 + volume_ratio)


@formula(level="job")
def mixed_density(
    part_a_share: Share, density_a: GramsPerCubicCentimetre, density_b: GramsPerCubicCentimetre
) -> GramsPerCubicCentimetre:
    """Density of the mix, if the volumes of the parts add up.

    Range: any.
    Example: 1 to 1 by volume of 1.15 and 0.95 g/mL is 1.05 g/mL.

    >>> round(mixed_density(0.5, 1.15, 0.95), 9)
    1.05

    Source: arithmetic; volumes taken to add.
    """
    return part_a_share * density_a + (1 - part_a_share) * density_b


@formula(level="cup")
def part_a_volume(cup_volume: CubicCentimetres, part_a_share: Share) -> CubicCentimetres:
    """Part A of each cup, by volume.

    Range: any.
    Example: a cup of 180 mL at 2 to 1 takes 120 mL of A.

    >>> round(part_a_volume(180, 2 / 3), 9)
    120.0

    Source: arithmetic.
    """
    return cup_volume * part_a_share


@formula(level="cup")
def part_b_volume(cup_volume: CubicCentimetres, part_a_share: Share) -> CubicCentimetres:
    """Part B of each cup, by volume: the rest of the cup.

    Range: any.
    Example: a cup of 180 mL at 2 to 1 takes 60 mL of B.

    >>> round(part_b_volume(180, 2 / 3), 9)
    60.0

    Source: arithmetic.
    """
    return cup_volume * (1 - part_a_share)


@formula(level="cup")
def part_a_mass(part_a_volume: CubicCentimetres, density_a: GramsPerCubicCentimetre) -> Grams:
    """Part A of each cup, on a scale.

    Range: any.
    Example: 120 mL of 1.15 g/mL is 138 g.

    >>> round(part_a_mass(120, 1.15), 9)
    138.0

    Source: arithmetic: mass is volume times density.
    """
    return part_a_volume * density_a


@formula(level="cup")
def part_b_mass(part_b_volume: CubicCentimetres, density_b: GramsPerCubicCentimetre) -> Grams:
    """Part B of each cup, on a scale.

    Range: any.
    Example: 60 mL of 0.95 g/mL is 57 g.

    >>> round(part_b_mass(60, 0.95), 9)
    57.0

    Source: arithmetic: mass is volume times density.
    """
    return part_b_volume * density_b


@formula(level="job")
def hardener_phr(hydrogen_equivalent_weight: GramsPerMole, epoxide_equivalent_weight: GramsPerMole) -> Ratio:
    """Hardener for 100 parts of resin by mass, one active hydrogen to each epoxide.

    Range: any.
    Example: a hardener of 20.6 g/mol with a resin of 200 g/mol takes 10.3 parts.

    >>> round(hardener_phr(20.6, 200), 9)
    10.3

    Source: Lee, Neville, Handbook of Epoxy Resins (1967), from memory; example of a coatings textbook.
    """
    return 100 * hydrogen_equivalent_weight / epoxide_equivalent_weight
