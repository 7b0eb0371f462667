"""The cup's heat: the rates at which a cup of mix cures, warms itself and cools, and what they come to.

Formulas on no level take the state of a cup at one moment; the numerical part steps them through time.
"""

import math

from webapp.formulas.book import formula
from webapp.formulas.rules import filled_surface, speed_factor
from webapp.units import (
    Centimetres,
    Count,
    CubicCentimetres,
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
    KelvinsPerSecond,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    SquareCentimetres,
)


@formula(level="cup")
def cup_mass(cup_volume: CubicCentimetres, mixed_density: GramsPerCubicCentimetre) -> Grams:
    """Mass of the mix in one cup.

    Range: any cup.

    Example: 180 mL of 1.05 g/mL are 189 g.

    >>> round(cup_mass(180.0, 1.05), 6)
    189.0

    Source: arithmetic.
    """
    return cup_volume * mixed_density


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


@formula(level="job")
def adiabatic_rise(reaction_heat: ErgsPerGram, heat_capacity: ErgsPerGramKelvin) -> KelvinDifference:
    """How far the cure would warm a cup that lost no heat at all: the most that can come.

    Range: a mix without filler, cured in full.

    Example: 400 J/g on 1.9 J/(g K) is 210.53 K.

    >>> round(adiabatic_rise(400e7, 1.9e7), 2)
    210.53

    Source: conservation of energy.
    """
    return reaction_heat / heat_capacity


@formula(level=())
def conversion_rate(
    conversion: Share,
    mix_temperature: Kelvins,
    rate_constant: PerSecond,
    self_start: Ratio,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
    kinetic_reference_temperature: Kelvins,
) -> PerSecond:
    """Share of the cure that is done in a second, by how far it has come and how warm the mix is.

    Range: conversion 0 to 1; 0 to 250 degC.

    Example: at the start and 25 degC it is a tenth of the rate constant: 2.4e-5 of 2.4e-4 per second.

    >>> round(conversion_rate(0.0, 298.15, 2.4e-4, 0.1, 57e10, 8.314462618e7, 298.15), 9)
    2.4e-05

    Source: Kamal and Sourour's form with the orders of Horie et al., J. Polym. Sci. A-1 8 (1970) 1357 (from
    memory); orders that sum to 2.5 to 3: Barral et al. 1995.
    """
    warmth = speed_factor(mix_temperature, kinetic_reference_temperature, activation_energy, gas_constant)
    return rate_constant * warmth * (self_start + conversion) * (1 - conversion) ** 2


@formula(level=())
def mix_heat_capacity(
    mix_temperature: Kelvins,
    heat_capacity: ErgsPerGramKelvin,
    heat_capacity_slope: ErgsPerGramKelvinSquared,
    greatest_heat_capacity: ErgsPerGramKelvin,
    kinetic_reference_temperature: Kelvins,
) -> ErgsPerGramKelvin:
    """Heat that warms a gram of the mix by a kelvin, at the mix's temperature.

    Range: 0 to 250 degC.

    Example: 1.8 J/(g K) at 25 degC and 0.004 more for each kelvin are 2.2 at 125 degC, and 2.4 from 175 on.

    >>> round(mix_heat_capacity(398.15, 1.8e7, 4e4, 2.4e7, 298.15) / 1e7, 6)
    2.2
    >>> round(mix_heat_capacity(473.15, 1.8e7, 4e4, 2.4e7, 298.15) / 1e7, 6)
    2.4

    Source: engineering fit to 1.7 to 2.1 J/(g K) of liquid mixes (from memory).
    """
    rise = heat_capacity_slope * (mix_temperature - kinetic_reference_temperature)
    return min(heat_capacity + rise, greatest_heat_capacity)


@formula(level=())
def surface_loss(
    mix_temperature: Kelvins,
    air_temperature: Kelvins,
    air_loss: HeatLoss,
    air_loss_slope: HeatLossSlope,
) -> HeatLoss:
    """Heat that leaves each square of the cup's surface for each kelvin over the air.

    Range: a cup in still air, up to 200 K over it.

    Example: 9 W/(m2 K) and 0.08 more for each kelvin are 17 at 100 K over the air.

    >>> round(surface_loss(398.15, 298.15, 9000.0, 80.0) / 1000, 6)
    17.0

    Source: free convection on a short wall (Churchill, Chu) and radiation at 0.9, by the library ht.
    """
    return air_loss + air_loss_slope * abs(mix_temperature - air_temperature)


@formula(level=())
def heating_rate(
    conversion_rate: PerSecond,
    mix_heat_capacity: ErgsPerGramKelvin,
    surface_loss: HeatLoss,
    mix_temperature: Kelvins,
    air_temperature: Kelvins,
    reaction_heat: ErgsPerGram,
    cup_mass: Grams,
    cup_surface: SquareCentimetres,
) -> KelvinsPerSecond:
    """How fast the cup's mix warms: the heat of its cure less what its surface loses to the air.

    Range: a mix of one temperature throughout.

    Example: 150 g that cure 1e-4 in a second, 10 K over the air, with 1.9 J/(g K), 10 W/(m2 K), 161.085 cm2:
    (6 W - 1.61085 W)/285 J/K is 0.0154 K/s.

    >>> round(heating_rate(1e-4, 1.9e7, 10000.0, 308.15, 298.15, 400e7, 150.0, 161.085), 5)
    0.0154

    Source: conservation of energy.
    """
    lost = surface_loss * cup_surface * (mix_temperature - air_temperature) / cup_mass
    return (reaction_heat * conversion_rate - lost) / mix_heat_capacity


