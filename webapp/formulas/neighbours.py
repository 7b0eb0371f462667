"""Neighbors: how many cups a piece of a face takes, and which of them meet on it."""

from webapp.formulas.book import formula
from webapp.formulas.rules import whole_up
from webapp.units import Count, CubicCentimetres, Share


@formula(level="face")
def cups_on_piece(
    face_coat_volume: CubicCentimetres,
    pieces: Count,
    contingency: Share,
    net_need: CubicCentimetres,
    cups: Count,
) -> Count:
    """How many cups one piece of a face takes in this coat.

    Range: any; until cups are dealt to faces, by volume alone.
    Example: a piece of 330 mL with 10% extra, from cups that give 150 mL each, takes 3 cups.

    >>> cups_on_piece(330, 1, 0.1, 450, 3), cups_on_piece(200, 2, 0.1, 450, 3)
    (3, 1)

    Source: arithmetic.
    """
    return max(1, whole_up(face_coat_volume * (1 + contingency) / pieces / (net_need / cups)))


@formula(level="face")
def closed_ring() -> Count:
    """A ring closes: its last cup meets its first.

    Example: one.

    >>> closed_ring()
    1

    Source: definition.
    """
    return 1


@formula(level="face")
def open_shape() -> Count:
    """A shape that is no ring does not close.

    Example: none.

    >>> open_shape()
    0

    Source: definition.
    """
    return 0


@formula(level="face")
def neighbour_gap(cups_on_piece: Count, ring_closes: Count) -> Count:
    """How many cups later the last one that meets an earlier one is poured: 1, or more where a ring closes.

    Range: any.
    Example: of four cups on a panel each meets the one before; on a ring the fourth meets the first.

    >>> neighbour_gap(4, 0), neighbour_gap(4, 1), neighbour_gap(1, 1)
    (1, 3, 1)

    Source: the order of the pour.
    """
    return max(1, ring_closes * (cups_on_piece - 1))
