"""What every name is called on the screen, one label for fields, figures and sentences alike.

An input and a constant bring their own label in their own row. All else is called by its name in words,
or by the label in the one table here where its name does not read well.
"""

import re
from functools import cache

from webapp.formulas.constants import CONSTANTS
from webapp.inputs.table import INPUTS

# Code is spelled as the British do, what a person reads as Americans do.
AMERICAN = {"colour": "color", "colours": "colors", "labour": "labor", "levelling": "leveling"}
WORDS = {
    **AMERICAN,
    "a": "A",
    "b": "B",
    "opening": "cut-out",
    "openings": "cut-outs",
}
GATHERED = re.compile(r"^(total|most|least)_(.+)")

LABELS: dict[str, str] = {
    "measured_a": "Part A as measured",
    "cup_total": "Mix in one cup",
    "planned_graduation": "Mark spacing planned with",
    "activation_temperature": "Activation energy over the gas constant",
    "adiabatic_rise": "Rise of a cup that loses no heat",
    "air_loss_growth": "Growth of the heat loss, each kelvin",
    "allowed_recipe_drops": "Recipe drops within the limit",
    "arch_top_area": "Arched top area",
    "arch_top_edge": "Arched top edge",
    "arch_top_span": "Arched top's longest way across",
    "assumed_edge": "Edge, taken as a square's",
    "bench_angle": "Bench slope in degrees",
    "card_cup_cooling": "Cooling of the card's cup",
    "card_cup_gel_time": "Setting time of the card's cup here",
    "card_cup_surface": "Surface of the card's cup",
    "changeover": "Time to mix, tint and change cups",
    "chemical_heat": "Heat of the cure, by chemistry",
    "chemical_rise": "Rise of a cup that loses no heat, by chemistry",
    "claim_film_share": "Share in the film, by the maker's claim",
    "claim_need": "Mix by the maker's claim",
    "claim_short": "Maker's claim and your sizes",
    "closed_ring": "Ring that closes",
    "coat_mix": "Mix for all cups of one coat",
    "coats": "Coats for this depth",
    "colour_cost": "Cost of the color",
    "colour_mix": "Mix for the color",
    "colour_need": "Mix needed for one coat",
    "cool_cup_limit": "Limit without its own heat",
    "critical_hole_diameter": "Hole that just opens in the film",
    "cup_capacity_limit": "Limit by cup size",
    "cup_cooling": "Cooling of the cup",
    "cup_density": "Density taken for the cup",
    "cup_mass": "Mass in the cup",
    "cup_mass_limit": "Limit by largest batch",
    "cup_residue": "Left behind in each cup",
    "cup_spreading_time": "Time to spread one cup on this face",
    "cups_by_claim": "Cups by the maker's claim",
    "cups_by_geometry": "Cups by your sizes",
    "cups_on_piece": "Cups on one piece",
    "cure_self_start": "Self-start of this mix",
    "cure_time": "Cure time in this room",
    "cure_time_at_night": "Cure time in the night",
    "cured_due_at_night": "Time of full cure in the night",
    "cured_due": "Time of full cure",
    "curing_temperature": "Curing temperature of the film",
    "deepest_depth": "Depth at the deepest place",
    "depth_from_volume": "Depth from the mix on hand",
    "dew_margin_small": "Small dew margin",
    "drop_error": "Error of whole drops",
    "dropper_drop_volume": "Dropper's drop volume",
    "earliest_gel_time": "Earliest setting time of the cup",
    "edge_hold_depth": "Deepest film on the edge",
    "edge_length": "Edge of all pieces",
    "face_coat_volume": "Film of the face in this coat",
    "face_coats": "Coats of the face",
    "face_cost": "Cost of the face",
    "face_shortfall": "Missing on the faces",
    "face_spreading_time": "Time to spread the face",
    "face_volume": "Film of the face",
    "film_gel_time": "Setting time of a thin film",
    "film_volume": "Film of one piece",
    "first_mist_due": "Time of the first mist",
    "full_cup": "Fullest cup on marks",
    "full_cup_residue": "Left behind in the fullest cup",
    "full_reading_a": "Part A of the fullest cup",
    "full_reading_b": "Part B of the fullest cup",
    "gel_time": "Setting time of this cup",
    "geometry_need": "Mix by your sizes",
    "gravity_ripple_length": "Ripples longer than this level by weight",
    "greatest_cups": "Greater count of cups",
    "greatest_need": "Greater of the two mixes",
    "greatest_rise": "Rise of a cup, at most",
    "groove_depth": "Depth of the grooves",
    "hardener_mass_share": "Share of hardener by mass",
    "hardener_phr": "Hardener per 100 parts of resin",
    "heap_time": "Leveling time of a heap",
    "heat_by_hardener": "Heat of the cure, by the hardener",
    "heat_by_peak": "Heat of the cure, by the card's peak",
    "heat_by_resin": "Heat of the cure, by the resin",
    "heat_capacity_growth": "Growth of the heat capacity, each kelvin",
    "heat_capacity_limit": "Limit of the heat capacity",
    "heat_class": "Class of heat, left standing",
    "heat_pour_by": "Pour-by of the cup's own heat",
    "heat_volume": "Limit by the cup's own heat",
    "high_rate_constant": "Cure rate at the other self-start",
    "high_self_start": "Self-start of this mix, at most",
    "humidity_high": "High humidity",
    "join_age": "Age of the film where the next cup meets it",
    "join_age_of_two": "Age of that film with two people",
    "latest_gel_time": "Latest setting time of the cup",
    "least_rise": "Rise of a cup, at least",
    "left_over": "Mix left after the job",
    "mass_ratio": "Ratio by mass",
    "mass_ratio_as_stated": "Ratio by mass, as stated",
    "mass_ratio_from_volume": "Ratio by mass, from volumes",
    "misread_a": "Misreading of part A",
    "misread_b": "Misreading of part B",
    "mix_volume": "Mix for one coat",
    "mixed_density": "Density of the mix",
    "neighbour_gap": "Cups until a neighbor meets",
    "net_need": "Film for one coat, with the extra",
    "night_temperature": "Coldest curing temperature tonight",
    "open_shape": "Shape that does not close",
    "open_time": "Time left to level",
    "other_peak_temperature": "Peak at the other self-start",
    "pace": "Pace of spreading",
    "part_a_mass_share": "Share of part A by mass",
    "part_a_share_by_mass": "Share of part A, by the ratio by mass",
    "part_b_mass_share": "Share of part B by mass",
    "peak_cup_cooling": "Cooling of the peak exotherm's cup",
    "peak_temperature": "Peak of this cup left standing",
    "piece_cup_volume": "Cup that covers a piece alone",
    "planned_mix_time": "Mixing time planned",
    "pour_by": "Pour-by time",
    "pour_by_temperature": "Warmth of the cup at its pour-by time",
    "pour_end": "End of the pour",
    "pour_time": "Time to pour",
    "pourable_volume": "Limit by time to pour",
    "poured_area": "Area of all pieces",
    "rate_constant": "Cure rate of this mix",
    "ratio_coarse": "Coarse ratio",
    "ratio_deviation": "Ratio error of the marks",
    "ratio_tolerance": "Tolerance of the ratio",
    "reachable_gap": "Cups that one person reaches wet",
    "reachable_gap_of_two": "Cups that two people reach wet",
    "reaction_heat": "Heat of the cure of this mix",
    "reading_a_mass": "Reading A on a scale",
    "reading_b_mass": "Reading B on a scale",
    "reading_total": "Total reading",
    "recoat_closes": "Latest recoat in this room",
    "recoat_closes_due": "Time of the latest recoat",
    "recoat_opens": "Earliest recoat in this room",
    "recoat_opens_at_night": "Earliest recoat in the night",
    "recoat_opens_due_at_night": "Time of the earliest recoat in the night",
    "recoat_opens_due": "Time of the earliest recoat",
    "resin_mass_share": "Share of resin by mass",
    "ring_closes": "Whether the shape closes in a ring",
    "rounding_tolerance": "Ratio error left for rounding",
    "rounding_waste": "Waste by rounding to marks",
    "safe_edge_depth": "Safe depth at the edge",
    "second_mist_due": "Time of the second mist",
    "self_start_by_set_time": "Self-start by the film that sets",
    "smallest_honest_cup": "Smallest cup that reads well",
    "smallest_honest_part_b": "Smallest part B that reads well",
    "smallest_tint_cup": "Smallest cup for the recipe",
    "span": "Longest way across",
    "spread_area": "Area that the mix covers",
    "spread_rate": "Area spread in a minute",
    "spreading_rate": "Coverage at this depth",
    "spreading_time": "Time to spread one cup",
    "surface_humidity": "Humidity at the surface",
    "tack_free_due": "Tack-free moment",
    "tack_free_due_at_night": "Tack-free moment in the night",
    "tack_free_time": "Tack-free time in this room",
    "tack_free_time_at_night": "Tack-free time in the night",
    "tilt_difference": "Depth difference from the bench's slope",
    "tint_limit_drops": "Tint limit in drops",
    "tint_limit_volume": "Tint limit by volume",
    "tint_load": "Tint load with these drops",
    "top_coat_due": "Time of the top coat",
    "top_coat_due_at_night": "Time of the top coat in the night",
    "top_coat_wait": "Wait to top coat in this room",
    "top_coat_wait_at_night": "Wait to top coat in the night",
    "total_colour_cost": "Cost of all colors",
    "total_colour_mix": "Mix for all colors",
    "total_face_coat_volume": "Film of all faces in this coat",
    "total_face_spreading_time": "Time to spread all faces",
    "total_face_volume": "Film of all faces",
    "total_mix_volume": "Mix for one coat, cups filled to their marks",
    "trapezoid_span": "Trapezoid's longest way across",
    "triangle_span": "Triangle's longest way across",
    "unaided_depth": "Depth that closes by itself",
    "usable_time": "Time good for pouring",
    "v_groove_depth": "V-groove depth",
    "v_groove_section": "V-groove section",
    "volume_ratio": "Ratio by volume",
    "volume_ratio_as_stated": "Ratio by volume, as stated",
    "volume_ratio_from_mass": "Ratio by volume, from masses",
    "wet_edge_pot_life": "Pot life that keeps the edge wet",
    "wet_edge_temperature": "Temperature that keeps the edge wet",
    "wet_edge_time": "Time that an edge stays wet",
    "wide_bead_section": "Bead section, level in the middle",
    "worked_edge": "Edge to work",
    "working_temperature": "Temperature of air and resin together",
    "working_time_on_face": "Working time on the face",
    "worst_ratio_deviation": "Worst ratio error",
}

