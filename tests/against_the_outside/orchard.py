"""Orchard's levelling of a thin film, Appl. Sci. Res. A 11 (1963) 451, written down a second time."""

import math


def thin_film_levels_in(
    wavelength: float, depth: float, viscosity: float, density: float, tension: float, gravity: float
) -> float:
    """Time in s in which a ripple that is long against the depth sinks to 37% of its height."""
    wave_number = 2 * math.pi / wavelength
    pull = density * gravity + tension * wave_number**2
    return 3 * viscosity / (depth**3 * wave_number**2 * pull)
