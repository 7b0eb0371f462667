"""The rate of the cure: how fast the mix of a card cures, so that its own cup gels on its pot life."""

from webapp.formulas.book import formula
from webapp.formulas.calibration_rules import calibrated_rate
from webapp.formulas.rules import filled_surface
from webapp.units import (
    Centimetres,
    ErgsPerGram,
    ErgsPerGramKelvin,
    ErgsPerGramKelvinSquared,
    ErgsPerMole,
    ErgsPerMoleKelvin,
    Grams,
    GramsPerCubicCentimetre,
    HeatLoss,
    HeatLossSlope,
    KelvinDifference,
    Kelvins,
    PerKelvin,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    SquareCentimetres,
)


@formula(level="job")
def adiabatic_rise(reaction_heat: ErgsPerGram, heat_capacity: ErgsPerGramKelvin) -> KelvinDifference:
    """How far the cure would warm a cup that lost no heat at all and took up heat no better when warm.

    Range: a mix without filler, cured in full.

    Example: 400 J/g on 1.9 J/(g K) is 210.53 K.

    >>> round(adiabatic_rise(400e7, 1.9e7), 2)
    210.53

    Source: conservation of energy.
    """
    return reaction_heat / heat_capacity


@formula(level="job")
def activation_temperature(
    activation_energy: ErgsPerMole, gas_constant: ErgsPerMoleKelvin
) -> KelvinDifference:
    """The activation energy of the cure as a temperature.

    Range: any.
    Example: 57 kJ/mol over 8.314462618 J/(mol K) is 6855.52 K.

    >>> round(activation_temperature(57e10, 8.314462618e7), 2)
    6855.52

    Source: Arrhenius.
    """
    return activation_energy / gas_constant


@formula(level="job")
def heat_capacity_growth(
    heat_capacity_slope: ErgsPerGramKelvinSquared, heat_capacity: ErgsPerGramKelvin
) -> PerKelvin:
    """By how much of itself the heat capacity of the mix grows with each kelvin.

    Range: any.
    Example: 0.004 J/(g K²) on 1.8 J/(g K) is 0.00222 for each kelvin.

    >>> round(heat_capacity_growth(4e4, 1.8e7), 5)
    0.00222

    Source: arithmetic from the list of constants.
    """
    return heat_capacity_slope / heat_capacity


@formula(level="job")
def heat_capacity_limit(greatest_heat_capacity: ErgsPerGramKelvin, heat_capacity: ErgsPerGramKelvin) -> Ratio:
    """How many times that at its reference temperature the heat capacity of the mix becomes at most.

    Range: any.
    Example: 2.4 J/(g K) on 1.8 J/(g K) is 1.333.

    >>> round(heat_capacity_limit(2.4e7, 1.8e7), 3)
    1.333

    Source: arithmetic from the list of constants.
    """
    return greatest_heat_capacity / heat_capacity


@formula(level="job")
def air_loss_growth(air_loss_slope: HeatLossSlope, air_loss: HeatLoss) -> PerKelvin:
    """By how much of itself the heat lost to the air grows with each kelvin above it.

    Range: any.
    Example: 0.08 W/(m² K²) on 9 W/(m² K) is 0.00889 for each kelvin.

    >>> round(air_loss_growth(80, 9000), 5)
    0.00889

    Source: arithmetic from the list of constants.
    """
    return air_loss_slope / air_loss


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


@formula(level="job")
def card_cup_cooling(
    air_loss: HeatLoss,
    card_cup_surface: SquareCentimetres,
    pot_life_mass: Grams,
    heat_capacity: ErgsPerGramKelvin,
) -> PerSecond:
    """Share of its warmth that the card's cup loses to the air in a second.

    Range: a cup little above the air.
    Example: 9 W/(m² K) from 161.085 cm² of 150 g at 1.8 J/(g K): 0.000537 a second.

    >>> round(card_cup_cooling(9000, 161.085, 150, 1.8e7), 6)
    0.000537

    Source: conservation of energy.
    """
    return air_loss * card_cup_surface / (pot_life_mass * heat_capacity)


@formula(level="job")
def rate_constant(
    pot_life: Seconds,
    card_cup_cooling: PerSecond,
    gel_conversion: Share,
    pot_life_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    cure_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> PerSecond:
    """How fast the mix cures: the rate at which the card's own cup gels on its pot life.

    Range: pot lives of minutes to hours, 20 g to 1 kg; within 0.3%.
    Example: gel after 45 min of 150 g at 25 °C, 285.5 J/g: 3.14e-4 a second, 3.13e-4 by a tight integrator.

    >>> model = (285.5 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> round(rate_constant(2700.0, 9000 * 161.085 / (150 * 1.8e7), 0.58, 298.15, *model) * 1e4, 2)
    3.14

    Source: the march of the cup's heat, turned round by four steps of a secant.
    """
    return calibrated_rate(
        pot_life, card_cup_cooling, gel_conversion, pot_life_temperature, adiabatic_rise, cure_self_start,
        activation_temperature, heat_capacity_growth, heat_capacity_limit, air_loss_growth,
        kinetic_reference_temperature,
    )  # fmt: skip


@formula(level="job")
def high_rate_constant(
    pot_life: Seconds,
    card_cup_cooling: PerSecond,
    gel_conversion: Share,
    pot_life_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    high_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> PerSecond:
    """How fast the mix cures if it starts more by itself: the other end of what is not known of it.

    Range: pot lives of minutes to hours, 20 g to 1 kg; within 0.3%.
    Example: gel after 45 min of 150 g at 25 °C, 285.5 J/g, self-start 0.3: 1.56e-4 a second.

    >>> model = (285.5 / 1.8, 0.3, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> round(high_rate_constant(2700.0, 9000 * 161.085 / (150 * 1.8e7), 0.58, 298.15, *model) * 1e4, 2)
    1.56

    Source: the march of the cup's heat, turned round by four steps of a secant.
    """
    return calibrated_rate(
        pot_life, card_cup_cooling, gel_conversion, pot_life_temperature, adiabatic_rise, high_self_start,
        activation_temperature, heat_capacity_growth, heat_capacity_limit, air_loss_growth,
        kinetic_reference_temperature,
    )  # fmt: skip
