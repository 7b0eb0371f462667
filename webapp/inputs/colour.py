"""What a person enters of a colour: its tint, its drops and how it hides."""

from webapp.inputs.entry import Input

COLOUR = (
    Input("coat_number", "Coat", "colour", "count", "The coat that is poured now.", "", "1", "20", "1"),
    Input(
        "tint",
        "Tint",
        "colour",
        "choice",
        default="drops",
        options=(("drops", "Tinted by drops"), ("recipe", "Tinted by a recipe"), ("clear", "Clear")),
    ),
    Input(
        "drop_basis",
        "Drop size",
        "colour",
        "choice",
        "Tints drip smaller than water: count your own bottle's drops into a measure.",
        default="nominal",
        options=(("nominal", "taken as large"), ("counted", "counted"), ("dropper", "from the dropper")),
    ),
    Input(
        "nominal_drop_volume",
        "Assumed drop volume",
        "colour",
        "volume",
        "A large drop, so that the limit stays on the safe side; count your own bottle's.",
        "mL",
        "0.005 mL",
        "0.5 mL",
        "0.05 mL",
    ),
    Input(
        "counted_volume", "Volume of counted drops", "colour", "volume", "Of tint.", "mL", "0.1 mL", "50 mL"
    ),
    Input(
        "counted_drops", "Number of counted drops", "colour", "count", "Into that measure.", "", "1", "5000"
    ),
    Input(
        "tip_diameter",
        "Dropper tip width",
        "colour",
        "length",
        "Outside, where it is wet.",
        None,
        "1 mm",
        "6 mm",
    ),
    Input(
        "tint_surface_tension",
        "Tint's surface tension",
        "colour",
        "surface tension",
        "Left blank: 25 mN/m (from memory).",
        "mN/m",
        "10 mN/m",
        "80 mN/m",
        "25 mN/m",
    ),
    Input(
        "tint_density",
        "Tint's density",
        "colour",
        "density",
        "Left blank: 1.1 g/mL (from memory).",
        "g/mL",
        "0.5 g/mL",
        "4 g/mL",
        "1.1 g/mL",
    ),
    Input(
        "recipe_load", "Recipe load", "colour", "share", "Tint in the mix, by volume.", "%", "0.001 %", "25 %"
    ),
    Input(
        "allowed_error",
        "Allowed recipe error",
        "colour",
        "share",
        "Of the recipe's tint (our choice).",
        "%",
        "0.1 %",
        "100 %",
        "5 %",
    ),
    Input(
        "need_basis",
        "Basis of the mix",
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
        "Starting tint share",
        "colour",
        "share",
        "Of the limit; then creep up.",
        "%",
        "1 %",
        "100 %",
        "30 %",
    ),
)

COLOUR_HIDING = (
    Input(
        "absorption_ratio",
        "Absorption ratio K/S",
        "colour",
        "ratio",
        "Of the tinted mix, from a drawdown: 0.01 white, 1 and over deep colors.",
        "",
        "0.001",
        "100",
    ),
    Input(
        "scattering_power",
        "Scattering power SX",
        "colour",
        "ratio",
        "Of that drawdown.",
        "",
        "0.01",
        "100",
    ),
    Input("tested_load", "Drawdown tint load", "colour", "share", "By volume.", "%", "0.01 %", "25 %"),
    Input("tested_depth", "Drawdown depth", "colour", "length", "Of the film.", None, "0.01 mm", "50 mm"),
)