# How fine a figure is shown: a "mark" is measured out, so as it was computed; a "guess" in two figures.
GRAINS: dict[str, str] = {
    **dict.fromkeys(
        (
            "cup_capacity",
            "cup_graduation",
            "scale_division",
            "reading_a",
            "reading_b",
            "reading_total",
            "reading_a_mass",
            "reading_b_mass",
            "mix_volume",
            "total_mix_volume",
        ),
        "mark",
    ),
    **dict.fromkeys(
        (
            "working_time",
            "working_time_on_face",
            "usable_time",
            "heat_pour_by",
            "pour_by",
            "pour_time",
            "gel_time",
            "earliest_gel_time",
            "latest_gel_time",
            "film_gel_time",
            "wet_edge_time",
            "join_age",
            "join_age_of_two",
            "spreading_time",
            "face_spreading_time",
            "cup_spreading_time",
            "total_face_spreading_time",
            "levelling_time",
            "heap_time",
            "bubble_rise_time",
            "coated_bubble_rise_time",
            "open_time",
        ),
        "guess",
    ),
}


@cache
def own_labels() -> dict[str, str]:
    """Return the label of every name that has one of its own: inputs, constants, and the table here."""
    return {
        **{name: each.label for name, each in INPUTS.items()},
        **{each.name: each.label for each in CONSTANTS},
        **LABELS,
    }


