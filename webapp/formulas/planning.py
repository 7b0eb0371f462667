"""Planning: how much of a cup can be poured before its time, and before its own heat, runs out."""

from webapp.formulas.book import check, formula
from webapp.formulas.planning_rules import met_between, poured_before_heat
from webapp.units import (
    Centimetres,
    CubicCentimetres,
    ErgsPerGramKelvin,
    GramsPerCubicCentimetre,
    HeatLoss,
    KelvinDifference,
    Kelvins,
    PerKelvin,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    Truth,
)


@formula(level="colour")
def pourable_volume(
    pour_time: Seconds, total_face_coat_volume: CubicCentimetres, total_face_spreading_time: Seconds
) -> CubicCentimetres:
    """The most that can be poured and spread in the working time, at the pace of this colour's faces.

    Range: no time to pour gives 0, so that a hot room never asks for a giant cup.
    Example: in 10 min, faces that take 150 mL in 12 min take 125 mL.

    >>> pourable_volume(600, 150, 720), pourable_volume(-60, 150, 720)
    (125.0, 0.0)

    Source: arithmetic; the pace is the record of the shop's own pours.
    """
    return max(0, pour_time) * total_face_coat_volume / total_face_spreading_time


@formula(level="colour")
def heat_volume(
    cool_cup_limit: CubicCentimetres,
    total_face_coat_volume: CubicCentimetres,
    total_face_spreading_time: Seconds,
    changeover: Seconds,
    gel_share: Share,
    cup_density: GramsPerCubicCentimetre,
    nominal_density: GramsPerCubicCentimetre,
    cup_diameter: Centimetres,
    air_loss: HeatLoss,
    heat_capacity: ErgsPerGramKelvin,
    rate_constant: PerSecond,
    gel_conversion: Share,
    resin_temperature: Kelvins,
    air_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    cure_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> CubicCentimetres:
    """The most that can be poured before the cup's own heat makes it too thick: larger cups gel sooner.

    Range: any; a little on the safe side.
    Example: in a hot room a cup of 400 mL that heats itself leaves time for less than half of it.

    >>> model = (400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cup = (0.75, 1.1, 1.1, 7.5, 9000, 1.8e7, 2.37884e-4, 0.58, 308.15, 308.15, *model)
    >>> 0 < heat_volume(400, 150, 720, 300, *cup) < 200
    True

    Source: the volume that takes as long to pour as its own heat leaves, by two chords and one step back.
    """
    slope = total_face_coat_volume / total_face_spreading_time
    by_limit = poured_before_heat(
        cool_cup_limit, slope, changeover, gel_share, cup_density, nominal_density, cup_diameter,
        air_loss / heat_capacity, rate_constant, gel_conversion, resin_temperature - air_temperature,
        air_temperature, adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    small = min(cool_cup_limit, max(by_limit, 0.05 * cool_cup_limit))
    by_small = poured_before_heat(
        small, slope, changeover, gel_share, cup_density, nominal_density, cup_diameter,
        air_loss / heat_capacity, rate_constant, gel_conversion, resin_temperature - air_temperature,
        air_temperature, adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    chord = (
        met_between(small, by_small, cool_cup_limit, by_limit)
        if by_limit < cool_cup_limit
        else cool_cup_limit
    )
    by_chord = poured_before_heat(
        chord, slope, changeover, gel_share, cup_density, nominal_density, cup_diameter,
        air_loss / heat_capacity, rate_constant, gel_conversion, resin_temperature - air_temperature,
        air_temperature, adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    nearer = met_between(small, by_small, chord, by_chord) if by_chord < chord else chord
    by_nearer = poured_before_heat(
        nearer, slope, changeover, gel_share, cup_density, nominal_density, cup_diameter,
        air_loss / heat_capacity, rate_constant, gel_conversion, resin_temperature - air_temperature,
        air_temperature, adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip
    return max(0 * nearer, min(nearer, by_nearer), min(small, by_small))


@check(
    level="colour",
    severity="stop",
    says="No cup works here: its own heat leaves no time to pour, and the mix would set in the cup.",
    beside="cup_limit",
    would_do=(
        "Cool the parts: the {label:resin_temperature} is {cell:resin_temperature}.",
        "Wait for a cooler hour: the {label:air_temperature} is {cell:air_temperature}.",
        "Use a slower resin: the {label:pot_life} of this one is {cell:pot_life}.",
    ),
)
def no_time_for_heat(heat_volume: CubicCentimetres, planned_graduation: CubicCentimetres) -> Truth:
    """True where the cup's own heat leaves no time to pour as much as a mark.

    >>> no_time_for_heat(5, 10), no_time_for_heat(50, 10)
    (True, False)
    """
    return heat_volume < planned_graduation
