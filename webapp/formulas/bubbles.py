"""Bubbles: how fast they rise, and which stay in the film without the mist and the wait."""

from webapp.formulas.book import formula
from webapp.units import (
    Centimetres,
    CentimetresPerSecond,
    CentimetresPerSecondSquared,
    GramsPerCubicCentimetre,
    Poise,
    Seconds,
)


@formula(level="job")
def bubble_rise_speed(
    bubble_diameter: Centimetres,
    mixed_density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
    film_viscosity: Poise,
) -> CentimetresPerSecond:
    """How fast a bubble with a clean skin rises: the fastest that it can.

    Range: bubbles under some 5 mm in a mix thicker than 1 P.

    Example: 0.5 mm across in 1 Pa s and 1.12 g/cm3, 0.2288 mm/s.

    >>> round(bubble_rise_speed(0.05, 1.12, 980.665, 10.0), 5)
    0.02288

    Source: Hadamard 1911, Rybczynski 1911: density g r²/(3 viscosity) (from memory).
    """
    return mixed_density * gravity * (bubble_diameter / 2) ** 2 / (3 * film_viscosity)


@formula(level="job")
def coated_bubble_rise_speed(
    bubble_diameter: Centimetres,
    mixed_density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
    film_viscosity: Poise,
) -> CentimetresPerSecond:
    """How fast a bubble rises whose skin is coated by additives: the slower, and the likelier.

    Range: bubbles under some 5 mm in a mix thicker than 1 P.

    Example: 0.5 mm across in 1 Pa s and 1.12 g/cm3, 0.1525 mm/s.

    >>> round(coated_bubble_rise_speed(0.05, 1.12, 980.665, 10.0), 5)
    0.01525

    Source: Stokes 1851: 2 density g r²/(9 viscosity); held to the library fluids.
    """
    return 2 * mixed_density * gravity * (bubble_diameter / 2) ** 2 / (9 * film_viscosity)


@formula(level="face")
def bubble_rise_time(coat_depth: Centimetres, bubble_rise_speed: CentimetresPerSecond) -> Seconds:
    """Time that a bubble with a clean skin takes from the bottom of the film to its top.

    Range: as its speed.

    Example: 0.2288 mm/s through 1/16 in, 6.94 s.

    >>> round(bubble_rise_time(0.15875, 0.02288), 2)
    6.94

    Source: kinematics.
    """
    return coat_depth / bubble_rise_speed


@formula(level="face")
def coated_bubble_rise_time(
    coat_depth: Centimetres, coated_bubble_rise_speed: CentimetresPerSecond
) -> Seconds:
    """Time that a coated bubble takes from the bottom of the film to its top.

    Range: as its speed.

    Example: 0.1525 mm/s through 1/16 in, 10.41 s.

    >>> round(coated_bubble_rise_time(0.15875, 0.01525), 2)
    10.41

    Source: kinematics.
    """
    return coat_depth / coated_bubble_rise_speed


@formula(level="face")
def smallest_rising_bubble(
    coat_depth: Centimetres,
    open_time: Seconds,
    film_viscosity: Poise,
    mixed_density: GramsPerCubicCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> Centimetres:
    """Width of the smallest coated bubble that clears the film in the time left; smaller ones need the mist.

    Range: as the speed of a coated bubble.

    Example: 1 Pa s, 1.12 g/cm3, 20 minutes, 1/16 in: 0.047 mm.

    >>> round(smallest_rising_bubble(0.15875, 1200.0, 10.0, 1.12, 980.665), 4)
    0.0047

    Source: Stokes 1851, turned round: (18 viscosity depth/(density g time))^0.5.
    """
    return (18 * film_viscosity * coat_depth / (mixed_density * gravity * open_time)) ** 0.5
