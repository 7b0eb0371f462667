"""The night: how long what must not be early takes if the room falls to the lowest of the coming night."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import speed_factor
from webapp.units import ErgsPerMole, ErgsPerMoleKelvin, Kelvins, Seconds, Truth


@formula(level="job")
def night_temperature(
    lowest_tonight: Kelvins, curing_temperature: Kelvins, least_cure_temperature: Kelvins
) -> Kelvins:
    """The coldest that the film cures at: the coming night's, where that is colder than the face now.

    Range: a night no colder than the card's least temperature; a cold film can stall short of full cure.
    Example: a face at 20 °C and a night of 12 °C: 12 °C.

    >>> night_temperature(285.15, 293.15, 283.15), night_temperature(298.15, 293.15, 283.15)
    (285.15, 293.15)

    Source: a film takes the temperature of what it lies on.
    """
    return max(least_cure_temperature, min(lowest_tonight, curing_temperature))


@valid_range(
    says="The night is at {cell:lowest_tonight}, under the {label:least_cure_temperature} of "
    "{cell:least_cure_temperature}; a cold film can stall, so no time is given."
)
def night_temperature_range(lowest_tonight: Kelvins, least_cure_temperature: Kelvins) -> Truth:
    """A night no colder than the card's least temperature."""
    return lowest_tonight >= least_cure_temperature


@check(
    level="job",
    severity="caution",
    says="Tonight it gets down to {cell:lowest_tonight}, and this resin does not cure under "
    "{cell:least_cure_temperature}: the film can stall and stay soft.",
    beside="lowest_tonight",
    quiet=True,
    would_do=(
        "Keep the room at {cell:least_cure_temperature} or more through the night.",
        "Pour on a warmer day, or earlier in the day.",
    ),
)
def night_too_cold(lowest_tonight: Kelvins, least_cure_temperature: Kelvins) -> Truth:
    """True where the coming night is colder than the card's least temperature.

    >>> night_too_cold(282, 283), night_too_cold(283, 283)
    (True, False)
    """
    return lowest_tonight < least_cure_temperature


@formula(level="job")
def tack_free_time_at_night(
    stated_tack_free_time: Seconds,
    tack_free_temperature: Kelvins,
    night_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the film is tack-free, if it stayed as cold as in the coming night.

    Range: a night no colder than the card's least temperature.
    Example: 8 hr at 25 °C becomes 17.8 hr at 15 °C.

    >>> round(tack_free_time_at_night(8 * 3600, 298.15, 288.15, 57e10, 8.314462618e7) / 3600, 1)
    17.8

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_tack_free_time / speed_factor(
        night_temperature, tack_free_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def recoat_opens_at_night(
    stated_recoat_opens: Seconds,
    recoat_temperature: Kelvins,
    night_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the next coat may be poured, if it stayed as cold as in the night.

    Range: a night no colder than the card's least temperature.
    Example: 4 hr at 25 °C becomes 8.9 hr at 15 °C.

    >>> round(recoat_opens_at_night(4 * 3600, 298.15, 288.15, 57e10, 8.314462618e7) / 3600, 1)
    8.9

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_recoat_opens / speed_factor(
        night_temperature, recoat_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def cure_time_at_night(
    stated_cure_time: Seconds,
    cure_temperature: Kelvins,
    night_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the film is cured, if it stayed as cold as in the coming night.

    Range: a night no colder than the card's least temperature.
    Example: 30 hr at 25 °C becomes 66.6 hr at 15 °C.

    >>> round(cure_time_at_night(30 * 3600, 298.15, 288.15, 57e10, 8.314462618e7) / 3600, 1)
    66.6

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_cure_time / speed_factor(
        night_temperature, cure_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def top_coat_wait_at_night(
    stated_top_coat_wait: Seconds,
    top_coat_temperature: Kelvins,
    night_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the top coat may go on, if it stayed as cold as in the coming night.

    Range: a night no colder than the card's least temperature.
    Example: 30 hr at 25 °C becomes 66.6 hr at 15 °C.

    >>> round(top_coat_wait_at_night(30 * 3600, 298.15, 288.15, 57e10, 8.314462618e7) / 3600, 1)
    66.6

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_top_coat_wait / speed_factor(
        night_temperature, top_coat_temperature, activation_energy, gas_constant
    )


@formula(level="cup")
def tack_free_due_at_night(pour_end: Seconds, tack_free_time_at_night: Seconds) -> Seconds:
    """From the moment A touches B until the film is tack-free, if it stayed as cold as in the coming night.

    Range: a night no colder than the card's least temperature.
    Example: 20 min to the end of the pour and 17 hr 40 min from there: 18 hr.

    >>> tack_free_due_at_night(1200, 63600) / 3600
    18.0

    Source: arithmetic.
    """
    return pour_end + tack_free_time_at_night


@formula(level="cup")
def recoat_opens_due_at_night(pour_end: Seconds, recoat_opens_at_night: Seconds) -> Seconds:
    """From the moment A touches B until the next coat may be poured, if it stayed as cold as in the night.

    Range: a night no colder than the card's least temperature.
    Example: 20 min to the end of the pour and 17 hr 40 min from there: 18 hr.

    >>> recoat_opens_due_at_night(1200, 63600) / 3600
    18.0

    Source: arithmetic.
    """
    return pour_end + recoat_opens_at_night


@formula(level="cup")
def cured_due_at_night(pour_end: Seconds, cure_time_at_night: Seconds) -> Seconds:
    """From the moment A touches B until the film is cured, if it stayed as cold as in the coming night.

    Range: a night no colder than the card's least temperature.
    Example: 20 min to the end of the pour and 17 hr 40 min from there: 18 hr.

    >>> cured_due_at_night(1200, 63600) / 3600
    18.0

    Source: arithmetic.
    """
    return pour_end + cure_time_at_night


@formula(level="cup")
def top_coat_due_at_night(pour_end: Seconds, top_coat_wait_at_night: Seconds) -> Seconds:
    """From the moment A touches B until the top coat may go on, if it stayed as cold as in the coming night.

    Range: a night no colder than the card's least temperature.
    Example: 20 min to the end of the pour and 17 hr 40 min from there: 18 hr.

    >>> top_coat_due_at_night(1200, 63600) / 3600
    18.0

    Source: arithmetic.
    """
    return pour_end + top_coat_wait_at_night
