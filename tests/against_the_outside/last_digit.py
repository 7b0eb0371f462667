"""Compares a figure with one printed elsewhere, to no more than half a unit of the last digit printed."""

from decimal import Decimal


def agrees(figure: float, printed: str) -> bool:
    """Say whether a figure, rounded as the source rounds, is what the source prints."""
    last = Decimal(printed).as_tuple().exponent
    return abs(figure - float(printed)) <= 0.5 * 10.0 ** int(last) * (1 + 1e-9)
