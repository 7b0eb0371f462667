"""Bubbles, held against Hadamard and Rybczynski, Stokes, and the library fluids."""

import pytest
from fluids.drag import v_terminal

from tests.against_the_outside.last_digit import agrees
from webapp.formulas import bubbles

GRAVITY = 980.665
SIXTEENTH = 0.15875


def test_half_a_millimetre_in_a_fresh_mix():
    # Hadamard 1911, Rybczynski 1911 (from memory); Stokes 1851: 1 Pa s, 1.12 g/mL, in mm/s.
    assert agrees(bubbles.bubble_rise_speed(0.05, 1.12, GRAVITY, 10.0) * 10, "0.2288")
    assert agrees(bubbles.coated_bubble_rise_speed(0.05, 1.12, GRAVITY, 10.0) * 10, "0.1525")


@pytest.mark.parametrize(
    ("millimetres", "clean", "coated"), [(0.5, "7", "10"), (0.1, "173", "260")], ids=["0.5 mm", "0.1 mm"]
)
def test_seconds_through_a_sixteenth(millimetres, clean, coated):
    # Kinematics, at the same speeds.
    speed = bubbles.bubble_rise_speed(millimetres / 10, 1.12, GRAVITY, 10.0)
    slower = bubbles.coated_bubble_rise_speed(millimetres / 10, 1.12, GRAVITY, 10.0)
    assert agrees(bubbles.bubble_rise_time(SIXTEENTH, speed), clean)
    assert agrees(bubbles.coated_bubble_rise_time(SIXTEENTH, slower), coated)


def test_a_twentieth_of_a_millimetre_takes_12_to_18_minutes():
    # 11.6 and 17.3 minutes, given as 12 to 18.
    speed = bubbles.bubble_rise_speed(0.005, 1.12, GRAVITY, 10.0)
    slower = bubbles.coated_bubble_rise_speed(0.005, 1.12, GRAVITY, 10.0)
    assert agrees(bubbles.bubble_rise_time(SIXTEENTH, speed) / 60, "12")
    assert 17 < bubbles.coated_bubble_rise_time(SIXTEENTH, slower) / 60 < 18


def test_the_smallest_bubble_that_clears_a_sixteenth_in_20_minutes():
    # Stokes turned round: 1 Pa s, 1.12 g/mL: 0.047 mm.
    smallest = bubbles.smallest_rising_bubble(SIXTEENTH, 1200.0, 10.0, 1.12, GRAVITY)
    assert agrees(smallest * 10, "0.047")
    speed = bubbles.coated_bubble_rise_speed(smallest, 1.12, GRAVITY, 10.0)
    assert bubbles.coated_bubble_rise_time(SIXTEENTH, speed) == pytest.approx(1200.0, rel=1e-12)


@pytest.mark.parametrize("diameter", [0.005, 0.01, 0.05])
@pytest.mark.parametrize("viscosity", [5.0, 10.0, 50.0])
def test_a_coated_bubble_rises_as_a_sphere_of_the_library_fluids(diameter, viscosity):
    # fluids.drag.v_terminal in SI units: a sphere of no weight, in m, kg/m3 and Pa s.
    speed = -v_terminal(D=diameter / 100, rhop=1e-9, rho=1120.0, mu=viscosity / 10)
    found = bubbles.coated_bubble_rise_speed(diameter, 1.12, GRAVITY, viscosity)
    assert found / 100 == pytest.approx(speed, rel=1e-4)
