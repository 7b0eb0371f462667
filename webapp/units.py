"""Units: the aliases that formulas are annotated with.

Inside formulas all is coherent centimetre-gram-second with kelvin, so no conversion factor ever
stands in one. Conversion happens at the edges only, with factors that pint gives.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Annotated

import pint


@dataclass(frozen=True)
class Unit:
    """A canonical unit: its symbol, pint's name for it, its kind, and two foreign units for a proof."""

    symbol: str
    pint: str
    kind: str
    foreign: tuple[str, str]


Centimetres = Annotated[float, Unit("cm", "cm", "length", ("inch", "millimeter"))]
SquareCentimetres = Annotated[float, Unit("cm2", "cm**2", "area", ("foot**2", "meter**2"))]
CubicCentimetres = Annotated[float, Unit("cm3", "cm**3", "volume", ("fluid_ounce", "liter"))]
Grams = Annotated[float, Unit("g", "g", "mass", ("ounce", "kilogram"))]
GramsPerCubicCentimetre = Annotated[
    float, Unit("g/cm3", "g/cm**3", "density", ("pound/gallon", "kilogram/meter**3"))
]
Seconds = Annotated[float, Unit("s", "s", "time", ("minute", "hour"))]
Kelvins = Annotated[float, Unit("K", "kelvin", "temperature", ("degF", "degR"))]
KelvinDifference = Annotated[
    float, Unit("K", "kelvin", "temperature difference", ("delta_degF", "millikelvin"))
]
Share = Annotated[float, Unit("1", "dimensionless", "share", ("percent", "permille"))]
Ratio = Annotated[float, Unit("1", "dimensionless", "ratio", ("percent", "permille"))]
Count = Annotated[float, Unit("1", "dimensionless", "count", ("percent", "permille"))]
Slope = Annotated[float, Unit("1", "dimensionless", "slope", ("inch/foot", "millimeter/meter"))]
Radians = Annotated[float, Unit("rad", "radian", "angle", ("degree", "turn"))]
Money = Annotated[float, Unit("money", "money", "money", ("hundredth_money", "dozen_money"))]
KelvinsPerSecond = Annotated[
    float, Unit("K/s", "kelvin/s", "heating rate", ("delta_degF/minute", "millikelvin/s"))
]
MoneyPerSecond = Annotated[
    float, Unit("money/s", "money/s", "wage", ("money/hour", "hundredth_money/minute"))
]
SquareCentimetresPerSecond = Annotated[
    float, Unit("cm2/s", "cm**2/s", "spread rate", ("inch**2/minute", "meter**2/hour"))
]
PerCentimetre = Annotated[float, Unit("1/cm", "1/cm", "coverage", ("inch**2/fluid_ounce", "meter**2/liter"))]
CentimetresPerSecond = Annotated[float, Unit("cm/s", "cm/s", "speed", ("inch/minute", "millimeter/s"))]
CentimetresPerSecondSquared = Annotated[
    float, Unit("cm/s2", "cm/s**2", "acceleration", ("foot/s**2", "meter/s**2"))
]
DynesPerCentimetre = Annotated[
    float, Unit("mN/m", "dyne/cm", "surface tension", ("newton/meter", "pound_force/foot"))
]
Poise = Annotated[float, Unit("P", "poise", "viscosity", ("pascal*s", "pound/foot/s"))]
PerKelvin = Annotated[
    float, Unit("1/K", "1/kelvin", "growth by temperature", ("1/delta_degF", "1/millikelvin"))
]
PerSecond = Annotated[float, Unit("1/s", "1/s", "rate", ("1/minute", "1/hour"))]
ErgsPerMole = Annotated[float, Unit("erg/mol", "erg/mol", "molar energy", ("kilojoule/mol", "calorie/mol"))]
ErgsPerMoleKelvin = Annotated[
    float,
    Unit(
        "erg/(mol K)", "erg/mol/kelvin", "molar heat capacity", ("joule/mol/kelvin", "calorie/mol/delta_degF")
    ),
]
ErgsPerGram = Annotated[float, Unit("erg/g", "erg/g", "specific energy", ("joule/g", "calorie/ounce"))]
ErgsPerGramKelvin = Annotated[
    float, Unit("erg/(g K)", "erg/g/kelvin", "heat capacity", ("joule/g/kelvin", "calorie/g/delta_degF"))
]
ErgsPerGramKelvinSquared = Annotated[
    float,
    Unit(
        "erg/(g K2)",
        "erg/g/kelvin**2",
        "heat capacity slope",
        ("joule/g/kelvin**2", "calorie/g/delta_degF**2"),
    ),
]
HeatLoss = Annotated[
    float,
    Unit(
        "erg/(s cm2 K)",
        "erg/s/cm**2/kelvin",
        "heat loss",
        ("watt/meter**2/kelvin", "watt/foot**2/delta_degF"),
    ),
]
HeatLossSlope = Annotated[
    float,
    Unit(
        "erg/(s cm2 K2)",
        "erg/s/cm**2/kelvin**2",
        "heat loss slope",
        ("watt/meter**2/kelvin**2", "watt/foot**2/delta_degF**2"),
    ),
]
GramsPerMole = Annotated[float, Unit("g/mol", "g/mol", "equivalent weight", ("kilogram/mol", "ounce/mol"))]
Truth = Annotated[bool, Unit("truth", "dimensionless", "truth", ("dimensionless", "dimensionless"))]


@cache
def registry() -> pint.UnitRegistry:
    """Return the pint registry of floats, with a currency of no name beside the physical units."""
    return _with_money(pint.UnitRegistry(autoconvert_offset_to_baseunit=True))


@cache
def exact_registry() -> pint.UnitRegistry:
    """Return the pint registry of fractions, so that a litre is 1000 cm3 and not 1000.0000000000001."""
    return _with_money(pint.UnitRegistry(non_int_type=Fraction))


def _with_money(units: pint.UnitRegistry) -> pint.UnitRegistry:
    units.define("money = [currency]")
    units.define("hundredth_money = money / 100")
    units.define("dozen_money = 12 * money")
    return units


@cache
def canonical_units() -> dict[str, Unit]:
    """Return each kind of quantity with its canonical unit, in the order they stand above."""
    aliases = [value for value in globals().values() if hasattr(value, "__metadata__")]
    return {alias.__metadata__[0].kind: alias.__metadata__[0] for alias in aliases}
