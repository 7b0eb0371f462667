"""Laws of single formulas: they scale, add up and keep their symmetries; physics points the right way."""

import math
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from webapp.formulas import (
    areas,
    cost,
    cups,
    cure,
    drops,
    edges,
    film,
    full_cup,
    misreading,
    ratio,
    readings,
    schedule,
    tint,
)
from webapp.formulas.book import load_book
from webapp.formulas.conditions import dew_point
from webapp.formulas.working_time import working_time

BOOK = load_book()
LAW = settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))

LENGTH = st.floats(0.1, 3000)
DEPTH = st.floats(0.01, 5)
VOLUME = st.floats(1, 20000)
SHOP = st.floats(273.15, 323.15)
RATIO = st.floats(0.01, 100)
ENERGY = (57e10, 8.314462618e7)


@LAW
@given(face_area=LENGTH, depth=DEPTH, by=st.floats(1, 8))
def test_twice_the_depth_is_twice_the_film(face_area: float, depth: float, by: float) -> None:
    once = film.film_volume(face_area, depth, 0)
    assert film.film_volume(face_area, 2 * depth, 0) == pytest.approx(2 * once)
    assert film.film_volume(by * face_area, depth, 0) == pytest.approx(by * once)
    assert film.film_volume(face_area, depth, depth) > once


SHAPES = {
    "rectangle": ("width", "height"),
    "rounded_rectangle": ("width", "height", "corner_radius"),
    "circle": ("diameter",),
    "ring": ("outer_diameter", "inner_diameter"),
    "ellipse": ("width", "height"),
    "triangle": ("base", "height"),
    "capsule": ("length", "width"),
    "half_round": ("diameter",),
    "arch_top": ("width", "side_height", "rise"),
    "trapezoid": ("top_width", "bottom_width", "height"),
    "stroke": ("stroke_length", "stroke_width"),
}


@pytest.mark.parametrize("shape", SHAPES)
@LAW
@given(data=st.data(), by=st.floats(0.1, 10))
def test_a_shape_scales_and_no_edge_is_shorter_than_a_circles(
    shape: str, data: st.DataObject, by: float
) -> None:
    sizes = {name: data.draw(LENGTH, name) for name in SHAPES[shape]}
    inside = BOOK.ranges.get(f"{shape}_area_range")
    assume(not inside or inside.formula.function(**{each: sizes[each] for each in inside.formula.parameters}))
    scaled = {name: by * each for name, each in sizes.items()}
    area, edge = getattr(areas, f"{shape}_area"), getattr(edges, f"{shape}_edge")
    assert area(**scaled) == pytest.approx(by**2 * area(**sizes), rel=1e-6)
    assert edge(**scaled) == pytest.approx(by * edge(**sizes), rel=1e-6)
    assert edge(**sizes) ** 2 >= 4 * math.pi * area(**sizes) * (1 - 1e-3)


@LAW
@given(sides=st.integers(3, 100), across=LENGTH)
def test_a_polygon_grows_towards_its_circle(sides: int, across: float) -> None:
    assert (
        areas.polygon_area(sides, across) < areas.polygon_area(sides + 1, across) < areas.circle_area(across)
    )
    assert (
        edges.polygon_edge(sides, across) < edges.polygon_edge(sides + 1, across) < edges.circle_edge(across)
    )


@LAW
@given(width=LENGTH, height=LENGTH)
def test_width_and_height_may_be_exchanged(width: float, height: float) -> None:
    for each in (areas.rectangle_area, areas.ellipse_area, edges.rectangle_edge, edges.ellipse_edge):
        assert each(width, height) == pytest.approx(each(height, width), rel=1e-12)


TIMES = (
    working_time,
    cure.tack_free_time,
    cure.recoat_opens,
    cure.recoat_closes,
    cure.cure_time,
    cure.top_coat_wait,
)


@pytest.mark.parametrize("time", TIMES, ids=lambda each: each.__name__)
@LAW
@given(stated=st.floats(60, 1e6), at=SHOP, room=SHOP, warmer=st.floats(0.01, 30))
def test_hotter_is_shorter(time: Any, stated: float, at: float, room: float, warmer: float) -> None:
    cool = time(stated, at, room, *ENERGY)
    assert time(stated, at, room + warmer, *ENERGY) < cool
    assert time(2 * stated, at, room, *ENERGY) == pytest.approx(2 * cool)
    assert time(cool, room, at, *ENERGY) == pytest.approx(stated)


