"""Cups: how much one mixed batch may hold, what stays behind in it, and how many a colour takes."""

import math

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import whole_up
from webapp.units import (
    Centimetres,
    Count,
    CubicCentimetres,
    Grams,
    GramsPerCubicCentimetre,
    Seconds,
    Share,
    SquareCentimetres,
    SquareCentimetresPerSecond,
    Truth,
)


@formula(level="job")
def cup_capacity_limit(cup_capacity: CubicCentimetres, fill_share: Share) -> CubicCentimetres:
    """The most that a cup may hold and still be stirred without spilling.

    Range: any cup.
    Example: a cup of 300 mL filled to 60 % holds 180 mL.

    >>> cup_capacity_limit(300, 0.6)
    180.0

    Source: our choice of the share, for the shop to change.
    """
    return cup_capacity * fill_share


@formula(level="colour")
def pourable_volume(
    pour_time: Seconds,
    spread_rate: SquareCentimetresPerSecond,
    least_depth: Centimetres,
    coats_to_pour: Count,
) -> CubicCentimetres:
    """The most that can be spread in the time to pour; the thinnest coat spreads slowest for its volume.

    Range: no time to pour gives 0, so that a hot room never asks for a giant cup.
    Example: 10 min at 100 cm²/min and a film of 1.5 mm is 150 mL in one coat, 75 mL in each of two.

    >>> [round(pourable_volume(600, 100 / 60, 0.15, coats), 6) for coats in (1, 2)]
    [150.0, 75.0]
    >>> pourable_volume(-60, 100 / 60, 0.15, 1)
    0.0

    Source: arithmetic; the rate is the record of the shop's own pours.
    """
    return max(0, pour_time) * spread_rate * least_depth / coats_to_pour


@formula(level="job")
def cup_mass_limit(greatest_cup_mass: Grams, mixed_density: GramsPerCubicCentimetre) -> CubicCentimetres:
    """The most that the card lets one mix in one cup, as a volume.

    Range: any.
    Example: at most 550 g of a mix of 1.1 g/mL is 500 mL.

    >>> round(cup_mass_limit(550, 1.1), 6)
    500.0

    Source: the resin card's largest batch.
    """
    return greatest_cup_mass / mixed_density


@formula(level="colour")
def wetted_area(cup_limit: CubicCentimetres) -> SquareCentimetres:
    """Wall and bottom that the mix wets in a cup as tall as it is wide.

    Range: any cup.
    Example: 100 cm³ wets 99.4 cm².

    >>> round(wetted_area(100), 1)
    99.4

    Source: geometry of a cylinder as tall as it is wide.
    """
    return 5 * math.pi / 4 * (4 * cup_limit / math.pi) ** (2 / 3)


@formula(level="colour")
def cup_residue(
    wetted_area: SquareCentimetres, residual_film: Centimetres, vessels_per_cup: Count
) -> CubicCentimetres:
    """What stays behind on the walls of every vessel that one cup goes through.

    Range: any.
    Example: one vessel of 100 cm³ that wets 99.39 cm² keeps 1.988 cm³ at 0.2 mm, two keep 3.976 cm³.

    >>> round(cup_residue(99.39, 0.02, 1), 3), round(cup_residue(99.39, 0.02, 2), 3)
    (1.988, 3.976)

    Source: arithmetic; the film on a scraped wall by weighing, from memory, to be measured by the shop.
    """
    return wetted_area * residual_film * vessels_per_cup


@formula(level="colour")
def cups_by_geometry(
    net_need: CubicCentimetres, cup_limit: CubicCentimetres, cup_residue: CubicCentimetres
) -> Count:
    """Cups for one coat by the sizes of the faces, each giving up what stays behind in it.

    Range: a cup that gives more than stays behind in it.
    Example: 350 mL from cups of 180 mL that keep 5 mL each takes 2 cups.

    >>> cups_by_geometry(350, 180, 5), cups_by_geometry(351, 180, 5), cups_by_geometry(10, 180, 5)
    (2, 3, 1)

    Source: arithmetic.
    """
    return max(1, whole_up(net_need / (cup_limit - cup_residue)))


