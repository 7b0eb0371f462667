"""The unit proof: every function of the book, called with plain floats in canonical units and with pint
quantities in two foreign systems, gives the same; and units exchanged between two parameters are noticed.

Nothing here names a formula: one that is added to the book is proved without anyone adding a test.
"""

import math
import random
import zlib
from dataclasses import replace
from itertools import combinations
from typing import Any

import pint
import pytest

from webapp.formulas.book import Formula, load_book
from webapp.formulas.constants import CONSTANTS
from webapp.inputs.table import INPUTS
from webapp.sheet.choices import CHOICES, FIRST_OF, GREATEST_OF, LEAST_OF
from webapp.sheet.wiring import GATHERERS
from webapp.units import Unit, canonical_units, registry

BOOK = load_book()
EVERYTHING = BOOK.everything()
CONSTANT_VALUES = {each.name: each.canonical for each in CONSTANTS}
PICKS = {**GREATEST_OF, **LEAST_OF, **FIRST_OF}
SAMPLES = 3

SAMPLED_FROM = {
    "length": (0.05, 30),
    "area": (1, 5000),
    "volume": (1, 500),
    "mass": (5, 500),
    "density": (0.8, 1.6),
    "time": (60, 90000),
    "temperature": (283, 318),
    "temperature difference": (1, 20),
    "share": (0.05, 0.95),
    "ratio": (0.1, 8),
    "count": (1, 12),
    "slope": (0.001, 0.02),
    "angle": (0.2, 1.4),
    "money": (5, 500),
    "wage": (0.001, 0.02),
    "spread rate": (0.5, 5),
    "coverage": (0.2, 5),
    "speed": (0.001, 0.1),
    "acceleration": (900, 1000),
    "surface tension": (20, 70),
    "viscosity": (1, 50),
    "rate": (1e-5, 1e-2),
    "heating rate": (1e-4, 1e-1),
    "molar energy": (4e11, 7e11),
    "molar heat capacity": (8e7, 9e7),
    "specific energy": (3e9, 5e9),
    "heat capacity": (1.5e7, 2.5e7),
    "heat capacity slope": (1e4, 1e5),
    "heat loss": (8e3, 2e4),
    "heat loss slope": (10, 200),
    "equivalent weight": (20, 300),
    "growth by temperature": (0.001, 0.01),
    "truth": (0, 1),
}


class ProofError(AssertionError):
    """A function of the book does not keep its units."""


def unit_of_name(name: str) -> Unit | None:
    """Return the unit that the provider of a name gives it, or None where nobody provides it."""
    if name in BOOK.formulas:
        return BOOK.formulas[name].unit
    if name in INPUTS:
        return canonical_units().get(INPUTS[name].kind)
    for constant in CONSTANTS:
        if constant.name == name:
            return canonical_units()[constant.kind]
    if name in CHOICES:
        return unit_of_name(next(iter(CHOICES[name].cells.values())))
    if name in PICKS:
        return unit_of_name(PICKS[name].of[0])
    gatherer, _, of = name.partition("_")
    return unit_of_name(of) if gatherer in GATHERERS else None


def draw(name: str, unit: Unit, chance: random.Random) -> float:
    """Draw a value of a parameter, in its canonical unit."""
    if name in CONSTANT_VALUES:
        return CONSTANT_VALUES[name] * chance.uniform(0.98, 1.02)
    least, most = SAMPLED_FROM[unit.kind]
    return (
        float(chance.randint(int(least), int(most))) if unit.kind == "count" else chance.uniform(least, most)
    )


def samples(row: Formula) -> list[dict[str, float]]:
    """Draw argument lists that lie inside the range of a function and have a result."""
    chance = random.Random(zlib.crc32(row.name.encode()))
    inside = BOOK.ranges.get(f"{row.name}_range")
    found: list[dict[str, float]] = []
    for _ in range(2000):
        values = {name: draw(name, unit, chance) for name, unit in row.parameters.items()}
        try:
            if inside and not inside.formula.function(**{n: values[n] for n in inside.formula.parameters}):
                continue
            result = row.function(**values)
        except (ArithmeticError, ValueError):
            continue
        if not isinstance(result, complex) and math.isfinite(result):
            found.append(values)
        if len(found) == SAMPLES:
            return found
    raise ProofError(f"{row.name}: found no arguments inside its range")


def abroad(value: float, unit: Unit, system: int) -> pint.Quantity:
    """Return a canonical value as a quantity in the foreign unit of a system."""
    return registry().Quantity(value, unit.pint).to(unit.foreign[system])


def at_home(result: Any, unit: Unit) -> float:
    """Return the magnitude of a result in its canonical unit; a plain number has no dimension."""
    quantity = result if isinstance(result, pint.Quantity) else registry().Quantity(result, "dimensionless")
    return float(quantity.to(unit.pint).magnitude)


