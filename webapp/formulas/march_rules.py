"""Shared rules of the cup's heat: the march from the first touch of A and B to gel.

Eight steps, short ones first; against a tight integrator gel is within 4%. What the figures of a cup are
stands in `heat_rules`.
"""

from webapp.formulas.heat_rules import cure_work, heat_step, step_work
from webapp.units import KelvinDifference, Kelvins, PerKelvin, Ratio, Share


def step_end(step: float, gel_conversion: Share) -> Share:
    """Return the conversion at the end of a step towards gel, the eighth of which ends at gel itself.

    >>> round(step_end(4, 0.58), 5), step_end(8, 0.58)
    (0.10253, 0.58)
    """
    return gel_conversion * (step / 8) ** 2.5


def gel_step(
    rise: KelvinDifference,
    step: float,
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
    """Return the rise at the end of one of the eight steps to gel, from the rise at its beginning.

    >>> round(gel_step(0.0, 1, 0.58, 0.0, 298.15, 200.0, 0.1, 6855.524, 0.0, 1.5, 0.0, 298.15), 4)
    0.6408
    """
    begun = step_end(step - 1, gel_conversion)
    share = step_end(step, gel_conversion) - begun
    return heat_step(
        rise, begun, share, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip


def gel_step_work(
    rise: KelvinDifference,
    next_rise: KelvinDifference,
    step: float,
    gel_conversion: Share,
    air: Kelvins,
    self_start: Ratio,
    energy: KelvinDifference,
    reference_temperature: Kelvins,
) -> Ratio:
    """Return the time of one of the eight steps to gel, in times of the rate constant.

    >>> round(gel_step_work(0.0, 0.0, 1, 0.58, 298.15, 0.1, 6855.524, 298.15), 5)
    0.03164
    """
    begun = cure_work(step_end(step - 1, gel_conversion), self_start)
    work = cure_work(step_end(step, gel_conversion), self_start) - begun
    return step_work(rise, next_rise, work, air, energy, reference_temperature)


def gel_work(
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
) -> Ratio:
    """Return the time to gel in times of the rate constant, from the rise that the mix starts at.

    >>> cup = (9000 * 161.085 / (150 * 1.8e7 * 2.37855e-4), 298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7)
    >>> round(gel_work(0.0, 0.58, *cup, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15) / 2.37855e-4 / 60, 2)
    45.01
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
    return work_1 + work_2 + work_3 + work_4 + work_5 + work_6 + work_7 + work_8
