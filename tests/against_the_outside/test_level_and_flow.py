"""Level, viscosity and levelling, held against geometry, Orchard's theory and a thin film under SciPy."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from tests.against_the_outside.last_digit import agrees
from tests.against_the_outside.orchard import thin_film_levels_in
from webapp.formulas import edge_hold, flow, level, rules

GRAVITY = 980.665
SIXTEENTH = 0.15875
SPAN = 60.96
SIXTEENTH_IN_A_FOOT = 1 / 192


def test_a_bench_out_by_a_sixteenth_in_a_foot():
    # Geometry: 24 in at 1/16 in per ft differ by 0.125 in; it is 0.2984 degrees, 5.208 mm in a metre.
    assert agrees(level.tilt_difference(SPAN, SIXTEENTH_IN_A_FOOT) / 2.54, "0.125")
    assert agrees(math.degrees(level.bench_angle(SIXTEENTH_IN_A_FOOT)), "0.2984")
    assert agrees(SIXTEENTH_IN_A_FOOT * 1000, "5.208")


def test_a_sixteenth_that_may_vary_by_a_tenth_over_24_inches():
    # Geometry: 0.26 mm in a metre.
    allowed = level.allowed_slope(SIXTEENTH, SPAN, 0.1)
    assert agrees(allowed * 1000, "0.26")
    assert level.bench_not_level(0.00027, allowed)
    assert not level.bench_not_level(0.00026, allowed)
    assert level.bench_not_level(-0.00027, allowed)


def test_the_high_edge_falls_dry_where_the_difference_is_twice_the_depth():
    # Geometry: 0.2984 degrees for 1/16 in over 24 in.
    dry = level.dry_edge_slope(SIXTEENTH, SPAN)
    assert agrees(math.degrees(math.atan(dry)), "0.2984")
    assert level.tilt_difference(SPAN, dry) == pytest.approx(2 * SIXTEENTH, rel=1e-12)
    assert level.high_edge_dry(dry, dry)
    assert level.high_edge_dry(-2 * dry, dry)
    assert not level.high_edge_dry(0.99 * dry, dry)


@pytest.mark.parametrize(("millimetres", "seconds"), [(100, 17.05), (300, 155.4)])
def test_a_ripple_that_is_long_against_the_depth_levels_as_orchard_says(millimetres, seconds):
    # Orchard, Appl. Sci. Res. A 11 (1963) 451: 1.5875 mm, 1 Pa s, 40 mN/m, 1.12 g/mL.
    found = flow.levelling_time(millimetres / 10, SIXTEENTH, 10.0, 1.12, 40.0, GRAVITY)
    assert found == pytest.approx(seconds, rel=0.02)


@pytest.mark.parametrize(("millimetres", "seconds"), [(10, "0.2132"), (50, "4.487"), (300, "158.6")])
def test_a_film_of_any_depth_levels_as_derived(millimetres, seconds):
    # Derived, and confirmed with a thin-film simulation: 35 mN/m, 1.10 g/mL, 1 Pa s, 1.5875 mm.
    assert agrees(flow.levelling_time(millimetres / 10, SIXTEENTH, 10.0, 1.10, 35.0, GRAVITY), seconds)


@pytest.mark.parametrize("x", [1e-4, 0.01, 0.1, 0.2499, 0.25, 0.2501, 0.5, 1.0, 3.0, 10.0, 20.0])
def test_the_share_of_a_deep_pools_flow(x):
    # (sinh x cosh x - x)/(cosh² x + x²), by numpy's long floats.
    long = np.longdouble(x)
    if x < 0.05:
        numerator = 2 / np.longdouble(3) * long**3 * (1 + long**2 / 5 + 2 * long**4 / 105)
    else:
        numerator = np.sinh(long) * np.cosh(long) - long
    expected = float(numerator / (np.cosh(long) ** 2 + long**2))
    assert rules.flow_share(x) == pytest.approx(expected, rel=1e-12)


def test_a_deep_pool_and_a_thin_film_are_the_limits():
    deep = flow.levelling_time(1.0, 50.0, 10.0, 1.10, 35.0, GRAVITY)
    wave_number = 2 * math.pi
    # Lamb, Hydrodynamics, viscous waves on deep water: 2 viscosity q/(density g + surface tension q²).
    assert deep == pytest.approx(20 * wave_number / (1.10 * GRAVITY + 35 * wave_number**2), rel=1e-9)
    thin = thin_film_levels_in(100.0, SIXTEENTH, 10.0, 1.10, 35.0, GRAVITY)
    assert flow.levelling_time(100.0, SIXTEENTH, 10.0, 1.10, 35.0, GRAVITY) == pytest.approx(thin, rel=1e-3)


def test_ripples_over_11_mm_level_by_gravity():
    # Derived: weight and pull are equal at 2π capillary lengths; 35 mN/m, 1.10 g/mL.
    length = edge_hold.capillary_length(35.0, 1.10, GRAVITY)
    assert agrees(flow.gravity_ripple_length(length) * 10, "11")
    by_both = thin_film_levels_in(flow.gravity_ripple_length(length), SIXTEENTH, 10.0, 1.10, 35.0, GRAVITY)
    by_pull = thin_film_levels_in(flow.gravity_ripple_length(length), SIXTEENTH, 10.0, 1.10, 35.0, 0.0)
    assert by_pull == pytest.approx(2 * by_both, rel=1e-12)


def test_a_heap_takes_44_minutes_an_e_fold_at_24_inches():
    # Derived: a ripple twice as long as the face; 35 mN/m, 1.10 g/mL, 1 Pa s, 1/16 in.
    assert agrees(flow.heap_time(SPAN, SIXTEENTH, 10.0, 1.10, 35.0, GRAVITY) / 60, "44")


def test_a_thin_film_stepped_by_scipy_levels_at_the_same_rate():
    # The thin-film equation h_t = (h³/(3 η) (ρ g h_x - γ h_xxx))_x on one wavelength, with a low ripple.
    wavelength, cells = 5.0, 64
    dx = wavelength / cells
    places = (np.arange(cells) + 0.5) * dx

    def spread(_, film):
        pressure = 1.10 * GRAVITY * film - 35.0 * (np.roll(film, -1) - 2 * film + np.roll(film, 1)) / dx**2
        between = ((film + np.roll(film, -1)) / 2) ** 3
        flux = -between / 30.0 * (np.roll(pressure, -1) - pressure) / dx
        return -(flux - np.roll(flux, 1)) / dx

    ripple = 1e-4 * SIXTEENTH * np.cos(2 * math.pi * places / wavelength)
    time = thin_film_levels_in(wavelength, SIXTEENTH, 10.0, 1.10, 35.0, GRAVITY)
    found = solve_ivp(spread, (0, time), SIXTEENTH + ripple, method="Radau", rtol=1e-8, atol=1e-12)
    left = np.ptp(found.y[:, -1]) / np.ptp(ripple)
    assert left == pytest.approx(math.exp(-1), rel=0.005)


def test_the_viscosity_of_a_card_with_two_figures_passes_through_both():
    # Arrhenius through two points: a straight line of log(viscosity) over 1/T.
    card = (12.0, 293.15, 4.0, 308.15)
    assert flow.film_viscosity(*card, 293.15) == pytest.approx(12.0, rel=1e-12)
    assert flow.film_viscosity(*card, 308.15) == pytest.approx(4.0, rel=1e-12)
    middle = 2 / (1 / 293.15 + 1 / 308.15)
    assert flow.film_viscosity(*card, middle) == pytest.approx(48**0.5, rel=1e-12)


def test_the_viscosity_of_a_card_with_one_figure_is_that_figure():
    assert flow.film_viscosity(12.0, 293.15, 12.0, 293.15, 303.15) == 12.0
    assert flow.film_viscosity(12.0, 293.15, 12.0, 313.15, 303.15) == pytest.approx(12.0, rel=1e-12)


def test_what_is_left_of_the_working_time_is_there_to_level():
    # Our choice of the usable share: three quarters to pour.
    assert flow.open_time(2400.0, 0.75) == pytest.approx(600.0, rel=1e-12)
    assert flow.ripples_stay(200.1, 600.0)
    assert not flow.ripples_stay(200.0, 600.0)


def test_the_longest_way_across():
    assert level.longest_side(30.0, 40.0) == 40.0
    assert level.longest_side(40.0, 30.0) == 40.0
