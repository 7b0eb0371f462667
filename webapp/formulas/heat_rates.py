"""The rates at which a mix cures, warms itself and cools, and what they come to at one temperature.

Formulas on no level take the state of a mix at one moment; the numerical part steps them through time.
"""

import math

from webapp.formulas.book import formula
from webapp.formulas.rules import speed_factor
from webapp.units import (
    ErgsPerGram,
    ErgsPerGramKelvin,
    ErgsPerGramKelvinSquared,
    ErgsPerMole,
    ErgsPerMoleKelvin,
    Grams,
    HeatLoss,
    HeatLossSlope,
    Kelvins,
    KelvinsPerSecond,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    SquareCentimetres,
)


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
    memory); orders that sum to 2.5 to 3: Barral et al. 1995; a self-start of 0.1 is our assumption.
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


@formula(level="job")
def film_gel_time(
    rate_constant: PerSecond,
    surface_temperature: Kelvins,
    gel_conversion: Share,
    cure_self_start: Ratio,
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
    started = (
        math.log((gel_conversion + cure_self_start) / (cure_self_start * left)) / (1 + cure_self_start) ** 2
    )
    return (started + gel_conversion / (left * (1 + cure_self_start))) / (rate_constant * warmth)