@LAW
@given(air=st.floats(233.15, 323.15), humidity=st.floats(0.01, 0.99), more=st.floats(0.001, 0.01))
def test_the_dew_point_lies_under_the_air_and_rises_with_its_dampness(
    air: float, humidity: float, more: float
) -> None:
    magnus = (17.625, 243.04, 273.15)
    dew = dew_point(air, humidity, *magnus)
    assert dew < air
    assert dew_point(air, humidity + more, *magnus) > dew
    assert dew_point(air + 1, humidity, *magnus) > dew
    assert dew_point(air, 1, *magnus) == pytest.approx(air, abs=1e-9)


@LAW
@given(cup=VOLUME, a=RATIO, b=RATIO, density_a=st.floats(0.5, 3), density_b=st.floats(0.5, 3))
def test_exchanging_a_and_b_exchanges_the_parts(
    cup: float, a: float, b: float, density_a: float, density_b: float
) -> None:
    share = ratio.part_a_share(ratio.volume_ratio_from_mass(a, b, density_a, density_b))
    other = ratio.part_a_share(ratio.volume_ratio_from_mass(b, a, density_b, density_a))
    assert ratio.part_a_volume(cup, share) == pytest.approx(ratio.part_b_volume(cup, other), rel=1e-9)
    masses = ratio.part_a_mass(ratio.part_a_volume(cup, share), density_a) / ratio.part_b_mass(
        ratio.part_b_volume(cup, share), density_b
    )
    assert masses == pytest.approx(a / b, rel=1e-9)
    assert ratio.mixed_density(share, density_a, density_b) == pytest.approx(
        ratio.mixed_density(other, density_b, density_a), rel=1e-9
    )


@LAW
@given(need=VOLUME, stated=RATIO, mark=st.floats(0.05, 1000), tolerance=st.floats(0.005, 0.15))
def test_readings_stand_on_half_marks_and_hold_what_is_needed(
    need: float, stated: float, mark: float, tolerance: float
) -> None:
    share = ratio.part_a_share(stated)
    parts = (ratio.part_a_volume(need, share), ratio.part_b_volume(need, share))
    b = readings.reading_b(*parts, stated, tolerance, mark, 1e9 * mark)
    a = readings.reading_a(b, parts[0], stated, tolerance, mark)
    for part, reading in zip(parts, (a, b), strict=True):
        marks = 2 * reading / mark
        assert marks == pytest.approx(round(marks), abs=1e-6 * max(1, marks))
        assert reading >= part - 1e-8 * mark


@LAW
@given(limit=VOLUME, stated=RATIO, mark=st.floats(0.05, 1000), fill=st.floats(0.05, 1))
def test_what_a_full_cup_can_give_is_measured_on_marks_under_its_limit(
    limit: float, stated: float, mark: float, fill: float
) -> None:
    share, tolerance = ratio.part_a_share(stated), 0.025
    full_b = full_cup.full_reading_b(limit, share, stated, tolerance, mark)
    full_a = full_cup.full_reading_a(full_b, limit, share, stated, tolerance, mark)
    assume(full_cup.full_cup_range(full_a, full_b, stated, tolerance))
    need = fill * full_cup.full_cup(full_a, full_b, share, stated, tolerance)
    parts = (ratio.part_a_volume(need, share), ratio.part_b_volume(need, share))
    b = readings.reading_b(*parts, stated, tolerance, mark, full_b)
    a = readings.reading_a(b, parts[0], stated, tolerance, mark)
    assert a + b <= limit * (1 + 1e-9) + 1e-8 * mark
    assert abs(readings.ratio_deviation(a, b, stated)) <= tolerance + 1e-6


