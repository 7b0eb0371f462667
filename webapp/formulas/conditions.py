"""Conditions: the dew point of the room, and how far the face is from it."""

import math

from webapp.formulas.book import check, formula
from webapp.units import KelvinDifference, Kelvins, Ratio, Share, Truth


@formula(level="job")
def dew_point(
    air_temperature: Kelvins,
    relative_humidity: Share,
    magnus_slope: Ratio,
    magnus_offset: KelvinDifference,
    ice_point: Kelvins,
) -> Kelvins:
    """The temperature at which this air wets a surface.

    Range: air of -40 to 50 °C.
    Example: 20 °C at 50% has its dew point at 9.261 °C.

    >>> round(dew_point(293.15, 0.5, 17.625, 243.04, 273.15) - 273.15, 3)
    9.261

    Source: Magnus form of Alduchov and Eskridge, J. Appl. Meteor. 35 (1996) 601-609, eq. 21.
    """
    above_ice = air_temperature - ice_point
    damp = math.log(relative_humidity) + magnus_slope * above_ice / (magnus_offset + above_ice)
    return ice_point + magnus_offset * damp / (magnus_slope - damp)


@formula(level="job")
def dew_point_error(
    air_temperature: Kelvins,
    relative_humidity: Share,
    hygrometer_error: Share,
    magnus_slope: Ratio,
    magnus_offset: KelvinDifference,
    ice_point: Kelvins,
) -> KelvinDifference:
    """How much higher the dew point is if the hygrometer reads too low by its error.

    Range: air of -40 to 50 °C.
    Example: at 20 °C and 60% a hygrometer that reads 5% too low hides 1.2 K.

    >>> round(dew_point_error(293.15, 0.6, 0.05, 17.625, 243.04, 273.15), 1)
    1.2

    Source: Magnus form of Alduchov and Eskridge, J. Appl. Meteor. 35 (1996) 601-609, eq. 21.
    """
    above_ice = air_temperature - ice_point
    air = magnus_slope * above_ice / (magnus_offset + above_ice)
    damp = math.log(relative_humidity) + air
    damper = math.log(relative_humidity + hygrometer_error) + air
    return magnus_offset * damper / (magnus_slope - damper) - magnus_offset * damp / (magnus_slope - damp)


@formula(level="job")
def surface_humidity(
    surface_temperature: Kelvins,
    dew_point: Kelvins,
    magnus_slope: Ratio,
    magnus_offset: KelvinDifference,
    ice_point: Kelvins,
) -> Share:
    """Relative humidity of the air that touches the face; over 100% it is wet.

    Range: a face of -40 to 50 °C.
    Example: a face at 20 °C, 3 K above the dew point, has air of 83% on it.

    >>> round(surface_humidity(293.15, 290.15, 17.625, 243.04, 273.15), 2)
    0.83

    Source: Magnus form of Alduchov and Eskridge, J. Appl. Meteor. 35 (1996) 601-609, eq. 21.
    """
    face = surface_temperature - ice_point
    dew = dew_point - ice_point
    return math.exp(magnus_slope * dew / (magnus_offset + dew) - magnus_slope * face / (magnus_offset + face))


@formula(level="job")
def dew_margin(surface_temperature: Kelvins, dew_point: Kelvins) -> KelvinDifference:
    """How much warmer the face is than the dew point.

    Range: any.
    Example: a face at 18 °C in air with its dew point at 9 °C is 9 K above it.

    >>> dew_margin(291.15, 282.15)
    9.0

    Source: ISO 8502-4, as cited by coating guides.
    """
    return surface_temperature - dew_point


@check(
    level="job",
    severity="stop",
    says="The face is at {cell:surface_temperature} and the {label:dew_point} at {cell:dew_point}: "
    "the face is wet, even if you cannot see it. Do not mix until the face is warmer or the air "
    "drier.",
    beside="dew_margin",
    would_do=(
        "Warm the face until the {label:dew_margin} is {cell:least_dew_margin} or more.",
        "Dry the air, or keep warm air moving over the face. No unvented heater: it makes water.",
        "Wait for drier weather.",
    ),
)
def below_dew_point(surface_temperature: Kelvins, dew_point: Kelvins) -> Truth:
    """True where the face is no warmer than the dew point.

    >>> below_dew_point(282, 282), below_dew_point(290, 282)
    (True, False)
    """
    return surface_temperature <= dew_point


@check(
    level="job",
    severity="caution",
    says="The {label:dew_margin} is {cell:dew_margin}, less than {cell:least_dew_margin}: the film may "
    "blush, and the primer may be damp. Warm the face or dry the air before you mix.",
    beside="dew_margin",
    would_do=(
        "Warm the face. No unvented heater: it makes water.",
        "Dry the air.",
        "Wait for drier weather.",
    ),
)
def dew_margin_small(dew_margin: KelvinDifference, least_dew_margin: KelvinDifference) -> Truth:
    """True where the margin is less than coating guides ask for.

    >>> dew_margin_small(2.9, 3), dew_margin_small(3, 3)
    (True, False)
    """
    return dew_margin < least_dew_margin


@check(
    level="job",
    severity="caution",
    says="{label:relative_humidity} is {cell:relative_humidity}, over {cell:greatest_humidity}: amine "
    "hardeners may blush. Dry the air or wait.",
    beside="relative_humidity",
)
def humidity_high(relative_humidity: Share, greatest_humidity: Share) -> Truth:
    """True where the air is damper than coating guides allow.

    >>> humidity_high(0.86, 0.85), humidity_high(0.85, 0.85)
    (True, False)
    """
    return relative_humidity > greatest_humidity
