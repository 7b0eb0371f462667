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
    "parts_weighed": Choice(
        ("job",), "ratio_basis", {"volume": "read_on_marks", "mass": "weighed_on_a_scale"}
    ),
    "worst_ratio_deviation": Choice(
        ("cup",), "ratio_basis", {"volume": "worst_marks_deviation", "mass": "worst_scale_deviation"}
    ),
    "groove_depth": Choice(
        ("face",),
        "groove",
        {"none": "no_groove_depth", "v": "v_groove_depth", "round": "round_groove_depth"},
    ),
    "resin_mass_share": Choice(("job",), "resin_part", {"a": "part_a_mass_share", "b": "part_b_mass_share"}),
    "ring_closes": Choice(
        ("face",),
        "shape",
        {
            shape: "closed_ring" if shape == "ring" else "open_shape"
            for shape in (
                "rectangle",
                "rounded_rectangle",
                "circle",
                "ring",
                "ellipse",
                "triangle",
                "polygon",
                "capsule",
                "half_round",
                "arch_top",
                "trapezoid",
                "stroke",
                "lettering",
                "known",
            )
        },
    ),
    "cups": Choice(
        ("colour",),
        "need_basis",
        {"greatest": "greatest_cups", "geometry": "cups_by_geometry", "claim": "cups_by_claim"},
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
    "face_coats": Pick("face", ("coats", "planned_coats"), needed=("planned_coats",)),
    "coats_to_pour": Pick("colour", ("most_face_coats", "planned_coats"), needed=("planned_coats",)),
    "greatest_cups": Pick("colour", ("cups_by_geometry", "cups_by_claim"), needed=("cups_by_geometry",)),
    "coat_mix": Pick("colour", ("colour_need", "total_mix_volume"), needed=("colour_need",)),
    "greatest_need": Pick("colour", ("geometry_need", "claim_need"), needed=("geometry_need",)),
}

LEAST_OF: dict[str, Pick] = {
    "allowed_recipe_drops": Pick("cup", ("recipe_drops", "tint_limit_drops"), needed=("recipe_drops",)),
    "cool_cup_limit": Pick(
        "colour", ("cup_capacity_limit", "pourable_volume", "cup_mass_limit"), needed=("cup_capacity_limit",)
    ),
    "cup_limit": Pick(
        "colour",
        ("cup_capacity_limit", "pourable_volume", "cup_mass_limit", "heat_volume"),
        needed=("cup_capacity_limit",),
    ),
    "piece_cup_limit": Pick(
        "face", ("pourable_volume", "piece_heat_volume", "cup_mass_limit"), needed=("pourable_volume",)
    ),
    "pour_by": Pick("cup", ("usable_time", "heat_pour_by")),
    "chemical_heat": Pick("job", ("heat_by_resin", "heat_by_hardener"), needed=("heat_by_resin",)),
}

FIRST_OF: dict[str, Pick] = {
    "planned_graduation": Pick("job", ("cup_graduation", "fine_graduation")),
    "cup_total": Pick("cup", ("reading_total", "cup_volume")),
    "measured_a": Pick("cup", ("reading_a", "part_a_volume")),
    "cup_density": Pick("job", ("mixed_density", "high_density")),
    "part_a_mass_share": Pick("job", ("part_a_share_by_mass", "part_a_share")),
    "ratio_tolerance": Pick("job", ("stated_ratio_tolerance", "assumed_ratio_tolerance")),
    "planned_mix_time": Pick("job", ("mix_time", "assumed_mix_time")),
    "worked_edge": Pick("face", ("edge_length", "assumed_edge")),
    "cure_self_start": Pick("job", ("self_start_by_set_time", "self_start")),
    "high_self_start": Pick("job", ("self_start_by_set_time", "assumed_high_self_start")),
    "reaction_heat": Pick("job", ("heat_by_peak", "chemical_heat")),
}
