"""The phone's heat curve over hot, cold, tiny and large cups, held against SciPy."""

import pytest

from tests.against_the_outside.cups_by_scipy import (
    CONSTANT,
    HELD,
    KINETICS,
    by_scipy,
    cup,
    rate_constant,
)
from tests.against_the_outside.last_digit import agrees
from tests.phone_curves import heat_curves
from tests.running import taken
from webapp.formulas import heat_rates, working_time

NEAR = 0.005

GRID = taken(
    [
        cup(rate, mass, resin, air)
        for rate in (2e-5, 2.4e-4, 3e-3)
        for mass in (1, 10, 30, 50, 150, 1000, 5000)
        for resin, air in ((5, 5), (25, 25), (45, 45), (35, 20))
    ]
)


def test_the_curve_is_scipys_within_half_a_percent_over_hot_cold_tiny_and_large_cups(phone):
    for values, curve in zip(GRID, heat_curves(phone, *GRID), strict=True):
        gel, peak = by_scipy(values)
        assert curve.gel_time == pytest.approx(gel, rel=NEAR)
        rise = max(peak - values["air_temperature"], 1.0)
        assert curve.peak_temperature == pytest.approx(peak, abs=NEAR * rise)


# Pot life in s, its temperature in °C, its mass in g.
CARDS = [
    (pot_life, degrees, mass)
    for pot_life in (600.0, 1800.0, 2700.0, 7200.0, 14400.0)
    for degrees in (10, 25, 40)
    for mass in (50, 150, 500, 1000)
]


def test_a_cup_like_the_cards_gels_on_the_cards_pot_life(phone):
    # The curve is integrated, its rate is found by the march: 3.3% apart at most.
    cups = [cup(rate_constant(*each), each[2], each[1], each[1]) for each in CARDS]
    for (pot_life, *_), curve in zip(CARDS, heat_curves(phone, *cups), strict=True):
        assert curve.gel_time == pytest.approx(pot_life, rel=0.033)
    for (pot_life, *_), each in list(zip(CARDS, cups, strict=True))[::12]:
        assert by_scipy(each)[0] == pytest.approx(pot_life, rel=0.033)


def test_time_alone_scales_a_cup_that_cannot_lose_heat(phone):
    # Without a loss the rate constant only stretches time: the peak is the adiabatic rise.
    closed = {**HELD, "air_loss": 0.0}
    cups = [cup(rate, 100, 25, 25, closed) for rate in (2.4e-4, 4.8e-4)]
    curve, twice = heat_curves(phone, *cups)
    assert curve.gel_time == pytest.approx(2 * twice.gel_time, rel=1e-3)
    conversion, temperature = curve.states[-1]
    assert agrees((temperature - 298.15) / conversion, "210.53")


def test_a_warmer_room_is_shorter_than_the_card_by_no_more_than_the_time_factor(phone):
    rate = rate_constant(2700.0, 25, 150)
    [warm] = heat_curves(phone, cup(rate, 150, 35, 35))
    # 57 kJ/mol: time against 25 degC is 0.4742 at 35 degC; a cup that warms itself follows it loosely.
    factor = working_time.working_time(
        1.0, 298.15, 308.15, CONSTANT["activation_energy"], CONSTANT["gas_constant"]
    )
    assert agrees(factor, "0.4742")
    assert warm.gel_time / 2700.0 == pytest.approx(factor, rel=0.1)


# An integrator of its own, 400 J/g: a film's gel over the pot life of a 30 min card at 150 g.
SELF_STARTS = [(0.03, 4.20), (0.05, 4.86), (0.1, 6.00), (0.2, 7.39), (0.3, 8.26), (0.5, 9.35)]


@pytest.mark.parametrize(("start", "times"), SELF_STARTS)
def test_a_cards_own_self_start_moves_the_film_against_the_cup(start, times):
    own = {**CONSTANT, "cure_self_start": start}
    kinetics = [own[name] for name in KINETICS]
    film = heat_rates.film_gel_time(rate_constant(1800.0, 25, 150, own), 298.15, 0.58, *kinetics)
    assert film / 1800 == pytest.approx(times, rel=0.01)


def test_a_cup_of_another_activation_energy_is_scipys(phone):
    own = {**CONSTANT, "activation_energy": 50e10, "cure_self_start": 0.3}
    cups = [cup(2.4e-4, mass, 20, 20, own) for mass in (30, 150)]
    for values, curve in zip(cups, heat_curves(phone, *cups), strict=True):
        gel, peak = by_scipy(values)
        assert curve.gel_time == pytest.approx(gel, rel=NEAR)
        assert curve.peak_temperature == pytest.approx(peak, abs=NEAR * (peak - values["air_temperature"]))
