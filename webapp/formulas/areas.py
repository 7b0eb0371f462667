"""Areas: the shape of a face or of an opening in it, and what is left to flood."""

import math

from webapp.formulas.book import check, formula, valid_range
from webapp.units import Centimetres, Count, SquareCentimetres, Truth


@formula(level=("face", "opening"))
def rectangle_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
    """Area of a rectangle, from its width and height.

    Range: any size.
    Example: 30 cm by 40 cm is 1200 cm2.

    >>> rectangle_area(30, 40)
    1200

    Source: geometry.
    """
    return width * height


@formula(level=("face", "opening"))
def circle_area(diameter: Centimetres) -> SquareCentimetres:
    """Area of a circle, from the width across its middle.

    Range: any size.
    Example: a circle 20 cm across is 314.16 cm2.

    >>> round(circle_area(20), 2)
    314.16

    Source: geometry.
    """
    return math.pi * diameter**2 / 4


@formula(level=("face", "opening"))
def known_area(stated_area: SquareCentimetres) -> SquareCentimetres:
    """Area that a drawing or an earlier job already gives.

    Range: any size.
    Example: a drawing that says 1200 cm2 is taken at its word.

    >>> known_area(1200)
    1200

    Source: the drawing that it was read from.
    """
    return stated_area


@formula(level="opening")
def opening_area(shape_area: SquareCentimetres, pieces: Count) -> SquareCentimetres:
    """Area that openings of one size take out of a face, all of them together.

    Range: any number of openings.
    Example: four holes of 12 cm2 take 48 cm2.

    >>> opening_area(12, 4)
    48

    Source: geometry.
    """
    return shape_area * pieces


@formula(level="face")
def face_area(shape_area: SquareCentimetres, total_opening_area: SquareCentimetres) -> SquareCentimetres:
    """Area to flood on one piece: the shape less its openings.

    Range: openings smaller than the shape.
    Example: a face of 1200 cm2 with openings of 48 cm2 leaves 1152 cm2.

    >>> face_area(1200, 48)
    1152

    Source: geometry.
    """
    return shape_area - total_opening_area


@valid_range(says="the openings leave nothing of the face")
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
    Example: three pieces of 1152 cm2 are 3456 cm2.

    >>> poured_area(1152, 3)
    3456

    Source: geometry.
    """
    return face_area * pieces
