"""The march to gel and to the peak, held against a tight integrator (SciPy's LSODA) of the same model.

The tables are the integrator's own; the march may be 4% off in time and 4 K in temperature. In the last
test the integrator runs here and now.
"""

import math

import pytest
from scipy.integrate import solve_ivp

from webapp.formulas import card_heat, cup_heat, cup_warmth, cure_chemistry, cure_rate
from webapp.formulas.rules import filled_surface
from webapp.formulas.warmth_rules import gel_rise, rise_after

ENERGY = 57e10 / 8.314462618e7
LOSSES = (0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
RATE = 2.37855e-4


def cooling(mass):
    return 9000 * filled_surface(mass, 7.5, 1.10) / (mass * 1.8e7)


def cup(mass, air, resin, rate=RATE, heat=400, self_start=0.1):
    kelvins = (resin + 273.15, air + 273.15)
    return (cooling(mass), rate, 0.58, *kelvins, heat / 1.8, self_start, ENERGY, *LOSSES)


def card(minutes, mass, heat, self_start=0.1):
    return (minutes * 60, cooling(mass), 0.58, 298.15, heat / 1.8, self_start, ENERGY, *LOSSES)


# Minutes to gel at 10, 15, 20, 25, 30, 35 and 40 °C, by the integrator: 45 min of 150 g at 25 °C, 400 J/g.
GEL = {
    20: (765.3, 477.8, 293.95, 173.54, 90.00, 38.19, 20.88),
    50: (666.6, 374.1, 168.76, 67.44, 37.39, 23.40, 15.62),
    150: (382.2, 137.92, 73.83, 45.00, 29.38, 20.02, 14.06),
    300: (216.1, 109.63, 64.92, 41.56, 27.89, 19.33, 13.72),
    1000: (168.2, 95.82, 59.85, 39.44, 26.94, 18.87, 13.49),
}
CELSIUS = (10, 15, 20, 25, 30, 35, 40)


@pytest.mark.parametrize(
    ("mass", "celsius", "minutes"),
    [(mass, at, wanted) for mass, row in GEL.items() for at, wanted in zip(CELSIUS, row, strict=True)],
)
def test_a_cup_gels_when_the_integrator_says(mass, celsius, minutes):
    assert cup_heat.gel_time(*cup(mass, celsius, celsius)) / 60 == pytest.approx(minutes, rel=0.04)


# Air and resin apart, 150 g; minutes by the integrator.
@pytest.mark.parametrize(
    ("air", "resin", "minutes"), [(20, 30, 44.73), (15, 25, 95.27), (25, 15, 63.99), (30, 20, 44.58)]
)
def test_cold_cans_in_a_warm_room_gel_when_the_integrator_says(air, resin, minutes):
    assert cup_heat.gel_time(*cup(150, air, resin)) / 60 == pytest.approx(minutes, rel=0.04)


# Rate constant, 1/s, by the integrator: pot life in minutes, mass in grams, heat in J/g.
@pytest.mark.parametrize(
    ("minutes", "mass", "heat", "rate"),
    [
        (45, 150, 400, 2.37855e-4),
        (30, 150, 400, 3.29184e-4),
        (45, 150, 285.5, 3.13168e-4),
        (20, 100, 285.5, 6.34430e-4),
    ],
)
def test_a_card_calibrates_its_own_rate(minutes, mass, heat, rate):
    assert cure_rate.rate_constant(*card(minutes, mass, heat)) == pytest.approx(rate, rel=0.005)


def test_the_march_stands_where_it_is_known_to_stand_after_eight_steps():
    # 45.006 min and 120.193 °C: the march worked by hand in another program.
    march = cup(150, 25, 25)
    assert cup_heat.gel_time(*march) / 60 == pytest.approx(45.006, abs=0.001)
    rest = (0.58, march[0] / RATE, 298.15, 400 / 1.8, 0.1, ENERGY, *LOSSES)
    assert 25 + gel_rise(0.0, *rest) == pytest.approx(120.193, abs=0.001)


# Peaks in °C of 30 to 1000 g by the integrator, the card of 45 min and 150 g at 25 °C, 285 J/g.
PEAK = {
    20: (26, 32, 71, 99, 111, 120, 127, 131),
    25: (36, 56, 109, 123, 129, 134, 139, 142),
    30: (54, 96, 129, 137, 141, 145, 148, 150),
    35: (88, 122, 142, 147, 150, 153, 155, 157),
}
MASSES = (30, 50, 100, 150, 200, 300, 500, 1000)


@pytest.mark.parametrize(
    ("celsius", "mass", "peak"),
    [(at, mass, wanted) for at, row in PEAK.items() for mass, wanted in zip(MASSES, row, strict=True)],
)
def test_a_cup_left_standing_gets_as_hot_as_the_integrator_says(celsius, mass, peak):
    found = cup_warmth.peak_temperature(*cup(mass, celsius, celsius, 3.13168e-4, 285.5))
    assert found - 273.15 == pytest.approx(peak, abs=4)


# Self-start by the time a thin film sets, in pot lives of 30 min of 150 g; by the integrator.
@pytest.mark.parametrize(
    ("pot_lives", "heat", "self_start"),
    [
        (3.84, 285.5, 0.05),
        (4.55, 285.5, 0.1),
        (5.38, 285.5, 0.2),
        (5.88, 285.5, 0.3),
        (6.00, 400, 0.1),
        (7.39, 400, 0.2),
    ],
)
def test_a_thin_film_that_sets_tells_how_a_mix_starts_by_itself(pot_lives, heat, self_start):
    mix = (0.58, 298.15, heat / 1.8, ENERGY, *LOSSES)
    found = card_heat.self_start_by_set_time(pot_lives * 1800, 1800, cooling(150), *mix)
    assert found == pytest.approx(self_start, rel=0.06)


# Heat of the cure by the peak that a card states: minutes, grams, °C; J/g by the integrator.
@pytest.mark.parametrize(
    ("minutes", "mass", "peak", "heat"), [(30, 100, 150, 329.4), (45, 150, 123, 285.3), (20, 100, 177, 369.3)]
)
def test_a_stated_peak_tells_the_heat_of_the_cure(minutes, mass, peak, heat):
    mix = (0.58, 298.15, 200 / 1.8, 500 / 1.8, 1.8e7, 0.1, ENERGY, *LOSSES)
    found = card_heat.heat_by_peak(peak + 273.15, minutes * 60, cooling(mass), cooling(mass), *mix)
    assert found / 1e7 == pytest.approx(heat, rel=0.01)


# Heat by chemistry: parts by volume or mass, densities, EEW; J/g, arithmetic from 100 kJ an epoxide.
@pytest.mark.parametrize(
    ("mass_ratio", "equivalent", "heat"),
    [
        (1.15 / 0.97, 190, 285.5),
        (1.15 / 0.97, 210, 258.3),
        (2 * 1.15 / 0.95, 190, 372.5),
        (100 / 43, 190, 368.1),
    ],
)
def test_heat_follows_from_the_share_of_resin(mass_ratio, equivalent, heat):
    share = cure_chemistry.part_a_share_by_mass(mass_ratio)
    assert cure_chemistry.heat_by_resin(100e10, share, equivalent) / 1e7 == pytest.approx(heat, abs=0.05)


def test_a_hardener_that_is_short_bounds_the_heat():
    # EEW 190 and AHEW 20.6 at 10.84 parts to the hundred: 474.8 J/g.
    share = 10.84 / 110.84
    assert cure_chemistry.heat_by_hardener(100e10, share, 20.6) / 1e7 == pytest.approx(474.8, abs=0.05)


# Pour-by in minutes by the integrator, 0.75 of gel: grams, air, resin.
@pytest.mark.parametrize(
    ("mass", "air", "resin", "minutes"),
    [
        (400, 25, 25, 30.58),
        (400, 30, 30, 20.66),
        (150, 20, 30, 33.54),
        (400, 20, 30, 26.31),
        (600, 30, 35, 15.16),
    ],
)
def test_a_cup_is_poured_before_three_quarters_of_its_gel(mass, air, resin, minutes):
    gel = cup_heat.gel_time(*cup(mass, air, resin))
    assert cup_heat.heat_pour_by(gel, 0.75) / 60 == pytest.approx(minutes, rel=0.02)


def integrated(mass, air, resin, rate, heat, self_start):
    surface = filled_surface(mass, 7.5, 1.10)

    def flow(_, state):
        conversion, kelvins = state
        speed = rate * math.exp(ENERGY * (1 / 298.15 - 1 / kelvins))
        cured = speed * (self_start + conversion) * (1 - conversion) ** 2
        capacity = min(1.8 + 0.004 * (kelvins - 298.15), 2.4)
        loss = (9 + 0.08 * abs(kelvins - air)) * 1e-4 * surface * (kelvins - air) / mass
        return [cured, (heat * cured - loss) / capacity]

    def gelled(_, state):
        return state[0] - 0.58

    gelled.terminal = True
    return solve_ivp(
        flow, (0, 1e6), [0.0, resin], method="LSODA", rtol=1e-9, atol=1e-11, events=gelled, dense_output=True
    )


@pytest.mark.parametrize("mass", [60, 200, 700])
@pytest.mark.parametrize(("air", "resin"), [(12, 22), (24, 18), (33, 38)])
@pytest.mark.parametrize(("heat", "self_start"), [(260, 0.05), (440, 0.3)])
def test_the_march_keeps_to_scipy_on_the_way_to_gel(mass, air, resin, heat, self_start):
    kelvins = (air + 273.15, resin + 273.15)
    exact = integrated(mass, *kelvins, 3e-4, heat, self_start)
    march = cup(mass, air, resin, 3e-4, heat, self_start)
    [gel] = exact.t_events[0]
    assert cup_heat.gel_time(*march) == pytest.approx(gel, rel=0.04)
    rest = (0.58, march[0] / 3e-4, kelvins[0], heat / 1.8, self_start, ENERGY, *LOSSES)
    rise = rise_after(gel * 0.75 * 3e-4, resin - air, *rest)
    # Straight within a step of a curve that bends upward: it errs high, and never by much.
    assert -3 <= kelvins[0] + rise - exact.sol(0.75 * gel)[1] <= 12
