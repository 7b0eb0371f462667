"""Shared rules of planning: how much of a cup can be poured before its own heat ends it."""

from webapp.formulas.march_rules import gel_work
from webapp.formulas.rules import filled_surface
from webapp.units import (
    Centimetres,
    CubicCentimetres,
    GramsPerCubicCentimetre,
    KelvinDifference,
    Kelvins,
    PerKelvin,
    PerSecond,
    Ratio,
    Seconds,
    Share,
)


def poured_before_heat(
    volume: CubicCentimetres,
    slope: float,
    changeover: Seconds,
    gel_share: Share,
    cup_density: GramsPerCubicCentimetre,
    nominal_density: GramsPerCubicCentimetre,
    cup_diameter: Centimetres,
    loss: float,
    rate_constant: PerSecond,
    gel_conversion: Share,
    start_rise: KelvinDifference,
    air: Kelvins,
    full_rise: KelvinDifference,
    self_start: Ratio,
    energy: KelvinDifference,
    capacity_growth: PerKelvin,
    capacity_limit: Ratio,
    loss_growth: PerKelvin,
    reference_temperature: Kelvins,
) -> CubicCentimetres:
    """Return what can be poured of a cup, `slope` a second, before its own heat ends it; below 0, nothing.

    >>> cup = (0.75, 1.1, 1.1, 7.5, 9000 / 1.8e7, 2.37884e-4, 0.58, 0.0)
    >>> mix = (298.15, 400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> round(poured_before_heat(150 / 1.1, 0.1, 300, *cup, *mix), 1)
    172.5
    """
    mass = volume * cup_density
    cooling = loss * filled_surface(mass, cup_diameter, nominal_density) / (mass * rate_constant)
    work = gel_work(
        start_rise, gel_conversion, cooling, air, full_rise, self_start, energy,
        capacity_growth, capacity_limit, loss_growth, reference_temperature,
    )  # fmt: skip
    return slope * (gel_share * work / rate_constant - changeover)


def met_between(
    small: CubicCentimetres, by_small: CubicCentimetres, large: CubicCentimetres, by_large: CubicCentimetres
) -> CubicCentimetres:
    """Return the volume at which what can be poured would be just the volume, straight between two cups.

    >>> met_between(100, 300, 400, 200), met_between(100, 50, 400, 0)
    (250.0, 100.0)
    """
    spare = max(by_small - small, 0 * small)
    return small + (large - small) * spare / (spare + (large - by_large))
