"""Spreading: how long a person takes to pour and spread a face, by its area and edge, at their own pace."""

from webapp.formulas.book import check, formula
from webapp.units import (
    Centimetres,
    CentimetresPerSecond,
    Count,
    CubicCentimetres,
    Ratio,
    Seconds,
    SquareCentimetres,
    SquareCentimetresPerSecond,
    Truth,
)


@formula(level="job")
def pace(
    square_foot_time: Seconds,
    foot: Centimetres,
    open_rate: SquareCentimetresPerSecond,
    edge_rate: CentimetresPerSecond,
) -> Ratio:
    """How many times slower this person spreads a square foot than the two rates say.

    Range: any.
    Example: by 600 cm²/min of area and 150 cm/min of edge it takes 2.36 min; 4.72 min is twice as slow.

    >>> round(pace(4.722 * 60, 30.48, 10, 2.5), 3)
    2.0

    Source: arithmetic; the two rates are our choice, the shop's record decides.
    """
    return square_foot_time / (foot**2 / open_rate + 4 * foot / edge_rate)


@formula(level="face")
def assumed_edge(poured_area: SquareCentimetres, pieces: Count) -> Centimetres:
    """Edge of a face whose own is not known: that of a square as large, on each piece.

    Range: any.
    Example: one piece of 900 cm² is taken to have 120 cm of edge.

    >>> assumed_edge(900, 1)
    120.0

    Source: geometry.
    """
    return 4 * (poured_area * pieces) ** 0.5


@formula(level="face")
def face_spreading_time(
    poured_area: SquareCentimetres,
    worked_edge: Centimetres,
    open_rate: SquareCentimetresPerSecond,
    edge_rate: CentimetresPerSecond,
    pace: Ratio,
    face_coats: Count,
    coat_number: Count,
) -> Seconds:
    """Time to pour and spread this coat on all pieces of a face: its area, and its edge, which wants a hand.

    Range: any; nothing for a face that has had all of its coats.
    Example: 60 by 30 cm at 600 cm²/min and 150 cm/min take 4.2 min.

    >>> face_spreading_time(1800, 180, 10, 2.5, 1, 1, 1) / 60
    4.2
    >>> face_spreading_time(1800, 180, 10, 2.5, 1, 1, 2)
    0.0

    Source: two terms serve faces and letters; the rates are assumed, not measured (our choice).
    """
    once = poured_area / open_rate + worked_edge / edge_rate
    return once * pace if face_coats >= coat_number else 0 * once


@formula(level="colour")
def spread_rate(
    total_poured_area: SquareCentimetres, total_face_spreading_time: Seconds
) -> SquareCentimetresPerSecond:
    """Area of this colour that is spread in a minute, all faces together.

    Range: any.
    Example: 2700 cm² in 6.5 min are 415.4 cm²/min.

    >>> round(spread_rate(2700, 6.5 * 60) * 60, 1)
    415.4

    Source: arithmetic.
    """
    return total_poured_area / total_face_spreading_time


@formula(level="cup")
def spreading_time(total_face_spreading_time: Seconds, cups: Count) -> Seconds:
    """Time to pour and spread one cup, its share of all faces of its colour.

    Range: any.
    Example: 12 min for all faces are 6 min for each of two cups.

    >>> spreading_time(720, 2)
    360.0

    Source: arithmetic.
    """
    return total_face_spreading_time / cups


@check(
    level="face",
    severity="note",
    says="This face takes more than twice as long to spread as its resin stays workable: the cups are "
    "planned for all faces of the color together. Pour this face from cups of its own.",
    beside="face_spreading_time",
)
def face_slow(
    face_coat_volume: CubicCentimetres,
    face_spreading_time: Seconds,
    total_face_coat_volume: CubicCentimetres,
    total_face_spreading_time: Seconds,
) -> Truth:
    """True where a face takes less than half of the mean volume in a minute.

    >>> face_slow(10, 60, 100, 100), face_slow(50, 60, 100, 100)
    (True, False)
    """
    mean = total_face_coat_volume / total_face_spreading_time
    return 2 * face_coat_volume < mean * face_spreading_time
