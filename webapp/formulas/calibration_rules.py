"""Shared rules of the cup's heat: what a card tells of its own cure, found by the secant.

A rule named `off_...` says how far a try is off what the card states; lines are drawn through the tries.
"""

import math

from webapp.formulas.heat_rules import cure_speed, cure_work
from webapp.formulas.march_rules import gel_work
from webapp.formulas.warmth_rules import peak_rise
from webapp.units import KelvinDifference, Kelvins, PerKelvin, PerSecond, Ratio, Seconds, Share


def secant_step(at_before: float, off_before: float, at_now: float, off_now: float) -> float:
    """Return where a line through the last two tries is not off at all; where they are alike, the last try.

    >>> secant_step(1.0, 2.0, 2.0, 1.0), secant_step(1.0, 2.0, 2.0, 2.0)
    (3.0, 2.0)
    """
    change = off_now - off_before
    return at_now if abs(change) < 1e-9 else at_now - off_now * (at_now - at_before) / change


def off_pot_life(
    trial: float,
    cool_rate: PerSecond,
    pot_life: Seconds,
    cooling: PerSecond,
    gel_conversion: Share,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> float:
    """Return how far gel is off the pot life, as a logarithm, the rate constant so many e-folds up.

    >>> mix = (0.58, 298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7)
    >>> losses = (0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> abs(off_pot_life(0.0, 2.37884e-4, 2700.0, cooling, *mix, *losses)) < 0.001
    True
    """
    rate = cool_rate * math.exp(trial)
    work = gel_work(
        0 * full_rise, gel_conversion, cooling / rate, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    return math.log(work / (rate * pot_life))


def calibrated_rate(
    pot_life: Seconds,
    cooling: PerSecond,
    gel_conversion: Share,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> PerSecond:
    """Return the rate constant at which the card's own cup gels on its pot life, by the secant.

    >>> mix = (0.58, 298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7)
    >>> losses = (0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(calibrated_rate(2700.0, cooling, *mix, *losses) * 1e4, 4)
    2.3788
    """
    cool_rate = cure_work(gel_conversion, self_start) / (
        pot_life * cure_speed(0 * full_rise, air, energy, reference_temperature)
    )
    off_0 = off_pot_life(
        0, cool_rate, pot_life, cooling, gel_conversion, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    try_1 = off_0 / 1.5
    off_1 = off_pot_life(
        try_1, cool_rate, pot_life, cooling, gel_conversion, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    try_2 = secant_step(0, off_0, try_1, off_1)
    off_2 = off_pot_life(
        try_2, cool_rate, pot_life, cooling, gel_conversion, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    try_3 = secant_step(try_1, off_1, try_2, off_2)
    off_3 = off_pot_life(
        try_3, cool_rate, pot_life, cooling, gel_conversion, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    return cool_rate * math.exp(secant_step(try_2, off_2, try_3, off_3))


def off_set_time(
    trial: float,
    set_ratio: Ratio,
    pot_life: Seconds,
    cooling: PerSecond,
    gel_conversion: Share,
    air: Kelvins,
    full_rise: KelvinDifference,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> float:
    """Return how far a film's gel is off so many pot lives, as a logarithm, at a self-start given as its own.

    >>> rest = (0.58, 298.15, 285.5 / 1.8, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> abs(off_set_time(math.log(0.1), 4.55, 1800.0, 9000 * 161.085 / (150 * 1.8e7), *rest)) < 0.002
    True
    """
    self_start = math.exp(trial)
    rate = calibrated_rate(
        pot_life, cooling, gel_conversion, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    speed = cure_speed(0 * full_rise, air, energy, reference_temperature)
    return math.log(cure_work(gel_conversion, self_start) / (rate * speed * pot_life * set_ratio))


def off_peak(
    full_rise: KelvinDifference,
    stated_rise: KelvinDifference,
    pot_life: Seconds,
    card_cooling: PerSecond,
    peak_cooling: PerSecond,
    gel_conversion: Share,
    air: Kelvins,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> KelvinDifference:
    """Return how far the peak of a card's cup is over the stated one if its whole cure warmed it by so much.

    >>> cup = 9000 * 161.085 / (150 * 1.8e7)
    >>> rest = (0.58, 298.15, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> abs(off_peak(285.3 / 1.8, 98.0, 2700.0, cup, cup, *rest)) < 1
    True
    """
    rate = calibrated_rate(
        pot_life, card_cooling, gel_conversion, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    found = peak_rise(
        0 * full_rise, gel_conversion, peak_cooling / rate, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    return found - stated_rise
