"""Lettering: area, edge and stroke of letters from their cap height."""

from webapp.formulas.book import formula
from webapp.units import Centimetres, Ratio, Share, SquareCentimetres


@formula(level=("face", "opening"))
def lettering_area(glyph_area_sum: Ratio, cap_height: Centimetres) -> SquareCentimetres:
    """Area of a line of letters, which grows with the square of their cap height.

    Range: one style and one cap height.

    Example: glyphs that sum to 2.5 squares of the cap height, at 10 cm, are 250 cm2.

    >>> lettering_area(2.5, 10.0)
    250.0

    Source: geometry: similar figures; glyph figures for each square of the cap height.
    """
    return glyph_area_sum * cap_height**2


@formula(level=("face", "opening"))
def lettering_edge(glyph_edge_sum: Ratio, cap_height: Centimetres) -> Centimetres:
    """Length of all edges of a line of letters, which grows with their cap height.

    Range: one style and one cap height.

    Example: glyphs with edges of 30 cap heights, at 10 cm, have 300 cm of edge.

    >>> lettering_edge(30.0, 10.0)
    300.0

    Source: geometry: similar figures; glyph figures for each cap height.
    """
    return glyph_edge_sum * cap_height


@formula(level=("face", "opening"))
def plain_stroke_width(cap_height: Centimetres, plain_stroke_share: Share) -> Centimetres:
    """Stroke of a plain letter, by the trade's eye.

    Range: plain block letters; scripts and thick-and-thin letters differ.

    Example: a letter 10 cm high has a stroke of 2 cm.

    >>> plain_stroke_width(10.0, 0.2)
    2.0

    Source: common practice, no source: about a fifth of the height.
    """
    return cap_height * plain_stroke_share
