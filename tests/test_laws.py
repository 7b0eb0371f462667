"""Laws that hold for any job: nothing impossible comes out, and the physics points the right way."""

import math
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from webapp.formulas import areas, cost, cups, cure, edges, film, ratio, readings, schedule, tint
from webapp.formulas.book import Formula, load_book
from webapp.formulas.conditions import dew_point
from webapp.formulas.constants import CONSTANTS
from webapp.formulas.working_time import working_time
from webapp.inputs import INPUTS, Input
from webapp.quantities import bounds
from webapp.sheet.runner import Row, calculate

BOOK = load_book()
CONSTANT_VALUES = {each.name: each.canonical for each in CONSTANTS}
NEVER_NEGATIVE = ("volume", "area", "mass", "density", "count", "money", "coverage", "rate")
ANY_AMOUNT = {
    "share": (0, 1),
    "temperature": (230, 340),
    "temperature difference": (-60, 60),
    "angle": (0, math.pi),
    "slope": (0, 0.2),
    "ratio": (1e-5, 1e5),
}
ANY_OTHER_AMOUNT = (0, 1e7)
LAW = settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
WHOLE_JOBS = settings(LAW, max_examples=150)

LENGTH = st.floats(0.1, 3000)
DEPTH = st.floats(0.01, 5)
VOLUME = st.floats(1, 20000)
SHOP = st.floats(273.15, 323.15)
RATIO = st.floats(0.01, 100)
ENERGY = (57e10, 8.314462618e7)


def within(each: Input) -> st.SearchStrategy[Any]:
    """Draw what a person may enter for an input: a number in its canonical unit, inside its bounds."""
    if each.kind == "choice":
        return st.sampled_from([value for value, _ in each.options])
    least, most = (math.nan if end is None else end for end in bounds(each))
    if each.kind == "count":
        return st.integers(int(least), int(most)).map(float)
    return st.floats(least, most)


def argument(name: str, kind: str) -> st.SearchStrategy[float]:
    """Draw an argument of a formula: an input inside its bounds, a constant as it is, or any amount."""
    if name in CONSTANT_VALUES:
        return st.just(CONSTANT_VALUES[name])
    if name in INPUTS:
        return within(INPUTS[name])
    least, most = ANY_AMOUNT.get(kind, ANY_OTHER_AMOUNT)
    return st.integers(0, 10000).map(float) if kind == "count" else st.floats(least, most)


def result_of(row: Formula, arguments: dict[str, float]) -> float | None:
    """Return what a formula gives, or None where the sheet would leave the cell blank."""
    inside = BOOK.ranges.get(f"{row.name}_range")
    try:
        if inside and not inside.formula.function(*[arguments[each] for each in inside.formula.parameters]):
            return None
        value = row.function(**arguments)
    except (ArithmeticError, ValueError):
        return None
    return None if isinstance(value, complex) or not math.isfinite(value) else value


@pytest.mark.parametrize("name", [name for name, row in BOOK.formulas.items() if row.levels])
@LAW
@given(data=st.data())
def test_no_formula_gives_an_impossible_amount(name: str, data: st.DataObject) -> None:
    row = BOOK.formulas[name]
    arguments = {each: data.draw(argument(each, unit.kind), each) for each, unit in row.parameters.items()}
    value = result_of(row, arguments)
    if value is not None and row.unit.kind in NEVER_NEGATIVE:
        assert value >= 0


def rows_of(section: str, **more: st.SearchStrategy[Any]) -> st.SearchStrategy[dict[str, Any]]:
    """Draw a part of a job: any of the section's inputs may be blank."""
    names = [each for each in INPUTS.values() if each.section == section]
    return st.fixed_dictionaries(more, optional={each.name: within(each) for each in names})


def merged(*parts: st.SearchStrategy[dict[str, Any]]) -> st.SearchStrategy[dict[str, Any]]:
    return st.tuples(*parts).map(lambda drawn: {name: each for part in drawn for name, each in part.items()})


OPENINGS = st.lists(merged(rows_of("shape"), rows_of("opening")), max_size=1)
FACES = merged(rows_of("shape"), rows_of("face", openings=OPENINGS))
COLOURS = rows_of("colour", faces=st.lists(FACES, min_size=1, max_size=2))
JOBS = st.fixed_dictionaries(
    {
        "room": rows_of("room"),
        "card": rows_of("card"),
        "bench": rows_of("bench"),
        "colours": st.lists(COLOURS, min_size=1, max_size=2),
    }
)


def value_of(row: Row, name: str) -> Any:
    return row.cells[name].value


