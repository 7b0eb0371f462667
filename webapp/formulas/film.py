"""Film: what a level coat of resin takes, by geometry and by the maker's claim."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import whole_up
from webapp.units import Centimetres, Count, CubicCentimetres, PerCentimetre, Share, SquareCentimetres, Truth


@formula(level="face")
def film_volume(
    face_area: SquareCentimetres, depth: Centimetres, texture_depth: Centimetres
) -> CubicCentimetres:
    """Volume of a level film on one piece; a blasted or carved ground takes more film, not more area.

    Range: any depth.
    Example: 1000 cm² at 0.15 cm is 150 cm³, and 170 cm³ on a ground that takes 0.02 cm more.

    >>> round(film_volume(1000, 0.15, 0), 9), round(film_volume(1000, 0.15, 0.02), 9)
    (150.0, 170.0)

    Source: geometry; a level film fills the hollows.
    """
    return face_area * (depth + texture_depth)


@formula(level="face")
def face_volume(
    film_volume: CubicCentimetres,
    groove_volume: CubicCentimetres,
    pocket_volume: CubicCentimetres,
    pieces: Count,
) -> CubicCentimetres:
    """Volume that all pieces of a face take with their grooves and pockets, all coats together.

    Range: any number of pieces.
    Example: three pieces of 150 cm³, 20 cm³ of grooves and 30 cm³ of pockets take 600 cm³.

    >>> face_volume(150, 20, 30, 3)
    600

    Source: geometry.
    """
    return (film_volume + groove_volume + pocket_volume) * pieces


@formula(level="face")
def deepest_depth(depth: Centimetres, texture_depth: Centimetres, pocket_depth: Centimetres) -> Centimetres:
    """Depth of the resin at the deepest place of a face: film, hollows of the ground and pocket together.

    Range: any; grooves do not count.
    Example: a film of 1.5 mm over a pocket of 3 mm with hollows of 0.5 mm is 5 mm deep.

    >>> round(deepest_depth(0.15, 0.05, 0.3), 9)
    0.5

    Source: geometry.
    """
    return depth + texture_depth + pocket_depth


@formula(level="face")
def coats(deepest_depth: Centimetres, greatest_coat_depth: Centimetres) -> Count:
    """How many coats a face needs at its deepest place, none of them deeper than the card allows.

    Range: any depth.
    Example: 6 mm in coats of at most 2 mm is 3 coats.

    >>> coats(0.6, 0.2)
    3

    Source: arithmetic; the deepest coat is the resin card's.
    """
    return whole_up(deepest_depth / greatest_coat_depth)


@formula(level="face")
def coat_depth(depth: Centimetres, face_coats: Count) -> Centimetres:
    """Depth of one coat of a face's film, when it is poured in equal coats.

    Range: any number of coats.
    Example: 6 mm in 3 coats are 2 mm each.

    >>> round(coat_depth(0.6, 3), 9)
    0.2

    Source: arithmetic.
    """
    return depth / face_coats


@formula(level="face")
def face_coat_volume(
    face_volume: CubicCentimetres, face_coats: Count, coat_number: Count
) -> CubicCentimetres:
    """What a face takes in the coat that is poured now: nothing once it has had all of its own.

    Range: any.
    Example: 600 cm³ in 3 coats are 200 cm³ in each of the first three, and none in a fourth.

    >>> face_coat_volume(600, 3, 1), face_coat_volume(600, 3, 4)
    (200.0, 0)

    Source: arithmetic.
    """
    return face_volume / face_coats if face_coats >= coat_number else 0 * face_volume


@formula(level="face")
def face_share(face_coat_volume: CubicCentimetres, total_face_coat_volume: CubicCentimetres) -> Share:
    """How much of what is poured of a color goes on a face, as a share of all its faces in this coat.

    Range: any; blank where no face of the color takes anything.
    Example: 150 cm³ of 600 cm³ is a quarter.

    >>> face_share(150, 600)
    0.25

    Source: arithmetic.
    """
    return face_coat_volume / total_face_coat_volume


@check(
    level="face",
    severity="note",
    says="At its deepest place, film, pocket and texture together, this face is too deep for one coat. "
    "It is planned in coats, each inside the recoat window of the one before.",
    beside="coats",
)
def film_too_deep(deepest_depth: Centimetres, greatest_coat_depth: Centimetres) -> Truth:
    """True where the deepest place of a face is deeper than one coat may be.

    >>> film_too_deep(0.25, 0.2), film_too_deep(0.2, 0.2)
    (True, False)
    """
    return whole_up(deepest_depth / greatest_coat_depth) > 1


@check(
    level="face",
    severity="note",
    says="The grooves are deeper than one coat of this resin may be. They are narrow and lose their heat, so "
    "no coat is added for them. Fill them first, and let them settle.",
    beside="groove_depth",
)
def groove_too_deep(groove_depth: Centimetres, greatest_coat_depth: Centimetres) -> Truth:
    """True where a groove is deeper than one coat may be.

    >>> groove_too_deep(0.5, 0.3), groove_too_deep(0.3, 0.3)
    (True, False)
    """
    return groove_depth > greatest_coat_depth


@formula(level="colour")
def net_need(total_face_coat_volume: CubicCentimetres, contingency: Share) -> CubicCentimetres:
    """What must reach the faces in this coat, with the extra that nobody drives back for.

    Range: any.
    Example: 147.4836 mL with 10% extra is 162.23 mL.

    >>> round(net_need(147.4836, 0.10), 2)
    162.23

    Source: arithmetic; 1 ft² at 1/16 in takes 9 in³, which is 147.4836 mL.
    """
    return total_face_coat_volume * (1 + contingency)


@formula(level="face")
def spread_area(volume_on_hand: CubicCentimetres, depth: Centimetres) -> SquareCentimetres:
    """Area that a volume covers at a depth.

    Range: any.
    Example: 150 cm³ at 1.5 mm covers 1000 cm².

    >>> round(spread_area(150, 0.15), 9)
    1000.0

    Source: geometry; theoretical spreading rate of ISO 3233-3:2015.
    """
    return volume_on_hand / depth


@formula(level="face")
def depth_from_volume(volume_on_hand: CubicCentimetres, face_area: SquareCentimetres) -> Centimetres:
    """Depth of the film that a volume makes on one piece.

    Range: any.
    Example: 150 cm³ on 1000 cm² is a film of 1.5 mm.

    >>> depth_from_volume(150, 1000)
    0.15

    Source: geometry.
    """
    return volume_on_hand / face_area


@formula(level="face")
def spreading_rate(depth: Centimetres) -> PerCentimetre:
    """Area that each volume covers at a depth, with nothing lost.

    Range: any.
    Example: at 1.5 mm each mL covers 6.67 cm².

    >>> round(spreading_rate(0.15), 2)
    6.67

    Source: geometry; theoretical spreading rate of ISO 3233-3:2015.
    """
    return 1 / depth


@formula(level="colour")
def claim_film_share(stated_coverage: PerCentimetre, stated_coverage_depth: Centimetres) -> Share:
    """How much of the resin ends in the film, if the maker's claim of coverage holds.

    Range: a claim of no more film than there is resin.
    Example: a claim of 9 in² per fl oz at 3/32 in leaves 46.8% in the film.

    >>> round(claim_film_share(9 * 2.54**2 / 29.57353, 3 * 2.54 / 32), 3)
    0.468

    Source: arithmetic; the claim itself is common practice, no source.
    """
    return stated_coverage * stated_coverage_depth


@valid_range(says="The claim promises more film than there is resin. Check the coverage and its depth.")
def claim_film_share_range(stated_coverage: PerCentimetre, stated_coverage_depth: Centimetres) -> Truth:
    """A claim of no more film than there is resin, forgiving what the figures were rounded by."""
    return stated_coverage * stated_coverage_depth <= 1.001


@formula(level="colour")
def claim_need(total_face_coat_volume: CubicCentimetres, claim_film_share: Share) -> CubicCentimetres:
    """What to mix for this coat if the maker's claim of coverage holds.

    Range: any.
    Example: 381 mL of film at a film share of 38.1% takes 1000 mL.

    >>> round(claim_need(381, 0.381), 6)
    1000.0

    Source: arithmetic from the maker's claim.
    """
    return total_face_coat_volume / claim_film_share


@check(
    level="colour",
    severity="note",
    says="The maker's claim and your sizes differ by more than a quarter. You mix the greater of the two "
    "unless you choose one. After the first pour, trust what you weighed.",
    beside="claim_need",
)
def claim_short(claim_need: CubicCentimetres, geometry_need: CubicCentimetres) -> Truth:
    """True where the claim and the geometry differ by more than a quarter of the geometry.

    >>> claim_short(130, 100), claim_short(125, 100), claim_short(70, 100)
    (True, False, True)
    """
    return abs(claim_need / geometry_need - 1) > 0.25