@LAW
@given(a=st.floats(1, 1000), b=st.floats(1, 1000), mark=st.floats(0.01, 100), share=st.floats(0.1, 0.5))
def test_finer_marks_never_make_the_ratio_worse(a: float, b: float, mark: float, share: float) -> None:
    def worst(graduation: float) -> float:
        misreads = (misreading.misread_a(graduation, share), misreading.misread_b(graduation, share))
        return misreading.worst_marks_deviation(a, b, a / b, *misreads)

    assume(misreading.misread_b(mark, share) < b * 0.99)
    assert worst(mark / 2) <= worst(mark)


@LAW
@given(need=VOLUME, full=st.floats(10, 20000), larger=st.floats(1, 5), thin=st.floats(0, 0.05))
def test_a_larger_cup_never_needs_more_of_them(need: float, full: float, larger: float, thin: float) -> None:
    residue = cups.full_cup_residue(full, thin, 2)
    more = cups.full_cup_residue(larger * full, thin, 2)
    assume(full > 2 * residue)
    few = cups.cups_by_geometry(need, larger * full, more)
    assert 1 <= few <= cups.cups_by_geometry(need, full, residue)
    assert cups.cups_by_claim(need, larger * full) <= cups.cups_by_claim(need, full)
    assert need / few + cups.cup_residue(need, few, more, thin, 2) <= larger * full * (1 + 1e-9)


@LAW
@given(end=st.floats(0, 1e4), wait=st.floats(0, 1e6), later=st.floats(0, 1e5))
def test_what_must_not_be_early_moves_with_the_end_of_the_pour(end: float, wait: float, later: float) -> None:
    for due in (
        schedule.first_mist_due,
        schedule.second_mist_due,
        schedule.tack_free_due,
        schedule.recoat_opens_due,
        schedule.cured_due,
        schedule.top_coat_due,
    ):
        assert due(end + later, wait) == pytest.approx(due(end, wait) + later)
    assert schedule.recoat_closes_due(wait) == wait


@LAW
@given(a=VOLUME, b=VOLUME, share=st.floats(0.01, 0.99), need=VOLUME, kit=st.floats(10, 20000))
def test_kits_are_bought_as_few_as_will_do(a: float, b: float, share: float, need: float, kit: float) -> None:
    stock = cost.usable_stock(a, b, share)
    assert stock * share <= a * (1 + 1e-12)
    assert stock * (1 - share) <= b * (1 + 1e-12)
    kits = cost.kits_to_buy(need, stock, kit)
    left = cost.left_over(stock, kits, kit, need)
    assert stock + kits * kit >= need - 1e-8 * kit
    assert left >= 0
    assert kits == 0 or left < kit * (1 + 1e-9)


@LAW
@given(volumes=st.lists(VOLUME, min_size=1, max_size=5), price=st.floats(0, 1000))
def test_the_faces_share_the_cost_of_their_colour(volumes: list[float], price: float) -> None:
    shares = [cost.face_cost(price, each, sum(volumes)) for each in volumes]
    assert sum(shares) == pytest.approx(price)


@LAW
@given(load=st.floats(1e-5, 0.25), cup=VOLUME, drop=st.floats(0.005, 0.5))
def test_a_recipe_is_met_to_half_a_drop(load: float, cup: float, drop: float) -> None:
    number = tint.recipe_drops(load, cup, drop)
    assert abs(number * drop - load * cup) <= drop * (0.5 + 1e-6)
    assume(number > 0)
    smallest = tint.smallest_tint_cup(drop, 0.05, load)
    assert cup < smallest or abs(tint.drop_error(number, drop, load, cup)) <= 0.05 * (1 + 1e-5)


@LAW
@given(tip=st.floats(0.1, 0.6), tension=st.floats(20, 80), density=st.floats(0.7, 2))
def test_a_wider_tip_and_a_lighter_tint_make_a_larger_drop(
    tip: float, tension: float, density: float
) -> None:
    gravity = 980.665
    assume(drops.dropper_drop_volume_range(tip * 1.05, tension, density, gravity))
    drop = drops.dropper_drop_volume(tip, tension, density, gravity)
    assert 0 < drop < math.pi * tip * tension / (density * gravity)
    assert drops.dropper_drop_volume(tip * 1.05, tension, density, gravity) > drop
    assert drops.dropper_drop_volume(tip, tension * 1.05, density, gravity) > drop
