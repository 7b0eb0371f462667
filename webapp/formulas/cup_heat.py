"""The cup's heat: when this cup gels, how warm it is then, and by when it must be poured for it."""

from webapp.formulas.book import formula
from webapp.formulas.march_rules import gel_work
from webapp.formulas.rules import filled_surface
from webapp.units import (
    Centimetres,
    CubicCentimetres,
    ErgsPerGramKelvin,
    Grams,
    GramsPerCubicCentimetre,
    HeatLoss,
    KelvinDifference,
    Kelvins,
    PerKelvin,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    SquareCentimetres,
)


@formula(level="cup")
def cup_mass(cup_total: CubicCentimetres, cup_density: GramsPerCubicCentimetre) -> Grams:
    """Mass of the mix in one cup, filled to its mark.

    Range: any cup; where a density is not on the card, taken as heavy.
    Example: 180 mL of 1.05 g/mL are 189 g.

    >>> round(cup_mass(180.0, 1.05), 6)
    189.0

    Source: arithmetic.
    """
    return cup_total * cup_density


@formula(level="cup")
def cup_surface(
    cup_mass: Grams, cup_diameter: Centimetres, nominal_density: GramsPerCubicCentimetre
) -> SquareCentimetres:
    """Top, side and bottom of the filled part of your cup, through which its heat leaves.

    Range: straight cups.
    Example: 100 g in a cup 7.5 cm across, 136.842 cm².

    >>> round(cup_surface(100.0, 7.5, 1.10), 3)
    136.842

    Source: geometry.
    """
    return filled_surface(cup_mass, cup_diameter, nominal_density)


@formula(level="cup")
def cup_cooling(
    air_loss: HeatLoss, cup_surface: SquareCentimetres, cup_mass: Grams, heat_capacity: ErgsPerGramKelvin
) -> PerSecond:
    """Share of its warmth that the cup loses to the air in a second.

    Range: a cup little above the air.
    Example: 9 W/(m² K) from 161.085 cm² of 150 g at 1.8 J/(g K): 0.000537 a second.

    >>> round(cup_cooling(9000, 161.085, 150, 1.8e7), 6)
    0.000537

    Source: conservation of energy.
    """
    return air_loss * cup_surface / (cup_mass * heat_capacity)


@formula(level="cup")
def gel_time(
    cup_cooling: PerSecond,
    rate_constant: PerSecond,
    gel_conversion: Share,
    resin_temperature: Kelvins,
    air_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    cure_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Seconds:
    """From the moment A touches B until this cup gels, by a model of its heat.

    Range: 20 g to 1 kg, 10 to 40 °C; within 4% of a tight integrator, the model itself within a quarter.
    Example: 400 g of a mix whose 150 g gel after 45 min at 25 °C gel after 40.7 min.

    >>> model = (400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 282.286 / (400 * 1.8e7)
    >>> round(gel_time(cooling, 2.37884e-4, 0.58, 298.15, 298.15, *model) / 60, 1)
    40.7

    Source: the march of the cup's heat: Kamal and Sourour's form, heat lost to the air.
    """
    return (
        gel_work(
            resin_temperature - air_temperature, gel_conversion, cup_cooling / rate_constant, air_temperature,
            adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
            heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
        )
        / rate_constant
    )  # fmt: skip


@formula(level="job")
def card_cup_gel_time(
    card_cup_cooling: PerSecond,
    rate_constant: PerSecond,
    gel_conversion: Share,
    resin_temperature: Kelvins,
    air_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    cure_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Seconds:
    """From the moment A touches B until the card's own cup would gel in this room.

    Range: 20 g to 1 kg, 10 to 40 °C.
    Example: a cup that gels after 45 min at 25 °C gels after 29.4 min at 30 °C.

    >>> model = (400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(card_cup_gel_time(cooling, 2.37884e-4, 0.58, 303.15, 303.15, *model) / 60, 1)
    29.3

    Source: the march of the cup's heat.
    """
    return (
        gel_work(
            resin_temperature - air_temperature, gel_conversion, card_cup_cooling / rate_constant,
            air_temperature, adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
            heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
        )
        / rate_constant
    )  # fmt: skip


@formula(level="cup")
def earliest_gel_time(gel_time: Seconds, gel_time_band: Share) -> Seconds:
    """Early end of the band in which this cup gels.

    Range: cups of 50 g and more; smaller ones gel later than the card says, no more can be said.
    Example: a quarter earlier than 40 minutes is 30 minutes.

    >>> earliest_gel_time(2400.0, 0.25)
    1800.0

    Source: a conduction check of the model: a real cup's middle gels 13 to 18% earlier.
    """
    return gel_time * (1 - gel_time_band)


@formula(level="cup")
def latest_gel_time(gel_time: Seconds, gel_time_band: Share) -> Seconds:
    """Late end of the band in which this cup gels.

    Range: cups of 50 g and more; smaller ones gel later than the card says, no more can be said.
    Example: a quarter later than 40 minutes is 50 minutes.

    >>> latest_gel_time(2400.0, 0.25)
    3000.0

    Source: a conduction check of the model, the same band the other way.
    """
    return gel_time * (1 + gel_time_band)


@formula(level="cup")
def heat_pour_by(gel_time: Seconds, gel_share: Share) -> Seconds:
    """From the moment A touches B to the moment at which this cup's own heat makes it too thick to pour.

    Range: any.
    Example: three quarters of a gel time of 40.77 min are 30.58 min.

    >>> round(heat_pour_by(40.77 * 60, 0.75) / 60, 2)
    30.58

    Source: our choice of the share.
    """
    return gel_time * gel_share
