"""Laws of edges, beads, flow, bubbles, hiding and the cup's heat: physics points the right way."""

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.against_the_outside.cups_by_scipy import CONSTANT
from tests.against_the_outside.orchard import thin_film_levels_in
from tests.phone_curves import beads, heat_curves
from webapp.formulas import bead, bubbles, cup_heat, edge_hold, flow, hiding, level

GRAVITY = CONSTANT["gravity"]
LAW = settings(max_examples=50, deadline=None, derandomize=True)

lengths = st.floats(0.1, 0.3)
wetting_angles = st.floats(0, math.pi / 2)
edge_angles = st.floats(0.05, 3.1)
depths = st.floats(0.01, 5)
waves = st.floats(0.1, 200)
viscosities = st.floats(0.01, 1000)
tensions = st.floats(10, 80)
densities = st.floats(0.5, 3)
more = st.floats(1.01, 4)


def at_most(one: float, other: float) -> bool:
    return one <= other * (1 + 1e-9) + 1e-12


@LAW
@given(lengths, wetting_angles, st.floats(0, 5), more)
def test_a_rounder_edge_holds_less_and_never_less_than_no_edge(
    a: float, wet: float, radius: float, by: float
):
    held = edge_hold.rounded_edge_hold_depth(a, wet, radius)
    assert at_most(edge_hold.rounded_edge_hold_depth(a, wet, radius * by), held)
    assert at_most(held, edge_hold.sharp_edge_hold_depth(a, edge_hold.edge_angle(wet, math.pi / 2)))
    assert at_most(2 * a * math.sin(wet / 2), held)


@LAW
@given(lengths, wetting_angles, st.floats(0.2, math.pi), more)
def test_a_sharper_corner_holds_no_less(a: float, wet: float, corner: float, by: float):
    blunt = edge_hold.sharp_edge_hold_depth(a, edge_hold.edge_angle(wet, corner))
    assert at_most(blunt, edge_hold.sharp_edge_hold_depth(a, edge_hold.edge_angle(wet, corner / by)))
    assert at_most(blunt, 2 * a)


@LAW
@given(lengths, edge_angles, st.floats(0.02, 5), st.floats(1.05, 3))
def test_a_wider_stroke_holds_more_and_no_bead_passes_its_two_limits(
    phone, a: float, angle: float, width: float, by: float
):
    narrow, wide = beads(phone, (width, a, angle), (width * by, a, angle))
    assert 0 < narrow.section < wide.section
    assert at_most(narrow.height, wide.height) or angle > math.pi / 2
    assert narrow.height <= 2 * a * math.sin(angle / 2) * (1 + 1e-6)
    assert narrow.height <= bead.narrow_bead_height(width, angle) * (1 + 1e-6)
    assert narrow.section <= bead.narrow_bead_section(width, angle) * (1 + 1e-6)


@LAW
@given(lengths, edge_angles, st.floats(0.02, 5), more)
def test_a_bead_is_free_of_scale(phone, a: float, angle: float, width: float, by: float):
    one, other = beads(phone, (width, a, angle), (width * by, a * by, angle))
    assert other.height == pytest.approx(one.height * by, rel=1e-7)
    assert other.section == pytest.approx(one.section * by**2, rel=1e-7)


@LAW
@given(waves, depths, viscosities, densities, tensions, more)
def test_a_deeper_film_and_a_thinner_mix_level_faster(
    wave: float, depth: float, viscosity: float, density: float, tension: float, by: float
):
    time = flow.levelling_time(wave, depth, viscosity, density, tension, GRAVITY)
    assert time > 0
    assert at_most(flow.levelling_time(wave, depth * by, viscosity, density, tension, GRAVITY), time)
    thicker = flow.levelling_time(wave, depth, viscosity * by, density, tension, GRAVITY)
    assert thicker == pytest.approx(time * by, rel=1e-9)
    thin = thin_film_levels_in(wave, depth, viscosity, density, tension, GRAVITY)
    assert at_most(thin, time)


