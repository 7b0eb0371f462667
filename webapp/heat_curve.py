"""The cup's heat curve: conversion and temperature over time, gel time and peak, from the book's rates.

`static/sheet/heat-curve.js` is the twin. All that is known of resin is formulas of the book; the values
are cells of the sheet by their names, in canonical units.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from webapp.formulas.heat_rates import conversion_rate, heating_rate, mix_heat_capacity, surface_loss
from webapp.numerics import Moment, Rates, State, crossing, integrate, root_near

Values = Mapping[str, float]

SCALES: State = (1.0, 100.0)
TOLERANCE = 3e-5
FIRST_STEP = 1.0
CURED = 0.9999

KINETICS = (
    "self_start",
    "gel_conversion",
    "activation_energy",
    "gas_constant",
    "kinetic_reference_temperature",
    "reaction_heat",
    "heat_capacity",
    "heat_capacity_slope",
    "greatest_heat_capacity",
    "air_loss",
    "air_loss_slope",
)
RATE_CONSTANT_ASKS = (
    "pot_life",
    "pot_life_temperature",
    "pot_life_mass",
    "card_cup_surface",
    "cool_rate_constant",
    *KINETICS,
)
HEAT_CURVE_ASKS = (
    "rate_constant",
    "cup_mass",
    "cup_surface",
    "resin_temperature",
    "air_temperature",
    *KINETICS,
)


@dataclass(frozen=True)
class HeatCurve:
    """How a cup cures and warms: the moments of gel and of the peak, and all moments on the way."""

    gel: Moment
    peak: Moment
    moments: tuple[Moment, ...]

    @property
    def gel_time(self) -> float:
        """Seconds from contact to gel."""
        return self.gel.time

    @property
    def peak_temperature(self) -> float:
        """Kelvins at the hottest."""
        return self.peak.state[1]


def heat_curve(values: Values) -> HeatCurve:
    """Return the heat curve of a cup, from the values of HEAT_CURVE_ASKS."""
    rates = rates_of(values)
    gelled, done = past_gel(values), _spent(values)
    moments = integrate(rates, (0.0, values["resin_temperature"]), SCALES, TOLERANCE, FIRST_STEP, done)
    hottest = [max(moments, key=lambda each: each.state[1])]
    gel = moments[-1]
    for before, after in pairwise(moments):
        if gelled(before) < 0 <= gelled(after):
            gel = crossing(rates, before, after, SCALES, gelled)
        if before.rates[1] > 0 >= after.rates[1]:
            hottest.append(crossing(rates, before, after, SCALES, lambda each: each.rates[1]))
    return HeatCurve(gel, max(hottest, key=lambda each: each.state[1]), tuple(moments))


def rate_constant(values: Values) -> float:
    """Return the rate constant with which a cup like the card's gels on the card's pot life, in 1/s.

    It takes the values of RATE_CONSTANT_ASKS. A cup that warms itself needs less than a cool one, so the
    search goes down from the cool one's.
    """
    own = {
        **values,
        "cup_mass": values["pot_life_mass"],
        "cup_surface": values["card_cup_surface"],
        "resin_temperature": values["pot_life_temperature"],
        "air_temperature": values["pot_life_temperature"],
    }

    def too_late(exponent: float) -> float:
        return math.log(gel_time({**own, "rate_constant": math.exp(exponent)}) / own["pot_life"])

    return math.exp(root_near(too_late, math.log(own["cool_rate_constant"]), 1e-6))


def gel_time(values: Values) -> float:
    """Return the seconds in which a cup gels, going no further than that."""
    rates, gelled = rates_of(values), past_gel(values)
    start = (0.0, values["resin_temperature"])
    moments = integrate(rates, start, SCALES, TOLERANCE, FIRST_STEP, lambda each: gelled(each) >= 0)
    return crossing(rates, moments[-2], moments[-1], SCALES, gelled).time


def rates_of(values: Values) -> Rates:
    """Return the rates of a cup's conversion and temperature, as the book's formulas give them."""
    v = values

    def rates(state: State) -> State:
        conversion, temperature = state
        curing = conversion_rate(
            conversion,
            temperature,
            v["rate_constant"],
            v["self_start"],
            v["activation_energy"],
            v["gas_constant"],
            v["kinetic_reference_temperature"],
        )
        capacity = mix_heat_capacity(
            temperature,
            v["heat_capacity"],
            v["heat_capacity_slope"],
            v["greatest_heat_capacity"],
            v["kinetic_reference_temperature"],
        )
        loss = surface_loss(temperature, v["air_temperature"], v["air_loss"], v["air_loss_slope"])
        warming = heating_rate(
            curing,
            capacity,
            loss,
            temperature,
            v["air_temperature"],
            v["reaction_heat"],
            v["cup_mass"],
            v["cup_surface"],
        )
        return curing, warming

    return rates


def past_gel(values: Values) -> Callable[[Moment], float]:
    """Return the measure that passes zero at gel."""
    return lambda moment: moment.state[0] - values["gel_conversion"]


def _spent(values: Values) -> Callable[[Moment], bool]:
    """Return what is true once a cup has gelled and cooled half way, or has cured."""
    gelled, hottest = past_gel(values), [0.0]

    def spent(moment: Moment) -> bool:
        excess = moment.state[1] - values["air_temperature"]
        hottest[0] = max(hottest[0], excess)
        cooled = gelled(moment) >= 0 and moment.rates[1] < 0 and excess < hottest[0] / 2
        return cooled or moment.state[0] >= CURED

    return spent
