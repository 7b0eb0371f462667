"""Shared rules of the cup's heat: a march through the conversion of a mix, in fixed steps.

Conversion is stepped, not time: how far the mix warms with each further share of cure is smooth even where
the cup runs off within seconds. A temperature stands as its rise above the air. Every cup is told by the
same figures: `cooling` (how much its surface holds the cure back), `air`, `full_rise` (what the whole cure
would warm it by), `self_start`, `energy` (activation energy over the gas constant), how heat capacity and
loss grow with each kelvin, the heat capacity's limit, and the temperature that its rate is stated at.
"""

import math

from webapp.units import KelvinDifference, Kelvins, PerKelvin, Ratio, Share


def warmed(temperature: Kelvins, rise: KelvinDifference) -> Kelvins:
    """Return a temperature so much higher.

    >>> warmed(293.15, 5.0)
    298.15
    """
    return temperature + rise


def cure_speed(
    rise: KelvinDifference, air: Kelvins, energy: KelvinDifference, reference_temperature: Kelvins
) -> Ratio:
    """Return how many times faster than at its reference temperature a mix cures that stands above the air.

    >>> round(1 / cure_speed(10.0, 298.15, 57e10 / 8.314462618e7, 298.15), 4)
    0.4742
    """
    return math.exp(energy * (1 / reference_temperature - 1 / warmed(air, rise)))


def cure_work(conversion: Share, self_start: Ratio) -> Ratio:
    """Return the time that a conversion takes at one temperature, in times of the rate constant.

    >>> round(cure_work(0.58, 0.1) / 2.4e-4 / 60, 3)
    246.985
    """
    started = math.log((conversion + self_start) / (self_start * (1 - conversion))) / (1 + self_start) ** 2
    return started + conversion / ((1 - conversion) * (1 + self_start))


def heat_capacity_grown(
    rise: KelvinDifference,
    air: Kelvins,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    reference_temperature: Kelvins,
) -> Ratio:
    """Return how many times that at the reference temperature the heat capacity of a warmed mix is.

    >>> round(heat_capacity_grown(100.0, 298.15, 0.004 / 1.8, 2.4 / 1.8, 298.15), 4)
    1.2222
    """
    return min(1 + capacity_growth * (warmed(air, rise) - reference_temperature), capacity_limit)


def growth(exponent: float) -> float:
    """Return (exp(x) - 1)/x, the mean of an exponential over its run; one where it stands still.

    >>> round(growth(0.5), 7), round(growth(-3), 7), growth(0)
    (1.2974425, 0.3167376, 1.0)
    """
    return 1 + exponent / 2 if abs(exponent) < 1e-6 else (math.exp(min(exponent, 50)) - 1) / exponent


def cooling_by_cure(
    rise: KelvinDifference,
    conversion: Share,
    cooling: Ratio,
    air: Kelvins,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> Ratio:
    """Return the share of its rise that a cup loses to the air while a whole cure would go by.

    >>> round(cooling_by_cure(0.0, 0.0, 1.0, 298.15, 0.1, 6855.524, 0.0, 1.5, 0.0, 298.15), 6)
    10.0
    """
    loss = cooling * (1 + loss_growth * abs(rise))
    held = heat_capacity_grown(rise, air, capacity_growth, capacity_limit, reference_temperature)
    rate = cure_speed(rise, air, energy, reference_temperature) * (self_start + conversion)
    return loss / (held * rate * (1 - conversion) ** 2)


def heat_bend(
    rise: KelvinDifference,
    air: Kelvins,
    cooling_now: Ratio,
    energy: KelvinDifference,
    loss_growth: PerKelvin,
) -> Ratio:
    """Return how the slope of the rise changes with the rise itself: above zero it runs off.

    >>> heat_bend(0.0, 298.15, 10.0, 6855.524, 0.01)
    -10.0
    """
    hotter = cooling_now * rise * energy / warmed(air, rise) ** 2
    return hotter - cooling_now * (1 + loss_growth * abs(rise) / (1 + loss_growth * abs(rise)))


def heat_step(
    rise: KelvinDifference,
    conversion: Share,
    share: Share,
    cooling: Ratio,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> KelvinDifference:
    """Return the rise after a further share of cure: slope and bend taken in the middle, never past all heat.

    >>> round(heat_step(0.0, 0.0, 0.1, 0.0, 298.15, 200.0, 0.1, 6855.524, 0.0, 1.5, 0.0, 298.15), 6)
    20.0
    """
    middle = conversion + share / 2
    gain = full_rise / heat_capacity_grown(rise, air, capacity_growth, capacity_limit, reference_temperature)
    cooled = cooling_by_cure(
        rise, middle, cooling, air, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    bend = heat_bend(rise, air, cooled, energy, loss_growth)
    warmest = max(rise, 0 * rise)
    halfway = min(
        rise + share / 2 * (gain - cooled * rise) * growth(bend * share / 2), warmest + share / 2 * gain
    )
    half_held = heat_capacity_grown(halfway, air, capacity_growth, capacity_limit, reference_temperature)
    half_cooled = cooling_by_cure(
        halfway, middle, cooling, air, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    half_bend = heat_bend(halfway, air, half_cooled, energy, loss_growth)
    slope = full_rise / half_held - half_cooled * halfway + half_bend * (rise - halfway)
    return min(rise + share * slope * growth(half_bend * share), warmest + share * gain)


def step_work(
    rise: KelvinDifference,
    next_rise: KelvinDifference,
    work: Ratio,
    air: Kelvins,
    energy: KelvinDifference,
    reference_temperature: Kelvins,
) -> Ratio:
    """Return the time of a step, in times of the rate constant: less, the warmer the mix (Simpson's rule).

    >>> step_work(0.0, 0.0, 2.0, 298.15, 6855.524, 298.15)
    2.0
    """
    first = 1 / cure_speed(rise, air, energy, reference_temperature)
    middle = 1 / cure_speed((rise + next_rise) / 2, air, energy, reference_temperature)
    last = 1 / cure_speed(next_rise, air, energy, reference_temperature)
    return work * (first + 4 * middle + last) / 6