@formula(level=())
def semenov_number(
    cup_mass: Grams,
    cup_surface: SquareCentimetres,
    rate_constant: PerSecond,
    air_temperature: Kelvins,
    reaction_heat: ErgsPerGram,
    air_loss: HeatLoss,
    self_start: Ratio,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Ratio:
    """How near a cup is to running off: the heat it makes against the heat it can lose.

    Range: under 0.3 a few kelvin; from 0.5 on the cup runs off.

    Example: 30 g at 25 degC, rate constant 2.4e-4 per second, 10 W/(m2 K): 0.4256.

    >>> kinetics = (0.1, 57e10, 8.314462618e7, 298.15)
    >>> round(semenov_number(30.0, 102.9025, 2.4e-4, 298.15, 400e7, 10000.0, *kinetics), 4)
    0.4256

    Source: Semenov's criterion; classical limit 1/e, simulations with consumption about 0.5.
    """
    warmth = speed_factor(air_temperature, kinetic_reference_temperature, activation_energy, gas_constant)
    fastest = 4 * (1 + self_start) ** 3 / 27 * rate_constant * warmth
    made = cup_mass * reaction_heat * fastest * activation_energy
    return made / (air_loss * cup_surface * gas_constant * air_temperature**2)


@formula(level=())
def film_semenov_number(
    coat_depth: Centimetres,
    nominal_density: GramsPerCubicCentimetre,
    rate_constant: PerSecond,
    surface_temperature: Kelvins,
    reaction_heat: ErgsPerGram,
    air_loss: HeatLoss,
    self_start: Ratio,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Ratio:
    """How near a film is to running off on a board that takes up no heat.

    Range: insulating boards; metal and stone keep a film cool. From a model, not tested by experiment.

    Example: the cup's number for as much mix on each square: 30 g on 102.9025 cm2 are 0.26503 cm deep.

    >>> kinetics = (0.1, 57e10, 8.314462618e7, 298.15)
    >>> round(film_semenov_number(0.26503, 1.10, 2.4e-4, 298.15, 400e7, 10000.0, *kinetics), 4)
    0.4256

    Source: Semenov's criterion with heat lost from the top only.
    """
    warmth = speed_factor(surface_temperature, kinetic_reference_temperature, activation_energy, gas_constant)
    fastest = 4 * (1 + self_start) ** 3 / 27 * rate_constant * warmth
    made = coat_depth * nominal_density * reaction_heat * fastest * activation_energy
    return made / (air_loss * gas_constant * surface_temperature**2)


@formula(level=())
def film_gel_time(
    rate_constant: PerSecond,
    surface_temperature: Kelvins,
    gel_conversion: Share,
    self_start: Ratio,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Seconds:
    """Time to gel in a thin film, which stays as cool as its ground and so gels later than the cup.

    Range: films thin enough to lose their heat.

    Example: rate constant 2.4e-4 per second at 25 degC, gel at 0.58: 246.985 min.

    >>> round(film_gel_time(2.4e-4, 298.15, 0.58, 0.1, 57e10, 8.314462618e7, 298.15) / 60, 3)
    246.985

    Source: Kamal and Sourour's form at one temperature, integrated.
    """
    warmth = speed_factor(surface_temperature, kinetic_reference_temperature, activation_energy, gas_constant)
    left = 1 - gel_conversion
    started = math.log((gel_conversion + self_start) / (self_start * left)) / (1 + self_start) ** 2
    return (started + gel_conversion / (left * (1 + self_start))) / (rate_constant * warmth)


@formula(level="job")
def cool_rate_constant(
    pot_life: Seconds,
    pot_life_temperature: Kelvins,
    gel_conversion: Share,
    self_start: Ratio,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
    kinetic_reference_temperature: Kelvins,
) -> PerSecond:
    """Rate constant of a mix that gels on its pot life without warming itself: more than any cup's.

    Range: any card.

    Example: gel at 0.58 after 246.985 min at 25 degC: 2.4e-4 per second.

    >>> round(cool_rate_constant(246.985 * 60, 298.15, 0.58, 0.1, 57e10, 8.314462618e7, 298.15), 9)
    0.00024

    Source: Kamal and Sourour's form at one temperature, integrated and turned round.
    """
    warmth = speed_factor(
        pot_life_temperature, kinetic_reference_temperature, activation_energy, gas_constant
    )
    left = 1 - gel_conversion
    started = math.log((gel_conversion + self_start) / (self_start * left)) / (1 + self_start) ** 2
    return (started + gel_conversion / (left * (1 + self_start))) / (pot_life * warmth)


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
