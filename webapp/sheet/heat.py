"""What is said of a cup beside its amounts: what its heat does, and which limits nobody could check."""

from webapp.sheet.reasons import because
from webapp.sheet.runner import Row
from webapp.showing import show, unit_shown

LEFT_STANDING = ("stays cool", "gets warm", "runs hot", "can smoke", "will smoke")
"""By the class of heat: what a cup does that is left standing; "can" where one end of the unknown says so."""

LIMITS = {"pourable_volume": "time", "heat_volume": "heat", "cup_mass_limit": "batch size"}
"""The limits of a cup that are passed over where something is blank, and what they look after."""


def heat_says(cup: Row, units: dict[str, str]) -> str:
    """Return the sentence of a cup row's heat, or "" where nothing is known of it."""
    warm, kind = cup.cells["pour_by_temperature"], cup.cells["heat_class"]
    if kind.blank:
        return ""
    left = f"left standing it {LEFT_STANDING[int(kind.value)]}."
    if warm.blank:
        return left[:1].upper() + left[1:]
    return f"At pour-by about {show(warm.value, 'temperature', unit_shown('temperature', units))}; {left}"


def not_checked(colour: Row) -> list[str]:
    """Return a sentence for each limit of a cup that was passed over: what is missing for it."""
    found: dict[str, list[str]] = {}
    for name, word in LIMITS.items():
        cell = next(row.cells[name] for row in (colour, colour.above(1)) if name in row.cells)
        if cell.blank:
            found.setdefault(because(cell.blank), []).append(word)
    return [f"{_capital(' and '.join(words))} not checked: {_small(why)}" for why, words in found.items()]


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _small(words: str) -> str:
    return words[:1].lower() + words[1:]
