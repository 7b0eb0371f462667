"""Cups: how much one mixed batch may hold, what stays behind in it, and how many a colour takes."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import wall_wetted, whole_up
from webapp.units import (
    Centimetres,
    Count,
    CubicCentimetres,
    Grams,
    GramsPerCubicCentimetre,
    Share,
    Truth,
)


@formula(level="job")
def cup_capacity_limit(cup_capacity: CubicCentimetres, fill_share: Share) -> CubicCentimetres:
    """The most that a cup may hold and still be stirred without spilling.

    Range: any cup.
    Example: a cup of 300 mL filled to 60% holds 180 mL.

    >>> cup_capacity_limit(300, 0.6)
    180.0

    Source: our choice of the share, for the shop to change.
    """
    return cup_capacity * fill_share


@formula(level="job")
def cup_mass_limit(greatest_cup_mass: Grams, cup_density: GramsPerCubicCentimetre) -> CubicCentimetres:
    """The most that the card lets one mix in one cup, as a volume.

    Range: any; where a density is not on the card, taken as heavy.
    Example: at most 550 g of a mix of 1.1 g/mL is 500 mL.

    >>> round(cup_mass_limit(550, 1.1), 6)
    500.0

    Source: the resin card's largest batch.
    """
    return greatest_cup_mass / cup_density


@formula(level="colour")
def full_cup_residue(
    full_cup: CubicCentimetres, residual_film: Centimetres, vessels_per_cup: Count
) -> CubicCentimetres:
    """What stays behind on the walls of every vessel that the fullest cup goes through.

    Range: vessels about as tall as they are wide.
    Example: one vessel of 100 cm³ keeps 1.988 cm³ at 0.2 mm, two keep 3.976 cm³.

    >>> round(full_cup_residue(100, 0.02, 1), 3), round(full_cup_residue(100, 0.02, 2), 3)
    (1.988, 3.976)

    Source: geometry; the film on a scraped wall by weighing, from memory, to be measured by the shop.
    """
    return wall_wetted(full_cup) * residual_film * vessels_per_cup


@formula(level="colour")
def cups_by_geometry(
    net_need: CubicCentimetres, full_cup: CubicCentimetres, full_cup_residue: CubicCentimetres
) -> Count:
    """Cups for one coat by the sizes of the faces, each giving up what stays behind in it.

    Range: a cup that gives more than stays behind in it.
    Example: 350 mL from cups of 180 mL that keep 5 mL each takes 2 cups.

    >>> cups_by_geometry(350, 180, 5), cups_by_geometry(351, 180, 5), cups_by_geometry(10, 180, 5)
    (2, 3, 1)

    Source: arithmetic.
    """
    return max(1, whole_up(net_need / (full_cup - full_cup_residue)))


@valid_range(says="One cup may hold no more than stays behind on its walls, so there is nothing to pour.")
def cups_by_geometry_range(full_cup: CubicCentimetres, full_cup_residue: CubicCentimetres) -> Truth:
    """A cup that gives more than stays behind in it."""
    return full_cup > full_cup_residue


@formula(level="colour")
def cups_by_claim(claim_need: CubicCentimetres, full_cup: CubicCentimetres) -> Count:
    """Cups for one coat by the maker's claim, which counts what stays behind already.

    Range: any.
    Example: a claim of 400 mL in cups of 180 mL takes 3 cups.

    >>> cups_by_claim(400, 180), cups_by_claim(10, 180)
    (3, 1)

    Source: arithmetic.
    """
    return max(1, whole_up(claim_need / full_cup))


@formula(level="colour")
def cup_residue(
    net_need: CubicCentimetres,
    cups: Count,
    full_cup_residue: CubicCentimetres,
    residual_film: Centimetres,
    vessels_per_cup: Count,
) -> CubicCentimetres:
    """What stays behind on the walls of every vessel that one of the planned cups goes through.

    Range: any; it errs high, since it takes a cup that keeps as much as the fullest one.
    Example: 190 mL in 2 cups that keep 5 mL when full: each as a cup of 100 mL, 1.988 mL at 0.2 mm.

    >>> round(cup_residue(190, 2, 5, 0.02, 1), 3)
    1.988

    Source: one substitution; geometry of a cylinder as tall as it is wide.
    """
    return wall_wetted(net_need / cups + full_cup_residue) * residual_film * vessels_per_cup


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
def cup_volume(colour_need: CubicCentimetres, cups: Count, full_cup: CubicCentimetres) -> CubicCentimetres:
    """What to mix in each cup; never more than the fullest cup.

    Range: any.
    Example: 300 mL in 2 cups is 150 mL each.

    >>> cup_volume(300, 2, 180), cup_volume(360.0000001, 2, 180)
    (150.0, 180)

    Source: arithmetic.
    """
    return min(colour_need / cups, full_cup)


@formula(level="colour")
def face_shortfall(
    net_need: CubicCentimetres, cups: Count, cup_residue: CubicCentimetres, colour_need: CubicCentimetres
) -> CubicCentimetres:
    """What would be missing on the faces in one coat, if no more than this is mixed.

    Range: any; 0 where there is enough.
    Example: 350 mL for the faces and 2 cups that keep 5 mL each, of 340 mL: 20 mL are missing.

    >>> face_shortfall(350, 2, 5, 340), face_shortfall(350, 2, 5, 360)
    (20, 0)

    Source: arithmetic.
    """
    return max(0, net_need + cups * cup_residue - colour_need)


@check(
    level="colour",
    severity="caution",
    says="The maker's claim leaves the faces short: it does not count what stays in the cups. Mix by your "
    "sizes, or by the greater of the two.",
    beside="colour_need",
)
def claim_leaves_short(face_shortfall: CubicCentimetres, net_need: CubicCentimetres) -> Truth:
    """True where the faces would come out short by more than a thousandth.

    >>> claim_leaves_short(20, 350), claim_leaves_short(0, 350)
    (True, False)
    """
    return face_shortfall > 0.001 * net_need


@check(
    level="colour",
    severity="stop",
    says="One cup may hold {cell:full_cup}, and {cell:full_cup_residue} of that stays on its walls: "
    "nothing would reach the face.",
    beside="cup_limit",
    would_do=(
        "Use a larger cup: yours may be filled to {cell:cup_capacity_limit}.",
        "Gain time to pour: cool the parts, wait for a cooler hour, or use a slower resin.",
    ),
)
def cup_too_small(full_cup: CubicCentimetres, full_cup_residue: CubicCentimetres) -> Truth:
    """True where a cup may hold no more than stays behind in it.

    >>> cup_too_small(5, 5), cup_too_small(180, 5)
    (True, False)
    """
    return full_cup <= full_cup_residue
