"""Constants with a unit, each with value and unit as its source prints it; the sheet takes them as inputs."""

from dataclasses import dataclass
from functools import cache

from webapp.units import canonical_units, exact_registry


@dataclass(frozen=True)
class Constant:
    """A named constant: value and unit as printed in its source, the kind of quantity, and the source."""

    name: str
    value: float
    unit: str
    shown: str
    kind: str
    source: str
    label: str

    @property
    def canonical(self) -> float:
        """The value in the canonical unit of its kind."""
        return _canonical(self.value, self.unit, self.kind)


@cache
def _canonical(value: float, unit: str, kind: str) -> float:
    quantity = exact_registry().Quantity(value, unit).to(canonical_units()[kind].pint)
    return float(quantity.magnitude)


HEAT_CAPACITY_SOURCE = "engineering fit to 1.7 to 2.1 J/(g K) of liquid mixes (from memory)"
AIR_LOSS_SOURCE = "free convection on a short wall (Churchill, Chu) and radiation at 0.9, by the library ht"
HEAT_CLASS_SOURCE = (
    "engineering classes of a peak: cool under 45, warm to 65, runs hot over that; it can smoke from 100 °C"
)

CONSTANTS = (
    Constant(
        "gravity",
        980.665,
        "cm/s**2",
        "980.665 cm/s²",
        "acceleration",
        "standard gravity, CGPM 1901; NIST SP 811, app. B",
        "Gravity",
    ),
    Constant(
        "gas_constant",
        8.314462618,
        "joule/mol/kelvin",
        "8.314462618 J/(mol K)",
        "molar heat capacity",
        "CODATA 2018",
        "Gas constant",
    ),
    Constant(
        "ice_point",
        273.15,
        "kelvin",
        "273.15 K",
        "temperature",
        "definition of the Celsius scale, NIST SP 811",
        "Ice point",
    ),
    Constant(
        "magnus_slope",
        17.625,
        "dimensionless",
        "17.625",
        "ratio",
        'Alduchov, Eskridge, "Improved Magnus form approximation of saturation vapor pressure", J. Appl. '
        "Meteor. 35 (1996) 601-609, eq. 21",
        "Slope of the Magnus form",
    ),
    Constant(
        "magnus_offset",
        243.04,
        "kelvin",
        "243.04 K",
        "temperature difference",
        'Alduchov, Eskridge, "Improved Magnus form approximation of saturation vapor pressure", J. Appl. '
        "Meteor. 35 (1996) 601-609, eq. 21",
        "Offset of the Magnus form",
    ),
    Constant(
        "least_dew_margin",
        3,
        "kelvin",
        "3 K",
        "temperature difference",
        "ISO 8502-4 and ISO 12944-7, as cited by coating guides; 5 °F in US practice",
        "Least margin over the dew point",
    ),
    Constant(
        "greatest_humidity",
        85,
        "percent",
        "85 %",
        "share",
        "coating guides that cite ISO 8502-4 and ISO 12944-7",
        "Greatest humidity",
    ),
    Constant(
        "kinetic_reference_temperature",
        298.15,
        "kelvin",
        "298.15 K",
        "temperature",
        "25 °C, the temperature that the rate constant of the cup's heat is stated at",
        "Reference temperature of the cure's rate",
    ),
    Constant(
        "gel_conversion",
        0.58,
        "dimensionless",
        "0.58",
        "share",
        "Flory-Stockmayer for A2 + B4: 1/√3 = 0.5774; rings delay it slightly",
        "Conversion at gel",
    ),
    Constant(
        "molar_heat",
        100,
        "kilojoule/mol",
        "100 kJ/mol of epoxide",
        "molar energy",
        "98 to 108 kJ an epoxide (from memory); a room-temperature system measured at 356 J/g",
        "Heat of the cure, each epoxide",
    ),
    Constant(
        "high_density",
        1.20,
        "gram/centimeter**3",
        "1.20 g/cm³",
        "density",
        "a heavy unfilled mix, so that a mass errs high where the card gives no densities (from memory)",
        "Density where the card gives none",
    ),
    Constant(
        "assumed_high_self_start",
        0.3,
        "dimensionless",
        "0.3",
        "ratio",
        "the other end of what is not known of a mix: 0.03 to 0.3 fit what cards say",
        "Self-start of the cure, at most",
    ),
    Constant(
        "heat_capacity",
        1.8,
        "joule/gram/kelvin",
        "1.8 J/(g K) at 25 °C",
        "heat capacity",
        HEAT_CAPACITY_SOURCE,
        "Heat capacity",
    ),
    Constant(
        "heat_capacity_slope",
        0.004,
        "joule/gram/kelvin**2",
        "0.004 J/(g K²)",
        "heat capacity slope",
        HEAT_CAPACITY_SOURCE,
        "Heat capacity, rise for each kelvin",
    ),
    Constant(
        "greatest_heat_capacity",
        2.4,
        "joule/gram/kelvin",
        "2.4 J/(g K)",
        "heat capacity",
        HEAT_CAPACITY_SOURCE,
        "Heat capacity, at most",
    ),
    Constant(
        "air_loss",
        9,
        "watt/meter**2/kelvin",
        "9 W/(m² K)",
        "heat loss",
        AIR_LOSS_SOURCE,
        "Heat lost to the air",
    ),
    Constant(
        "air_loss_slope",
        0.08,
        "watt/meter**2/kelvin**2",
        "0.08 W/(m² K²)",
        "heat loss slope",
        AIR_LOSS_SOURCE,
        "Heat lost to the air, rise for each kelvin",
    ),
    Constant(
        "card_cup_diameter",
        7.5,
        "centimeter",
        "7.5 cm",
        "length",
        "engineering assumption: the inside width of the cup in which a card's pot life was measured",
        "Width of the pot life's cup",
    ),
    Constant(
        "nominal_density",
        1.10,
        "gram/centimeter**3",
        "1.10 g/cm³",
        "density",
        "engineering assumption of the cup's heat: an ordinary unfilled mix",
        "Density in the cup's heat",
    ),
    Constant(
        "gel_time_band",
        0.25,
        "dimensionless",
        "a quarter",
        "share",
        "a quarter either way: conduction puts a real cup's middle up to 65 K hotter and 13 to 18 % earlier",
        "Band of the gel time",
    ),
    Constant(
        "small_cup_mass",
        50,
        "gram",
        "50 g",
        "mass",
        "simulations: a smaller cup stays near the room's temperature, and gels later than the card says",
        "Largest mass of a small cup",
    ),
    Constant(
        "cup_warm_from",
        45,
        "degC",
        "45 °C",
        "temperature",
        HEAT_CLASS_SOURCE,
        "Least peak of a warm cup",
    ),
    Constant(
        "cup_hot_from",
        65,
        "degC",
        "65 °C",
        "temperature",
        HEAT_CLASS_SOURCE,
        "Least peak of a hot cup",
    ),
    Constant(
        "cup_smokes_from",
        100,
        "degC",
        "100 °C",
        "temperature",
        HEAT_CLASS_SOURCE,
        "Least peak of a cup that can smoke",
    ),
    Constant(
        "edge_hold_share",
        0.8,
        "dimensionless",
        "0.8",
        "share",
        "the pinned layer can let go inside Gibbs' fan (arXiv:1907.03499), so plan to 0.8 of the upper bound",
        "Share of the edge's hold to plan to",
    ),
    Constant(
        "white_reflectance",
        0.80,
        "dimensionless",
        "0.80",
        "share",
        "ISO 6504-1:2019, the white of a hiding chart (from memory)",
        "Reflectance of the chart's white",
    ),
    Constant(
        "full_hiding_ratio",
        0.98,
        "dimensionless",
        "0.98",
        "share",
        "ISO 6504-1:2019, ISO 6504-3:2019, ASTM D2805 (from memory): full hiding",
        "Contrast ratio of full hiding",
    ),
    Constant(
        "plain_stroke_share",
        0.2,
        "dimensionless",
        "a fifth",
        "share",
        "common practice, no source: a plain letter's stroke is about a fifth of its height",
        "Stroke of a plain letter, share of its height",
    ),
    Constant(
        "gel_share",
        0.75,
        "dimensionless",
        "three quarters",
        "share",
        "our choice: the last quarter before gel pours badly",
        "Usable share of the time to gel",
    ),
    Constant(
        "early_gel_share",
        0.9,
        "dimensionless",
        "nine tenths",
        "share",
        "our choice: a cup that gels sooner than that is said to",
        "Early gel, share of the card cup's",
    ),
    Constant(
        "rounding_share",
        0.5,
        "dimensionless",
        "a half",
        "share",
        "our choice: half of what the ratio may be out goes to rounding, the rest to reading",
        "Share of the tolerance for rounding",
    ),
    Constant(
        "greatest_rounding_waste",
        0.1,
        "dimensionless",
        "a tenth",
        "share",
        "our choice",
        "Waste by marks worth a word, from",
    ),
    Constant(
        "assumed_ratio_tolerance",
        5,
        "percent",
        "5 %",
        "share",
        "common practice, no source",
        "Ratio may be out by, where the card is silent",
    ),
    Constant(
        "assumed_mix_time",
        4,
        "minute",
        "4 min",
        "time",
        "our choice: planned where the card gives no mixing time",
        "Mixing time where the card is silent",
    ),
    Constant(
        "wet_edge_share",
        0.36,
        "dimensionless",
        "0.36",
        "share",
        "viscosity doubles at 0.36 of a film's gel (Castro, Macosko 1982, from memory)",
        "Wet edge, share of the film's gel",
    ),
    Constant(
        "foot",
        1,
        "foot",
        "1 ft",
        "length",
        "NIST Handbook 44, app. C",
        "Length of a foot",
    ),
    Constant(
        "open_rate",
        600,
        "centimeter**2/minute",
        "600 cm²/min",
        "spread rate",
        "assumed, not measured (our choice): the shop's record decides",
        "Open area spread",
    ),
    Constant(
        "edge_rate",
        150,
        "centimeter/minute",
        "150 cm/min",
        "speed",
        "assumed, not measured (our choice): the shop's record decides",
        "Edge worked",
    ),
    Constant(
        "least_reaction_heat",
        200,
        "joule/gram",
        "200 J/g",
        "specific energy",
        "the least that a card's peak exotherm is taken to mean (our choice)",
        "Heat of the cure, at least",
    ),
    Constant(
        "greatest_reaction_heat",
        500,
        "joule/gram",
        "500 J/g",
        "specific energy",
        "the most that a card's peak exotherm is taken to mean (our choice)",
        "Heat of the cure, at most",
    ),
    Constant(
        "fine_graduation",
        0.1,
        "milliliter",
        "0.1 mL",
        "volume",
        "our choice: parts that are weighed are planned as if marks were as fine as a scale",
        "Mark spacing where parts are weighed",
    ),
)
