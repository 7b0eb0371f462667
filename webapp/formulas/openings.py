"""Openings: what they take out of a face, and what is left to flood and to tape."""

from webapp.formulas.book import check, formula, valid_range
from webapp.units import Centimetres, Count, SquareCentimetres, Truth


@formula(level="opening")
def opening_area(shape_area: SquareCentimetres, pieces: Count) -> SquareCentimetres:
    """Area that openings of one size take out of a face, all of them together.

    Range: any number of openings.
    Example: four holes of 12 cm² take 48 cm².

    >>> opening_area(12, 4)
    48

    Source: geometry.
    """
    return shape_area * pieces


@formula(level="face")
def face_area(shape_area: SquareCentimetres, total_opening_area: SquareCentimetres) -> SquareCentimetres:
    """Area to flood on one piece: the shape less its openings.

    Range: openings smaller than the shape.
    Example: a face of 1200 cm² with openings of 48 cm² leaves 1152 cm².

    >>> face_area(1200, 48)
    1152

    Source: geometry.
    """
    return shape_area - total_opening_area


@valid_range(says="The openings leave nothing of the face. Check their sizes and how many there are.")
def face_area_range(shape_area: SquareCentimetres, total_opening_area: SquareCentimetres) -> Truth:
    """Openings smaller than the shape."""
    return total_opening_area < shape_area


@check(
    level="face",
    severity="caution",
    says="The openings are as large as the face itself. Check their sizes and how many there are.",
    beside="total_opening_area",
)
def openings_too_large(shape_area: SquareCentimetres, total_opening_area: SquareCentimetres) -> Truth:
    """True where the openings take the whole face.

    >>> openings_too_large(100, 100), openings_too_large(100, 99)
    (True, False)
    """
    return total_opening_area >= shape_area


@formula(level="face")
def poured_area(face_area: SquareCentimetres, pieces: Count) -> SquareCentimetres:
    """Area to flood on all pieces of a face together.

    Range: any number of pieces.
    Example: three pieces of 1152 cm² are 3456 cm².

    >>> poured_area(1152, 3)
    3456

    Source: geometry.
    """
    return face_area * pieces


@formula(level="opening")
def opening_edge(shape_edge: Centimetres, pieces: Count) -> Centimetres:
    """Edge of openings of one size, all of them together.

    Range: any number of openings.
    Example: four holes with an edge of 12 cm have 48 cm.

    >>> opening_edge(12, 4)
    48

    Source: geometry.
    """
    return shape_edge * pieces


@formula(level="face")
def edge_length(shape_edge: Centimetres, total_opening_edge: Centimetres, pieces: Count) -> Centimetres:
    """Edge to tape or to ease on all pieces of a face: outside and openings.

    Range: any number of pieces.
    Example: two pieces with an edge of 140 cm and openings of 48 cm have 376 cm.

    >>> edge_length(140, 48, 2)
    376

    Source: geometry.
    """
    return (shape_edge + total_opening_edge) * pieces
