"""Misreading: how far the ratio of a cup can be out when its marks are read as well as a person can."""

from webapp.formulas.book import check, formula, valid_range
from webapp.units import Count, CubicCentimetres, Ratio, Share, Truth


@formula(level="job")
def misread_a(cup_graduation: CubicCentimetres, reading_share: Share) -> CubicCentimetres:
    """How far part A can be out, read first in the cup.

    Range: any cup.
    Example: a quarter of marks that are 10 mL apart is 2.5 mL.

    >>> misread_a(10, 0.25)
    2.5

    Source: a reading may be out by that share of a mark: our choice of the share.
    """
    return cup_graduation * reading_share


@formula(level="job")
def misread_b(cup_graduation: CubicCentimetres, reading_share: Share) -> CubicCentimetres:
    """How far part B can be out, read on top of part A: the first reading's error and its own.

    Range: both parts read in one cup.
    Example: twice a quarter of marks that are 10 mL apart is 5 mL.

    >>> misread_b(10, 0.25)
    5.0

    Source: B is the difference of two readings, and the errors of both count.
    """
    return 2 * cup_graduation * reading_share


@formula(level="cup")
def worst_marks_deviation(
    reading_a: CubicCentimetres,
    reading_b: CubicCentimetres,
    volume_ratio: Ratio,
    misread_a: CubicCentimetres,
    misread_b: CubicCentimetres,
) -> Share:
    """How far the ratio can be out, with rounding and reading, the worse of the two ways.

    Range: part B more than it can be misread by.
    Example: 30 mL and 30 mL in one cup marked every 2.5 mL, half a mark out each: 13.64%.

    >>> round(worst_marks_deviation(30, 30, 1, 1.25, 2.5), 4)
    0.1364

    Source: arithmetic; the first reading's error makes the second part's too.
    """
    high = (reading_a + misread_a) / (reading_b - misread_b) / volume_ratio - 1
    low = 1 - (reading_a - misread_a) / (reading_b + misread_b) / volume_ratio
    return max(high, low)


@valid_range(says="Part B is no larger than the error in reading it. Use finer marks, or weigh the parts.")
def worst_marks_deviation_range(reading_b: CubicCentimetres, misread_b: CubicCentimetres) -> Truth:
    """Part B more than it can be misread by."""
    return reading_b > misread_b


@formula(level="job")
def smallest_honest_part_b(
    misread_a: CubicCentimetres, misread_b: CubicCentimetres, volume_ratio: Ratio, ratio_tolerance: Share
) -> CubicCentimetres:
    """The least of part B that can be read well enough, both parts read in one cup.

    Range: any.
    Example: within 5% at 1 to 1, half a mark out: 31 marks of B.

    >>> round(smallest_honest_part_b(0.5, 1, 1, 0.05), 9)
    31.0

    Source: arithmetic: the worst deviation, turned round.
    """
    return (misread_a / volume_ratio + (1 + ratio_tolerance) * misread_b) / ratio_tolerance


@formula(level="job")
def smallest_honest_cup(smallest_honest_part_b: CubicCentimetres, volume_ratio: Ratio) -> CubicCentimetres:
    """The smallest cup of both parts that can be read well enough, both parts read in one cup.

    Range: any.
    Example: with 31 mL of B at 1 to 1, 62 mL.

    >>> smallest_honest_cup(31, 1)
    62

    Source: arithmetic.
    """
    return (1 + volume_ratio) * smallest_honest_part_b


@check(
    level="cup",
    severity="caution",
    says="Even read with care, this cup can be {cell:worst_ratio_deviation} off the ratio; the card "
    "allows {cell:stated_ratio_tolerance}.",
    beside="worst_ratio_deviation",
    quiet=True,
    would_do=(
        "Weigh the parts: A {cell:reading_a_mass}, then B {cell:reading_b_mass}.",
        "Use a finer measure: a reading of part B can be off by {cell:misread_b}.",
        "Mix a fuller cup: {cell:smallest_honest_cup} or more reads well enough.",
    ),
)
def ratio_out_of_card(
    worst_ratio_deviation: Share, stated_ratio_tolerance: Share, parts_weighed: Count
) -> Truth:
    """True where the ratio of parts read on marks can be out by more than the card states.

    >>> ratio_out_of_card(0.087, 0.05, 0), ratio_out_of_card(0.05, 0.05, 0), ratio_out_of_card(0.087, 0.05, 1)
    (True, False, False)
    """
    return worst_ratio_deviation * (1 - parts_weighed) > stated_ratio_tolerance


@check(
    level="cup",
    severity="note",
    says="Even read with care, this cup can be {cell:worst_ratio_deviation} off the ratio; common "
    "practice allows {cell:ratio_tolerance}.",
    beside="worst_ratio_deviation",
    would_do=(
        "Weigh the parts: A {cell:reading_a_mass}, then B {cell:reading_b_mass}.",
        "Use a finer measure: a reading of part B can be off by {cell:misread_b}.",
        "Mix a fuller cup: {cell:smallest_honest_cup} or more reads well enough.",
    ),
)
def ratio_coarse(worst_ratio_deviation: Share, ratio_tolerance: Share, parts_weighed: Count) -> Truth:
    """True where the ratio of parts read on marks can be out by more than is common practice.

    >>> ratio_coarse(0.087, 0.05, 0), ratio_coarse(0.05, 0.05, 0), ratio_coarse(0.087, 0.05, 1)
    (True, False, False)
    """
    return worst_ratio_deviation * (1 - parts_weighed) > ratio_tolerance


@check(
    level="cup",
    severity="caution",
    says="The marks of this cup are too coarse for so little: part B is {cell:reading_b}, and a "
    "reading can be off "
    "by {cell:misread_b}.",
    beside="worst_ratio_deviation",
    would_do=(
        "Weigh the parts: A {cell:reading_a_mass}, then B {cell:reading_b_mass}.",
        "Use a finer measure than marks every {cell:cup_graduation}: a syringe, or a cup with finer marks.",
    ),
)
def part_below_misreading(
    reading_b: CubicCentimetres, misread_b: CubicCentimetres, parts_weighed: Count
) -> Truth:
    """True where part B is read on marks and is no more than it can be misread by.

    >>> part_below_misreading(5, 5, 0), part_below_misreading(30, 5, 0), part_below_misreading(5, 5, 1)
    (True, False, False)
    """
    return reading_b <= misread_b * (1 - parts_weighed)