@valid_range(says="One cup may hold no more than stays behind on its walls, so there is nothing to pour.")
def cups_by_geometry_range(cup_limit: CubicCentimetres, cup_residue: CubicCentimetres) -> Truth:
    """A cup that gives more than stays behind in it."""
    return cup_limit > cup_residue


@formula(level="colour")
def cups_by_claim(claim_need: CubicCentimetres, cup_limit: CubicCentimetres) -> Count:
    """Cups for one coat by the maker's claim, which counts what stays behind already.

    Range: a cup that may hold something.
    Example: a claim of 400 mL in cups of 180 mL takes 3 cups.

    >>> cups_by_claim(400, 180), cups_by_claim(10, 180)
    (3, 1)

    Source: arithmetic.
    """
    return max(1, whole_up(claim_need / cup_limit))


@valid_range(says="One cup may hold nothing, so there is nothing to pour.")
def cups_by_claim_range(cup_limit: CubicCentimetres) -> Truth:
    """A cup that may hold something."""
    return cup_limit > 0


@formula(level="colour")
def geometry_need(net_need: CubicCentimetres, cups: Count, cup_residue: CubicCentimetres) -> CubicCentimetres:
    """What to mix for one coat by the sizes of the faces, with what stays behind in the cups.

    Range: any.
    Example: 350 mL in 2 cups that keep 5 mL each is 360 mL.

    >>> geometry_need(350, 2, 5)
    360

    Source: arithmetic.
    """
    return net_need + cups * cup_residue


@formula(level="cup")
def cup_volume(colour_need: CubicCentimetres, cups: Count, cup_limit: CubicCentimetres) -> CubicCentimetres:
    """What to mix in each cup; never more than the cup may hold.

    Range: any.
    Example: 300 mL in 2 cups is 150 mL each.

    >>> cup_volume(300, 2, 180), cup_volume(360.0000001, 2, 180)
    (150.0, 180)

    Source: arithmetic.
    """
    return min(colour_need / cups, cup_limit)


@check(
    level="colour",
    severity="stop",
    says="One cup may hold no more than stays behind on its walls, so nothing would reach the face. Take a "
    "larger cup, or win time to pour.",
    beside="cup_limit",
    would_do=(
        "Take a cup with a larger {label:cup_capacity} than {cell:cup_capacity}.",
        "Cool the parts: the {label:resin_temperature} is {cell:resin_temperature}.",
        "Wait for a cooler hour.",
        "Use a slower resin.",
    ),
)
def cup_too_small(cup_limit: CubicCentimetres, cup_residue: CubicCentimetres) -> Truth:
    """True where a cup may hold no more than stays behind in it.

    >>> cup_too_small(5, 5), cup_too_small(180, 5)
    (True, False)
    """
    return cup_limit <= cup_residue


@check(
    level="cup",
    severity="caution",
    says="This cup, {cell:cup_volume}, is likely heavier than the {label:greatest_cup_mass} of the "
    "card, {cell:greatest_cup_mass}, and heavy batches overheat. Mix less in a cup.",
    beside="cup_volume",
    would_do=(
        "Enter the {label:density_a} and the {label:density_b}: then the limit is kept.",
        "Lower the {label:fill_share}, now {cell:fill_share}.",
        "Take a smaller cup.",
    ),
)
def cup_too_heavy(
    cup_volume: CubicCentimetres, nominal_density: GramsPerCubicCentimetre, greatest_cup_mass: Grams
) -> Truth:
    """True where a cup of an ordinary mix is over the card's largest batch by more than a quarter.

    >>> cup_too_heavy(126, 1, 100), cup_too_heavy(125, 1, 100)
    (True, False)
    """
    return cup_volume * nominal_density > 1.25 * greatest_cup_mass
