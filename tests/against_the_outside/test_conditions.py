"""Dew points against the published Magnus form, psychrolib, and what two libraries give."""

import psychrolib
import pytest

from webapp.conversions import to_canonical
from webapp.formulas.conditions import dew_margin, dew_point, dew_point_error, surface_humidity
from webapp.formulas.constants import CONSTANTS

MAGNUS = (17.625, 243.04, 273.15)  # Alduchov, Eskridge, J. Appl. Meteor. 35 (1996) 601-609, eq. 21


def kelvins(value: float, unit: str = "degC") -> float:
    return to_canonical(value, unit, "temperature")


# Air, relative humidity, dew point in °C by Alduchov and Eskridge's eq. 21, and as the libraries psychrolib
# and CoolProp give it.
DEW_POINTS = [
    (20, "degC", 0.50, 9.261, 9.272, 9.274),
    (25, "degC", 0.60, 16.698, 16.701, 16.704),
    (10, "degC", 0.85, 7.594, 7.598, 7.598),
    (35, "degC", 0.40, 19.392, 19.385, 19.391),
    (70, "degF", 0.65, 14.276, 14.281, 14.283),
]


@pytest.mark.parametrize(("air", "unit", "humidity", "magnus", "library", "other"), DEW_POINTS)
def test_the_dew_point_is_the_published_one(
    air: float, unit: str, humidity: float, magnus: float, library: float, other: float
) -> None:
    found = dew_point(kelvins(air, unit), humidity, *MAGNUS) - 273.15
    assert found == pytest.approx(magnus, abs=0.001)
    assert found == pytest.approx(library, abs=0.06)
    assert found == pytest.approx(other, abs=0.06)


def test_the_dew_point_in_fahrenheit() -> None:
    # The same source: 70 °F at 65% has its dew point at 57.70 °F.
    found = dew_point(kelvins(70, "degF"), 0.65, *MAGNUS)
    assert (found - 273.15) * 1.8 + 32 == pytest.approx(57.70, abs=0.005)


@pytest.mark.parametrize("air", range(5, 41, 5))
@pytest.mark.parametrize("humidity", [0.3, 0.5, 0.7, 0.9, 1.0])
def test_the_dew_point_is_psychrolibs(air: int, humidity: float) -> None:
    # psychrolib, ASHRAE Handbook 2017; below 0 °C it gives the frost point, which is another thing.
    psychrolib.SetUnitSystem(psychrolib.SI)
    expected = psychrolib.GetTDewPointFromRelHum(float(air), humidity)
    if expected > 0:
        found = dew_point(kelvins(air), humidity, *MAGNUS) - 273.15
        assert found == pytest.approx(expected, abs=0.026)


def test_other_coefficients_give_nearly_the_same() -> None:
    # WMO's coefficients 17.62 and 243.12 (pvlib's default) give 9.255 for 20 °C at 50%.
    found = dew_point(kelvins(20), 0.50, 17.62, 243.12, 273.15) - 273.15
    assert found == pytest.approx(9.255, abs=0.0005)


def test_the_constants_are_those_of_the_source() -> None:
    # Alduchov, Eskridge (1996), eq. 21; ISO 8502-4 and ISO 12944-7 as cited by coating guides.
    values = {each.name: each.canonical for each in CONSTANTS}
    assert values["magnus_slope"] == 17.625
    assert values["magnus_offset"] == 243.04
    assert values["ice_point"] == 273.15
    assert values["least_dew_margin"] == 3
    assert values["greatest_humidity"] == pytest.approx(0.85, rel=1e-12)


@pytest.mark.parametrize("humidity", [0.5, 0.6, 0.7, 0.8])
def test_a_hygrometer_five_percent_out_moves_the_dew_point(humidity: float) -> None:
    # Computed: 1.0 to 1.4 K at 20 °C; and psychrolib's own difference.
    psychrolib.SetUnitSystem(psychrolib.SI)
    moved = psychrolib.GetTDewPointFromRelHum(20.0, humidity + 0.05)
    expected = moved - psychrolib.GetTDewPointFromRelHum(20.0, humidity)
    found = dew_point_error(kelvins(20), humidity, 0.05, *MAGNUS)
    assert found == pytest.approx(expected, abs=0.01)
    assert 0.95 <= found <= 1.45


@pytest.mark.parametrize("celsius", range(10, 31, 5))
def test_three_kelvins_over_the_dew_point_are_81_to_83_percent(celsius: int) -> None:
    # Computed: 3 K above the dew point means 81 to 83% of humidity at the surface; psychrolib agrees.
    psychrolib.SetUnitSystem(psychrolib.SI)
    found = surface_humidity(kelvins(celsius), kelvins(celsius - 3), *MAGNUS)
    assert 0.81 <= found <= 0.845
    assert found == pytest.approx(psychrolib.GetRelHumFromTDewPoint(celsius, celsius - 3), abs=0.002)


def test_the_margin_is_a_difference() -> None:
    # Arithmetic: 18 °C over a dew point of 9.261 °C is 8.739 K.
    assert dew_margin(kelvins(18), kelvins(9.261)) == pytest.approx(8.739, abs=0.0005)
