"""What a choice chooses, and which cell is the least or the greatest of which: the sheet's own rules."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Choice:
    """A quantity that a choice names the formula of: its levels, the choosing input, the cell by option."""

    levels: tuple[str, ...]
    by: str
    cells: dict[str, str]


@dataclass(frozen=True)
class Pick:
    """The greatest or least of named cells, skipping blanks; a blank among the needed blanks the pick."""

    level: str
    of: tuple[str, ...]
    needed: tuple[str, ...] = ()


CHOICES: dict[str, Choice] = {
    "shape_area": Choice(
        ("face", "opening"),
        "shape",
        {
            "rectangle": "rectangle_area",
            "rounded_rectangle": "rounded_rectangle_area",
            "circle": "circle_area",
            "ring": "ring_area",
            "ellipse": "ellipse_area",
            "triangle": "triangle_area",
            "polygon": "polygon_area",
            "capsule": "capsule_area",
            "half_round": "half_round_area",
            "arch_top": "arch_top_area",
            "trapezoid": "trapezoid_area",
            "stroke": "stroke_area",
            "lettering": "lettering_area",
            "known": "known_area",
        },
    ),
    "shape_edge": Choice(
        ("face", "opening"),
        "shape",
        {
            "rectangle": "rectangle_edge",
            "rounded_rectangle": "rounded_rectangle_edge",
            "circle": "circle_edge",
            "ring": "ring_edge",
            "ellipse": "ellipse_edge",
            "triangle": "triangle_edge",
            "polygon": "polygon_edge",
            "capsule": "capsule_edge",
            "half_round": "half_round_edge",
            "arch_top": "arch_top_edge",
            "trapezoid": "trapezoid_edge",
            "stroke": "stroke_edge",
            "lettering": "lettering_edge",
            "known": "known_edge",
        },
    ),
    "span": Choice(
        ("face",),
        "shape",
        {
            "rectangle": "longest_side",
            "rounded_rectangle": "longest_side",
            "circle": "diameter",
            "ring": "outer_diameter",
            "ellipse": "longest_side",
            "triangle": "triangle_span",
            "polygon": "circumscribed_diameter",
            "capsule": "length",
            "half_round": "diameter",
            "arch_top": "arch_top_span",
            "trapezoid": "trapezoid_span",
            "stroke": "stroke_length",
            "lettering": "stated_span",
            "known": "stated_span",
        },
    ),
    "edge_hold_depth": Choice(
        ("face",),
        "edge",
        {
            "sharp": "sharp_edge_hold_depth",
            "chamfered": "chamfered_edge_hold_depth",
            "rounded": "rounded_edge_hold_depth",
            "raised": "raised_edge_hold_depth",
        },
    ),
    "groove_section": Choice(
        ("face",),
        "groove",
        {"none": "no_groove_section", "v": "v_groove_section", "round": "round_groove_section"},
    ),
    "volume_ratio": Choice(
        ("job",), "ratio_basis", {"volume": "volume_ratio_as_stated", "mass": "volume_ratio_from_mass"}
    ),
    "mass_ratio": Choice(
        ("job",), "ratio_basis", {"volume": "mass_ratio_from_volume", "mass": "mass_ratio_as_stated"}
    ),
    "colour_need": Choice(
        ("colour",),
        "need_basis",
        {"greatest": "greatest_need", "geometry": "geometry_need", "claim": "claim_need"},
    ),
    "drop_volume": Choice(
        ("colour",),
        "drop_basis",
        {
            "nominal": "nominal_drop_volume",
            "counted": "counted_drop_volume",
            "dropper": "dropper_drop_volume",
        },
    ),
    "starting_drops": Choice(
        ("cup",), "tint", {"drops": "first_drops", "recipe": "allowed_recipe_drops", "clear": "no_drops"}
    ),
    "drops_past_limit": Choice(
        ("cup",),
        "tint",
        {"drops": "first_drop_excess", "recipe": "first_drop_excess", "clear": "no_drops"},
    ),
    "recipe_excess": Choice(
        ("cup",), "tint", {"drops": "no_drops", "recipe": "recipe_drops_past_limit", "clear": "no_drops"}
    ),
    "recipe_error": Choice(
        ("cup",), "tint", {"drops": "no_error", "recipe": "drop_error", "clear": "no_error"}
    ),
}

GREATEST_OF: dict[str, Pick] = {
    "coats_to_pour": Pick("colour", ("most_coats", "planned_coats"), needed=("planned_coats",)),
    "cups": Pick("colour", ("cups_by_geometry", "cups_by_claim"), needed=("cups_by_geometry",)),
    "coat_mix": Pick("colour", ("colour_need", "total_mix_volume"), needed=("colour_need",)),
    "greatest_need": Pick("colour", ("geometry_need", "claim_need"), needed=("geometry_need",)),
}

LEAST_OF: dict[str, Pick] = {
    "allowed_recipe_drops": Pick("cup", ("recipe_drops", "tint_limit_drops"), needed=("recipe_drops",)),
    "cup_limit": Pick(
        "colour", ("cup_capacity_limit", "pourable_volume", "cup_mass_limit"), needed=("cup_capacity_limit",)
    ),
}