@cache
def called(name: str) -> str:
    """Return what a name is called on the screen.

    >>> called("cup_diameter"), called("dew_point"), called("most_coats"), called("reading_a")
    ('Cup width', 'Dew point', 'Most coats for this depth', 'Reading A')
    """
    found = GATHERED.match(name)
    if name in own_labels():
        return own_labels()[name]
    if found and found[2] in own_labels():
        return f"{found[1].capitalize()} {in_sentence(found[2])}"
    return from_name(name)


def in_sentence(name: str) -> str:
    """Return what a name is called inside a sentence.

    >>> in_sentence("cup_diameter"), in_sentence("groove_angle"), in_sentence("part_a_share")
    ('cup width', 'V-bit angle', 'part A share')
    """
    return uncapitalized(called(name))


def uncapitalized(words: str) -> str:
    """Return words as they stand inside a sentence: a part's letter and an abbreviation keep their capitals.

    >>> uncapitalized("Cup width"), uncapitalized("A in the cup"), uncapitalized("V-bit angle")
    ('cup width', 'A in the cup', 'V-bit angle')
    """
    return words[:1].lower() + words[1:] if words[1:2].islower() else words


def from_name(name: str) -> str:
    """Return a name in words; the phone does the same for each name without a label of its own.

    >>> from_name("levelling_time"), from_name("part_a_share")
    ('Leveling time', 'Part A share')
    """
    words = " ".join(WORDS.get(word, word) for word in name.split("_"))
    return words[:1].upper() + words[1:]