@LAW
@given(st.floats(1, 1000), st.floats(275, 330), st.floats(1.05, 20), st.floats(5, 30), st.floats(275, 330))
def test_a_warmer_film_is_never_thicker(stated: float, at: float, thinner: float, apart: float, room: float):
    card = (stated, at, stated / thinner, at + apart)
    assert flow.film_viscosity(*card, room + 5) <= flow.film_viscosity(*card, room)


@LAW
@given(st.floats(0.001, 0.5), densities, viscosities, depths, st.floats(1, 1e5), more)
def test_twice_the_bubble_rises_four_times_as_fast(
    width: float, density: float, viscosity: float, depth: float, time: float, by: float
):
    speed = bubbles.bubble_rise_speed(width, density, GRAVITY, viscosity)
    assert bubbles.bubble_rise_speed(width * by, density, GRAVITY, viscosity) == pytest.approx(speed * by**2)
    coated = bubbles.coated_bubble_rise_speed(width, density, GRAVITY, viscosity)
    assert coated == pytest.approx(speed * 2 / 3, rel=1e-12)
    smallest = bubbles.smallest_rising_bubble(depth, time, viscosity, density, GRAVITY)
    rising = bubbles.coated_bubble_rise_speed(smallest, density, GRAVITY, viscosity)
    assert bubbles.coated_bubble_rise_time(depth, rising) == pytest.approx(time, rel=1e-9)


@LAW
@given(st.floats(0.001, 20), st.floats(0.05, 8), more)
def test_more_tint_hides_better_up_to_all(absorption: float, power: float, by: float):
    ratio = hiding.contrast_ratio(absorption, power, 0.80)
    assert ratio > 0
    assert at_most(ratio, hiding.contrast_ratio(absorption, power * by, 0.80))
    assert at_most(hiding.contrast_ratio(absorption, power * by, 0.80), 1)


@LAW
@given(st.floats(0.001, 20))
def test_the_hiding_power_hides_to_the_wanted_ratio(absorption: float):
    power = hiding.hiding_power(absorption, 0.80, 0.98)
    assert hiding.contrast_ratio(absorption, power, 0.80) == pytest.approx(0.98, rel=1e-9)


@LAW
@given(depths, st.floats(1, 3000), st.floats(0.01, 1), st.floats(0.0, 0.2))
def test_a_bench_is_too_steep_exactly_past_the_slope_it_is_allowed(
    depth: float, span: float, share: float, slope: float
):
    allowed = level.allowed_slope(depth, span, share)
    assert level.tilt_difference(span, allowed) == pytest.approx(depth * share)
    assert level.bench_not_level(slope, allowed) == (slope > allowed)
    assert allowed <= level.dry_edge_slope(depth, span) / 2 * (1 + 1e-9)


def cup(mass: float, room: float, constant: float) -> dict[str, float]:
    surface = cup_heat.cup_surface(mass, 7.5, 1.10)
    here = {"cup_mass": mass, "cup_surface": surface, "resin_temperature": room, "air_temperature": room}
    return {**CONSTANT, **here, "rate_constant": constant}


@LAW
@given(st.floats(5, 2000), st.floats(278, 313), st.floats(3e-5, 2e-3), more, st.floats(1, 15))
def test_a_larger_or_a_warmer_cup_gels_sooner_and_gets_hotter(
    phone, mass: float, room: float, constant: float, by: float, warmer: float
):
    curve, larger, warm = heat_curves(
        phone, cup(mass, room, constant), cup(mass * by, room, constant), cup(mass, room + warmer, constant)
    )
    conversions = [conversion for conversion, _ in curve.states]
    assert all(before < after for before, after in pairwise(conversions))
    assert 0 <= conversions[0] <= conversions[-1] <= 1
    assert all(temperature >= room - 1e-6 for _, temperature in curve.states)
    assert larger.gel_time <= curve.gel_time * 1.0005
    assert larger.peak_temperature >= curve.peak_temperature - 0.1
    assert warm.gel_time < curve.gel_time
    assert warm.peak_temperature > curve.peak_temperature
    rise = CONSTANT["reaction_heat"] / CONSTANT["heat_capacity"]
    assert curve.peak_temperature <= room + rise
