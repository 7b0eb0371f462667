"""The kinds of quantity, a record each: the units that people read and type, and how they are written.

The phone's copy is printed from here.
"""

from dataclasses import dataclass, field


@dataclass(frozen=True)
class ShownUnit:
    """A unit that people read and type: our name for it, how it is shown, pint's name, our spellings.

    `taken_as` says of a spelling that has two meanings which was taken; under so many of it the unit gives
    way to a `finer` one: nobody reads 0.0062 in.
    """

    name: str
    shown: str
    pint: str
    spellings: tuple[str, ...] = ()
    taken_as: dict[str, str] = field(default_factory=dict)
    finer: tuple[str, float] | None = None


@dataclass(frozen=True)
class Kind:
    """A kind of quantity: its units, the first of which is shown where nobody chose.

    `example` is what a person is told to type; `is_compound` lets one unit follow another, as in 5 ft 3 in;
    `job_units` are those that a job chooses from; `shown_with` names the kind whose choice this one follows,
    with its unit for each; `places` are the decimals of what has a fixed number.
    """

    units: tuple[ShownUnit, ...]
    example: str = "2"
    is_compound: bool = False
    job_units: tuple[str, ...] = ()
    shown_with: tuple[str, dict[str, str]] | None = None
    places: int | None = None

    @property
    def inches(self) -> list[str]:
        """The units that a person who measures in inches is told of; none where no unit goes by them."""
        if not any("inch" in unit.pint for unit in self.units):
            return []
        return [unit.name for unit in self.units if "meter" not in unit.pint]


