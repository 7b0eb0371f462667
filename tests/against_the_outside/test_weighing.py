"""Weighing: held against arithmetic by hand and against brute force over what the parts can truly weigh.

By hand: 30 g and 30 g on a scale that reads grams can be 30.5 g and 29.5 g, 1.0339 to 1. Without taring the
scale shows 30 and 60: A can be 30.5, both 59.5, so B 29.0, 1.0517 to 1. 12 g and 6 g at 2 to 1 can be 12.5
and 5.5, 2.2727 to 1, 13.6 % more than 2.
"""

import itertools
import random
from copy import deepcopy

import pytest

from webapp.formulas.readings import reading_a_mass, reading_b_mass
from webapp.formulas.weighing import (
    misweighing,
    smallest_weighed_cup,
    untared_ratio_deviation,
    worst_scale_deviation,
)
from webapp.inputs.table import INPUTS
from webapp.job.demo import EXAMPLE_JOB
from webapp.sheet.runner import calculate

WORST = [
    # A, B, division, tared, without taring
    (30, 30, 1, 0.0339, 0.0517),
    (30, 30, 0.1, 0.00334, 0.00501),
    (12, 6, 1, 0.136, 0.25),
    (12, 6, 0.1, 0.0126, 0.0212),
]


@pytest.mark.parametrize(("a", "b", "division", "tared", "untared"), WORST)
def test_each_weighing_can_be_out_by_half_a_division(a, b, division, tared, untared):
    out = misweighing(division)
    assert worst_scale_deviation(a, b, a / b, out) == pytest.approx(tared, rel=0.005)
    assert untared_ratio_deviation(a, b, a / b, out) == pytest.approx(untared, rel=0.005)


def test_no_pair_of_true_weights_is_further_off_and_one_is_as_far():
    chance = random.Random(8)
    tried = 0
    for _ in range(400):
        division = chance.choice([0.1, 0.5, 1, 2, 5])
        ratio = chance.choice([1, 2, 100 / 42, 3, 4, 5, 10])
        # 30 to 600 divisions in all.
        a = reading_a_mass(chance.uniform(15, 500) * division, 1, division)
        b = reading_b_mass(a, ratio, division)
        out = division / 2
        if b <= 2 * out:
            continue
        tried += 1
        shares = [step / 20 - 1 for step in range(41)]
        tared = [(a + one * out) / (b + other * out) / ratio - 1 for one in shares for other in shares]
        # The scale shows A, then A and B together: B is what lies between the true weights.
        totals = [
            (a + one * out) / ((a + b + other * out) - (a + one * out)) / ratio - 1
            for one, other in itertools.product(shares, shares)
        ]
        assert worst_scale_deviation(a, b, ratio, out) == pytest.approx(max(map(abs, tared)))
        assert untared_ratio_deviation(a, b, ratio, out) == pytest.approx(max(map(abs, totals)))
    assert tried > 300


# Two measures apart, half a division out each: the smallest part B in divisions within 5 %, by brute force.
SMALLEST = {1: 20.5, 2: 15.5, 100 / 43: 14.8, 3: 13.833, 4: 13.0, 5: 12.5, 10: 11.5}


@pytest.mark.parametrize(("ratio", "part_b"), SMALLEST.items())
def test_the_smallest_cup_that_can_be_weighed_well_enough(ratio, part_b):
    cup = smallest_weighed_cup(misweighing(1), ratio, 0.05)
    assert cup == pytest.approx((1 + ratio) * part_b, rel=0.002)
    parts = (cup * ratio / (1 + ratio), cup / (1 + ratio))
    assert worst_scale_deviation(*parts, ratio, misweighing(1)) == pytest.approx(0.05)


def worst(**typed):
    job = deepcopy(EXAMPLE_JOB)
    job["card"] |= {"ratio_basis": "mass", "stated_ratio_a": "100", "stated_ratio_b": "86"}
    for name, text in typed.items():
        job[INPUTS[name].section][name] = text
    cup = calculate(job).rows["colour"][0].rows["cup"][0]
    return cup, {check.name: check.state for check in cup.checks}


def test_a_card_by_mass_is_judged_by_the_scale_and_one_by_volume_by_the_marks():
    for division in ("1 g", "0.1 g"):
        cup, checks = worst(scale_division=division, cup_graduation="100 mL")
        cells = {name: cell.value for name, cell in cup.cells.items()}
        out = float(division.split()[0]) / 2
        high = (cells["reading_a_mass"] + out) / (cells["reading_b_mass"] - out) * 86 / 100 - 1
        low = 1 - (cells["reading_a_mass"] - out) / (cells["reading_b_mass"] + out) * 86 / 100
        assert cells["worst_ratio_deviation"] == pytest.approx(max(high, low))
        assert "worst_marks_deviation" not in cells
        assert checks["ratio_coarse"] == checks["part_below_misreading"] == "right"
        assert checks["scale_coarse"] == "right"


def test_a_coarse_scale_is_said_with_ways_out_of_its_own():
    _, checks = worst(scale_division="20 g")
    assert checks["scale_coarse"] == "wrong"
    assert checks["ratio_coarse"] == "right"
    _, checks = worst(scale_division="20 g", stated_ratio_tolerance="3 %")
    assert checks["scale_out_of_card"] == "wrong"
    assert checks["ratio_out_of_card"] == "right"
