"""Units: the aliases that formulas are annotated with, and the units that people read and type.

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


@dataclass(frozen=True)
class ShownUnit:
    """A unit that people read and type: our name for it, how it is shown, pint's name, our spellings."""

    name: str
    shown: str
    pint: str
    spellings: tuple[str, ...] = ()


SHOWN_UNITS: dict[str, tuple[ShownUnit, ...]] = {
    "length": (
        ShownUnit("mm", "mm", "millimeter", ("millimetre", "millimetres", "millimeter", "millimeters")),
        ShownUnit("cm", "cm", "centimeter", ("centimetre", "centimetres", "centimeter", "centimeters")),
        ShownUnit("m", "m", "meter", ("metre", "metres", "meter", "meters")),
        ShownUnit("in", "in", "inch", ('"', "in.", "inch", "inches", "ins")),
        ShownUnit("ft", "ft", "foot", ("'", "ft.", "foot", "feet")),
        ShownUnit("thou", "thou", "thou", ("mil", "mils")),
        ShownUnit("um", "µm", "micrometer", ("micron", "microns")),
    ),
    "area": (
        ShownUnit("cm2", "cm²", "centimeter**2", ("sq cm", "cm^2")),
        ShownUnit("m2", "m²", "meter**2", ("sq m", "m^2")),
        ShownUnit("mm2", "mm²", "millimeter**2", ("sq mm", "mm^2")),
        ShownUnit("in2", "in²", "inch**2", ("sq in", "sq. in.", "in^2", "square inches")),
        ShownUnit("ft2", "ft²", "foot**2", ("sq ft", "sq. ft.", "ft^2", "square feet")),
    ),
    "volume": (
        ShownUnit("mL", "mL", "milliliter", ("ml", "cc", "cm3", "millilitre", "millilitres", "milliliters")),
        ShownUnit("L", "L", "liter", ("l", "litre", "litres", "liter", "liters")),
        ShownUnit(
            "fl oz", "fl oz", "fluid_ounce", ("floz", "fl. oz.", "us fl oz", "fluid ounces", "oz", "ounces")
        ),
        ShownUnit("cup", "cup", "cup", ("cups",)),
        ShownUnit("pt", "pt", "pint", ("pint", "pints")),
        ShownUnit("qt", "qt", "quart", ("quart", "quarts")),
        ShownUnit("gal", "gal", "gallon", ("gallon", "gallons")),
        ShownUnit("tsp", "tsp", "teaspoon", ("teaspoon", "teaspoons")),
        ShownUnit("tbsp", "tbsp", "tablespoon", ("tablespoon", "tablespoons")),
    ),
    "mass": (
        ShownUnit("g", "g", "gram", ("gram", "grams")),
        ShownUnit("kg", "kg", "kilogram", ("kilogram", "kilograms")),
        ShownUnit("oz", "oz", "ounce", ("ounce", "ounces")),
        ShownUnit("lb", "lb", "pound", ("lbs", "pound", "pounds")),
    ),
    "density": (
        ShownUnit("g/mL", "g/mL", "gram/milliliter", ("g/ml", "g/cm3", "g/cc", "kg/l", "kg/L")),
        ShownUnit("lb/gal", "lb/gal", "pound/gallon", ("lbs/gal",)),
        ShownUnit("kg/m3", "kg/m³", "kilogram/meter**3", ()),
    ),
    "time": (
        ShownUnit("s", "s", "second", ("sec", "secs", "second", "seconds")),
        ShownUnit("min", "min", "minute", ("m", "mins", "minute", "minutes")),
        ShownUnit("h", "h", "hour", ("hr", "hrs", "hour", "hours")),
        ShownUnit("d", "d", "day", ("day", "days")),
    ),
    "temperature": (
        ShownUnit("degC", "°C", "degC", ("°c", "c", "celsius")),
        ShownUnit("degF", "°F", "degF", ("°f", "f", "fahrenheit")),
        ShownUnit("K", "K", "kelvin", ("k", "kelvin", "kelvins")),
    ),
    "temperature difference": (
        ShownUnit("K", "K", "kelvin", ("k", "kelvin", "kelvins")),
        ShownUnit("degC", "°C", "delta_degC", ("°c", "c", "celsius")),
        ShownUnit("degF", "°F", "delta_degF", ("°f", "f", "fahrenheit")),
    ),
    "share": (ShownUnit("%", "%", "percent", ("percent", "per cent")),),
    "ratio": (ShownUnit("", "", "dimensionless"),),
    "count": (ShownUnit("", "", "dimensionless"),),
    "slope": (
        ShownUnit("in/ft", "in/ft", "inch/foot", ()),
        ShownUnit("thou/ft", "thou/ft", "thou/foot", ()),
        ShownUnit("mm/m", "mm/m", "millimeter/meter", ()),
        ShownUnit("%", "%", "percent", ("percent", "per cent")),
    ),
    "angle": (
        ShownUnit("deg", "°", "degree", ("°", "degree", "degrees")),
        ShownUnit("rad", "rad", "radian", ("radian", "radians")),
    ),
    "money": (ShownUnit("", "", "money"),),
    "wage": (ShownUnit("/h", "per h", "money/hour", ("per h", "per hour", "an hour")),),
    "spread rate": (
        ShownUnit("cm2/min", "cm²/min", "centimeter**2/minute", ()),
        ShownUnit("in2/min", "in²/min", "inch**2/minute", ()),
        ShownUnit("ft2/min", "ft²/min", "foot**2/minute", ()),
    ),
    "coverage": (
        ShownUnit("in2/fl oz", "in²/fl oz", "inch**2/fluid_ounce", ("in2/oz",)),
        ShownUnit("ft2/gal", "ft²/gal", "foot**2/gallon", ()),
        ShownUnit("cm2/mL", "cm²/mL", "centimeter**2/milliliter", ("cm2/ml",)),
        ShownUnit("m2/L", "m²/L", "meter**2/liter", ("m2/l",)),
    ),
    "speed": (
        ShownUnit("mm/s", "mm/s", "millimeter/second", ()),
        ShownUnit("mm/min", "mm/min", "millimeter/minute", ()),
    ),
    "acceleration": (ShownUnit("cm/s2", "cm/s²", "centimeter/second**2", ("cm/s^2",)),),
    "surface tension": (ShownUnit("mN/m", "mN/m", "millinewton/meter", ("mn/m", "dyn/cm")),),
    "viscosity": (
        ShownUnit("cP", "cP", "centipoise", ("cp", "cps", "mpa s", "mPa s")),
        ShownUnit("Pa s", "Pa s", "pascal*second", ("pa s", "pas")),
        ShownUnit("P", "P", "poise", ("poise",)),
    ),
    "rate": (ShownUnit("/min", "per min", "1/minute", ("per min",)), ShownUnit("/s", "per s", "1/second")),
    "growth by temperature": (ShownUnit("/K", "per K", "1/kelvin"),),
    "heating rate": (ShownUnit("K/min", "K/min", "kelvin/minute"),),
    "molar energy": (ShownUnit("kJ/mol", "kJ/mol", "kilojoule/mole", ("kj/mol",)),),
    "molar heat capacity": (ShownUnit("J/(mol K)", "J/(mol K)", "joule/mole/kelvin"),),
    "specific energy": (ShownUnit("J/g", "J/g", "joule/gram", ("j/g",)),),
    "heat capacity": (ShownUnit("J/(g K)", "J/(g K)", "joule/gram/kelvin"),),
    "heat capacity slope": (ShownUnit("J/(g K2)", "J/(g K²)", "joule/gram/kelvin**2"),),
    "heat loss": (ShownUnit("W/(m2 K)", "W/(m² K)", "watt/meter**2/kelvin"),),
    "heat loss slope": (ShownUnit("W/(m2 K2)", "W/(m² K²)", "watt/meter**2/kelvin**2"),),
    "equivalent weight": (ShownUnit("g/mol", "g/mol", "gram/mole", ("g/eq",)),),
}


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
    for unit in SHOWN_UNITS[kind]:
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
