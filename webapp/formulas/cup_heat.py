"""The cup's heat: the surface it leaves by, how near a cup or a film is to running off, and the classes."""

from webapp.formulas.book import formula
from webapp.formulas.rules import filled_surface, speed_factor
from webapp.units import (
    Centimetres,
    Count,
    CubicCentimetres,
    ErgsPerGram,
    ErgsPerGramKelvin,
    ErgsPerMole,
    ErgsPerMoleKelvin,
    Grams,
    GramsPerCubicCentimetre,
    HeatLoss,
    KelvinDifference,
    Kelvins,
    PerSecond,
    Ratio,
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
