"""Edges: the length around a shape, for tape, for easing, and for what the edge must hold."""

import math

from webapp.formulas.book import formula, valid_range
from webapp.units import Centimetres, Count, Truth


@formula(level=("face", "opening"))
def rectangle_edge(width: Centimetres, height: Centimetres) -> Centimetres:
    """Edge of a rectangle.

    Range: any size.
    Example: 30 cm by 40 cm has an edge of 140 cm.

    >>> rectangle_edge(30, 40)
    140

    Source: geometry.
    """
    return 2 * (width + height)


@formula(level=("face", "opening"))
def circle_edge(diameter: Centimetres) -> Centimetres:
    """Edge of a circle.

    Range: any size.
    Example: a circle 20 cm across has an edge of 62.83 cm.

    >>> round(circle_edge(20), 2)
    62.83

    Source: geometry.
    """
    return math.pi * diameter


@formula(level=("face", "opening"))
def known_edge(stated_edge: Centimetres) -> Centimetres:
    """Edge that a drawing or an earlier job already gives.

    Range: any size.
    Example: a drawing that says 140 cm is taken at its word.

    >>> known_edge(140)
    140

    Source: the drawing that it was read from.
    """
    return stated_edge


@formula(level=("face", "opening"))
def rounded_rectangle_edge(
    width: Centimetres, height: Centimetres, corner_radius: Centimetres
) -> Centimetres:
    """Edge of a rectangle with rounded corners.

    Range: corners no rounder than half of the shorter side.
    Example: 30 cm by 40 cm with corners of 5 cm radius has an edge of 131.42 cm.

    >>> round(rounded_rectangle_edge(30, 40, 5), 2)
    131.42

    Source: geometry.
    """
    return 2 * (width + height) - (8 - 2 * math.pi) * corner_radius


@valid_range(says="The corners are rounder than half of the shorter side. Check the corner radius.")
def rounded_rectangle_edge_range(
    width: Centimetres, height: Centimetres, corner_radius: Centimetres
) -> Truth:
    """Corners no rounder than half of the shorter side."""
    return 2 * corner_radius <= min(width, height)


@formula(level=("face", "opening"))
def ring_edge(outer_diameter: Centimetres, inner_diameter: Centimetres) -> Centimetres:
    """Edge of a ring, the outer and the inner circle together.

    Range: the inner circle smaller than the outer.
    Example: a ring 20 cm across with a hole of 10 cm has an edge of 94.25 cm.

    >>> round(ring_edge(20, 10), 2)
    94.25

    Source: geometry.
    """
    return math.pi * (outer_diameter + inner_diameter)


@valid_range(says="The ring's hole is as wide as the ring. Check the two diameters.")
def ring_edge_range(outer_diameter: Centimetres, inner_diameter: Centimetres) -> Truth:
    """The inner circle smaller than the outer."""
    return inner_diameter < outer_diameter


@formula(level=("face", "opening"))
def ellipse_edge(width: Centimetres, height: Centimetres) -> Centimetres:
    """Edge of an ellipse, from its full width and height.

    Range: any; within 1e-4 of the true edge up to 20 times as long as wide, 4e-4 for the thinnest.
    Example: 30 cm by 18 cm has an edge of 76.581 cm.

    >>> round(ellipse_edge(30, 18), 3)
    76.581

    Source: Ramanujan's second approximation (1914).
    """
    flatness = ((width - height) / (width + height)) ** 2
    return math.pi * (width + height) / 2 * (1 + 3 * flatness / (10 + (4 - 3 * flatness) ** 0.5))


@formula(level=("face", "opening"))
def triangle_edge(base: Centimetres, height: Centimetres) -> Centimetres:
    """Edge of a triangle whose top stands over the middle of its base.

    Range: the two slanted sides alike; any other triangle has a longer edge.
    Example: a base of 30 cm and a height of 20 cm has sides of 25 cm and an edge of 80 cm.

    >>> triangle_edge(30, 20)
    80.0

    Source: geometry.
    """
    return base + 2 * (base**2 / 4 + height**2) ** 0.5


