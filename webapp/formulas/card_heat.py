"""What a card tells of its own cure: the heat by its peak exotherm, the start by its thin film."""

import math

from webapp.formulas.book import formula, valid_range
from webapp.formulas.calibration_rules import off_peak, off_set_time, secant_step
from webapp.formulas.rules import filled_surface
from webapp.units import (
    Centimetres,
    ErgsPerGram,
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
    Truth,
)


@formula(level="job")
def chemical_rise(chemical_heat: ErgsPerGram, heat_capacity: ErgsPerGramKelvin) -> KelvinDifference:
    """How far the cure would warm a cup that lost no heat, by its chemistry.

    Range: any.
    Example: 285.5 J/g on 1.8 J/(g K) is 158.61 K.

    >>> round(chemical_rise(285.5e7, 1.8e7), 2)
    158.61

    Source: conservation of energy.
    """
    return chemical_heat / heat_capacity


@formula(level="job")
def least_rise(least_reaction_heat: ErgsPerGram, heat_capacity: ErgsPerGramKelvin) -> KelvinDifference:
    """The least that a stated peak exotherm is taken to mean, as the rise of a cup that lost no heat.

    Range: any.
    Example: 200 J/g on 1.8 J/(g K) is 111.11 K.

    >>> round(least_rise(200e7, 1.8e7), 2)
    111.11

    Source: conservation of energy.
    """
    return least_reaction_heat / heat_capacity


@formula(level="job")
def greatest_rise(greatest_reaction_heat: ErgsPerGram, heat_capacity: ErgsPerGramKelvin) -> KelvinDifference:
    """The most that a stated peak exotherm is taken to mean, as the rise of a cup that lost no heat.

    Range: any.
    Example: 500 J/g on 1.8 J/(g K) is 277.78 K.

    >>> round(greatest_rise(500e7, 1.8e7), 2)
    277.78

    Source: conservation of energy.
    """
    return greatest_reaction_heat / heat_capacity


@formula(level="job")
def self_start_by_set_time(
    stated_film_set_time: Seconds,
    pot_life: Seconds,
    card_cup_cooling: PerSecond,
    gel_conversion: Share,
    pot_life_temperature: Kelvins,
    chemical_rise: KelvinDifference,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Ratio:
    """How far the cure runs without the help of what has already cured, by the card's thin film that sets.

    Range: films that set after 3.4 to 9.4 pot lives; a self-start of 0.03 to 0.5.
    Example: a film that sets 4.55 pot lives of 30 min after mixing starts by 0.10.

    >>> mix = (285.5 / 1.8, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(self_start_by_set_time(4.55 * 1800, 1800, cooling, 0.58, 298.15, *mix), 2)
    0.1

    Source: the march of the cup's heat against the same mix at one temperature, by four steps of a secant.
    """
    ratio = stated_film_set_time / pot_life
    first = math.log(0.1)
    second = math.log(0.2)
    off_1 = off_set_time(
        first, ratio, pot_life, card_cup_cooling, gel_conversion, pot_life_temperature, chemical_rise,
        activation_temperature, heat_capacity_growth, heat_capacity_limit, air_loss_growth,
        kinetic_reference_temperature,
    )  # fmt: skip
    off_2 = off_set_time(
        second, ratio, pot_life, card_cup_cooling, gel_conversion, pot_life_temperature, chemical_rise,
        activation_temperature, heat_capacity_growth, heat_capacity_limit, air_loss_growth,
        kinetic_reference_temperature,
    )  # fmt: skip
    third = max(math.log(0.03), min(math.log(0.5), secant_step(first, off_1, second, off_2)))
    off_3 = off_set_time(
        third, ratio, pot_life, card_cup_cooling, gel_conversion, pot_life_temperature, chemical_rise,
        activation_temperature, heat_capacity_growth, heat_capacity_limit, air_loss_growth,
        kinetic_reference_temperature,
    )  # fmt: skip
    fourth = max(math.log(0.03), min(math.log(0.5), secant_step(second, off_2, third, off_3)))
    return math.exp(fourth)


@valid_range(
    says="No film sets so many pot lives after mixing. Check its time, and that it is no tack-free time."
)
def self_start_by_set_time_range(stated_film_set_time: Seconds, pot_life: Seconds) -> Truth:
    """Films that set after 3.4 to 9.4 pot lives."""
    return abs(stated_film_set_time / pot_life - 6.4) <= 3


@formula(level="job")
def peak_cup_cooling(
    air_loss: HeatLoss,
    peak_exotherm_mass: Grams,
    card_cup_diameter: Centimetres,
    nominal_density: GramsPerCubicCentimetre,
    heat_capacity: ErgsPerGramKelvin,
) -> PerSecond:
    """Share of its warmth that the cup of the card's peak exotherm loses to the air in a second.

    Range: a straight cup little above the air.
    Example: 9 W/(m² K) from 150 g in a cup 7.5 cm across at 1.8 J/(g K): 0.000537 a second.

    >>> round(peak_cup_cooling(9000, 150, 7.5, 1.10, 1.8e7), 6)
    0.000537

    Source: conservation of energy.
    """
    surface = filled_surface(peak_exotherm_mass, card_cup_diameter, nominal_density)
    return air_loss * surface / (peak_exotherm_mass * heat_capacity)


@formula(level="job")
def heat_by_peak(
    stated_peak_exotherm: Kelvins,
    pot_life: Seconds,
    card_cup_cooling: PerSecond,
    peak_cup_cooling: PerSecond,
    gel_conversion: Share,
    pot_life_temperature: Kelvins,
    least_rise: KelvinDifference,
    greatest_rise: KelvinDifference,
    heat_capacity: ErgsPerGramKelvin,
    cure_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> ErgsPerGram:
    """Heat that a gram of the mix gives off, by the peak exotherm that the card states.

    Range: 200 to 500 J/g.
    Example: 45 min and a peak of 123 °C, both of 150 g at 25 °C: 284 J/g (285.3 by a tight integrator).

    >>> mix = (200 / 1.8, 500 / 1.8, 1.8e7, 0.1, 57e10 / 8.314462618e7)
    >>> losses = (0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(heat_by_peak(396.15, 2700, cooling, cooling, 0.58, 298.15, *mix, *losses) / 1e7)
    284

    Source: the march of the cup's heat, turned round by two steps of a secant.
    """
    stated_rise = stated_peak_exotherm - pot_life_temperature
    off_1 = off_peak(
        least_rise, stated_rise, pot_life, card_cup_cooling, peak_cup_cooling, gel_conversion,
        pot_life_temperature, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    off_2 = off_peak(
        greatest_rise, stated_rise, pot_life, card_cup_cooling, peak_cup_cooling, gel_conversion,
        pot_life_temperature, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    chord = greatest_rise - off_2 * (greatest_rise - least_rise) / (off_2 - off_1)
    third = max(least_rise, min(greatest_rise, chord))
    off_3 = off_peak(
        third, stated_rise, pot_life, card_cup_cooling, peak_cup_cooling, gel_conversion,
        pot_life_temperature, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    fourth = third - off_3 * (third - greatest_rise) / (off_3 - off_2) if third < greatest_rise else third
    return max(least_rise, min(greatest_rise, fourth)) * heat_capacity
