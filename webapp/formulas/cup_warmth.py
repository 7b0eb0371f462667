"""How warm a cup gets: at the moment it must be poured by, and left standing; what class that makes it."""

from webapp.formulas.book import check, formula
from webapp.formulas.warmth_rules import peak_rise, rise_after
from webapp.units import (
    Count,
    KelvinDifference,
    Kelvins,
    PerKelvin,
    PerSecond,
    Ratio,
    Seconds,
    Share,
    Truth,
)


@formula(level="cup")
def pour_by_temperature(
    pour_by: Seconds,
    cup_cooling: PerSecond,
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
) -> Kelvins:
    """How warm this cup is on the whole at the moment by which it must be poured.

    Range: before gel; the middle of a cup is warmer still.
    Example: 150 g that gel after 45 min at 25 °C are at 51.5 °C after 39.36 min.

    >>> model = (400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(pour_by_temperature(39.36 * 60, cooling, 2.37855e-4, 0.58, 298.15, 298.15, *model) - 273.15, 1)
    51.5

    Source: the march of the cup's heat, straight within a step.
    """
    return air_temperature + rise_after(
        pour_by * rate_constant, resin_temperature - air_temperature, gel_conversion,
        cup_cooling / rate_constant, air_temperature, adiabatic_rise, cure_self_start, activation_temperature,
        heat_capacity_growth, heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip


@formula(level="cup")
def peak_temperature(
    cup_cooling: PerSecond,
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
) -> Kelvins:
    """The warmest that this cup gets if it is left standing, on the whole.

    Range: 20 g to 1 kg; within 4 K of a tight integrator. The middle of a cup is up to 65 K hotter.
    Example: 150 g that gel after 45 min at 25 °C peak at 178.5 °C, at 400 J/g.

    >>> model = (400 / 1.8, 0.1, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(peak_temperature(cooling, 2.37855e-4, 0.58, 298.15, 298.15, *model) - 273.15)
    179

    Source: the march of the cup's heat, six steps past gel.
    """
    return air_temperature + peak_rise(
        resin_temperature - air_temperature, gel_conversion, cup_cooling / rate_constant, air_temperature,
        adiabatic_rise, cure_self_start, activation_temperature, heat_capacity_growth, heat_capacity_limit,
        air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip


@formula(level="cup")
def other_peak_temperature(
    cup_cooling: PerSecond,
    high_rate_constant: PerSecond,
    gel_conversion: Share,
    resin_temperature: Kelvins,
    air_temperature: Kelvins,
    adiabatic_rise: KelvinDifference,
    high_self_start: Ratio,
    activation_temperature: KelvinDifference,
    heat_capacity_growth: PerKelvin,
    heat_capacity_limit: Ratio,
    air_loss_growth: PerKelvin,
    kinetic_reference_temperature: Kelvins,
) -> Kelvins:
    """The same for a mix that starts more by itself: the other end of what is not known of it.

    Range: 20 g to 1 kg; within 4 K of a tight integrator.
    Example: at a self-start of 0.3, 150 g of 285.5 J/g that gel after 45 min at 25 °C peak at about 107 °C.

    >>> model = (285.5 / 1.8, 0.3, 57e10 / 8.314462618e7, 0.004 / 1.8, 2.4 / 1.8, 0.08 / 9, 298.15)
    >>> cooling = 9000 * 161.085 / (150 * 1.8e7)
    >>> round(other_peak_temperature(cooling, 1.54757e-4, 0.58, 298.15, 298.15, *model) - 273.15) // 10
    10

    Source: the march of the cup's heat, six steps past gel.
    """
    return air_temperature + peak_rise(
        resin_temperature - air_temperature, gel_conversion, cup_cooling / high_rate_constant,
        air_temperature, adiabatic_rise, high_self_start, activation_temperature, heat_capacity_growth,
        heat_capacity_limit, air_loss_growth, kinetic_reference_temperature,
    )  # fmt: skip


@formula(level="cup")
def heat_class(
    peak_temperature: Kelvins,
    other_peak_temperature: Kelvins,
    cup_warm_from: Kelvins,
    cup_hot_from: Kelvins,
    cup_smokes_from: Kelvins,
) -> Count:
    """Class of a cup left standing: 0 cool, 1 warm, 2 runs hot, 3 can smoke, 4 will smoke.

    Range: any cup; the worse of the two ends of what is not known, and 4 where both ends say so.
    Example: 44 °C is cool, 64 warm, 99 runs hot; 101 at one end can smoke, at both it will.

    >>> bounds = (318.15, 338.15, 373.15)
    >>> [heat_class(each + 273.15, 300, *bounds) for each in (44, 64, 99, 101)]
    [0, 1, 2, 3]
    >>> heat_class(374, 375, *bounds)
    4

    Source: engineering classes: cool under 45 °C, warm to 65 (skin burns on longer touch from about 60, ISO
    13732-1, from memory), runs hot over that; it can smoke from 100.
    """
    worse = max(peak_temperature, other_peak_temperature)
    better = min(peak_temperature, other_peak_temperature)
    smokes = 4 if better >= cup_smokes_from else 3
    hot = smokes if worse >= cup_smokes_from else 2
    warm = 1 if worse < cup_hot_from else hot
    return 0 if worse < cup_warm_from else warm


@check(
    level="cup",
    severity="caution",
    says="This cup heats itself to {cell:pour_by_temperature} before you are done pouring: hot in "
    "the hand, and it "
    "thickens all at once.",
    beside="pour_by",
    would_do=(
        "Mix less than {cell:cup_total} in a cup.",
        "Cool the parts: the {label:resin_temperature} is {cell:resin_temperature}.",
        "Pour it all out at once, and spread it on the face.",
    ),
)
def cup_warm_while_poured(pour_by_temperature: Kelvins, cup_warm_from: Kelvins) -> Truth:
    """True where the cup is warm at the moment by which it must be poured.

    >>> cup_warm_while_poured(318.15, 318.15), cup_warm_while_poured(318, 318.15)
    (True, False)
    """
    return pour_by_temperature >= cup_warm_from


@check(
    level="cup",
    severity="caution",
    says="This cup heats itself and sets in {cell:gel_time}; a cup of the card's size takes "
    "{cell:card_cup_gel_time}.",
    beside="pour_by",
    would_do=(
        "Mix less in a cup: this one holds {cell:cup_mass}, the card's {cell:pot_life_mass}.",
        "Cool the parts: the {label:resin_temperature} is {cell:resin_temperature}.",
    ),
)
def cup_gels_early(gel_time: Seconds, card_cup_gel_time: Seconds, early_gel_share: Share) -> Truth:
    """True where the cup gels before nine tenths of the card's cup's time in the same room.

    >>> cup_gels_early(89, 100, 0.9), cup_gels_early(90, 100, 0.9)
    (True, False)
    """
    return gel_time < early_gel_share * card_cup_gel_time
