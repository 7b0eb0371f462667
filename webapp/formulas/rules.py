"""Shared rules: small functions in the printable subset that the formulas of any file may call."""

import math

from webapp.units import ErgsPerMole, ErgsPerMoleKelvin, Kelvins


def whole_up(amount: float) -> int:
    """Return the next whole number at or above an amount, forgiving 1e-9, so that 6 mm by 2 mm is 3 coats.

    >>> whole_up(3.0000000001), whole_up(3.1)
    (3, 4)
    """
    return math.ceil(amount - 1e-9)


def whole_down(amount: float) -> int:
    """Return the whole number at or below an amount, forgiving 1e-9.

    >>> whole_down(2.9999999999), whole_down(2.9)
    (3, 2)
    """
    return math.floor(amount + 1e-9)


def speed_factor(
    temperature: Kelvins,
    reference_temperature: Kelvins,
    activation_energy: ErgsPerMole,
    gas_constant: ErgsPerMoleKelvin,
) -> float:
    """Return how many times faster the cure runs at a temperature than at its reference temperature.

    >>> round(1 / speed_factor(283.15, 298.15, 57e10, 8.314462618e7), 4)
    3.3807
    """
    return math.exp(activation_energy / gas_constant * (1 / reference_temperature - 1 / temperature))