@WHOLE_JOBS
@given(job=JOBS)
def test_every_cell_of_any_job_is_possible_or_says_why_it_is_blank(job: dict[str, Any]) -> None:
    for row in calculate(job).everything():
        for name, cell in row.cells.items():
            assert (cell.value is None) == (cell.blank is not None), name
            if isinstance(cell.value, float | int):
                assert math.isfinite(cell.value), name
                if name in BOOK.formulas and BOOK.formulas[name].unit.kind in NEVER_NEGATIVE:
                    assert cell.value >= 0, name


def state_of(row: Row, check: str) -> str:
    """Return what came of a check of a row."""
    return next(each.state for each in row.checks if each.name == check)


def full_job(**changes: Any) -> dict[str, Any]:
    """A job with everything that cups depend on; canonical units throughout."""
    typed = {
        "room": {"air_temperature": 296.15, "relative_humidity": 0.5},
        "card": {
            "ratio_basis": "volume",
            "stated_ratio_a": 2,
            "stated_ratio_b": 1,
            "density_a": 1.12,
            "density_b": 0.97,
            "pot_life": 2400,
            "pot_life_temperature": 298.15,
            "tint_limit": 0.02,
            "greatest_coat_depth": 0.3,
            "stated_coverage": 4,
            "stated_coverage_depth": 0.16,
        },
        "bench": {"cup_capacity": 300, "cup_graduation": 10},
        "colours": [{"faces": [{"shape": "rectangle", "width": 60, "height": 40, "depth": 0.16}]}],
    }
    for section in ("room", "card", "bench"):
        typed[section].update(
            {name: each for name, each in changes.items() if INPUTS[name].section == section}
        )
    for name, each in changes.items():
        if INPUTS[name].section == "colour":
            typed["colours"][0][name] = each
        if INPUTS[name].section in ("face", "shape"):
            typed["colours"][0]["faces"][0][name] = each
    return {**typed, "bench": {name: each for name, each in typed["bench"].items() if each is not None}}


def colour_and_cup(job: dict[str, Any]) -> tuple[Row, Row, Row]:
    root = calculate(job)
    colour = root.rows["colour"][0]
    return root, colour, colour.rows["cup"][0]


CUP_JOBS = st.fixed_dictionaries(
    {
        "air_temperature": st.floats(263.15, 323.15),
        "width": st.floats(1, 300),
        "height": st.floats(1, 300),
        "depth": st.floats(0.02, 1),
        "cup_capacity": st.floats(5, 20000),
        "stated_ratio_a": st.sampled_from([1, 2, 3, 4, 5, 100, 1.5, 0.5, 0.37]),
        "stated_ratio_b": st.sampled_from([1, 2, 3, 44, 0.6]),
    },
    optional={
        "cup_graduation": st.floats(0.05, 1000),
        "greatest_cup_mass": st.floats(5, 20000),
        "contingency": st.floats(0, 1),
        "vessels_per_cup": st.integers(1, 6),
        "residual_film": st.floats(0, 0.2),
        "spread_rate": st.floats(0.02, 160),
        "planned_coats": st.integers(1, 20),
        "need_basis": st.sampled_from(["greatest", "geometry", "claim"]),
        "ratio_basis": st.sampled_from(["volume", "mass"]),
        "pot_life": st.floats(30, 200000),
        "mix_time": st.floats(10, 1800),
        "fill_share": st.floats(0.05, 1),
        "tint": st.sampled_from(["drops", "recipe", "clear"]),
        "recipe_load": st.floats(1e-5, 0.25),
    },
)


@WHOLE_JOBS
@given(changes=CUP_JOBS)
def test_a_cup_is_never_over_its_limit_and_its_parts_make_it(changes: dict[str, Any]) -> None:
    root, colour, cup = colour_and_cup(full_job(**changes))
    limit, volume, total = (
        value_of(colour, "cup_limit"),
        value_of(cup, "cup_volume"),
        value_of(cup, "reading_total"),
    )
    if value_of(root, "pour_time") <= 0:
        assert limit == 0
        assert value_of(colour, "cups") is None
        assert volume is None
        assert total is None
    if volume is None:
        return
    assert 0 < volume <= limit
    assert volume <= value_of(root, "cup_capacity_limit")
    parts = value_of(cup, "part_a_volume") + value_of(cup, "part_b_volume")
    assert parts == pytest.approx(volume, rel=1e-12)
    assert volume <= total <= limit or math.isclose(volume, total, rel_tol=1e-9)
    assert total <= limit
    a, b = value_of(cup, "reading_a"), value_of(cup, "reading_b")
    assert a + b == pytest.approx(total, rel=1e-12)
    assert a / b == pytest.approx(value_of(root, "volume_ratio"), rel=1e-9)
    assert value_of(cup, "pour_end") <= value_of(root, "usable_time") * (1 + 1e-9)


