"""The fullest cup: the greatest pair of marks that keeps the ratio under the limit of the cup."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import half_marks_down
from webapp.units import CubicCentimetres, Ratio, Share, Truth


@formula(level="colour")
def full_reading_b(
    cup_limit: CubicCentimetres,
    part_a_share: Share,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
    planned_graduation: CubicCentimetres,
) -> CubicCentimetres:
    """Part B of the fullest cup whose two parts both stand on whole or half marks and keep the ratio.

    Range: any; 0 where no two marks keep the ratio under the limit.
    Example: at most 180 mL at 2 to 1 in a cup marked every 10 mL is 60 mL of B on 120 mL of A.

    >>> full_reading_b(180, 2 / 3, 2, 0.025, 10), full_reading_b(179, 2 / 3, 2, 0.025, 10)
    (60.0, 55.0)

    Source: each line is an upper bound that only falls with the other part; a descent ends at the greatest.
    """
    least = volume_ratio * (1 - rounding_tolerance)
    most = volume_ratio * (1 + rounding_tolerance)
    a_0 = half_marks_down(part_a_share * cup_limit, planned_graduation)
    b_0 = half_marks_down((1 - part_a_share) * cup_limit, planned_graduation)
    b_1 = min(b_0, half_marks_down(a_0 / least, planned_graduation))
    a_1 = min(a_0, half_marks_down(most * b_1, planned_graduation))
    b_2 = min(b_1, half_marks_down(a_1 / least, planned_graduation))
    a_2 = min(a_1, half_marks_down(most * b_2, planned_graduation))
    b_3 = min(b_2, half_marks_down(a_2 / least, planned_graduation))
    a_3 = min(a_2, half_marks_down(most * b_3, planned_graduation))
    return min(b_3, half_marks_down(a_3 / least, planned_graduation))


@formula(level="colour")
def full_reading_a(
    full_reading_b: CubicCentimetres,
    cup_limit: CubicCentimetres,
    part_a_share: Share,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
    planned_graduation: CubicCentimetres,
) -> CubicCentimetres:
    """Part A of the fullest cup whose two parts both stand on whole or half marks and keep the ratio.

    Range: any.
    Example: at most 180 mL at 2 to 1 in a cup marked every 10 mL is 120 mL of A.

    >>> full_reading_a(60, 180, 2 / 3, 2, 0.025, 10)
    120.0

    Source: arithmetic, as for part B.
    """
    most = half_marks_down(volume_ratio * (1 + rounding_tolerance) * full_reading_b, planned_graduation)
    return min(half_marks_down(part_a_share * cup_limit, planned_graduation), most)


@formula(level="colour")
def full_cup(
    full_reading_a: CubicCentimetres,
    full_reading_b: CubicCentimetres,
    part_a_share: Share,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
) -> CubicCentimetres:
    """The most that one cup can give in the exact ratio, when both of its parts stand on marks.

    Range: two marks of the cup that keep the ratio under the limit.
    Example: 120 mL and 60 mL at 2 to 1 give 180 mL; 90 mL and 40 mL at 100 to 43 give 129.4 mL.

    >>> round(full_cup(120, 60, 2 / 3, 2, 0.025), 6), round(full_cup(90, 40, 100 / 143, 100 / 43, 0.04), 1)
    (180.0, 128.7)

    Source: arithmetic.
    """
    return min(full_reading_a / part_a_share, full_reading_b / (1 - part_a_share))


@valid_range(
    says="No two marks of this cup keep the ratio in so small a cup. Weigh the parts, or use finer marks."
)
def full_cup_range(
    full_reading_a: CubicCentimetres,
    full_reading_b: CubicCentimetres,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
) -> Truth:
    """Two marks of the cup that keep the ratio."""
    return (1 - 1e-9) * (1 - rounding_tolerance) * volume_ratio * full_reading_b < full_reading_a


@check(
    level="colour",
    severity="stop",
    says="No two marks of your cup keep the ratio in so small a batch. Weigh the parts, or "
    "measure them in a cup with finer marks.",
    beside="cup_limit",
    would_do=(
        "Weigh the parts, {cell:mass_ratio} to 1 by mass.",
        "Use a finer measure than marks every {cell:planned_graduation}: a syringe, or a finer cup.",
        "Make room for more in a cup: the {label:cup_limit} is {cell:cup_limit} here.",
    ),
)
def no_marks_fit(
    full_reading_a: CubicCentimetres,
    full_reading_b: CubicCentimetres,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
) -> Truth:
    """True where the fullest cup has no pair of marks in the ratio.

    >>> no_marks_fit(0, 0, 1, 0.025), no_marks_fit(80, 85, 1, 0.025), no_marks_fit(90, 90, 1, 0.025)
    (True, True, False)
    """
    return (1 - 1e-9) * (1 - rounding_tolerance) * volume_ratio * full_reading_b >= full_reading_a
