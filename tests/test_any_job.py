"""What holds for any job a person may type: cups keep to their limits, and a blank says why it is one."""

import math
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.amounts import NEVER_NEGATIVE, within
from tests.running import drawn
from webapp.formulas.book import load_book
from webapp.inputs.table import INPUTS
from webapp.sheet.runner import Row, calculate

BOOK = load_book()
ANY_JOB = settings(
    max_examples=drawn(1500), deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)


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


@ANY_JOB
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
        "square_foot_time": st.floats(5, 7200),
        "reading_share": st.floats(0.05, 0.5),
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


@ANY_JOB
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
        assert state_of(colour, "no_marks_fit") == "wrong"
        assert value_of(colour, "cups") is None
        assert volume is None
        assert total is None
    if volume is None:
        return
    assert 0 < volume <= limit
    assert volume <= value_of(root, "cup_capacity_limit")
    parts = value_of(cup, "part_a_volume") + value_of(cup, "part_b_volume")
    assert parts == pytest.approx(volume, rel=1e-12)
    if total is None:
        return
    assert volume * (1 - 1e-9) <= total <= limit * (1 + 1e-9)
    a, b = value_of(cup, "reading_a"), value_of(cup, "reading_b")
    assert a + b == pytest.approx(total, rel=1e-12)
    assert abs(value_of(cup, "ratio_deviation")) <= value_of(root, "rounding_tolerance") * (1 + 1e-6)
    mark = value_of(root, "cup_graduation")
    for reading in (a, b):
        assert 2 * reading / mark == pytest.approx(round(2 * reading / mark), abs=1e-6)
    assert value_of(cup, "pour_by") <= value_of(cup, "gel_time") * 0.75 * (1 + 1e-9)
    assert value_of(cup, "pour_by") <= value_of(root, "usable_time") * (1 + 1e-9)


@ANY_JOB
@given(changes=CUP_JOBS)
def test_the_cups_bring_enough_to_the_faces(changes: dict[str, Any]) -> None:
    _, colour, cup = colour_and_cup(full_job(**{**changes, "need_basis": "greatest"}))
    cups_of_it, volume = value_of(colour, "cups"), value_of(cup, "cup_volume")
    assume(volume is not None)
    reaches = cups_of_it * (volume - value_of(colour, "cup_residue"))
    assert reaches >= value_of(colour, "net_need") * (1 - 1e-8)
    assert cups_of_it * volume >= value_of(colour, "claim_need") * (1 - 1e-8)
    assert value_of(cup, "mix_volume") >= value_of(colour, "colour_need") * (1 - 1e-8)


@ANY_JOB
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


def test_a_largest_batch_is_kept_to_even_without_densities() -> None:
    _, colour, cup = colour_and_cup(full_job(greatest_cup_mass=60))
    assert colour.cells["cup_limit"].winner == "cup_mass_limit"
    assert value_of(cup, "part_a_mass") + value_of(cup, "part_b_mass") <= 60 * (1 + 1e-9)
    _, heavy, _ = colour_and_cup(full_job(greatest_cup_mass=60, density_a=None))
    # 60 g of the heavy mix that is taken where the card is silent, 1.20 g/mL, are 50 mL.
    assert value_of(heavy, "cup_limit") == pytest.approx(50)


def test_a_hot_room_gives_no_cup_at_all_and_a_stop() -> None:
    root, colour, cup = colour_and_cup(full_job(air_temperature=323.15, pot_life=1200))
    assert state_of(root, "no_time_to_pour") == "wrong"
    assert state_of(colour, "no_marks_fit") == "wrong"
    assert value_of(colour, "cup_limit") == 0
    assert value_of(colour, "cups") is None
    assert value_of(cup, "reading_a") is None


def test_a_cup_that_heats_itself_is_planned_smaller_and_says_heat() -> None:
    # In a room of 35 °C a cup of liters sets well before the card's: it is planned by its own heat.
    job = full_job(air_temperature=308.15, pot_life=2400, square_foot_time=120, cup_capacity=20000, width=300)
    _, colour, cup = colour_and_cup(job)
    assert colour.cells["cup_limit"].winner == "heat_volume"
    assert cup.cells["pour_by"].winner in ("heat_pour_by", "usable_time")
    assert value_of(cup, "pour_end") <= value_of(cup, "pour_by") * 1.005


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


@ANY_JOB
@given(depth=st.floats(0.01, 5), pieces=st.integers(1, 20))
def test_pieces_and_faces_add_up(depth: float, pieces: int) -> None:
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
