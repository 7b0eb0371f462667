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
    "allowed_recipe_drops": "Recipe drops within the limit",
    "arch_top_area": "Arched top area",
    "arch_top_edge": "Arched top edge",
    "arch_top_span": "Arched top's longest way across",
    "bench_angle": "Bench slope in degrees",
    "card_cup_surface": "Surface of the card's cup",
    "claim_film_share": "Share in the film, by the maker's claim",
    "claim_need": "Mix by the maker's claim",
    "claim_short": "Maker's claim and your sizes",
    "coat_mix": "Mix for all cups of one coat",
    "coats": "Coats for this depth",
    "colour_cost": "Cost of the color",
    "colour_mix": "Mix for the color",
    "colour_need": "Mix needed for one coat",
    "cup_capacity_limit": "Limit by cup size",
    "cup_mass_limit": "Limit by largest batch",
    "cups_by_claim": "Cups by the maker's claim",
    "cups_by_geometry": "Cups by your sizes",
    "curing_temperature": "Curing temperature of the film",
    "cure_time": "Cure time in this room",
    "cured_due": "Time of full cure",
    "depth_from_volume": "Depth from the mix on hand",
    "dew_margin_small": "Small dew margin",
    "dropper_drop_volume": "Dropper's drop volume",
    "drop_error": "Error of whole drops",
    "edge_hold_depth": "Deepest film on the edge",
    "edge_length": "Edge of all pieces",
    "face_cost": "Cost of the face",
    "face_volume": "Film of the face",
    "film_volume": "Film of one piece",
    "first_mist_due": "Time of the first mist",
    "geometry_need": "Mix by your sizes",
    "greatest_need": "Greater of the two mixes",
    "gravity_ripple_length": "Ripples longer than this level by weight",
    "hardener_phr": "Hardener per 100 parts of resin",
    "heap_time": "Leveling time of a heap",
    "humidity_high": "High humidity",
    "left_over": "Mix left after the job",
    "mass_ratio": "Ratio by mass",
    "mass_ratio_as_stated": "Ratio by mass, as stated",
    "mass_ratio_from_volume": "Ratio by mass, from volumes",
    "mix_volume": "Mix for one coat",
    "mixed_density": "Density of the mix",
    "net_need": "Film for one coat, with the extra",
    "open_time": "Time left to level",
    "pour_end": "End of the pour",
    "pour_time": "Time to pour",
    "poured_area": "Area of all pieces",
    "pourable_volume": "Limit by time to pour",
    "ratio_coarse": "Coarse ratio",
    "reading_a_mass": "Reading A on a scale",
    "reading_b_mass": "Reading B on a scale",
    "reading_total": "Total reading",
    "recoat_closes": "Latest recoat in this room",
    "recoat_closes_due": "Time of the latest recoat",
    "recoat_opens": "Earliest recoat in this room",
    "recoat_opens_due": "Time of the earliest recoat",
    "safe_edge_depth": "Safe depth at the edge",
    "second_mist_due": "Time of the second mist",
    "smallest_honest_part": "Smallest part that reads well",
    "smallest_tint_cup": "Smallest cup for the recipe",
    "span": "Longest way across",
    "spread_area": "Area that the mix covers",
    "spreading_rate": "Coverage at this depth",
    "spreading_time": "Time to spread one cup",
    "surface_humidity": "Humidity at the surface",
    "tack_free_due": "Tack-free moment",
    "tack_free_time": "Tack-free time in this room",
    "tilt_difference": "Depth difference from the bench's slope",
    "tint_load": "Tint load with these drops",
    "tint_limit_drops": "Tint limit in drops",
    "tint_limit_volume": "Tint limit by volume",
    "top_coat_due": "Time of the top coat",
    "top_coat_wait": "Wait to top coat in this room",
    "total_colour_cost": "Cost of all colors",
    "total_colour_mix": "Mix for all colors",
    "total_face_volume": "Film of all faces",
    "total_mix_volume": "Mix for one coat, cups filled to their marks",
    "trapezoid_span": "Trapezoid's longest way across",
    "triangle_span": "Triangle's longest way across",
    "v_groove_depth": "V-groove depth",
    "v_groove_section": "V-groove section",
    "volume_ratio": "Ratio by volume",
    "volume_ratio_as_stated": "Ratio by volume, as stated",
    "volume_ratio_from_mass": "Ratio by volume, from masses",
    "wide_bead_section": "Bead section, level in the middle",
    "worst_ratio_deviation": "Worst ratio error",
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
