"""Readings: the two parts of a cup on whole or half marks of the shop's own cup, as little as may be."""

from webapp.formulas.book import check, formula
from webapp.formulas.rules import half_marks, whole_down, whole_up
from webapp.units import Count, CubicCentimetres, Grams, GramsPerCubicCentimetre, Ratio, Share, Truth


@formula(level="job")
def rounding_tolerance(ratio_tolerance: Share, rounding_share: Share) -> Share:
    """How much of what the ratio may be out is spent on rounding to marks; the rest is left for reading them.

    Range: any.
    Example: half of 5% is 2.5%.

    >>> rounding_tolerance(0.05, 0.5)
    0.025

    Source: our choice of the share.
    """
    return ratio_tolerance * rounding_share


@formula(level="cup")
def reading_b(
    part_a_volume: CubicCentimetres,
    part_b_volume: CubicCentimetres,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
    cup_graduation: CubicCentimetres,
    full_reading_b: CubicCentimetres,
) -> CubicCentimetres:
    """How much of part B goes on top of part A in each cup: the least on whole or half marks.

    Range: any; that of the fullest cup where four steps of the climb find no pair that keeps the ratio.
    Example: 112 mL and 56 mL at 2 to 1 in a cup marked every 10 mL: 60 mL of B on 120 mL of A.

    >>> reading_b(112, 56, 2, 0.025, 10, 80), reading_b(86, 21.5, 4, 0.025, 2.5, 40)
    (60.0, 22.5)

    Source: each line is a lower bound that only rises with the other part, so a climb ends at the least pair.
    """
    least = volume_ratio * (1 - rounding_tolerance)
    most = volume_ratio * (1 + rounding_tolerance)
    a_0 = half_marks(part_a_volume, cup_graduation)
    b_0 = half_marks(part_b_volume, cup_graduation)
    b_1 = max(b_0, half_marks(a_0 / most, cup_graduation))
    a_1 = max(a_0, half_marks(least * b_1, cup_graduation))
    b_2 = max(b_1, half_marks(a_1 / most, cup_graduation))
    a_2 = max(a_1, half_marks(least * b_2, cup_graduation))
    b_3 = max(b_2, half_marks(a_2 / most, cup_graduation))
    a_3 = max(a_2, half_marks(least * b_3, cup_graduation))
    b_4 = max(b_3, half_marks(a_3 / most, cup_graduation))
    a_4 = max(a_3, half_marks(least * b_4, cup_graduation))
    return b_4 if a_4 <= (1 + 1e-9) * most * b_4 else full_reading_b


@formula(level="cup")
def reading_a(
    reading_b: CubicCentimetres,
    part_a_volume: CubicCentimetres,
    volume_ratio: Ratio,
    rounding_tolerance: Share,
    cup_graduation: CubicCentimetres,
) -> CubicCentimetres:
    """Where to fill part A to in each cup: the least on whole or half marks.

    Range: any.
    Example: 86 mL to 22.5 mL of B at 4 to 1 in a cup marked every 2.5 mL: A to 88.75 mL.

    >>> reading_a(22.5, 86, 4, 0.025, 2.5), reading_a(60, 112, 2, 0.025, 10)
    (88.75, 120.0)

    Source: arithmetic, as for part B.
    """
    by_b = half_marks(volume_ratio * (1 - rounding_tolerance) * reading_b, cup_graduation)
    return max(half_marks(part_a_volume, cup_graduation), by_b)


@formula(level="cup")
def reading_total(reading_a: CubicCentimetres, reading_b: CubicCentimetres) -> CubicCentimetres:
    """Where to fill the cup to with part B on top of part A.

    Range: any.
    Example: 120 mL of A and 60 mL of B reach 180 mL.

    >>> reading_total(120, 60)
    180

    Source: arithmetic.
    """
    return reading_a + reading_b


@formula(level="cup")
def ratio_deviation(reading_a: CubicCentimetres, reading_b: CubicCentimetres, volume_ratio: Ratio) -> Share:
    """How far the readings are from the ratio: 0 where they keep it, above 0 where A is too much.

    Range: any.
    Example: 102.5 mL to 45 mL at 100 to 43 is 2.06% too little of A.

    >>> round(ratio_deviation(102.5, 45, 100 / 43), 4)
    -0.0206

    Source: arithmetic.
    """
    return reading_a / reading_b / volume_ratio - 1


@formula(level="cup")
def rounding_waste(reading_total: CubicCentimetres, cup_volume: CubicCentimetres) -> Share:
    """What the marks add to what is needed, as a share of it.

    Range: any.
    Example: 215 mL where 170.5 mL are needed is 26% more.

    >>> round(rounding_waste(215, 170.5), 2)
    0.26

    Source: arithmetic.
    """
    return reading_total / cup_volume - 1


@formula(level="cup")
def reading_a_mass(
    measured_a: CubicCentimetres, density_a: GramsPerCubicCentimetre, scale_division: Grams
) -> Grams:
    """Part A of the cup on a scale, up to the scale's next division.

    Range: any.
    Example: 90 mL of 1.15 g/mL is 103.5 g: 104 g on a scale that reads grams.

    >>> reading_a_mass(90, 1.15, 1)
    104

    Source: arithmetic: mass is volume times density.
    """
    return whole_up(measured_a * density_a / scale_division) * scale_division


@formula(level="cup")
def reading_b_mass(reading_a_mass: Grams, mass_ratio: Ratio, scale_division: Grams) -> Grams:
    """Part B of the cup on a scale: to the scale's nearest division for part A as weighed.

    Range: any.
    Example: for 104 g of A at 2.421 to 1 by mass 43 g on a scale that reads grams.

    >>> reading_b_mass(104, 2.421, 1)
    43

    Source: arithmetic.
    """
    return whole_down(reading_a_mass / mass_ratio / scale_division + 0.5) * scale_division


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


@check(
    level="cup",
    severity="note",
    says="With the marks of this cup you mix {cell:rounding_waste} more than you need.",
    beside="reading_total",
    would_do=(
        "Use a finer measure for the smaller part: a syringe, or a cup with finer marks.",
        "Weigh the parts: then {cell:cup_volume} a cup is enough.",
    ),
)
def rounding_wastes(rounding_waste: Share, greatest_rounding_waste: Share) -> Truth:
    """True where whole and half marks waste more than a tenth.

    >>> rounding_wastes(0.11, 0.1), rounding_wastes(0.1, 0.1)
    (True, False)
    """
    return rounding_waste > greatest_rounding_waste
