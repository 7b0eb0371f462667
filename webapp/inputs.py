"""The one table of what a person enters: it feeds the forms, the phone's field checks and the job file.

Each row gives the input's name, what it is called on the screen, where it is entered, its kind of
quantity, the unit of a bare number, bounds, default and a line of help. A default is shown as such and
can be changed; `fallback_input` means "not measured: the other input's value".
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Input:
    """One thing a person enters; `unit` is None where the job's own unit of that kind is meant."""

    name: str
    label: str
    section: str
    kind: str
    help: str = ""
    unit: str | None = None
    least: str | None = None
    most: str | None = None
    default: str | None = None
    fallback_input: str | None = None
    options: tuple[tuple[str, str], ...] = ()

    @property
    def levels(self) -> tuple[str, ...]:
        """The levels of the sheet whose rows carry this input."""
        return LEVELS_OF_SECTION[self.section]


LEVELS_OF_SECTION = {
    "room": ("job",),
    "card": ("job",),
    "bench": ("job",),
    "colour": ("colour",),
    "face": ("face",),
    "shape": ("face", "opening"),
}

SHAPES = (
    ("rectangle", "Rectangle"),
    ("circle", "Circle"),
    ("known", "Area already known"),
)

ROOM = (
    Input(
        "air_temperature",
        "Air",
        "room",
        "temperature",
        "Where the resin cures.",
        least="-40 degC",
        most="50 degC",
    ),
    Input(
        "surface_temperature",
        "Surface",
        "room",
        "temperature",
        "Of the face itself, by a contact thermometer. Left blank: the air's.",
        least="-40 degC",
        most="80 degC",
        fallback_input="air_temperature",
    ),
    Input(
        "resin_temperature",
        "Resin",
        "room",
        "temperature",
        "In the bottle, if it stood elsewhere. Left blank: the air's.",
        least="-40 degC",
        most="80 degC",
        fallback_input="air_temperature",
    ),
    Input(
        "relative_humidity", "Humidity", "room", "share", "Relative humidity of the air.", "%", "1 %", "100 %"
    ),
)