KINDS: dict[str, Kind] = {
    "length": Kind(
        (
            ShownUnit("mm", "mm", "millimeter", ("millimetre", "millimetres", "millimeter", "millimeters")),
            ShownUnit(
                "cm",
                "cm",
                "centimeter",
                ("centimetre", "centimetres", "centimeter", "centimeters"),
                finer=("mm", 0.1),
            ),
            ShownUnit("m", "m", "meter", ("metre", "metres", "meter", "meters")),
            ShownUnit("in", "in", "inch", ('"', "in.", "inch", "inches", "ins"), finer=("thou", 0.01)),
            ShownUnit("ft", "ft", "foot", ("'", "ft.", "foot", "feet")),
            ShownUnit(
                "thou",
                "thou",
                "thou",
                ("mil", "mils"),
                dict.fromkeys(("mil", "mils"), "thousandths of an inch"),
            ),
            ShownUnit("um", "µm", "micrometer", ("micron", "microns")),
        ),
        example="12 3/8 in",
        is_compound=True,
        job_units=("in", "mm", "cm"),
    ),
    "area": Kind(
        (
            ShownUnit("cm2", "cm²", "centimeter**2", ("sq cm", "cm^2")),
            ShownUnit("m2", "m²", "meter**2", ("sq m", "m^2")),
            ShownUnit("mm2", "mm²", "millimeter**2", ("sq mm", "mm^2")),
            ShownUnit("in2", "sq in", "inch**2", ("sq in", "sq. in.", "in^2", "square inches")),
            ShownUnit("ft2", "sq ft", "foot**2", ("sq ft", "sq. ft.", "ft^2", "square feet")),
        ),
        example="280 sq in",
        shown_with=("length", {"in": "in2", "mm": "cm2", "cm": "cm2"}),
    ),
    "volume": Kind(
        (
            ShownUnit(
                "mL", "mL", "milliliter", ("ml", "cc", "cm3", "millilitre", "millilitres", "milliliters")
            ),
            ShownUnit("L", "L", "liter", ("l", "litre", "litres", "liter", "liters")),
            ShownUnit(
                "fl oz",
                "fl oz",
                "fluid_ounce",
                ("floz", "fl. oz.", "us fl oz", "fluid ounces", "oz", "ounces"),
                dict.fromkeys(("oz", "ounces"), "US fl oz"),
            ),
            ShownUnit("cup", "cup", "cup", ("cups",), {"cup": "US cup", "cups": "US cups"}),
            ShownUnit("pt", "pt", "pint", ("pint", "pints")),
            ShownUnit("qt", "qt", "quart", ("quart", "quarts")),
            ShownUnit("gal", "gal", "gallon", ("gallon", "gallons")),
            ShownUnit("tsp", "tsp", "teaspoon", ("teaspoon", "teaspoons")),
            ShownUnit("tbsp", "tbsp", "tablespoon", ("tablespoon", "tablespoons")),
        ),
        example="300 mL",
        job_units=("mL", "fl oz"),
    ),
    "mass": Kind(
        (
            ShownUnit("g", "g", "gram", ("gram", "grams")),
            ShownUnit("kg", "kg", "kilogram", ("kilogram", "kilograms")),
            ShownUnit("oz", "oz", "ounce", ("ounce", "ounces")),
            ShownUnit("lb", "lb", "pound", ("lbs", "pound", "pounds")),
        ),
        example="150 g",
        is_compound=True,
    ),
    "density": Kind(
        (
            ShownUnit("g/mL", "g/mL", "gram/milliliter", ("g/ml", "g/cm3", "g/cc", "kg/l", "kg/L")),
            ShownUnit("lb/gal", "lb/gal", "pound/gallon", ("lbs/gal",)),
            ShownUnit("kg/m3", "kg/m³", "kilogram/meter**3", ()),
        )
    ),
    "time": Kind(
        (
            ShownUnit("s", "s", "second", ("sec", "secs", "second", "seconds")),
            ShownUnit("min", "min", "minute", ("m", "mins", "minute", "minutes")),
            ShownUnit("h", "hr", "hour", ("hr", "hrs", "hour", "hours")),
            ShownUnit("d", "d", "day", ("day", "days")),
        ),
        example="30 min",
        is_compound=True,
    ),
    "temperature": Kind(
        (
            ShownUnit("degC", "°C", "degC", ("°c", "c", "celsius")),
            ShownUnit("degF", "°F", "degF", ("°f", "f", "fahrenheit")),
            ShownUnit("K", "K", "kelvin", ("k", "kelvin", "kelvins")),
        ),
        example="74 degF",
        job_units=("degF", "degC"),
    ),
    "temperature difference": Kind(
        (
            ShownUnit("K", "K", "kelvin", ("k", "kelvin", "kelvins")),
            ShownUnit("degC", "°C", "delta_degC", ("°c", "c", "celsius")),
            ShownUnit("degF", "°F", "delta_degF", ("°f", "f", "fahrenheit")),
        ),
        shown_with=("temperature", {"degF": "degF", "degC": "degC"}),
    ),
    "share": Kind(
        (ShownUnit("%", "%", "percent", ("percent", "per cent")),),
        example="48%",
    ),
    "ratio": Kind((ShownUnit("", "", "dimensionless"),)),
    "count": Kind((ShownUnit("", "", "dimensionless"),)),
    "slope": Kind(
        (
            ShownUnit("in/ft", "in/ft", "inch/foot", finer=("thou/ft", 0.01)),
            ShownUnit("thou/ft", "thou/ft", "thou/foot", ()),
            ShownUnit("mm/m", "mm/m", "millimeter/meter", ()),
            ShownUnit("%", "%", "percent", ("percent", "per cent")),
        ),
        shown_with=("length", {"in": "in/ft", "mm": "mm/m", "cm": "mm/m"}),
    ),
    "angle": Kind(
        (
            ShownUnit("deg", "°", "degree", ("°", "degree", "degrees")),
            ShownUnit("rad", "rad", "radian", ("radian", "radians")),
        )
    ),
    "money": Kind(
        (ShownUnit("", "", "money"),),
        places=2,
    ),
    "wage": Kind((ShownUnit("/h", "per hr", "money/hour", ("per h", "per hr", "per hour", "an hour")),)),
    "spread rate": Kind(
        (
            ShownUnit("cm2/min", "cm²/min", "centimeter**2/minute", ()),
            ShownUnit("in2/min", "sq in/min", "inch**2/minute", ("sq in/min",)),
            ShownUnit("ft2/min", "sq ft/min", "foot**2/minute", ("sq ft/min",)),
        ),
        shown_with=("length", {"in": "in2/min", "mm": "cm2/min", "cm": "cm2/min"}),
    ),
    "coverage": Kind(
        (
            ShownUnit("in2/fl oz", "sq in/fl oz", "inch**2/fluid_ounce", ("sq in/fl oz", "in2/oz")),
            ShownUnit("ft2/gal", "sq ft/gal", "foot**2/gallon", ("sq ft/gal",)),
            ShownUnit("cm2/mL", "cm²/mL", "centimeter**2/milliliter", ("cm2/ml",)),
            ShownUnit("m2/L", "m²/L", "meter**2/liter", ("m2/l",)),
        ),
        shown_with=("length", {"in": "in2/fl oz", "mm": "cm2/mL", "cm": "cm2/mL"}),
    ),
    "speed": Kind(
        (
            ShownUnit("mm/s", "mm/s", "millimeter/second", ()),
            ShownUnit("mm/min", "mm/min", "millimeter/minute", ()),
        )
    ),
    "acceleration": Kind((ShownUnit("cm/s2", "cm/s²", "centimeter/second**2", ("cm/s^2",)),)),
    "surface tension": Kind((ShownUnit("mN/m", "mN/m", "millinewton/meter", ("mn/m", "dyn/cm")),)),
    "viscosity": Kind(
        (
            ShownUnit("cP", "cP", "centipoise", ("cp", "cps", "mpa s", "mPa s")),
            ShownUnit("Pa s", "Pa s", "pascal*second", ("pa s", "pas")),
            ShownUnit("P", "P", "poise", ("poise",)),
        )
    ),
    "growth by temperature": Kind((ShownUnit("/K", "per K", "1/kelvin"),)),
    "rate": Kind(
        (ShownUnit("/min", "per min", "1/minute", ("per min",)), ShownUnit("/s", "per s", "1/second"))
    ),
    "heating rate": Kind((ShownUnit("K/min", "K/min", "kelvin/minute"),)),
    "molar energy": Kind((ShownUnit("kJ/mol", "kJ/mol", "kilojoule/mole", ("kj/mol",)),)),
    "molar heat capacity": Kind((ShownUnit("J/(mol K)", "J/(mol K)", "joule/mole/kelvin"),)),
    "specific energy": Kind((ShownUnit("J/g", "J/g", "joule/gram", ("j/g",)),)),
    "heat capacity": Kind((ShownUnit("J/(g K)", "J/(g K)", "joule/gram/kelvin"),)),
    "heat capacity slope": Kind((ShownUnit("J/(g K2)", "J/(g K²)", "joule/gram/kelvin**2"),)),
    "heat loss": Kind((ShownUnit("W/(m2 K)", "W/(m² K)", "watt/meter**2/kelvin"),)),
    "heat loss slope": Kind((ShownUnit("W/(m2 K2)", "W/(m² K²)", "watt/meter**2/kelvin**2"),)),
    "equivalent weight": Kind((ShownUnit("g/mol", "g/mol", "gram/mole", ("g/eq",)),)),
}

JOB_UNITS = {name: kind.job_units for name, kind in KINDS.items() if kind.job_units}
"""The kinds whose unit a job chooses, with what it chooses from."""