@WHOLE_JOBS
@given(changes=CUP_JOBS)
def test_the_cups_bring_enough_to_the_faces(changes: dict[str, Any]) -> None:
    _, colour, cup = colour_and_cup(full_job(**{**changes, "need_basis": "greatest"}))
    cups_of_it, volume = value_of(colour, "cups"), value_of(cup, "cup_volume")
    assume(volume is not None)
    reaches = cups_of_it * (volume - value_of(colour, "cup_residue"))
    assert reaches >= value_of(colour, "net_need") * (1 - 1e-8)
    assert cups_of_it * volume >= value_of(colour, "claim_need") * (1 - 1e-8)
    assert value_of(cup, "mix_volume") >= value_of(colour, "colour_need") * (1 - 1e-8)


@WHOLE_JOBS
@given(changes=CUP_JOBS)
def test_tint_never_passes_its_limit(changes: dict[str, Any]) -> None:
    _, colour, cup = colour_and_cup(full_job(**changes))
    drops, limit = value_of(cup, "starting_drops"), value_of(cup, "tint_limit_volume")
    assume(drops is not None and limit is not None)
    assert drops * value_of(colour, "drop_volume") <= limit * (1 + 1e-9)
    within_limit = changes.get("tint") == "clear" or value_of(cup, "tint_limit_drops") >= 1
    assert state_of(cup, "drop_past_limit") == ("right" if within_limit else "wrong")


@pytest.mark.parametrize(
    "blank", ["pot_life", "tint_limit", "greatest_coat_depth", "density_a", "stated_coverage"]
)
def test_a_blank_on_the_card_costs_only_what_depends_on_it(blank: str) -> None:
    root, colour, cup = colour_and_cup(full_job(**{blank: None}))
    assert value_of(colour, "cups") is not None
    assert value_of(cup, "cup_volume") <= value_of(colour, "cup_limit")
    assert value_of(cup, "part_a_volume") is not None
    assert (value_of(cup, "part_a_mass") is None) == (blank == "density_a")
    assert (value_of(cup, "tint_limit_drops") is None) == (blank == "tint_limit")
    assert (value_of(root, "working_time") is None) == (blank == "pot_life")
    assert state_of(root, "no_time_to_pour") == ("unchecked" if blank == "pot_life" else "right")


def test_a_largest_batch_is_kept_to_and_without_densities_it_is_cautioned() -> None:
    _, colour, cup = colour_and_cup(full_job(greatest_cup_mass=60))
    assert colour.cells["cup_limit"].winner == "cup_mass_limit"
    assert value_of(cup, "part_a_mass") + value_of(cup, "part_b_mass") <= 60 * (1 + 1e-9)
    assert state_of(cup, "cup_too_heavy") == "right"
    _, _, unknown = colour_and_cup(full_job(greatest_cup_mass=60, density_a=None))
    assert state_of(unknown, "cup_too_heavy") == "wrong"


def test_a_hot_room_gives_no_cup_at_all_and_a_stop() -> None:
    root, colour, cup = colour_and_cup(full_job(air_temperature=323.15, pot_life=1200))
    assert state_of(root, "no_time_to_pour") == "wrong"
    assert state_of(colour, "cup_too_small") == "wrong"
    assert value_of(colour, "cup_limit") == 0
    assert colour.cells["cup_limit"].winner == "pourable_volume"
    assert value_of(colour, "cups") is None
    assert value_of(cup, "reading_a") is None


def test_a_drop_that_passes_the_limit_stops_a_tinted_cup_but_no_clear_one() -> None:
    small = {"tint_limit": 0.0001, "width": 5, "height": 5}
    _, _, tinted = colour_and_cup(full_job(**small))
    assert state_of(tinted, "drop_past_limit") == "wrong"
    assert value_of(tinted, "starting_drops") is None
    _, _, clear = colour_and_cup(full_job(**small, tint="clear"))
    assert state_of(clear, "drop_past_limit") == "right"
    assert value_of(clear, "starting_drops") == 0
    _, _, unknown = colour_and_cup(full_job(tint_limit=None, tint="clear"))
    assert state_of(unknown, "drop_past_limit") == "right"


def test_a_cup_without_marks_has_parts_but_no_readings() -> None:
    _, _, cup = colour_and_cup(full_job(cup_graduation=None))
    assert value_of(cup, "reading_a") is None
    assert value_of(cup, "part_a_volume") > 0


