"""The cup's heat at single points, held against SciPy and integrals done by hand."""

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

from tests.against_the_outside.cups_by_scipy import (
    CONSTANT,
    HELD,
    ICE_POINT,
    KINETICS,
    by_scipy,
    cup,
    rate_constant,
)
from tests.against_the_outside.last_digit import agrees
from tests.phone_curves import heat_curves
from webapp.formulas import cup_heat, cup_warmth, cure_rate, heat_rates


@pytest.mark.parametrize(("mass", "surface"), [(100, "136.842"), (150, "161.085")])
def test_the_surface_of_a_cup(mass, surface):
    # Geometry: 7.5 cm across, density 1.10 g/cm3, top, side and bottom, in cm2.
    assert agrees(cup_heat.cup_surface(mass, 7.5, 1.10), surface)
    assert agrees(cure_rate.card_cup_surface(mass, 7.5, 1.10), surface)


HELD_CASES = [
    (150, 25, "45.285", "207.77"),
    (100, 25, "49.281", "198.07"),
    (150, 20, "74.833", "189.14"),
]


@pytest.mark.parametrize(("mass", "room", "minutes", "degrees"), HELD_CASES)
def test_cups_with_heat_capacity_and_loss_held_constant(mass, room, minutes, degrees):
    # SciPy, tight tolerances: 1.9 J/(g K), 10 W/(m2 K), rate constant 2.4e-4 per second.
    values = cup(2.4e-4, mass, room, room, HELD)
    gel, peak = by_scipy(values)
    assert gel / 60 == pytest.approx(float(minutes), abs=0.001)
    assert peak - ICE_POINT == pytest.approx(float(degrees), abs=0.01)


def test_the_phones_cups_with_heat_capacity_and_loss_held_constant(phone):
    cups = [cup(2.4e-4, mass, room, room, HELD) for mass, room, *_ in HELD_CASES]
    for curve, (*_, minutes, degrees) in zip(heat_curves(phone, *cups), HELD_CASES, strict=True):
        assert curve.gel_time / 60 == pytest.approx(float(minutes), rel=0.0005)
        assert curve.peak_temperature - ICE_POINT == pytest.approx(float(degrees), abs=0.1)


# SciPy: rate constant 2.37855e-4 per second, peak 178.5 degC; 100 g gel at 49.07 min, peak 167.8 degC.
CARD_CASES = [(150, "45.00", "178.5"), (100, "49.07", "167.8")]


@pytest.mark.parametrize(("mass", "minutes", "degrees"), CARD_CASES)
def test_the_card_of_45_minutes_150_g_25_degrees(mass, minutes, degrees):
    gel, peak = by_scipy(cup(2.37855e-4, mass, 25, 25))
    assert agrees(gel / 60, minutes)
    assert agrees(peak - ICE_POINT, degrees)


def test_the_phones_card_of_45_minutes_150_g_25_degrees(phone):
    # By four steps of a secant, 0.02% off the integrator's 2.37855e-4.
    found = rate_constant(2700.0, 25, 150)
    assert found == pytest.approx(2.37884e-4, rel=0.00001)
    for mass, minutes, degrees in CARD_CASES:
        [curve] = heat_curves(phone, cup(found, mass, 25, 25))
        assert agrees(curve.peak_temperature - ICE_POINT, degrees)
        assert curve.gel_time / 60 == pytest.approx(float(minutes), rel=0.0005)


@pytest.mark.parametrize(("conversion", "minutes"), [(0.25, "109.453"), (0.58, "246.985")])
def test_the_film_at_one_temperature(conversion, minutes):
    # Integrated by hand, and by SciPy: rate constant 2.4e-4 per second.
    kinetics = [CONSTANT[name] for name in KINETICS]
    assert agrees(heat_rates.film_gel_time(2.4e-4, 298.15, conversion, *kinetics) / 60, minutes)
    found = solve_ivp(
        lambda _, state: [heat_rates.conversion_rate(state[0], 298.15, 2.4e-4, *kinetics)],
        (0, heat_rates.film_gel_time(2.4e-4, 298.15, conversion, *kinetics)),
        [0.0],
        rtol=1e-10,
        atol=1e-12,
    )
    assert found.y[0, -1] == pytest.approx(conversion, rel=1e-7)


def test_a_film_at_another_temperature_gels_by_the_time_factor():
    # 57 kJ/mol: time against 25 degC is 3.3807 at 10 degC.
    kinetics = [CONSTANT[name] for name in KINETICS]
    cold = heat_rates.film_gel_time(2.4e-4, 283.15, 0.58, *kinetics)
    assert agrees(cold / heat_rates.film_gel_time(2.4e-4, 298.15, 0.58, *kinetics), "3.3807")


def test_the_fastest_conversion_is_0_19719_of_the_rate_constant():
    # The greatest of (0.1 + x)(1 - x)².
    found = minimize_scalar(
        lambda x: -heat_rates.conversion_rate(x, 298.15, 1.0, *[CONSTANT[name] for name in KINETICS]),
        bounds=(0, 1),
        method="bounded",
    )
    assert agrees(-found.fun, "0.19719")


def test_a_film_thickens_two_to_three_times_later_than_the_cup():
    # The model of the cup's heat; 30% to gel, where a mix has thickened by hand.
    kinetics = [CONSTANT[name] for name in KINETICS]
    thick, _ = by_scipy({**cup(2.37855e-4, 150, 25, 25), "gel_conversion": 0.25})
    assert 2 < heat_rates.film_gel_time(2.37855e-4, 298.15, 0.25, *kinetics) / thick < 3


# The two ends of what is not known of a mix, in °C; 0 cool, 1 warm, 2 runs hot, 3 can smoke, 4 will smoke.
CLASSES = [
    (25, 25, 0),
    (44.9, 30, 0),
    (45, 30, 1),
    (30, 64.9, 1),
    (65, 30, 2),
    (30, 99.9, 2),
    (100, 99.9, 3),
    (30, 178.5, 3),
    (100, 100, 4),
    (178.5, 107, 4),
]


@pytest.mark.parametrize(("one", "other", "shown"), CLASSES)
def test_classes_of_a_peak(one, other, shown):
    # Engineering classes: cool under 45, warm to 65, runs hot from there; it can smoke from 100 at one end.
    limits = [CONSTANT[name] for name in ("cup_warm_from", "cup_hot_from", "cup_smokes_from")]
    assert cup_warmth.heat_class(one + ICE_POINT, other + ICE_POINT, *limits) == shown
    assert cup_warmth.heat_class(other + ICE_POINT, one + ICE_POINT, *limits) == shown


def test_the_band_is_a_quarter_either_way():
    # A conduction check of the model.
    assert cup_heat.earliest_gel_time(2400.0, 0.25) == pytest.approx(1800.0, rel=1e-12)
    assert cup_heat.latest_gel_time(2400.0, 0.25) == pytest.approx(3000.0, rel=1e-12)
