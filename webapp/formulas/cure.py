"""Cure: when the film is tack-free, may be recoated, is cured and takes its top coat, in this room."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import speed_factor
from webapp.units import ErgsPerMole, ErgsPerMoleKelvin, Kelvins, Seconds, Truth


@formula(level="job")
def curing_temperature(surface_temperature: Kelvins, least_cure_temperature: Kelvins) -> Kelvins:
    """The temperature that the film cures at: the face's, if it is warm enough to cure at all.

    Range: a face no colder than the card's least temperature; a cold film can stall short of full cure.
    Example: a face at 20 °C (293.15 K) cures at that.

    >>> curing_temperature(293.15, 283.15)
    293.15

    Source: the resin card's least temperature; a film takes the temperature of what it lies on.
    """
    return max(surface_temperature, least_cure_temperature)


@valid_range(
    says="The face is at {cell:surface_temperature}, under the {label:least_cure_temperature} of "
    "{cell:least_cure_temperature}; a cold film can stall, so no time is given."
)
def curing_temperature_range(surface_temperature: Kelvins, least_cure_temperature: Kelvins) -> Truth:
    """A face no colder than the card's least temperature."""
    return surface_temperature >= least_cure_temperature


@check(
    level="job",
    severity="stop",
    says="The face is at {cell:surface_temperature}, under the {label:least_cure_temperature} of "
    "{cell:least_cure_temperature}: the film may never harden. Warm the room and the face "
    "first, and keep them warm until the film is cured.",
    beside="curing_temperature",
)
def too_cold_to_cure(surface_temperature: Kelvins, least_cure_temperature: Kelvins) -> Truth:
    """True where the face is colder than the card's least temperature.

    >>> too_cold_to_cure(282, 283), too_cold_to_cure(283, 283)
    (True, False)
    """
    return surface_temperature < least_cure_temperature


@check(
    level="job",
    severity="caution",
    says="The air is too cold for this resin to cure, and the face will cool down to it. "
    "Warm the room, and keep it warm until the film is cured.",
    beside="curing_temperature",
)
def air_too_cold(air_temperature: Kelvins, least_cure_temperature: Kelvins) -> Truth:
    """True where the air is colder than the card's least temperature.

    >>> air_too_cold(282, 283), air_too_cold(283, 283)
    (True, False)
    """
    return air_temperature < least_cure_temperature


@formula(level="job")
def tack_free_time(
    stated_tack_free_time: Seconds,
    tack_free_temperature: Kelvins,
    curing_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until dust no longer sticks: the card's figure, brought to this face.

    Range: a face no colder than the card's least temperature.
    Example: 8 hr at 25 °C becomes 17.8 hr at 15 °C.

    >>> round(tack_free_time(8 * 3600, 298.15, 288.15, 57e10, 8.314462618e7) / 3600, 1)
    17.8

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_tack_free_time / speed_factor(
        curing_temperature, tack_free_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def recoat_opens(
    stated_recoat_opens: Seconds,
    recoat_temperature: Kelvins,
    curing_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the next coat may be poured.

    Range: a face no colder than the card's least temperature.
    Example: 4 hr at 25 °C becomes 5.9 hr at 20 °C.

    >>> round(recoat_opens(4 * 3600, 298.15, 293.15, 57e10, 8.314462618e7) / 3600, 1)
    5.9

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_recoat_opens / speed_factor(
        curing_temperature, recoat_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def recoat_closes(
    stated_recoat_closes: Seconds,
    recoat_temperature: Kelvins,
    curing_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the moment A touches B until the next coat no longer bonds without sanding.

    Range: a face no colder than the card's least temperature.
    Example: 30 hr at 25 °C becomes 20.5 hr at 30 °C.

    >>> round(recoat_closes(30 * 3600, 298.15, 303.15, 57e10, 8.314462618e7) / 3600, 1)
    20.5

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_recoat_closes / speed_factor(
        curing_temperature, recoat_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def cure_time(
    stated_cure_time: Seconds,
    cure_temperature: Kelvins,
    curing_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the film is cured.

    Range: a face no colder than the card's least temperature.
    Example: 30 hr at 25 °C becomes 101.4 hr at 10 °C.

    >>> round(cure_time(30 * 3600, 298.15, 283.15, 57e10, 8.314462618e7) / 3600, 1)
    101.4

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_cure_time / speed_factor(
        curing_temperature, cure_temperature, activation_energy, gas_constant
    )


@formula(level="job")
def top_coat_wait(
    stated_top_coat_wait: Seconds,
    top_coat_temperature: Kelvins,
    curing_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> Seconds:
    """From the end of the pour until the top coat may go on.

    Range: a face no colder than the card's least temperature.
    Example: 40 hr at 25 °C becomes 19 hr at 35 °C.

    >>> round(top_coat_wait(40 * 3600, 298.15, 308.15, 57e10, 8.314462618e7) / 3600, 1)
    19.0

    Source: Arrhenius; the figure is the resin card's.
    """
    return stated_top_coat_wait / speed_factor(
        curing_temperature, top_coat_temperature, activation_energy, gas_constant
    )


@check(
    level="job",
    severity="caution",
    says="In this room the recoat window closes before it opens, {cell:recoat_closes} after A touches "
    "B. Check the {label:stated_recoat_opens}, the {label:stated_recoat_closes} and the "
    "{label:recoat_temperature} of the card.",
    beside="recoat_closes",
)
def recoat_window_shut(recoat_opens: Seconds, recoat_closes: Seconds) -> Truth:
    """True where the recoat window closes before it opens.

    >>> recoat_window_shut(3600, 3600), recoat_window_shut(3600, 7200)
    (True, False)
    """
    return recoat_closes <= recoat_opens