def test_a_cold_face_gets_no_times_and_a_stop() -> None:
    root, _, _ = colour_and_cup(full_job(air_temperature=278.15, stated_cure_time=86400))
    assert value_of(root, "cure_time") is None
    assert state_of(root, "too_cold_to_cure") == "wrong"
    own, _, _ = colour_and_cup(
        full_job(air_temperature=278.15, stated_cure_time=86400, least_cure_temperature=273.15)
    )
    assert value_of(own, "cure_time") > 86400


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
@given(need=VOLUME, room=st.floats(0, 2), stated=RATIO, mark=st.floats(0.05, 1000))
def test_readings_keep_the_ratio_round_up_and_keep_to_the_limit(
    need: float, room: float, stated: float, mark: float
) -> None:
    limit = need * (1 + room)
    step = readings.reading_step(stated, mark)
    total = readings.reading_total(need, limit, stated, step)
    share = ratio.part_a_share(stated)
    a, b = readings.reading_a(total, share), readings.reading_b(total, share)
    assert need * (1 - 1e-9) - step * 1e-8 <= total <= limit
    deviation = readings.ratio_deviation(a, b, ratio.ratio_a(stated), ratio.ratio_b(stated))
    assert deviation == pytest.approx(0, abs=1e-9)
    if total == readings.reading_total(need, math.inf, stated, step):
        smaller = min(a, b) / step
        assert smaller == pytest.approx(round(smaller), abs=1e-6 * max(1, smaller))


@LAW
@given(a=st.floats(1, 1000), b=st.floats(1, 1000), mark=st.floats(0.01, 100))
def test_finer_marks_never_make_the_ratio_worse(a: float, b: float, mark: float) -> None:
    assume(mark / 2 < b * 0.99)
    coarse = abs(readings.worst_ratio_deviation(a, b, mark))
    assert abs(readings.worst_ratio_deviation(a, b, mark / 2)) <= coarse
    assert abs(readings.worst_ratio_deviation(2 * a, 2 * b, 2 * mark)) == pytest.approx(coarse)


@LAW
@given(need=VOLUME, limit=st.floats(10, 20000), larger=st.floats(1, 5), thin=st.floats(0, 0.05))
def test_a_larger_cup_never_needs_more_of_them(need: float, limit: float, larger: float, thin: float) -> None:
    residue = cups.cup_residue(cups.wetted_area(limit), thin, 2)
    more = cups.cup_residue(cups.wetted_area(larger * limit), thin, 2)
    assume(limit > 2 * residue)
    few = cups.cups_by_geometry(need, larger * limit, more)
    assert 1 <= few <= cups.cups_by_geometry(need, limit, residue)
    assert cups.cups_by_claim(need, larger * limit) <= cups.cups_by_claim(need, limit)


@LAW
@given(volume=VOLUME, depth=DEPTH, pieces=st.integers(1, 20))
def test_pieces_and_faces_add_up(volume: float, depth: float, pieces: int) -> None:
    one = full_job(width=50, height=20, depth=depth)
    alike = one["colours"][0]["faces"][0]
    many = {**one, "colours": [{"faces": [dict(alike) for _ in range(pieces)]}]}
    together = {**one, "colours": [{"faces": [{**alike, "pieces": pieces}]}]}
    totals = [value_of(calculate(job).rows["colour"][0], "total_face_volume") for job in (many, together)]
    assert totals[0] == pytest.approx(totals[1])
    assert totals[0] == pytest.approx(1000 * depth * pieces)


def test_a_face_that_is_half_typed_blanks_its_colour_and_an_untouched_one_does_not() -> None:
    job = full_job()
    job["colours"][0]["faces"].append({"name": "New"})
    assert value_of(colour_and_cup(job)[1], "total_face_volume") == pytest.approx(384)
    job["colours"][0]["faces"][1]["width"] = 10
    colour = colour_and_cup(job)[1]
    assert value_of(colour, "total_face_volume") is None
    assert colour.cells["total_face_volume"].blank.name == "height"


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
    drops = tint.recipe_drops(load, cup, drop)
    assert abs(drops * drop - load * cup) <= drop * (0.5 + 1e-6)
    assume(drops > 0)
    smallest = tint.smallest_tint_cup(drop, 0.05, load)
    assert cup < smallest or abs(tint.drop_error(drops, drop, load, cup)) <= 0.05 * (1 + 1e-5)


@LAW
@given(tip=st.floats(0.1, 0.6), tension=st.floats(20, 80), density=st.floats(0.7, 2))
def test_a_wider_tip_and_a_lighter_tint_make_a_larger_drop(
    tip: float, tension: float, density: float
) -> None:
    gravity = 980.665
    assume(tint.dropper_drop_volume_range(tip * 1.05, tension, density, gravity))
    drop = tint.dropper_drop_volume(tip, tension, density, gravity)
    assert 0 < drop < math.pi * tip * tension / (density * gravity)
    assert tint.dropper_drop_volume(tip * 1.05, tension, density, gravity) > drop
    assert tint.dropper_drop_volume(tip, tension * 1.05, density, gravity) > drop
