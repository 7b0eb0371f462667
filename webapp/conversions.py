"""Conversions between the units that people read and type and the canonical ones, by the factors of pint."""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache

from webapp.kinds import KINDS, ShownUnit
from webapp.units import canonical_units, exact_registry


@dataclass(frozen=True)
class Conversion:
    """How a shown unit becomes the canonical one: canonical = shown x factor + offset."""

    unit: ShownUnit
    factor: float
    offset: float


@cache
def conversions(kind: str) -> dict[str, Conversion]:
    """Return the shown units of a kind by name, each with the factor and offset that pint gives."""
    canonical = canonical_units()[kind].pint
    quantity = exact_registry().Quantity
    rows = {}
    for unit in KINDS[kind].units:
        if kind == "temperature":
            offset = quantity(Fraction(0), unit.pint).to(canonical).magnitude
            factor = quantity(Fraction(1), pint_difference(unit.pint)).to(canonical).magnitude
        else:
            offset, factor = Fraction(0), quantity(Fraction(1), unit.pint).to(canonical).magnitude
        rows[unit.name] = Conversion(unit, float(factor), float(offset))
    return rows


def pint_difference(unit: str) -> str:
    """Return pint's name of the difference that goes with a temperature unit."""
    return f"delta_{unit}" if unit.startswith("deg") else unit


def to_canonical(value: float, unit: str, kind: str) -> float:
    """Convert a value in a shown unit to the canonical unit of its kind.

    >>> to_canonical(1, "in", "length")
    2.54
    """
    conversion = conversions(kind)[unit]
    return value * conversion.factor + conversion.offset


def from_canonical(value: float, unit: str, kind: str) -> float:
    """Convert a value in the canonical unit of its kind to a shown unit."""
    conversion = conversions(kind)[unit]
    return (value - conversion.offset) / conversion.factor
