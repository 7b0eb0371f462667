"""Readings on marks: held against brute force over all pairs of marks, and against worked examples.

The worked examples are arithmetic; in them a reading may be out by half a mark.
"""

import itertools
import math
import random

import pytest

from webapp.formulas.full_cup import full_cup, full_cup_range, full_reading_a, full_reading_b
from webapp.formulas.misreading import (
    misread_a,
    misread_b,
    smallest_honest_part_b,
    worst_marks_deviation,
)
from webapp.formulas.readings import ratio_deviation, reading_a, reading_b, rounding_waste

RATIOS = {"1:1": 1, "2:1": 2, "100:43": 100 / 43, "3:1": 3, "4:1": 4, "5:1": 5, "10:1": 10}


def readings(need, ratio, graduation, tolerance=0.025):
    part_a, part_b = need * ratio / (1 + ratio), need / (1 + ratio)
    b = reading_b(part_a, part_b, ratio, tolerance, graduation, math.inf)
    return reading_a(b, part_a, ratio, tolerance, graduation), b


# Need of A and B, ratio, graduation in mL; the least pair of whole and half marks within 2.5%.
@pytest.mark.parametrize(
    ("part_a", "part_b", "ratio", "graduation", "pair", "deviation"),
    [
        (81.5, 81.5, 1, 10, (85, 85), 0),
        (100, 43, 100 / 43, 5, (102.5, 45), -0.0206),
        (86, 21.5, 4, 2.5, (88.75, 22.5), -0.0139),
        (112, 56, 2, 10, (120, 60), 0),
        (155, 15.5, 10, 10, (195, 20), -0.025),
    ],
)
def test_the_least_pair_of_marks(part_a, part_b, ratio, graduation, pair, deviation):
    found = readings(part_a + part_b, ratio, graduation)
    assert found == pytest.approx(pair)
    assert ratio_deviation(*found, ratio) == pytest.approx(deviation, abs=5e-5)


def test_a_coarse_mark_for_a_small_part_wastes_a_quarter():
    # 195 + 20 mL where 155 + 15.5 are needed: 26%.
    assert rounding_waste(215, 170.5) == pytest.approx(0.26, abs=0.005)


def brute_force(need, ratio, graduation, tolerance):
    """The least A and B among all pairs of half marks that hold the need and keep the ratio."""
    step = graduation / 2
    part_a, part_b = need * ratio / (1 + ratio), need / (1 + ratio)
    first_a, first_b = math.ceil(part_a / step - 1e-9), math.ceil(part_b / step - 1e-9)
    pairs = (
        (first_a + more_a, first_b + more_b)
        for more_a, more_b in itertools.product(range(120), range(40))
        if abs((first_a + more_a) / (first_b + more_b) / ratio - 1) <= tolerance + 1e-9
    )
    found = list(pairs)
    return (min(a for a, _ in found) * step, min(b for _, b in found) * step) if found else None


@pytest.mark.parametrize("ratio", RATIOS.values(), ids=RATIOS)
def test_brute_force_finds_no_less(ratio):
    chance = random.Random(20)
    for _ in range(60):
        graduation = chance.choice([1, 2, 2.5, 5, 10])
        need = graduation * chance.uniform(8, 120) * 0.6
        wanted = brute_force(need, ratio, graduation, 0.025)
        if wanted is not None and abs(wanted[0] / wanted[1] / ratio - 1) <= 0.025 + 1e-9:
            assert readings(need, ratio, graduation) == pytest.approx(wanted), (need, graduation)


@pytest.mark.parametrize("ratio", RATIOS.values(), ids=RATIOS)
def test_the_fullest_cup_is_the_fullest_of_all_pairs(ratio):
    chance = random.Random(8)
    for _ in range(60):
        graduation = chance.choice([1, 2.5, 5, 10])
        limit = graduation * chance.uniform(8, 80)
        share = ratio / (1 + ratio)
        b = full_reading_b(limit, share, ratio, 0.025, graduation)
        a = full_reading_a(b, limit, share, ratio, 0.025, graduation)
        step = graduation / 2
        most_a, most_b = (
            math.floor(share * limit / step + 1e-9),
            math.floor((1 - share) * limit / step + 1e-9),
        )
        pairs = [
            (x * step, y * step)
            for x, y in itertools.product(range(1, most_a + 1), range(1, most_b + 1))
            if abs(x / y / ratio - 1) <= 0.025 + 1e-9
        ]
        if not full_cup_range(a, b, ratio, 0.025):
            assert pairs == []
            continue
        fullest = max(min(x / share, y / (1 - share)) for x, y in pairs)
        assert full_cup(a, b, share, ratio, 0.025) == pytest.approx(fullest), (limit, graduation)


@pytest.mark.parametrize("ratio", RATIOS.values(), ids=RATIOS)
def test_limit_need_marks_and_ratio_hold_together(ratio):
    chance = random.Random(9)
    for _ in range(300):
        graduation = chance.choice([1, 2.5, 5, 10])
        limit = graduation * chance.uniform(8, 120)
        share = ratio / (1 + ratio)
        b = full_reading_b(limit, share, ratio, 0.025, graduation)
        a = full_reading_a(b, limit, share, ratio, 0.025, graduation)
        if not full_cup_range(a, b, ratio, 0.025):
            continue
        need = full_cup(a, b, share, ratio, 0.025) * chance.uniform(0.3, 1)
        read_a, read_b = readings(need, ratio, graduation)
        assert read_a + read_b <= limit + 1e-9
        assert min(read_a - need * share, read_b - need * (1 - share)) >= -1e-9
        assert abs(ratio_deviation(read_a, read_b, ratio)) <= 0.025 + 1e-9


# Both parts in one cup, A first, half a mark out each: smallest part B in marks within 5%.
SMALLEST = {"1:1": 31.0, "2:1": 26.0, "100:43": 25.3, "3:1": 24.333, "4:1": 23.5, "5:1": 23.0, "10:1": 22.0}


@pytest.mark.parametrize(("name", "marks"), SMALLEST.items())
def test_the_smallest_part_that_can_be_read_well_enough(name, marks):
    found = smallest_honest_part_b(misread_a(1, 0.5), misread_b(1, 0.5), RATIOS[name], 0.05)
    assert found == pytest.approx(marks, abs=0.0005 if name == "3:1" else 0.05)


@pytest.mark.parametrize(("tolerance", "marks"), [(0.03, 51.0), (0.10, 16.0)])
def test_a_finer_tolerance_wants_more_marks(tolerance, marks):
    assert smallest_honest_part_b(0.5, 1, 1, tolerance) == pytest.approx(marks)


@pytest.mark.parametrize(
    ("a", "b", "graduation", "worst"),
    [(30, 30, 2.5, 0.1364), (60, 20, 2.5, 0.1667), (80, 20, 2.5, 0.161), (90, 90, 10, 0.1875)],
)
def test_the_second_reading_carries_the_error_of_the_first(a, b, graduation, worst):
    found = worst_marks_deviation(a, b, a / b, misread_a(graduation, 0.5), misread_b(graduation, 0.5))
    assert found == pytest.approx(worst, abs=5e-4)


@pytest.mark.parametrize(("a", "b", "graduation", "worst"), [(30, 30, 2.5, 0.0870), (90, 90, 10, 0.1176)])
def test_two_cups_apart_are_out_by_less(a, b, graduation, worst):
    found = worst_marks_deviation(a, b, a / b, graduation / 2, graduation / 2)
    assert found == pytest.approx(worst, abs=5e-5)