CARD = (
    Input(
        "ratio_basis",
        "The sheet gives the ratio by",
        "card",
        "choice",
        "By volume for cups and syringes, by mass for a scale. They differ where the densities do.",
        default="volume",
        options=(("volume", "volume"), ("mass", "mass")),
    ),
    Input(
        "stated_ratio_a", "Parts of A", "card", "ratio", "As the data sheet states it.", "", "0.01", "1000"
    ),
    Input(
        "stated_ratio_b", "Parts of B", "card", "ratio", "As the data sheet states it.", "", "0.01", "1000"
    ),
    Input(
        "density_a",
        "Density of A",
        "card",
        "density",
        "For grams and ratios by mass.",
        "g/mL",
        "0.5 g/mL",
        "3 g/mL",
    ),
    Input(
        "density_b",
        "Density of B",
        "card",
        "density",
        "For grams and ratios by mass.",
        "g/mL",
        "0.5 g/mL",
        "3 g/mL",
    ),
    Input(
        "pot_life", "Pot life", "card", "time", "How long the mixed cup stays usable.", "min", "30 s", "3 d"
    ),
    Input(
        "pot_life_temperature",
        "at",
        "card",
        "temperature",
        "The pot life's temperature.",
        least="0 degC",
        most="60 degC",
    ),
    Input(
        "pot_life_mass",
        "in a cup of",
        "card",
        "mass",
        "The pot life's mass of mix. Left blank: 150 g.",
        "g",
        "1 g",
        "5 kg",
        "150 g",
    ),
    Input(
        "mix_time",
        "Mix for",
        "card",
        "time",
        "As long as the data sheet says, scraping sides and bottom. Left blank: 2 min (common practice).",
        "min",
        "10 s",
        "30 min",
        "2 min",
    ),
    Input(
        "first_mist", "First mist after", "card", "time", "After the end of the pour.", "min", "0 s", "2 h"
    ),
    Input(
        "second_mist", "Second mist after", "card", "time", "After the end of the pour.", "min", "0 s", "6 h"
    ),
    Input("tint_limit", "Tint at most", "card", "share", "Of the mix, by volume.", "%", "0.01 %", "25 %"),
    Input(
        "greatest_coat_depth",
        "Deepest coat",
        "card",
        "length",
        "One coat may be no deeper.",
        "mm",
        "0.1 mm",
        "50 mm",
    ),
    Input(
        "greatest_cup_mass",
        "Largest batch",
        "card",
        "mass",
        "The most to mix in one cup.",
        "g",
        "5 g",
        "20 kg",
    ),
    Input("stated_tack_free_time", "Tack-free after", "card", "time", "", "h", "1 min", "14 d"),
    Input(
        "tack_free_temperature",
        "at",
        "card",
        "temperature",
        "Left blank: the pot life's.",
        least="0 degC",
        most="60 degC",
        fallback_input="pot_life_temperature",
    ),
    Input("stated_recoat_opens", "Recoat opens after", "card", "time", "", "h", "1 min", "14 d"),
    Input("stated_recoat_closes", "Recoat closes after", "card", "time", "", "h", "1 min", "60 d"),
    Input(
        "recoat_temperature",
        "at",
        "card",
        "temperature",
        "Left blank: the pot life's.",
        least="0 degC",
        most="60 degC",
        fallback_input="pot_life_temperature",
    ),
    Input("stated_cure_time", "Cured after", "card", "time", "", "h", "10 min", "60 d"),
    Input(
        "cure_temperature",
        "at",
        "card",
        "temperature",
        "Left blank: the pot life's.",
        least="0 degC",
        most="60 degC",
        fallback_input="pot_life_temperature",
    ),
    Input("stated_top_coat_wait", "Top coat after", "card", "time", "", "h", "10 min", "60 d"),
    Input(
        "top_coat_temperature",
        "at",
        "card",
        "temperature",
        "Left blank: the pot life's.",
        least="0 degC",
        most="60 degC",
        fallback_input="pot_life_temperature",
    ),
    Input(
        "least_cure_temperature",
        "Cures no colder than",
        "card",
        "temperature",
        "Below it a film can stall, and no times are given. Left blank: 10 °C, 50 °F (common practice).",
        least="-20 degC",
        most="60 degC",
        default="10 degC",
    ),
    Input(
        "stated_coverage",
        "Claimed coverage",
        "card",
        "coverage",
        "The maker's claim.",
        "in2/fl oz",
        "0.01 cm2/mL",
        "1000 cm2/mL",
    ),
    Input(
        "stated_coverage_depth",
        "at a depth of",
        "card",
        "length",
        "The claim's depth.",
        None,
        "0.01 mm",
        "50 mm",
    ),
    Input(
        "ratio_tolerance",
        "Ratio may be out by",
        "card",
        "share",
        "Where the sheet gives none: 5 % (common practice).",
        "%",
        "0.1 %",
        "30 %",
        "5 %",
    ),
)

BENCH = (
    Input("cup_capacity", "Cup holds", "bench", "volume", "To the brim.", None, "5 mL", "20 L"),
    Input(
        "cup_graduation",
        "Cup is marked every",
        "bench",
        "volume",
        "From one mark to the next.",
        None,
        "0.05 mL",
        "1 L",
    ),
    Input(
        "fill_share",
        "Fill no more than",
        "bench",
        "share",
        "Room to stir without spilling.",
        "%",
        "5 %",
        "100 %",
        "60 %",
    ),
    Input(
        "vessels_per_cup",
        "Vessels for each cup",
        "bench",
        "count",
        "Mixing cup and clean cup.",
        "",
        "1",
        "6",
        "2",
    ),
    Input(
        "residual_film",
        "Film left on a wall",
        "bench",
        "length",
        "After scraping; weigh one to know.",
        "mm",
        "0 mm",
        "2 mm",
        "0.2 mm",
    ),
    Input(
        "contingency", "Extra", "bench", "share", "Nobody drives back for 20 mL.", "%", "0 %", "100 %", "10 %"
    ),
    Input(
        "spread_rate",
        "You spread",
        "bench",
        "spread rate",
        "From your own pours.",
        "cm2/min",
        "1 cm2/min",
        "10000 cm2/min",
        "100 cm2/min",
    ),
    Input(
        "usable_share",
        "Usable share of the working time",
        "bench",
        "share",
        "The last quarter pours badly.",
        "%",
        "10 %",
        "100 %",
        "75 %",
    ),
    Input("tint_time", "Tinting takes", "bench", "time", "", "min", "0 s", "1 h", "2 min"),
    Input("transfer_time", "Changing cups takes", "bench", "time", "", "min", "0 s", "1 h", "1 min"),
    Input(
        "planned_coats", "Coats you plan", "bench", "count", "The depth may need more.", "", "1", "20", "1"
    ),
)