@formula(level=("face", "opening"))
def polygon_edge(side_count: Count, circumscribed_diameter: Centimetres) -> Centimetres:
    """Edge of a regular polygon, from the circle through its corners.

    Range: at least three sides.
    Example: a hexagon in a circle 10 cm across has an edge of 30 cm.

    >>> round(polygon_edge(6, 10), 9)
    30.0

    Source: geometry.
    """
    return side_count * circumscribed_diameter * math.sin(math.pi / side_count)


@valid_range(says="A polygon has at least three sides.")
def polygon_edge_range(side_count: Count) -> Truth:
    """At least three sides."""
    return side_count >= 3


@formula(level=("face", "opening"))
def capsule_edge(length: Centimetres, width: Centimetres) -> Centimetres:
    """Edge of a bar with round ends, from its full length and its width.

    Range: no shorter than it is wide.
    Example: 30 cm by 10 cm has an edge of 71.42 cm.

    >>> round(capsule_edge(30, 10), 2)
    71.42

    Source: geometry.
    """
    return 2 * (length - width) + math.pi * width


@valid_range(says="The capsule is shorter than it is wide. Swap its length and width.")
def capsule_edge_range(length: Centimetres, width: Centimetres) -> Truth:
    """No shorter than it is wide."""
    return length >= width


@formula(level=("face", "opening"))
def half_round_edge(diameter: Centimetres) -> Centimetres:
    """Edge of half a circle, its straight side and its arc.

    Range: any size.
    Example: a straight side of 20 cm has an edge of 51.42 cm.

    >>> round(half_round_edge(20), 2)
    51.42

    Source: geometry.
    """
    return diameter + math.pi * diameter / 2


@formula(level=("face", "opening"))
def arch_top_edge(width: Centimetres, side_height: Centimetres, rise: Centimetres) -> Centimetres:
    """Edge of a rectangle with an arched top: the bottom, both sides and the arc.

    Range: a rise of no more than half of the width.
    Example: 36 in wide with sides of 20 in and a rise of 6 in has an edge of 114.61 in, whatever the unit.

    >>> round(arch_top_edge(36, 20, 6), 3)
    114.61

    Source: geometry.
    """
    radius = (width**2 / 4 + rise**2) / (2 * rise)
    half_angle = math.asin(min(1, width / (2 * radius)))
    return width + 2 * side_height + 2 * radius * half_angle


@valid_range(says="The arch rises by more than half of the width. Check its rise.")
def arch_top_edge_range(width: Centimetres, rise: Centimetres) -> Truth:
    """A rise of no more than half of the width."""
    return 2 * rise <= width * (1 + 1e-9)


@formula(level=("face", "opening"))
def trapezoid_edge(top_width: Centimetres, bottom_width: Centimetres, height: Centimetres) -> Centimetres:
    """Edge of a trapezoid whose two slanted sides are alike.

    Range: the slanted sides alike; any other trapezoid of these sizes has a longer edge.
    Example: 20 cm and 26 cm wide, 4 cm high, has slanted sides of 5 cm and an edge of 56 cm.

    >>> trapezoid_edge(20, 26, 4)
    56.0

    Source: geometry.
    """
    slanted = (((bottom_width - top_width) / 2) ** 2 + height**2) ** 0.5
    return top_width + bottom_width + 2 * slanted


@formula(level=("face", "opening"))
def stroke_edge(stroke_length: Centimetres, stroke_width: Centimetres) -> Centimetres:
    """Edge of a stroke, both sides and both ends.

    Range: bends much wider than the stroke.
    Example: a stroke of 120 cm, 1.5 cm wide, has an edge of 243 cm.

    >>> stroke_edge(120, 1.5)
    243.0

    Source: geometry.
    """
    return 2 * (stroke_length + stroke_width)
