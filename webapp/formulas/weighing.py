"""Weighing: how far the ratio of a cup can be out on a scale that reads in whole divisions."""

from webapp.formulas.book import check, formula, valid_range
from webapp.units import Count, Grams, Ratio, Share, Truth


@formula(level="job")
def read_on_marks() -> Count:
    """By volume the parts are read on the marks of a cup.

    Example: none is weighed.

    >>> read_on_marks()
    0

    Source: definition.
    """
    return 0


@formula(level="job")
def weighed_on_a_scale() -> Count:
    """By mass the parts are weighed.

    Example: one.

    >>> weighed_on_a_scale()
    1

    Source: definition.
    """
    return 1


@formula(level="job")
def misweighing(scale_division: Grams) -> Grams:
    """How far a weighing can be out: half of what the scale reads to.

    Range: any scale within its class.
    Example: a scale that reads grams can be out by 0.5 g.

    >>> misweighing(1)
    0.5

    Source: a scale shows the nearest division; class III may be out by that up to 500, UK SI 1995/1907.
    """
    return scale_division / 2


@formula(level="cup")
def worst_scale_deviation(
    reading_a_mass: Grams, reading_b_mass: Grams, mass_ratio: Ratio, misweighing: Grams
) -> Share:
    """How far the ratio can be out by rounding and weighing, with the scale tared before B.

    Range: part B more than the scale can be out by.
    Example: 30 g and 30 g on a scale that reads grams: 30.5 to 29.5, 3.39%.

    >>> round(worst_scale_deviation(30, 30, 1, 0.5), 4)
    0.0339

    Source: arithmetic; half a division on each part, the worse of the two ways.
    """
    high = (reading_a_mass + misweighing) / (reading_b_mass - misweighing) / mass_ratio - 1
    low = 1 - (reading_a_mass - misweighing) / (reading_b_mass + misweighing) / mass_ratio
    return max(high, low)


@valid_range(says="Part B is no larger than the error of the scale. Use a scale that reads finer.")
def worst_scale_deviation_range(reading_b_mass: Grams, misweighing: Grams) -> Truth:
    """Part B more than the scale can be out by."""
    return reading_b_mass > misweighing


@formula(level="cup")
def untared_ratio_deviation(
    reading_a_mass: Grams, reading_b_mass: Grams, mass_ratio: Ratio, misweighing: Grams
) -> Share:
    """How far the ratio can be out where B is weighed on top of A without taring: B has the error of both.

    Range: part B more than twice what the scale can be out by.
    Example: 30 g and 30 g on a scale that reads grams: 30.5 to 29, 5.17%.

    >>> round(untared_ratio_deviation(30, 30, 1, 0.5), 4)
    0.0517

    Source: arithmetic; B is the difference of two weighings, the worse of the two ways.
    """
    high = (reading_a_mass + misweighing) / (reading_b_mass - 2 * misweighing) / mass_ratio - 1
    low = 1 - (reading_a_mass - misweighing) / (reading_b_mass + 2 * misweighing) / mass_ratio
    return max(high, low)


@valid_range(says="Part B is no larger than the error of two weighings. Tare the scale before B.")
def untared_ratio_deviation_range(reading_b_mass: Grams, misweighing: Grams) -> Truth:
    """Part B more than two weighings can be out by."""
    return reading_b_mass > 2 * misweighing


@formula(level="job")
def smallest_weighed_cup(misweighing: Grams, mass_ratio: Ratio, ratio_tolerance: Share) -> Grams:
    """The smallest cup of both parts that can be weighed well enough, with the scale tared before B.

    Range: any.
    Example: within 5% at 1 to 1 on a scale that reads grams: 20.5 g of each part, 41 g.

    >>> round(smallest_weighed_cup(0.5, 1, 0.05), 9)
    41.0

    Source: arithmetic: the worst deviation of weights that keep the ratio, turned round.
    """
    return (1 + mass_ratio) * misweighing * (1 / mass_ratio + 1 + ratio_tolerance) / ratio_tolerance


@check(
    level="cup",
    severity="caution",
    says="Even weighed with care, this cup can be {cell:worst_ratio_deviation} off the ratio; "
    "the card allows {cell:stated_ratio_tolerance}.",
    beside="worst_ratio_deviation",
    quiet=True,
    would_do=(
        "Use a scale that reads finer than {cell:scale_division}.",
        "Mix a fuller cup: {cell:smallest_weighed_cup} or more weighs well enough.",
    ),
)
def scale_out_of_card(
    worst_ratio_deviation: Share, stated_ratio_tolerance: Share, parts_weighed: Count
) -> Truth:
    """True where the ratio of weighed parts can be out by more than the card states.

    >>> scale_out_of_card(0.087, 0.05, 1), scale_out_of_card(0.05, 0.05, 1), scale_out_of_card(0.087, 0.05, 0)
    (True, False, False)
    """
    return worst_ratio_deviation * parts_weighed > stated_ratio_tolerance


@check(
    level="cup",
    severity="note",
    says="Even weighed with care, this cup can be {cell:worst_ratio_deviation} off the ratio; "
    "common practice allows {cell:ratio_tolerance}.",
    beside="worst_ratio_deviation",
    would_do=(
        "Use a scale that reads finer than {cell:scale_division}.",
        "Mix a fuller cup: {cell:smallest_weighed_cup} or more weighs well enough.",
    ),
)
def scale_coarse(worst_ratio_deviation: Share, ratio_tolerance: Share, parts_weighed: Count) -> Truth:
    """True where the ratio of weighed parts can be out by more than is common practice.

    >>> scale_coarse(0.087, 0.05, 1), scale_coarse(0.05, 0.05, 1), scale_coarse(0.087, 0.05, 0)
    (True, False, False)
    """
    return worst_ratio_deviation * parts_weighed > ratio_tolerance


@check(
    level="cup",
    severity="caution",
    says="The scale is too coarse for so little: part B is {cell:reading_b_mass}, and a weighing can be off "
    "by {cell:misweighing}.",
    beside="worst_ratio_deviation",
    would_do=(
        "Use a scale that reads finer than {cell:scale_division}.",
        "Mix a fuller cup: {cell:smallest_weighed_cup} or more weighs well enough.",
    ),
)
def part_below_misweighing(reading_b_mass: Grams, misweighing: Grams, parts_weighed: Count) -> Truth:
    """True where so little of part B is weighed that the scale can show none.

    >>> [part_below_misweighing(*each) for each in ((0, 0.5, 1), (1, 0.5, 1), (0, 0.5, 0))]
    [True, False, False]
    """
    return reading_b_mass < misweighing * parts_weighed