COLOUR = (
    Input(
        "tint",
        "Tint",
        "colour",
        "choice",
        default="drops",
        options=(("drops", "Tinted by drops"), ("clear", "Clear")),
    ),
    Input(
        "drop_basis",
        "A drop's size is",
        "colour",
        "choice",
        "Tints drip smaller than water: count your own bottle's drops into a measure.",
        default="nominal",
        options=(("nominal", "taken as large"), ("counted", "counted")),
    ),
    Input(
        "nominal_drop_volume",
        "One drop is",
        "colour",
        "volume",
        "A large drop, so that the limit stays on the safe side; count your own bottle's.",
        "mL",
        "0.005 mL",
        "0.5 mL",
        "0.05 mL",
    ),
    Input("counted_volume", "Drops filled", "colour", "volume", "Of tint.", "mL", "0.1 mL", "50 mL"),
    Input("counted_drops", "Drops counted", "colour", "count", "Into that measure.", "", "1", "5000"),
    Input(
        "need_basis",
        "Mix by",
        "colour",
        "choice",
        "Your sizes, the maker's claim of coverage, or the greater of the two.",
        default="greatest",
        options=(
            ("greatest", "the greater of the two"),
            ("geometry", "your sizes"),
            ("claim", "the maker's claim"),
        ),
    ),
    Input(
        "first_share",
        "Start with",
        "colour",
        "share",
        "Of the limit; then creep up.",
        "%",
        "1 %",
        "100 %",
        "30 %",
    ),
)

FACE = (
    Input("depth", "Depth", "face", "length", "Of the film.", None, "0.1 mm", "50 mm"),
    Input(
        "texture_depth",
        "Texture takes",
        "face",
        "length",
        "A blasted or carved ground takes more film.",
        None,
        "0 mm",
        "20 mm",
        "0 mm",
    ),
)

SHAPE = (
    Input("shape", "Shape", "shape", "choice", default="rectangle", options=SHAPES),
    Input("width", "Width", "shape", "length", "", None, "1 mm", "30 m"),
    Input("height", "Height", "shape", "length", "", None, "1 mm", "30 m"),
    Input("diameter", "Diameter", "shape", "length", "", None, "1 mm", "30 m"),
    Input("stated_area", "Area", "shape", "area", "", None, "1 mm2", "900 m2"),
    Input("stroke_width", "Stroke", "shape", "length", "Across the stroke.", None, "0.5 mm", "2 m"),
    Input("pieces", "Pieces", "shape", "count", "How many alike.", "", "1", "1000", "1"),
)

CARD_FILM = (
    Input(
        "surface_tension",
        "Surface tension",
        "card",
        "surface tension",
        "Of the fresh mix. Left blank: 32 mN/m, as fresh mixes were measured.",
        "mN/m",
        "10 mN/m",
        "80 mN/m",
        "32 mN/m",
    ),
    Input(
        "wetting_angle",
        "Wetting angle",
        "card",
        "angle",
        "At which a drop of the mix comes to rest on the panel. Left blank: 25° (from memory).",
        "deg",
        "0 deg",
        "90 deg",
        "25 deg",
    ),
    Input(
        "stated_viscosity",
        "Viscosity",
        "card",
        "viscosity",
        "Of the fresh mix of A and B.",
        "cP",
        "1 cP",
        "100000 cP",
    ),
    Input(
        "viscosity_temperature",
        "at",
        "card",
        "temperature",
        "Left blank: the pot life's.",
        least="0 degC",
        most="60 degC",
        fallback_input="pot_life_temperature",
    ),
    Input(
        "second_viscosity",
        "Viscosity, second figure",
        "card",
        "viscosity",
        "If the sheet gives one, the film's is worked out for your room. Left blank: the first holds.",
        "cP",
        "1 cP",
        "100000 cP",
        fallback_input="stated_viscosity",
    ),
    Input(
        "second_viscosity_temperature",
        "at",
        "card",
        "temperature",
        "The second figure's temperature.",
        least="0 degC",
        most="60 degC",
        fallback_input="viscosity_temperature",
    ),
)

