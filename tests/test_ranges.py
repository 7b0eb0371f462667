"""Ranges: just inside a formula's range it has a value, just outside the cell is blank and says why."""

import pytest

from webapp.formulas.book import load_book
from webapp.sheet.reasons import sentence

BOOK = load_book()

# Formula, the last arguments inside its range, and the first outside of it.
EDGES = [
    (
        "face_area",
        {"shape_area": 100, "total_opening_area": 99.99},
        {"shape_area": 100, "total_opening_area": 100},
    ),
    (
        "rounded_rectangle_area",
        {"width": 40, "height": 30, "corner_radius": 15},
        {"width": 40, "height": 30, "corner_radius": 15.01},
    ),
    (
        "rounded_rectangle_edge",
        {"width": 30, "height": 40, "corner_radius": 15},
        {"width": 30, "height": 40, "corner_radius": 15.01},
    ),
    (
        "ring_area",
        {"outer_diameter": 20, "inner_diameter": 19.99},
        {"outer_diameter": 20, "inner_diameter": 20},
    ),
    (
        "ring_edge",
        {"outer_diameter": 20, "inner_diameter": 19.99},
        {"outer_diameter": 20, "inner_diameter": 20},
    ),
    ("polygon_area", {"side_count": 3}, {"side_count": 2}),
    ("polygon_edge", {"side_count": 3}, {"side_count": 2}),
    ("capsule_area", {"length": 10, "width": 10}, {"length": 9.99, "width": 10}),
    ("capsule_edge", {"length": 10, "width": 10}, {"length": 9.99, "width": 10}),
    ("arch_top_area", {"width": 30, "rise": 15}, {"width": 30, "rise": 15.0001}),
    ("arch_top_edge", {"width": 30, "rise": 15}, {"width": 30, "rise": 15.0001}),
    (
        "claim_film_share",
        {"stated_coverage": 10, "stated_coverage_depth": 0.1},
        {"stated_coverage": 10, "stated_coverage_depth": 0.1002},
    ),
    (
        "cups_by_geometry",
        {"full_cup": 10, "full_cup_residue": 9.99},
        {"full_cup": 10, "full_cup_residue": 10},
    ),
    (
        "full_cup",
        {"full_reading_a": 98, "full_reading_b": 100, "volume_ratio": 1, "rounding_tolerance": 0.025},
        {"full_reading_a": 97, "full_reading_b": 100, "volume_ratio": 1, "rounding_tolerance": 0.025},
    ),
    (
        # Two to one, and A short by just the tolerance: forgiven what the figures were rounded by.
        "full_cup",
        {"full_reading_a": 195, "full_reading_b": 100, "volume_ratio": 2, "rounding_tolerance": 0.025},
        {"full_reading_a": 194, "full_reading_b": 100, "volume_ratio": 2, "rounding_tolerance": 0.025},
    ),
    (
        # Two pieces that take 110 mL each with the extra, and 3 mL left behind.
        "piece_cup_volume",
        {"face_coat_volume": 200, "pieces": 2, "contingency": 0.1, "cup_residue": 3, "piece_cup_limit": 114},
        {"face_coat_volume": 200, "pieces": 2, "contingency": 0.1, "cup_residue": 3, "piece_cup_limit": 112},
    ),
    (
        "night_temperature",
        {"lowest_tonight": 283.15, "least_cure_temperature": 283.15},
        {"lowest_tonight": 283.14, "least_cure_temperature": 283.15},
    ),
    (
        "self_start_by_set_time",
        {"stated_film_set_time": 3.41, "pot_life": 1},
        {"stated_film_set_time": 3.39, "pot_life": 1},
    ),
    (
        "critical_hole_diameter",
        {"coat_depth": 0.94, "unaided_depth": 1},
        {"coat_depth": 0.96, "unaided_depth": 1},
    ),
    (
        "worst_marks_deviation",
        {"reading_b": 5.01, "misread_b": 5},
        {"reading_b": 5, "misread_b": 5},
    ),
    (
        "worst_scale_deviation",
        {"reading_b_mass": 0.51, "misweighing": 0.5},
        {"reading_b_mass": 0.5, "misweighing": 0.5},
    ),
    (
        "untared_ratio_deviation",
        {"reading_b_mass": 1.01, "misweighing": 0.5},
        {"reading_b_mass": 1, "misweighing": 0.5},
    ),
    ("first_drops", {"tint_limit_drops": 1}, {"tint_limit_drops": 0}),
    (
        "dropper_drop_volume",
        {"tip_diameter": 0.595, "tint_surface_tension": 25, "tint_density": 1.1, "gravity": 980.665},
        {"tip_diameter": 0.6, "tint_surface_tension": 25, "tint_density": 1.1, "gravity": 980.665},
    ),
    (
        "curing_temperature",
        {"surface_temperature": 283.15, "least_cure_temperature": 283.15},
        {"surface_temperature": 283.14, "least_cure_temperature": 283.15},
    ),
]


@pytest.mark.parametrize(
    ("name", "inside", "outside"), EDGES, ids=lambda each: each if isinstance(each, str) else ""
)
def test_a_range_ends_where_it_says(name: str, inside: dict[str, float], outside: dict[str, float]) -> None:
    row = BOOK.ranges[f"{name}_range"]
    assert row.formula.function(**inside)
    assert not row.formula.function(**outside)


@pytest.mark.parametrize("name", BOOK.ranges)
def test_a_range_gives_its_reason_as_a_sentence(name: str) -> None:
    says = sentence(BOOK.ranges[name].says)
    assert says[0].isupper()
    assert says.endswith(".")
