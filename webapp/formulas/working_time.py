"""Working time: how long the mix stays good in this room, and how much of that is left to pour."""

from webapp.formulas.book import check, formula
from webapp.formulas.rules import speed_factor
from webapp.units import ErgsPerMole, ErgsPerMoleKelvin, Kelvins, Seconds, Share, Truth


@formula(level="job")
def working_temperature(air_temperature: Kelvins, resin_temperature: Kelvins) -> Kelvins:
    """The temperature that the working time is taken at: between the air's and the resin's.

    Range: where the cup's own heat bounds the time too.
    Example: resin of 15 °C in air of 25 °C works as at 20 °C.

    >>> working_temperature(298.15, 288.15)
    293.15

    Source: the mean; a cold cup in a warm room warms up, and gels long before its own temperature says.
    """
    return air_temperature + (resin_temperature - air_temperature) / 2


@formula(level="job")
def working_time(
    pot_life: Seconds,
    pot_life_temperature: Kelvins,
    working_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """The card's pot life, brought to this room and resin: warmer is shorter.

    Range: a cup of about the card's mass; larger cups heat themselves, and their own heat bounds them.
    Example: 30 min at 25 °C becomes 44.4 min at 20 °C and 20.5 min at 30 °C.

    >>> round(working_time(1800, 298.15, 293.15, 57e10, 8.314462618e7) / 60, 1)
    44.4
    >>> round(working_time(1800, 298.15, 303.15, 57e10, 8.314462618e7) / 60, 1)
    20.5

    Source: Arrhenius. Our activation energy is a middle of 44 to 57: Barral et al., J. Appl. Polym. Sci. 56
    (1995) 1029-1037; 55 to 60, primary amine: Thermochim. Acta 447 (2006) 167-177; 58.6: Riccardi, Adabbo,
    Williams, J. Appl. Polym. Sci. 29 (1984) 2481; and 61.4, a system that cures at 25 °C. Pot life as defined
    by ISO 9514:2019.
    """
    return pot_life / speed_factor(working_temperature, pot_life_temperature, activation_energy, gas_constant)


@formula(level="job")
def working_time_on_face(
    pot_life: Seconds,
    pot_life_temperature: Kelvins,
    surface_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """The card's pot life, brought to the temperature of the face.

    Range: a thin film, which takes the temperature of what it lies on.
    Example: 30 min at 25 °C becomes 44.4 min at 20 °C.

    >>> round(working_time_on_face(1800, 298.15, 293.15, 57e10, 8.314462618e7) / 60, 1)
    44.4

    Source: Arrhenius; the pot life is the resin card's.
    """
    return pot_life / speed_factor(surface_temperature, pot_life_temperature, activation_energy, gas_constant)


@formula(level="job")
def usable_time(working_time: Seconds, usable_share: Share) -> Seconds:
    """From the moment A touches B to the moment the cup must be poured.

    Range: any.
    Example: 75% of 40 min is 30 min.

    >>> usable_time(2400, 0.75)
    1800.0

    Source: our choice of the share: the last quarter pours badly.
    """
    return working_time * usable_share


@formula(level="job")
def changeover(planned_mix_time: Seconds, tint_time: Seconds, transfer_time: Seconds) -> Seconds:
    """From the moment A touches B until the pour of the cup begins: mixing, tinting and changing cups.

    Range: any.
    Example: 2 min of mixing, 2 min of tint and 1 min for the cups are 5 min.

    >>> changeover(120, 120, 60)
    300

    Source: arithmetic.
    """
    return planned_mix_time + tint_time + transfer_time


@formula(level="job")
def pour_time(usable_time: Seconds, changeover: Seconds) -> Seconds:
    """What is left to pour and spread, after mixing, tinting and changing cups; below 0 it is missing.

    Range: any.
    Example: of 30 min, after 5 min for mixing, tint and cups, 25 min are left.

    >>> pour_time(1800, 300)
    1500

    Source: arithmetic.
    """
    return usable_time - changeover


@check(
    level="job",
    severity="stop",
    says="This room leaves no {label:pour_time}: mixing and tinting use up the {label:usable_time}, and "
    "the resin would set in the cup. Gain time first.",
    beside="pour_time",
    would_do=(
        "Cool the parts: the {label:resin_temperature} is {cell:resin_temperature}.",
        "Wait for a cooler hour.",
        "Use a slower resin.",
    ),
)
def no_time_to_pour(pour_time: Seconds) -> Truth:
    """True where mixing and tinting use up the time to pour.

    >>> no_time_to_pour(0), no_time_to_pour(1500)
    (True, False)
    """
    return pour_time <= 0