BENCH_FILM = (
    Input(
        "cup_diameter",
        "Cup is wide",
        "bench",
        "length",
        "Inside. A wide, shallow cup stays cooler.",
        "mm",
        "10 mm",
        "500 mm",
        "75 mm",
    ),
    Input(
        "bench_slope",
        "Bench slopes",
        "bench",
        "slope",
        "By a level: how far one end stands higher, for the length between.",
        "mm/m",
        "0 mm/m",
        "200 mm/m",
    ),
    Input(
        "allowed_share",
        "Depth may vary by",
        "bench",
        "share",
        "From one end of a face to the other (our choice).",
        "%",
        "1 %",
        "100 %",
        "10 %",
    ),
    Input(
        "ripple_length",
        "Ripples are long",
        "bench",
        "length",
        "From crest to crest, as your spreader leaves them (our choice).",
        "mm",
        "1 mm",
        "2 m",
        "20 mm",
    ),
    Input(
        "bubble_diameter",
        "Bubbles are wide",
        "bench",
        "length",
        "Those that you can just see, half a millimetre (our choice).",
        "mm",
        "0.01 mm",
        "5 mm",
        "0.5 mm",
    ),
)

COLOUR_HIDING = (
    Input(
        "absorption_ratio",
        "Absorption to scatter, K/S",
        "colour",
        "ratio",
        "Of the tinted mix, from a drawdown: 0.01 white, 1 and over deep colours.",
        "",
        "0.001",
        "100",
    ),
    Input(
        "scattering_power",
        "Scattering power, SX",
        "colour",
        "ratio",
        "Of that drawdown.",
        "",
        "0.01",
        "100",
    ),
    Input("tested_load", "Its tint load", "colour", "share", "By volume.", "%", "0.01 %", "25 %"),
    Input("tested_depth", "Its depth", "colour", "length", "Of the film.", "mm", "0.01 mm", "50 mm"),
)

FACE_EDGE = (
    Input(
        "edge",
        "Edge",
        "face",
        "choice",
        "Sharp edges hold the deepest film; easing one by 1/16 in costs nearly half.",
        default="sharp",
        options=(
            ("sharp", "Sharp"),
            ("chamfered", "Chamfered 45°"),
            ("rounded", "Rounded"),
            ("raised", "Taped or raised"),
        ),
    ),
    Input(
        "panel_edge_angle",
        "Corner",
        "face",
        "angle",
        "Between face and side; 90° is square.",
        "deg",
        "10 deg",
        "180 deg",
        "90 deg",
    ),
    Input(
        "edge_radius",
        "Radius",
        "face",
        "length",
        "Of the rounded edge.",
        None,
        "0 mm",
        "50 mm",
    ),
    Input(
        "raised_edge_height",
        "Stands up by",
        "face",
        "length",
        "Tape or lip, above the face.",
        None,
        "0 mm",
        "50 mm",
    ),
    Input(
        "groove",
        "Grooves",
        "face",
        "choice",
        default="none",
        options=(("none", "None"), ("v", "V-groove"), ("round", "Round bottom")),
    ),
    Input("groove_width", "Groove wide", "face", "length", "At the top.", None, "0.1 mm", "100 mm"),
    Input("groove_angle", "V-bit", "face", "angle", "Included angle.", "deg", "10 deg", "170 deg", "60 deg"),
    Input("bit_diameter", "Bit", "face", "length", "Across its round end.", None, "0.5 mm", "200 mm"),
    Input("groove_length", "Grooves long", "face", "length", "All together.", None, "0 m", "1000 m", "0 m"),
    Input(
        "pocket_depth",
        "Sunk by",
        "face",
        "length",
        "Of a pocketed ground, filled before the film begins.",
        None,
        "0 mm",
        "50 mm",
        "0 mm",
    ),
    Input(
        "stated_span",
        "Longest way across",
        "face",
        "length",
        "Of a shape whose sizes are not given, for how level it must lie.",
        None,
        "1 mm",
        "30 m",
    ),
)

SHAPE_LETTERING = (
    Input("cap_height", "Cap height", "shape", "length", "Of a capital H.", None, "1 mm", "10 m"),
    Input(
        "glyph_area_sum",
        "Letters' area",
        "shape",
        "ratio",
        "All letters together, in squares of the cap height.",
        "",
        "0.001",
        "10000",
    ),
    Input(
        "glyph_edge_sum",
        "Letters' edge",
        "shape",
        "ratio",
        "All letters together, in cap heights.",
        "",
        "0.01",
        "100000",
    ),
)

INPUTS: dict[str, Input] = {
    row.name: row
    for row in (
        *ROOM,
        *CARD,
        *CARD_FILM,
        *BENCH,
        *BENCH_FILM,
        *COLOUR,
        *COLOUR_HIDING,
        *SHAPE,
        *SHAPE_LETTERING,
        *FACE,
        *FACE_EDGE,
    )
}
