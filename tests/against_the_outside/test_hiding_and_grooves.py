"""Hiding, grooves and lettering, held against Kubelka-Munk, geometry and shapely."""

import math

import pytest
from scipy.optimize import brentq
from shapely.geometry import Point, Polygon, box

from tests.against_the_outside.last_digit import agrees
from webapp.formulas import grooves, hiding, lettering

WHITE = 0.80
FULL = 0.98


@pytest.mark.parametrize(
    ("absorption", "power", "ratio"),
    [(0.01, 5, "0.94221"), (0.01, 10, "0.98860"), (0.1, 2, "0.85965")],
)
def test_the_contrast_ratio(absorption, power, ratio):
    # Kubelka, J. Opt. Soc. Am. 38 (1948) 448 (from memory): computed over a white of 0.80.
    assert agrees(hiding.contrast_ratio(absorption, power, WHITE), ratio)


def test_reflectance_over_black_and_white_in_the_hyperbolic_form():
    # The same, K/S 0.01, SX 5: R0 0.80488 over black, Rw 0.85425 over white; their ratio is the contrast.
    assert hiding.contrast_ratio(0.01, 5, WHITE) == pytest.approx(0.80488 / 0.85425, abs=1e-5)


@pytest.mark.parametrize(
    ("absorption", "power"), [(0.01, "8.168"), (0.1, "4.134"), (1, "1.467"), (5, "0.524")]
)
def test_the_power_that_hides_in_full(absorption, power):
    # Computed; full hiding at 0.98: ISO 6504-3:2019, ASTM D2805 (from memory).
    assert agrees(hiding.hiding_power(absorption, WHITE, FULL), power)


@pytest.mark.parametrize("absorption", [0.001, 0.03, 0.5, 3, 30, 100])
def test_scipy_finds_the_same_power(absorption):
    found = brentq(
        lambda power: hiding.contrast_ratio(absorption, power, WHITE) - FULL, 1e-3, 100, xtol=1e-13
    )
    assert hiding.hiding_power(absorption, WHITE, FULL) == pytest.approx(found, rel=1e-7)


def test_the_same_hiding_needs_the_same_load_times_depth():
    # Exact within the theory: C(2K, 2S, X) = C(K, S, 2X).
    once = hiding.hiding_load(4.134, 2.0, 0.02, 0.1, 0.15875)
    assert hiding.hiding_load(4.134, 2.0, 0.02, 0.1, 0.3175) == pytest.approx(once / 2, rel=1e-12)
    assert hiding.hiding_load(4.134, 4.134, 0.02, 0.1, 0.1) == pytest.approx(0.02, rel=1e-12)
    assert hiding.hiding_past_limit(0.0201, 0.02)
    assert not hiding.hiding_past_limit(0.02, 0.02)


def test_a_v_groove_of_an_inch_with_60_degrees_included():
    # Geometry: 0.433013 in2.
    assert agrees(grooves.v_groove_section(2.54, math.radians(60)) / 2.54**2, "0.433013")


@pytest.mark.parametrize("angle", [30, 60, 90, 120])
def test_a_v_groove_is_shapelys_triangle(angle):
    depth = grooves.v_groove_depth(1.2, math.radians(angle))
    triangle = Polygon([(-0.6, 0), (0.6, 0), (0, -depth)])
    assert grooves.v_groove_section(1.2, math.radians(angle)) == pytest.approx(triangle.area, rel=1e-12)
    assert math.degrees(2 * math.atan(0.6 / depth)) == pytest.approx(angle, rel=1e-12)


def test_a_round_groove_of_a_half_bit_0_4_wide():
    # Circular segment: depth 0.1, section 0.0279560.
    assert agrees(grooves.round_groove_depth(0.4, 0.5), "0.1")
    assert agrees(grooves.round_groove_section(0.4, 0.5), "0.0279560")


@pytest.mark.parametrize("width", [0.1, 0.4, 0.5])
def test_a_round_groove_is_what_shapely_cuts_off_a_circle(width):
    depth = grooves.round_groove_depth(width, 0.5)
    bit = Point(0, 0.25 - depth).buffer(0.25, quad_segs=4096)
    cut = bit.intersection(box(-1, -1, 1, 0))
    assert grooves.round_groove_section(width, 0.5) == pytest.approx(cut.area, rel=1e-6)
    assert cut.bounds[2] - cut.bounds[0] == pytest.approx(width, rel=1e-3)


def test_no_groove_is_wider_than_its_bit():
    assert grooves.round_groove_section_range(0.5, 0.5)
    assert not grooves.round_groove_section_range(0.51, 0.5)
    assert grooves.round_groove_depth_range(0.5, 0.5)
    assert not grooves.round_groove_depth_range(0.51, 0.5)


def test_what_grooves_and_pockets_take():
    # Geometry.
    assert grooves.no_groove_section() == 0
    assert grooves.groove_volume(0.25, 200.0) == pytest.approx(50.0, rel=1e-12)
    assert grooves.pocket_volume(1000.0, 0.1) == pytest.approx(100.0, rel=1e-12)


def test_letters_grow_with_their_cap_height():
    # Similar figures: area with the square, edge with the height; a stroke of a fifth, common practice,
    # no source.
    assert lettering.lettering_area(2.5, 10.0) == pytest.approx(250.0, rel=1e-12)
    assert lettering.lettering_edge(30.0, 10.0) == pytest.approx(300.0, rel=1e-12)
    assert lettering.plain_stroke_width(10.0, 0.2) == pytest.approx(2.0, rel=1e-12)