def prove(row: Formula) -> None:
    """Raise ProofError where a function, its parameters or its result do not keep their units."""
    for name, unit in row.parameters.items():
        given = unit_of_name(name)
        if given is not None and given.foreign != unit.foreign:
            raise ProofError(f"{row.name} takes {name} in {unit.symbol}, its provider gives {given.symbol}")
    for values in samples(row):
        wanted = row.function(**values)
        for system in (0, 1):
            foreign = {name: abroad(values[name], unit, system) for name, unit in row.parameters.items()}
            try:
                found = row.function(**foreign)
                same = found == wanted if row.unit.kind == "truth" else _close(found, wanted, row.unit)
            except (pint.PintError, TypeError) as error:
                raise ProofError(f"{row.name} in system {system + 1}: {error}") from error
            if not same:
                raise ProofError(f"{row.name} in system {system + 1}: {found} for {wanted} {row.unit.symbol}")


def _close(found: Any, wanted: float, unit: Unit) -> bool:
    if type(found) is int and found == 0:
        return wanted == 0
    return math.isclose(at_home(found, unit), wanted, rel_tol=1e-9, abs_tol=1e-12)


def exchanged(row: Formula, one: str, other: str) -> Formula:
    """Return a function's record with the units of two parameters exchanged."""
    units = row.parameters
    return replace(row, parameters={**units, one: units[other], other: units[one]})


@pytest.mark.parametrize("name", EVERYTHING)
def test_every_function_of_the_book_keeps_its_units(name: str) -> None:
    prove(EVERYTHING[name])


@pytest.mark.parametrize("name", EVERYTHING)
def test_exchanging_two_parameters_of_unlike_dimension_is_noticed(name: str) -> None:
    row = EVERYTHING[name]
    for one, other in combinations(row.parameters, 2):
        if row.parameters[one].foreign != row.parameters[other].foreign:
            with pytest.raises(ProofError):
                prove(exchanged(row, one, other))


@pytest.mark.parametrize("name", EVERYTHING)
def test_swapped_arguments_are_noticed_unless_their_order_makes_no_difference(name: str) -> None:
    row = EVERYTHING[name]
    for values in samples(row):
        for one, other in combinations(row.parameters, 2):
            if row.parameters[one].foreign == row.parameters[other].foreign:
                continue
            quantities = {each: abroad(values[each], unit, 0) for each, unit in row.parameters.items()}
            quantities[one], quantities[other] = quantities[other], quantities[one]
            plain = {**values, one: values[other], other: values[one]}
            try:
                found, swapped = row.function(**quantities), row.function(**plain)
                unnoticed = row.unit.kind == "truth" or _close(found, row.function(**values), row.unit)
            except (pint.PintError, TypeError, ArithmeticError, ValueError):
                continue
            assert not unnoticed or math.isclose(swapped, row.function(**values)), (one, other)


def test_every_parameter_of_a_formula_on_the_sheet_has_a_provider_with_a_unit() -> None:
    on_the_sheet = [row for row in EVERYTHING.values() if row.levels]
    missing = {name for row in on_the_sheet for name in row.parameters if unit_of_name(name) is None}
    assert missing == set()


def test_a_name_is_asked_for_in_one_unit_throughout_the_book() -> None:
    asked: dict[str, set[tuple[str, str]]] = {}
    for row in EVERYTHING.values():
        for name, unit in row.parameters.items():
            asked.setdefault(name, set()).add(unit.foreign)
    assert {name for name, units in asked.items() if len(units) > 1} == set()


def test_what_a_choice_or_pick_stands_for_has_one_unit() -> None:
    chosen = {name: tuple(each.cells.values()) for name, each in CHOICES.items()}
    picked = {name: each.of for name, each in PICKS.items()}
    for name, cells in {**chosen, **picked}.items():
        units = {unit.foreign for unit in map(unit_of_name, cells) if unit}
        assert len(units) == 1, f"{name} stands for cells of different units: {cells}"


@pytest.mark.parametrize("kind", [kind for kind in canonical_units() if kind != "truth"])
def test_every_kind_has_two_foreign_units_unlike_its_own_and_each_other(kind: str) -> None:
    unit = canonical_units()[kind]
    one = registry().Quantity(1.0, unit.pint)
    for name in unit.foreign:
        assert not math.isclose(one.to(name).magnitude, 1.0)
    assert not math.isclose(one.to(unit.foreign[0]).magnitude, one.to(unit.foreign[1]).magnitude)


@pytest.mark.parametrize("constant", CONSTANTS, ids=lambda each: each.name)
def test_every_constant_stands_in_the_unit_of_its_kind(constant: Any) -> None:
    printed = registry().Quantity(constant.value, constant.unit)
    unit = canonical_units()[constant.kind]
    assert printed.to(unit.pint).magnitude == pytest.approx(constant.canonical, rel=1e-12)
    assert printed.to(unit.foreign[0]).to(unit.pint).magnitude == pytest.approx(constant.canonical, rel=1e-9)
    assert constant.source
    assert constant.shown


def test_a_length_added_to_a_volume_is_noticed() -> None:
    row = BOOK.formulas["film_volume"]
    wrong = replace(row, function=lambda face_area, depth, texture_depth: face_area * depth + texture_depth)
    with pytest.raises(ProofError, match="film_volume"):
        prove(wrong)


# A stray factor scales every system of units alike: only a value from outside can notice that one.
def test_a_conversion_within_a_formula_is_noticed() -> None:
    row = BOOK.formulas["dew_margin"]
    wrong = replace(
        row, function=lambda surface_temperature, dew_point: surface_temperature - 273.15 - dew_point
    )
    with pytest.raises(ProofError, match="dew_margin"):
        prove(wrong)
