"""Shared rules of the cup's heat: how warm a cup is at gel, at its peak, and after a time on the way there.

Six steps behind gel lead to the peak, within 4 K of a tight integrator's. What the figures of a cup are
stands in `heat_rules`.
"""

from webapp.formulas.heat_rules import heat_step
from webapp.formulas.march_rules import gel_step, gel_step_work
from webapp.units import KelvinDifference, Kelvins, PerKelvin, Ratio, Share


def gel_rise(
    start_rise: KelvinDifference,
    gel_conversion: Share,
    cooling: Ratio,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> KelvinDifference:
    """Return the rise at gel.

    >>> cup = (9000 * 161.085 / (150 * 1.8e7 * 2.37855e-4), 298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7)
    >>> round(25 + gel_rise(0.0, 0.58, *cup, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15), 1)
    120.2
    """
    rise_1 = gel_step(
        start_rise, 1, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_2 = gel_step(
        rise_1, 2, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_3 = gel_step(
        rise_2, 3, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_4 = gel_step(
        rise_3, 4, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_5 = gel_step(
        rise_4, 5, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_6 = gel_step(
        rise_5, 6, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_7 = gel_step(
        rise_6, 7, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    return gel_step(
        rise_7, 8, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip


def peak_rise(
    start_rise: KelvinDifference,
    gel_conversion: Share,
    cooling: Ratio,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> KelvinDifference:
    """Return the greatest rise after gel, or the rise at the start where that is greater.

    >>> cup = (9000 * 161.085 / (150 * 1.8e7 * 2.37855e-4), 298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7)
    >>> round(25 + peak_rise(0.0, 0.58, *cup, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15))
    179
    """
    at_gel = gel_rise(
        start_rise, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_66 = heat_step(
        at_gel, gel_conversion, 0.66 - gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_74 = heat_step(
        rise_66, 0.66, 0.08, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_81 = heat_step(
        rise_74, 0.74, 0.07, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_87 = heat_step(
        rise_81, 0.81, 0.06, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_92 = heat_step(
        rise_87, 0.87, 0.05, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_96 = heat_step(
        rise_92, 0.92, 0.04, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    return max(start_rise, at_gel, rise_66, rise_74, rise_81, rise_87, rise_92, rise_96)


def rise_after(
    work: Ratio,
    start_rise: KelvinDifference,
    gel_conversion: Share,
    cooling: Ratio,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> KelvinDifference:
    """Return the rise after a time before gel, given in times of the rate constant: straight within a step.

    >>> cup = (9000 * 161.085 / (150 * 1.8e7 * 2.37855e-4), 298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7)
    >>> rest = (0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> round(25 + rise_after(39.36007 * 60 * 2.37855e-4, 0.0, 0.58, *cup, *rest), 2)
    51.51
    """
    rise_1 = gel_step(
        start_rise, 1, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_2 = gel_step(
        rise_1, 2, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_3 = gel_step(
        rise_2, 3, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_4 = gel_step(
        rise_3, 4, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_5 = gel_step(
        rise_4, 5, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_6 = gel_step(
        rise_5, 6, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_7 = gel_step(
        rise_6, 7, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    rise_8 = gel_step(
        rise_7, 8, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    work_1 = gel_step_work(
        start_rise, rise_1, 1, gel_conversion, air, self_start, energy, reference_temperature
    )
    work_2 = gel_step_work(rise_1, rise_2, 2, gel_conversion, air, self_start, energy, reference_temperature)
    work_3 = gel_step_work(rise_2, rise_3, 3, gel_conversion, air, self_start, energy, reference_temperature)
    work_4 = gel_step_work(rise_3, rise_4, 4, gel_conversion, air, self_start, energy, reference_temperature)
    work_5 = gel_step_work(rise_4, rise_5, 5, gel_conversion, air, self_start, energy, reference_temperature)
    work_6 = gel_step_work(rise_5, rise_6, 6, gel_conversion, air, self_start, energy, reference_temperature)
    work_7 = gel_step_work(rise_6, rise_7, 7, gel_conversion, air, self_start, energy, reference_temperature)
    work_8 = gel_step_work(rise_7, rise_8, 8, gel_conversion, air, self_start, energy, reference_temperature)
    end_1 = work_1
    end_2 = end_1 + work_2
    end_3 = end_2 + work_3
    end_4 = end_3 + work_4
    end_5 = end_4 + work_5
    end_6 = end_5 + work_6
    end_7 = end_6 + work_7
    at_1 = between(start_rise, rise_1, work / work_1)
    at_2 = between(rise_1, rise_2, (work - end_1) / work_2)
    at_3 = between(rise_2, rise_3, (work - end_2) / work_3)
    at_4 = between(rise_3, rise_4, (work - end_3) / work_4)
    at_5 = between(rise_4, rise_5, (work - end_4) / work_5)
    at_6 = between(rise_5, rise_6, (work - end_5) / work_6)
    at_7 = between(rise_6, rise_7, (work - end_6) / work_7)
    at_8 = between(rise_7, rise_8, (work - end_7) / work_8)
    late = at_7 if work < end_7 else at_8
    in_6 = at_6 if work < end_6 else late
    in_5 = at_5 if work < end_5 else in_6
    in_4 = at_4 if work < end_4 else in_5
    in_3 = at_3 if work < end_3 else in_4
    in_2 = at_2 if work < end_2 else in_3
    return at_1 if work < end_1 else in_2


def between(begin: KelvinDifference, end: KelvinDifference, share: Share) -> KelvinDifference:
    """Return what lies at a share of the way from one figure to another, no further than the other.

    >>> between(10.0, 30.0, 0.25), between(10.0, 30.0, 2.0)
    (15.0, 30.0)
    """
    return begin + (end - begin) * min(share, 1)
