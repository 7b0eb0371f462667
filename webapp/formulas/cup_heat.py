"""The cup's heat: the surface it leaves by, the band in which it gels, and the classes of its peak."""

from webapp.formulas.book import formula
from webapp.formulas.rules import filled_surface
from webapp.units import (
    Centimetres,
    Count,
    CubicCentimetres,
    Grams,
    GramsPerCubicCentimetre,
    Kelvins,
    Seconds,
    Share,
    SquareCentimetres,
)


@formula(level="cup")
def cup_mass(reading_total: CubicCentimetres, mixed_density: GramsPerCubicCentimetre) -> Grams:
    """Mass of the mix in one cup, filled to its mark.

    Range: any cup.

    Example: 180 mL of 1.05 g/mL are 189 g.

    >>> round(cup_mass(180.0, 1.05), 6)
    189.0

    Source: arithmetic.
    """
    return reading_total * mixed_density


@formula(level="cup")
def cup_surface(
    cup_mass: Grams, cup_diameter: Centimetres, nominal_density: GramsPerCubicCentimetre
) -> SquareCentimetres:
    """Top, side and bottom of the filled part of your cup, through which its heat leaves.

    Range: straight cups.

    Example: 100 g in a cup 7.5 cm across, 136.842 cm2.

    >>> round(cup_surface(100.0, 7.5, 1.10), 3)
    136.842

    Source: geometry.
    """
    return filled_surface(cup_mass, cup_diameter, nominal_density)


@formula(level="job")
def card_cup_surface(
    pot_life_mass: Grams, card_cup_diameter: Centimetres, nominal_density: GramsPerCubicCentimetre
) -> SquareCentimetres:
    """Top, side and bottom of the filled part of the cup that the card's pot life was measured in.

    Range: straight cups.

    Example: 150 g in a cup 7.5 cm across, 161.085 cm2.

    >>> round(card_cup_surface(150.0, 7.5, 1.10), 3)
    161.085

    Source: geometry.
    """
    return filled_surface(pot_life_mass, card_cup_diameter, nominal_density)


@formula(level=())
def earliest_gel_time(gel_time: Seconds, gel_time_band: Share) -> Seconds:
    """Early end of the band in which a cup gels.

    Range: cups of 50 g and more; smaller ones gel later than the card says, no more can be said.

    Example: a quarter earlier than 40 minutes is 30 minutes.

    >>> earliest_gel_time(2400.0, 0.25)
    1800.0

    Source: a conduction check of the model: a real cup's middle gels 13 to 18 % earlier.
    """
    return gel_time * (1 - gel_time_band)


@formula(level=())
def latest_gel_time(gel_time: Seconds, gel_time_band: Share) -> Seconds:
    """Late end of the band in which a cup gels.

    Range: cups of 50 g and more; smaller ones gel later than the card says, no more can be said.

    Example: a quarter later than 40 minutes is 50 minutes.

    >>> latest_gel_time(2400.0, 0.25)
    3000.0

    Source: a conduction check of the model, the same band the other way.
    """
    return gel_time * (1 + gel_time_band)


@formula(level=())
def heat_class(
    peak_temperature: Kelvins, cup_warm_from: Kelvins, cup_hot_from: Kelvins, cup_dangerous_from: Kelvins
) -> Count:
    """Class of a cup's peak: 0 cool, 1 warm, 2 hot, 3 dangerous.

    Range: any cup.

    Example: 44 degC is cool, 64 warm, 99 hot and 101 dangerous.

    >>> [heat_class(each + 273.15, 318.15, 338.15, 373.15) for each in (44, 64, 99, 101)]
    [0, 1, 2, 3]

    Source: engineering classes: cool under 45, warm to 65, hot to 100 degC, dangerous over.
    """
    hot = 2 if peak_temperature <= cup_dangerous_from else 3
    warm = 1 if peak_temperature < cup_hot_from else hot
    return 0 if peak_temperature < cup_warm_from else warm
