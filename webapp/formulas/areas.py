"""Areas: the shape of a face or of an opening in it."""

import math

from webapp.formulas.book import formula, valid_range
from webapp.units import Centimetres, Count, SquareCentimetres, Truth


@formula(level=("face", "opening"))
def rectangle_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
    """Area of a rectangle, from its width and height.

    Range: any size.
    Example: 30 cm by 40 cm is 1200 cm².

    >>> rectangle_area(30, 40)
    1200

    Source: geometry.
    """
    return width * height


@formula(level=("face", "opening"))
def circle_area(diameter: Centimetres) -> SquareCentimetres:
    """Area of a circle, from the width across its middle.

    Range: any size.
    Example: a circle 20 cm across is 314.16 cm².

    >>> round(circle_area(20), 2)
    314.16

    Source: geometry.
    """
    return math.pi * diameter**2 / 4


@formula(level=("face", "opening"))
def known_area(stated_area: SquareCentimetres) -> SquareCentimetres:
    """Area that a drawing or an earlier job already gives.

    Range: any size.
    Example: a drawing that says 1200 cm² is taken at its word.

    >>> known_area(1200)
    1200

    Source: the drawing that it was read from.
    """
    return stated_area


@formula(level=("face", "opening"))
def rounded_rectangle_area(
    width: Centimetres, height: Centimetres, corner_radius: Centimetres
) -> SquareCentimetres:
    """Area of a rectangle with rounded corners.

    Range: corners no rounder than half of the shorter side.
    Example: 30 cm by 40 cm with corners of 5 cm radius is 1178.54 cm².

    >>> round(rounded_rectangle_area(30, 40, 5), 2)
    1178.54

    Source: geometry.
    """
    return width * height - (4 - math.pi) * corner_radius**2


@valid_range(says="The corners are rounder than half of the shorter side. Check the corner radius.")
def rounded_rectangle_area_range(
    width: Centimetres, height: Centimetres, corner_radius: Centimetres
) -> Truth:
    """Corners no rounder than half of the shorter side."""
    return 2 * corner_radius <= min(width, height)


@formula(level=("face", "opening"))
def ring_area(outer_diameter: Centimetres, inner_diameter: Centimetres) -> SquareCentimetres:
    """Area of a ring, between the circle around it and the circle inside it.

    Range: the inner circle smaller than the outer.
    Example: a ring 20 cm across with a hole of 10 cm is 235.62 cm².

    >>> round(ring_area(20, 10), 2)
    235.62

    Source: geometry.
    """
    return math.pi * (outer_diameter**2 - inner_diameter**2) / 4


@valid_range(says="The ring's hole is as wide as the ring. Check the two diameters.")
def ring_area_range(outer_diameter: Centimetres, inner_diameter: Centimetres) -> Truth:
    """The inner circle smaller than the outer."""
    return inner_diameter < outer_diameter


@formula(level=("face", "opening"))
def ellipse_area(width: Centimetres, height: Centimetres) -> SquareCentimetres:
    """Area of an ellipse, from its full width and height.

    Range: any size.
    Example: 30 cm by 18 cm is 424.12 cm².

    >>> round(ellipse_area(30, 18), 2)
    424.12

    Source: geometry.
    """
    return math.pi * width * height / 4


@formula(level=("face", "opening"))
def triangle_area(base: Centimetres, height: Centimetres) -> SquareCentimetres:
    """Area of a triangle, from one side and the height over it.

    Range: any size.
    Example: a base of 40 cm and a height of 30 cm is 600 cm².

    >>> triangle_area(40, 30)
    600.0

    Source: geometry.
    """
    return base * height / 2


@formula(level=("face", "opening"))
def polygon_area(side_count: Count, circumscribed_diameter: Centimetres) -> SquareCentimetres:
    """Area of a regular polygon, from the circle through its corners.

    Range: at least three sides; an odd count is less wide than that circle.
    Example: a hexagon in a circle 10 cm across is 64.95 cm².

    >>> round(polygon_area(6, 10), 4)
    64.9519

    Source: geometry.
    """
    radius = circumscribed_diameter / 2
    return side_count / 2 * radius**2 * math.sin(2 * math.pi / side_count)


@valid_range(says="A polygon has at least three sides.")
def polygon_area_range(side_count: Count) -> Truth:
    """At least three sides."""
    return side_count >= 3


@formula(level=("face", "opening"))
def capsule_area(length: Centimetres, width: Centimetres) -> SquareCentimetres:
    """Area of a bar with round ends, from its full length and its width.

    Range: no shorter than it is wide.
    Example: 30 cm by 10 cm is 278.54 cm².

    >>> round(capsule_area(30, 10), 2)
    278.54

    Source: geometry.
    """
    return (length - width) * width + math.pi * width**2 / 4


@valid_range(says="The capsule is shorter than it is wide. Swap its length and width.")
def capsule_area_range(length: Centimetres, width: Centimetres) -> Truth:
    """No shorter than it is wide."""
    return length >= width


@formula(level=("face", "opening"))
def half_round_area(diameter: Centimetres) -> SquareCentimetres:
    """Area of half a circle, from its straight side.

    Range: any size.
    Example: a straight side of 20 cm is 157.08 cm².

    >>> round(half_round_area(20), 2)
    157.08

    Source: geometry.
    """
    return math.pi * diameter**2 / 8


@formula(level=("face", "opening"))
def arch_top_area(width: Centimetres, side_height: Centimetres, rise: Centimetres) -> SquareCentimetres:
    """Area of a rectangle with an arched top, from its width, its straight sides and the rise of the arch.

    Range: a rise of no more than half of the width.
    Example: 36 in wide with sides of 20 in and a rise of 6 in is 867.151 in², whatever the unit.

    >>> round(arch_top_area(36, 20, 6), 3)
    867.151

    Source: geometry: a circular segment on a rectangle.
    """
    radius = (width**2 / 4 + rise**2) / (2 * rise)
    half_angle = math.asin(min(1, width / (2 * radius)))
    segment = radius**2 * (half_angle - math.sin(half_angle) * math.cos(half_angle))
    return width * side_height + segment


@valid_range(says="The arch rises by more than half of the width. Check its rise.")
def arch_top_area_range(width: Centimetres, rise: Centimetres) -> Truth:
    """A rise of no more than half of the width."""
    return 2 * rise <= width * (1 + 1e-9)


@formula(level=("face", "opening"))
def trapezoid_area(
    top_width: Centimetres, bottom_width: Centimetres, height: Centimetres
) -> SquareCentimetres:
    """Area between two parallel sides, from their widths and the height between them.

    Range: any size.
    Example: 20 cm and 30 cm wide, 10 cm high, is 250 cm².

    >>> trapezoid_area(20, 30, 10)
    250.0

    Source: geometry.
    """
    return (top_width + bottom_width) / 2 * height


@formula(level=("face", "opening"))
def stroke_area(stroke_length: Centimetres, stroke_width: Centimetres) -> SquareCentimetres:
    """Area of a stroke, from the length of its middle line and its width.

    Range: bends much wider than the stroke.
    Example: a stroke of 120 cm, 1.5 cm wide, is 180 cm².

    >>> stroke_area(120, 1.5)
    180.0

    Source: geometry; exact for straight strokes and for bends about their middle line.
    """
    return stroke_length * stroke_width
