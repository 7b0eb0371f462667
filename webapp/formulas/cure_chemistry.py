"""Heat of the cure: what a gram of the mix gives off, by its chemistry."""

from webapp.formulas.book import formula
from webapp.units import (
    ErgsPerGram,
    ErgsPerMole,
    GramsPerMole,
    Ratio,
    Share,
)


@formula(level="job")
def part_a_share_by_mass(mass_ratio: Ratio) -> Share:
    """Share of part A in the mix, by mass.

    Range: any.
    Example: 1 to 1 by volume of 1.15 and 0.97 g/mL is 54.25% of A by mass.

    >>> round(part_a_share_by_mass(1.15 / 0.97), 4)
    0.5425

    Source: arithmetic.
    """
    return mass_ratio / (1 + mass_ratio)


@formula(level="job")
def part_b_mass_share(part_a_mass_share: Share) -> Share:
    """Share of part B in the mix, by mass.

    Range: any.
    Example: a mix with 70% of A has 30% of B.

    >>> round(part_b_mass_share(0.7), 9)
    0.3

    Source: arithmetic.
    """
    return 1 - part_a_mass_share


@formula(level="job")
def hardener_mass_share(resin_mass_share: Share) -> Share:
    """Share of the hardener in the mix, by mass.

    Range: any.
    Example: a mix with 70% of resin has 30% of hardener.

    >>> round(hardener_mass_share(0.7), 9)
    0.3

    Source: arithmetic.
    """
    return 1 - resin_mass_share


@formula(level="job")
def heat_by_resin(
    molar_heat: ErgsPerMole, resin_mass_share: Share, epoxide_equivalent_weight: GramsPerMole
) -> ErgsPerGram:
    """Heat that a gram of the mix gives off if every epoxide of the resin cures.

    Range: mixes with hardener enough.
    Example: 100 kJ/mol, 54.25% of resin at 190 g/mol: 285.5 J/g.

    >>> round(heat_by_resin(100e10, 0.5425, 190) / 1e7, 1)
    285.5

    Source: about 100 kJ an epoxide (98 to 108, from memory) times the epoxides in a gram of the mix.
    """
    return molar_heat * resin_mass_share / epoxide_equivalent_weight


@formula(level="job")
def heat_by_hardener(
    molar_heat: ErgsPerMole, hardener_mass_share: Share, hydrogen_equivalent_weight: GramsPerMole
) -> ErgsPerGram:
    """Heat that a gram of the mix gives off if every active hydrogen of the hardener finds an epoxide.

    Range: mixes with resin enough.
    Example: 100 kJ/mol, 10.84 parts of a hardener of 20.6 g/mol to 100 of resin: 474.8 J/g.

    >>> round(heat_by_hardener(100e10, 10.84 / 110.84, 20.6) / 1e7, 1)
    474.8

    Source: one active hydrogen to each epoxide, about 100 kJ each (from memory).
    """
    return molar_heat * hardener_mass_share / hydrogen_equivalent_weight
