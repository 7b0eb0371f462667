"""Readings: the two parts of a cup rounded up to marks of the shop's own cup, with the ratio kept exactly."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import steps_of_ratio, whole_up
from webapp.units import Count, CubicCentimetres, Grams, GramsPerCubicCentimetre, Ratio, Share, Truth


@formula(level="cup")
def reading_step(volume_ratio: Ratio, cup_graduation: CubicCentimetres) -> CubicCentimetres:
    """The step in which the smaller part grows so that both parts stay on marks of the cup.

    Range: where no step of up to five marks does it, one mark: the larger part is then read between marks.
    Example: at 3 to 2 in a cup marked every 10 mL the smaller part grows by 20 mL, the larger by 30 mL.

    >>> reading_step(3 / 2, 10), reading_step(2, 10), reading_step(100 / 44, 10)
    (20, 10, 10)

    Source: arithmetic.
    """
    return steps_of_ratio(max(volume_ratio, 1 / volume_ratio)) * cup_graduation


@formula(level="cup")
def reading_total(
    cup_volume: CubicCentimetres,
    cup_limit: CubicCentimetres,
    volume_ratio: Ratio,
    reading_step: CubicCentimetres,
) -> CubicCentimetres:
    """What to mix in each cup, rounded up to marks; half marks, or none, where a mark would pass the limit.

    Range: any; never over the limit of the cup.
    Example: 163 mL at 1 to 1 in a cup marked every 10 mL is 180 mL, 90 of each part; a cup that may hold
    no more than 175 mL takes 168 mL at half marks, as 170 mL, and 172 mL between the marks.

    >>> reading_total(163, 180, 1, 10), reading_total(168, 175, 1, 10), reading_total(172, 175, 1, 10)
    (180, 170.0, 172)

    Source: arithmetic.
    """
    parts = 1 + max(volume_ratio, 1 / volume_ratio)
    on_marks = whole_up(cup_volume / parts / reading_step) * reading_step * parts
    on_half_marks = whole_up(2 * cup_volume / parts / reading_step) * reading_step / 2 * parts
    return on_marks if on_marks <= cup_limit else on_half_marks if on_half_marks <= cup_limit else cup_volume


@formula(level="cup")
def reading_a(reading_total: CubicCentimetres, part_a_share: Share) -> CubicCentimetres:
    """Where to fill part A to in each cup.

    Range: any.
    Example: a cup of 180 mL at 1 to 1 has A at 90 mL.

    >>> reading_a(180, 0.5)
    90.0

    Source: arithmetic.
    """
    return reading_total * part_a_share


@formula(level="cup")
def reading_b(reading_total: CubicCentimetres, part_a_share: Share) -> CubicCentimetres:
    """How much of part B goes on top of part A in each cup, up to the cup's own mark.

    Range: any.
    Example: a cup of 180 mL at 2 to 1 has 60 mL of B.

    >>> round(reading_b(180, 2 / 3), 9)
    60.0

    Source: arithmetic.
    """
    return reading_total * (1 - part_a_share)


@formula(level="cup")
def reading_a_mass(reading_a: CubicCentimetres, density_a: GramsPerCubicCentimetre) -> Grams:
    """Part A of the cup as read, on a scale.

    Range: any.
    Example: 90 mL of 1.15 g/mL is 103.5 g.

    >>> round(reading_a_mass(90, 1.15), 9)
    103.5

    Source: arithmetic: mass is volume times density.
    """
    return reading_a * density_a


@formula(level="cup")
def reading_b_mass(reading_b: CubicCentimetres, density_b: GramsPerCubicCentimetre) -> Grams:
    """Part B of the cup as read, on a scale.

    Range: any.
    Example: 90 mL of 0.97 g/mL is 87.3 g.

    >>> round(reading_b_mass(90, 0.97), 9)
    87.3

    Source: arithmetic: mass is volume times density.
    """
    return reading_b * density_b


@formula(level="cup")
def mix_volume(reading_total: CubicCentimetres, cups: Count) -> CubicCentimetres:
    """What to mix in all for one coat, every cup filled to its mark.

    Range: any.
    Example: 2 cups of 180 mL are 360 mL.

    >>> mix_volume(180, 2)
    360

    Source: arithmetic.
    """
    return reading_total * cups


@formula(level="cup")
def worst_ratio_deviation(
    reading_a: CubicCentimetres, reading_b: CubicCentimetres, cup_graduation: CubicCentimetres
) -> Share:
    """How far the ratio is out when A is read half a mark high and B half a mark low.

    Range: part B more than half a mark. The other way round the ratio is always less far out.
    Example: 30 mL and 30 mL in a cup marked every 2.5 mL can be 8.7 % out; 60 mL and 20 mL 8.9 %.

    >>> round(worst_ratio_deviation(30, 30, 2.5), 3), round(worst_ratio_deviation(60, 20, 2.5), 3)
    (0.087, 0.089)

    Source: arithmetic; the worse of the two ways.
    """
    half_mark = cup_graduation / 2
    return (reading_a + half_mark) / (reading_b - half_mark) / (reading_a / reading_b) - 1


@valid_range(
    says="{label:reading_b} is {cell:reading_b}, no more than half a mark of this cup. Use one with finer "
    "marks, or a scale."
)
def worst_ratio_deviation_range(reading_b: CubicCentimetres, cup_graduation: CubicCentimetres) -> Truth:
    """Part B more than half a mark."""
    return reading_b > cup_graduation / 2


@formula(level="job")
def smallest_honest_part(cup_graduation: CubicCentimetres, ratio_tolerance: Share) -> CubicCentimetres:
    """The smallest part that can be read well enough at 1 to 1, both parts read in the same cup.

    Range: 1 to 1 by volume; other ratios are judged by their worst deviation.
    Example: within 5 % each part is at least 20.5 marks: 205 mL where the marks are 10 mL apart.

    >>> round(smallest_honest_part(10, 0.05), 9)
    205.0

    Source: arithmetic: the worst deviation at 1 to 1, turned round.
    """
    return cup_graduation / 2 * (2 + ratio_tolerance) / ratio_tolerance


@check(
    level="cup",
    severity="caution",
    says="Half a mark out in this cup puts the ratio further out than the {label:ratio_tolerance} of "
    "{cell:ratio_tolerance}. Read it at eye level, and better: measure more finely.",
    beside="worst_ratio_deviation",
    would_do=(
        "Measure in a cup or syringe with finer marks: the {label:cup_graduation} is {cell:cup_graduation}.",
        "Weigh: A {cell:reading_a_mass}, B {cell:reading_b_mass}.",
        "Mix a larger cup.",
    ),
)
def ratio_coarse(worst_ratio_deviation: Ratio, ratio_tolerance: Share) -> Truth:
    """True where half a mark each way is more than the ratio may be out.

    >>> ratio_coarse(0.087, 0.05), ratio_coarse(0.05, 0.05)
    (True, False)
    """
    return worst_ratio_deviation > ratio_tolerance
