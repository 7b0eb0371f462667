"""Shared rules: small functions in the printable subset that the formulas of any file may call."""

import math

from webapp.units import (
    Centimetres,
    CentimetresPerSecondSquared,
    CubicCentimetres,
    DynesPerCentimetre,
    ErgsPerMole,
    ErgsPerMoleKelvin,
    Grams,
    GramsPerCubicCentimetre,
    Kelvins,
    PerSecond,
    Poise,
    Radians,
    SquareCentimetres,
)


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


def half_marks(amount: CubicCentimetres, graduation: CubicCentimetres) -> CubicCentimetres:
    """Return an amount rounded up to whole and half marks.

    >>> half_marks(81.5, 10), half_marks(80, 10)
    (85.0, 80.0)
    """
    return whole_up(2 * amount / graduation) * graduation / 2


def half_marks_down(amount: CubicCentimetres, graduation: CubicCentimetres) -> CubicCentimetres:
    """Return an amount rounded down to whole and half marks.

    >>> half_marks_down(84.9, 10), half_marks_down(80, 10)
    (80.0, 80.0)
    """
    return whole_down(2 * amount / graduation) * graduation / 2


def wall_wetted(volume: CubicCentimetres) -> SquareCentimetres:
    """Return the wall and bottom that a volume wets in a cup as tall as it is wide.

    >>> round(wall_wetted(100), 2)
    99.39
    """
    return 5 * math.pi / 4 * (4 * volume / math.pi) ** (2 / 3)


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


def ripple_decay(
    wavelength: Centimetres,
    depth: Centimetres,
    viscosity: Poise,
    density: GramsPerCubicCentimetre,
    surface_tension: DynesPerCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> PerSecond:
    """Return the rate at which a ripple of a wavelength dies away in a film of any depth.

    >>> round(1 / ripple_decay(30, 0.15875, 10, 1.10, 35, 980.665), 1)
    158.6
    """
    wave_number = 2 * math.pi / wavelength
    drive = surface_tension * wave_number + density * gravity / wave_number
    return drive / (2 * viscosity) * flow_share(wave_number * depth)


def flow_share(x: float) -> float:
    """Return (sinh x cosh x - x)/(cosh² x + x²), the share of a deep pool's flow that a film lets pass.

    >>> round(flow_share(0.001) / (2 / 3 * 0.001**3), 6), round(flow_share(300.0), 12)
    (0.999998, 1.0)
    """
    square = 4 * x * x
    series = 1 + square / 72 * (1 + square / 110)
    near = 2 / 3 * x**3 * (1 + square / 20 * (1 + square / 42 * series))
    once = math.exp(-2 * x)
    twice = math.exp(-4 * x)
    passing = near * 4 * once if x < 0.25 else 1 - twice - 4 * x * once
    return passing / (1 + 2 * once + twice + 4 * x * x * once)


def filled_surface(mass: Grams, diameter: Centimetres, density: GramsPerCubicCentimetre) -> SquareCentimetres:
    """Return the top, side and bottom of the filled part of a cup, through which its heat leaves.

    >>> round(filled_surface(100, 7.5, 1.10), 3)
    136.842
    """
    return math.pi * diameter**2 / 2 + 4 * mass / (density * diameter)


def edge_pull(
    lean: Radians, wetting_angle: Radians, capillary_length: Centimetres, edge_radius: Centimetres
) -> Centimetres:
    """Return how much more depth each further radian of a rounded edge lets a film hold; below zero, less.

    >>> edge_pull(0.0, 0.0, 0.2, 0.1)
    0.2
    """
    return capillary_length * math.cos((wetting_angle + lean) / 2) - edge_radius * math.sin(lean)


def edge_climb(
    lean: Radians,
    step: float,
    wetting_angle: Radians,
    capillary_length: Centimetres,
    edge_radius: Centimetres,
) -> Radians:
    """Return the lean on a rounded edge one step further, or where it was if that step is too far.

    >>> edge_climb(0.0, 0.5, 0.0, 0.2, 0.0), edge_climb(0.0, 0.5, 0.0, 0.2, 10.0)
    (0.5, 0.0)
    """
    return lean + step if edge_pull(lean + step, wetting_angle, capillary_length, edge_radius) > 0 else lean


def edge_settle(
    lean: Radians, wetting_angle: Radians, capillary_length: Centimetres, edge_radius: Centimetres
) -> Radians:
    """Return a lean on a rounded edge nearer to where the film holds deepest, by one step of Newton's.

    >>> edge_settle(1.5, 0.0, 0.2, 0.0) == math.pi / 2
    True
    """
    pull = edge_pull(lean, wetting_angle, capillary_length, edge_radius)
    change = capillary_length / 2 * math.sin((wetting_angle + lean) / 2) + edge_radius * math.cos(lean)
    return min(max(lean + pull / change, 0), math.pi / 2)


def falling_share(width: float) -> float:
    """Return the share of a hanging drop that falls, by the tip's radius over the cube root of the drop.

    A cubic fit to Harkins and Brown's table from 0.3 to 1.0, where it ends.

    >>> round(falling_share(0.4), 2), round(falling_share(0.8), 2)
    (0.68, 0.6)
    """
    x = min(width, 1)
    return 1 / (2 * math.pi * (0.17622 + 0.14279 * x + 0.03444 * x**2 - 0.09241 * x**3))


def cube_root(amount: float) -> float:
    """Return the cube root of a number above zero.

    >>> round(cube_root(8), 12)
    2.0
    """
    return math.exp(math.log(amount) / 3)


def falling_drop(
    tip_radius: Centimetres,
    surface_tension: DynesPerCentimetre,
    density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> CubicCentimetres:
    """Return the volume of the drop that falls from a tip, by Tate's law and the share that falls.

    Five substitutions settle it to a ten thousandth.

    >>> round(falling_drop(0.15, 72.8, 0.9982, 980.665), 4)
    0.0475
    """
    hanging = 2 * math.pi * tip_radius * surface_tension / (density * gravity)
    first = hanging * falling_share(cube_root(tip_radius**3 / hanging))
    second = hanging * falling_share(cube_root(tip_radius**3 / first))
    third = hanging * falling_share(cube_root(tip_radius**3 / second))
    fourth = hanging * falling_share(cube_root(tip_radius**3 / third))
    return hanging * falling_share(cube_root(tip_radius**3 / fourth))
