"""Flow: the film's viscosity, and how long ripples and heaps take to level."""

import math

from webapp.formulas.book import check, formula
from webapp.formulas.rules import ripple_decay
from webapp.units import (
    Centimetres,
    CentimetresPerSecondSquared,
    DynesPerCentimetre,
    GramsPerCubicCentimetre,
    Kelvins,
    Poise,
    Seconds,
    Share,
    Truth,
)


@formula(level="job")
def film_viscosity(
    stated_viscosity: Poise,
    viscosity_temperature: Kelvins,
    second_viscosity: Poise,
    second_viscosity_temperature: Kelvins,
    surface_temperature: Kelvins,
) -> Poise:
    """Viscosity of the fresh film at the temperature of the face; without a second figure the card's own.

    Range: between the card's two temperatures and some 15 K beyond.

    Example: 10 P at 293.15 K and 2.5 P at 313.15 K are 5 P where 1/T is half way between, at 302.82 K.

    >>> round(film_viscosity(10.0, 293.15, 2.5, 313.15, 302.82), 2)
    5.0

    Source: Arrhenius' law through the card's two figures (Andrade 1930, from memory).
    """
    from_figure_to_figure = 1 / second_viscosity_temperature - 1 / viscosity_temperature
    from_figure_to_face = 1 / surface_temperature - 1 / viscosity_temperature
    share = (
        0
        if second_viscosity_temperature == viscosity_temperature
        else from_figure_to_face / from_figure_to_figure
    )
    return stated_viscosity * math.exp(math.log(second_viscosity / stated_viscosity) * share)


@formula(level="face")
def levelling_time(
    ripple_length: Centimetres,
    coat_depth: Centimetres,
    film_viscosity: Poise,
    mixed_density: GramsPerCubicCentimetre,
    surface_tension: DynesPerCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> Seconds:
    """Time in which a ripple sinks to 37% of its height; three times as long leaves 5%.

    Range: ripples low against the depth, on a level face; any depth.

    Example: 50 mm from crest to crest, 1.5875 mm deep, 1 Pa s, 35 mN/m, 1.10 g/cm3: 4.487 s.

    >>> round(levelling_time(5.0, 0.15875, 10.0, 1.10, 35.0, 980.665), 3)
    4.487

    Source: lubrication theory carried to any depth, (γ q² + ρ g)/(2 η q) (sinh x cosh x - x)/(cosh² x + x²);
    derived, and confirmed with a thin-film simulation.
    """
    return 1 / ripple_decay(
        ripple_length, coat_depth, film_viscosity, mixed_density, surface_tension, gravity
    )


@formula(level="job")
def gravity_ripple_length(capillary_length: Centimetres) -> Centimetres:
    """Length from crest to crest over which ripples level by weight, and under which by the skin's pull.

    Range: any liquid.

    Example: a mix with 1.8013 mm of capillary length, 11.318 mm.

    >>> round(gravity_ripple_length(0.18013), 4)
    1.1318

    Source: Orchard, Appl. Sci. Res. A 11 (1963) 451: weight and pull are equal at 2π capillary lengths.
    """
    return 2 * math.pi * capillary_length


@formula(level="face")
def heap_time(
    span: Centimetres,
    coat_depth: Centimetres,
    film_viscosity: Poise,
    mixed_density: GramsPerCubicCentimetre,
    surface_tension: DynesPerCentimetre,
    gravity: CentimetresPerSecondSquared,
) -> Seconds:
    """Time in which a heap at one end of the face sinks to 37% of its height.

    Range: a level face; the film's depth well under its span.

    Example: 24 in at 1/16 in deep, 1 Pa s, 35 mN/m, 1.10 g/cm3: 44 minutes.

    >>> round(heap_time(60.96, 0.15875, 10.0, 1.10, 35.0, 980.665) / 60)
    44

    Source: Orchard, Appl. Sci. Res. A 11 (1963) 451, with a ripple twice as long as the face.
    """
    return 1 / ripple_decay(2 * span, coat_depth, film_viscosity, mixed_density, surface_tension, gravity)


@formula(level="job")
def open_time(working_time: Seconds, usable_share: Share) -> Seconds:
    """Time that a film poured at the last moment still has to level and to let bubbles out, at least.

    Range: any mix.

    Example: of 40 minutes with three quarters for pouring, 10 minutes are left.

    >>> open_time(2400.0, 0.75)
    600.0

    Source: our choice: the rest of the working time, though a film thickens two to three times later than
    a cup.
    """
    return working_time * (1 - usable_share)


@check(
    level="face",
    severity="caution",
    says="A ripple takes {cell:levelling_time} to sink to a third, and the film stays open {cell:open_time}: "
    "it thickens before it is level. Spread it evenly and finely.",
    beside="levelling_time",
    would_do=(
        "Spread finely: the {label:ripple_length} is taken as {cell:ripple_length}.",
        "Warm the parts: a warm mix is thinner and levels sooner, but sets sooner too.",
    ),
)
def ripples_stay(levelling_time: Seconds, open_time: Seconds) -> Truth:
    """True where a ripple has no time to sink to 5% of its height.

    >>> ripples_stay(300.0, 600.0), ripples_stay(100.0, 600.0)
    (True, False)
    """
    return 3 * levelling_time > open_time
