"""What every name is called on the screen, one label for fields, figures and sentences alike.

An input and a constant bring their own label in their own row. All else is called by its name in words,
or by its label in `label_table` where its name does not read well.
"""

import re
from functools import cache

from webapp.formulas.constants import CONSTANTS
from webapp.inputs.table import INPUTS
from webapp.sheet.label_table import LABELS

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

# How fine a figure is shown: a "mark" is measured out, so as it was computed; "either" may be one or not; a
# "guess" is known to two figures.
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
            "planned_graduation",
        ),
        "mark",
    ),
    **dict.fromkeys(
        (
            "cup_total",
            "measured_a",
            "full_cup",
            "misread_a",
            "misread_b",
            "smallest_honest_part_b",
            "smallest_honest_cup",
        ),
        "either",
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
