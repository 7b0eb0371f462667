"""Units against NIST: what a person types in a unit of the shop is what the handbooks say it is."""

import pint
import pytest

from webapp.conversions import conversions, from_canonical, to_canonical
from webapp.units import registry

# NIST Handbook 44, appendix C; NIST SP 811 (2008), appendix B.8 (table numbers from memory). The factors
# follow exactly from 1 in = 2.54 cm, 1 lb = 453.592 37 g and a gallon of 231 in3.
HANDBOOK = [
    ("length", "in", 2.54, 0.005),
    ("length", "ft", 30.48, 0.005),
    ("length", "thou", 0.00254, 0.000005),
    ("volume", "fl oz", 29.57353, 0.000005),
    ("volume", "cup", 236.5882, 0.00005),
    ("volume", "pt", 473.1765, 0.00005),
    ("volume", "qt", 946.3529, 0.00005),
    ("volume", "gal", 3785.412, 0.0005),
    ("volume", "tsp", 4.928922, 0.0000005),
    ("volume", "tbsp", 14.78676, 0.000005),
    ("mass", "oz", 28.34952, 0.000005),
    ("mass", "lb", 453.5924, 0.00005),
]


@pytest.mark.parametrize(("kind", "unit", "expected", "tolerance"), HANDBOOK)
def test_a_unit_is_what_the_handbook_says(kind: str, unit: str, expected: float, tolerance: float) -> None:
    assert to_canonical(1, unit, kind) == pytest.approx(expected, abs=tolerance)


# Definitions: exact, so that no digit may be lost.
EXACT = [
    ("length", "in", 2.54),
    ("length", "ft", 30.48),
    ("length", "mm", 0.1),
    ("length", "m", 100.0),
    ("volume", "L", 1000.0),
    ("volume", "gal", 3785.411784),
    ("mass", "lb", 453.59237),
    ("mass", "kg", 1000.0),
    ("time", "min", 60.0),
    ("time", "h", 3600.0),
    ("time", "d", 86400.0),
    ("viscosity", "Pa s", 10.0),
    ("viscosity", "cP", 0.01),
    ("surface tension", "mN/m", 1.0),
    ("share", "%", 0.01),
]


@pytest.mark.parametrize(("kind", "unit", "expected"), EXACT)
def test_a_defined_unit_is_exact(kind: str, unit: str, expected: float) -> None:
    assert to_canonical(1, unit, kind) == expected


# NIST Handbook 44, appendix C: exact relations of US liquid measure.
RELATIONS = [
    ("cup", "fl oz", 8),
    ("tbsp", "fl oz", 1 / 2),
    ("tsp", "tbsp", 1 / 3),
    ("pt", "cup", 2),
    ("qt", "pt", 2),
    ("gal", "qt", 4),
    ("gal", "fl oz", 128),
]


@pytest.mark.parametrize(("one", "other", "expected"), RELATIONS)
def test_the_measures_stand_in_the_relations_of_handbook_44(one: str, other: str, expected: float) -> None:
    ratio = to_canonical(1, one, "volume") / to_canonical(1, other, "volume")
    assert ratio == pytest.approx(expected, rel=1e-12)


def test_a_gallon_is_231_cubic_inches() -> None:
    # NIST Handbook 44, appendix C: the US gallon is 231 cubic inches, exactly.
    assert to_canonical(1, "gal", "volume") / to_canonical(1, "in", "length") ** 3 == pytest.approx(
        231, rel=1e-12
    )


# NIST SP 811, appendix B.8: t/°C = (t/°F - 32)/1.8 and T/K = t/°C + 273.15.
TEMPERATURES = [
    (32, "degF", 273.15),
    (212, "degF", 373.15),
    (68, "degF", 293.15),
    (77, "degF", 298.15),
    (-40, "degF", 233.15),
    (25, "degC", 298.15),
    (0, "degC", 273.15),
]


@pytest.mark.parametrize(("value", "unit", "expected"), TEMPERATURES)
def test_temperatures_keep_their_zero(value: float, unit: str, expected: float) -> None:
    assert to_canonical(value, unit, "temperature") == pytest.approx(expected, abs=1e-9)


def test_a_difference_of_temperatures_has_no_zero_of_its_own() -> None:
    # NIST SP 811, appendix B.9: an interval of 1 °F is 1/1.8 K.
    assert to_canonical(5, "degF", "temperature difference") == pytest.approx(2.7778, abs=0.00005)
    assert to_canonical(3, "degC", "temperature difference") == 3


@pytest.mark.parametrize("kind", ["length", "volume", "mass", "density", "temperature", "coverage", "slope"])
def test_what_goes_in_comes_out_again(kind: str) -> None:
    for unit in conversions(kind):
        assert from_canonical(to_canonical(12.375, unit, kind), unit, kind) == pytest.approx(
            12.375, rel=1e-12
        )


def test_pint_stays_the_authority_and_its_traps_are_known() -> None:
    units = registry()
    assert units.Quantity(1, "fluid_ounce").to("mL").magnitude == pytest.approx(29.57353, abs=0.000005)
    assert units.Quantity(1, "oz").dimensionality == units.Quantity(1, "g").dimensionality
    assert units.Quantity(1, "thou").to("inch").magnitude == pytest.approx(0.001, rel=1e-12)
    assert units.Quantity(1, "mil").dimensionless
    with pytest.raises(pint.UndefinedUnitError):
        units.Quantity(1, "fl_oz")


def test_thirty_millilitres_to_a_fluid_ounce_are_a_percent_and_a_half_too_much() -> None:
    # A cup marked in both systems often takes 30 mL for 1 fl oz: 30/29.57353 is +1.44% (arithmetic).
    assert 30 / to_canonical(1, "fl oz", "volume") - 1 == pytest.approx(0.0144, abs=0.00005)


def test_a_slope_of_a_sixteenth_in_a_foot() -> None:
    # Arithmetic: 1/16 in per ft is 1/192, which is 5.208 mm per m.
    slope = to_canonical(1 / 16, "in/ft", "slope")
    assert from_canonical(slope, "mm/m", "slope") == pytest.approx(5.208, abs=0.0005)
