"""Tint: how many drops a cup may take, and where to start."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import whole_down
from webapp.units import Count, CubicCentimetres, Share, Truth


@formula(level="cup")
def tint_limit_volume(cup_total: CubicCentimetres, tint_limit: Share) -> CubicCentimetres:
    """The most tint that one cup may take.

    Range: any.
    Example: 300 mL that may take 1.6% takes 4.8 mL.

    >>> round(tint_limit_volume(300, 0.016), 6)
    4.8

    Source: the resin card's limit.
    """
    return cup_total * tint_limit


@formula(level="cup")
def tint_limit_drops(tint_limit_volume: CubicCentimetres, drop_volume: CubicCentimetres) -> Count:
    """The most drops of tint that one cup may take.

    Range: any.
    Example: 1.84 mL in drops of 0.05 mL is 36 drops.

    >>> tint_limit_drops(1.84, 0.05)
    36

    Source: arithmetic.
    """
    return whole_down(tint_limit_volume / drop_volume)


@formula(level="cup")
def first_drops(first_share: Share, tint_limit_drops: Count) -> Count:
    """Drops to start with; the rest one by one, with the hide test after each.

    Range: a limit of at least one drop.
    Example: 30% of a limit of 36 drops is 10 drops.

    >>> first_drops(0.3, 36), first_drops(0.3, 2)
    (10, 1)

    Source: our choice of the share, for the shop to change.
    """
    return max(1, whole_down(first_share * tint_limit_drops))


@valid_range(says="One drop is already past the limit of this cup.")
def first_drops_range(tint_limit_drops: Count) -> Truth:
    """A limit of at least one drop."""
    return tint_limit_drops >= 1


@formula(level="cup")
def recipe_drops(recipe_load: Share, cup_total: CubicCentimetres, drop_volume: CubicCentimetres) -> Count:
    """Drops that bring a cup to the load of a recipe, to the nearest drop.

    Range: any; the sheet never takes more than the limit.
    Example: 1% of 180 mL in drops of 0.05 mL is 36 drops.

    >>> recipe_drops(0.01, 180, 0.05), recipe_drops(0.01, 182.6, 0.05)
    (36, 37)

    Source: arithmetic; the load is the recipe's.
    """
    return whole_down(recipe_load * cup_total / drop_volume + 0.5)


@formula(level="cup")
def drop_error(
    recipe_drops: Count, drop_volume: CubicCentimetres, recipe_load: Share, cup_total: CubicCentimetres
) -> Share:
    """How far whole drops are from the recipe: below 0 where they add too little.

    Range: any.
    Example: 2 drops of 0.05 mL where the recipe asks for 0.08 mL are 25% too much.

    >>> round(drop_error(2, 0.05, 0.001, 80), 9)
    0.25

    Source: arithmetic.
    """
    return recipe_drops * drop_volume / (recipe_load * cup_total) - 1


@formula(level="colour")
def smallest_tint_cup(
    drop_volume: CubicCentimetres, allowed_error: Share, recipe_load: Share
) -> CubicCentimetres:
    """The smallest cup in which whole drops keep a recipe well enough: half a drop is the error.

    Range: any.
    Example: drops of 0.05 mL, 5% of error and a load of 1% want a cup of 50 mL.

    >>> round(smallest_tint_cup(0.05, 0.05, 0.01), 9)
    50.0

    Source: arithmetic.
    """
    return drop_volume / (2 * allowed_error * recipe_load)


@formula(level="cup")
def tint_load(starting_drops: Count, drop_volume: CubicCentimetres, cup_total: CubicCentimetres) -> Share:
    """Share of tint in the cup after the drops to start with.

    Range: any.
    Example: 10 drops of 0.05 mL in 100 mL are 0.5%.

    >>> tint_load(10, 0.05, 100)
    0.005

    Source: arithmetic.
    """
    return starting_drops * drop_volume / cup_total


@formula(level="cup")
def no_drops() -> Count:
    """A clear cup takes no tint.

    Example: no drops.

    >>> no_drops()
    0

    Source: definition.
    """
    return 0


@formula(level="cup")
def first_drop_excess(tint_limit_drops: Count) -> Count:
    """Drops that the first drop is past the limit by: 0 where the cup may take one.

    Range: any.
    Example: a limit of 0 drops is passed by the first drop.

    >>> first_drop_excess(0), first_drop_excess(36)
    (1, 0)

    Source: arithmetic.
    """
    return max(0, 1 - tint_limit_drops)


@formula(level="cup")
def recipe_drops_past_limit(recipe_drops: Count, tint_limit_drops: Count) -> Count:
    """Drops by which a recipe goes past the limit: 0 where it keeps to it.

    Range: any.
    Example: a recipe of 40 drops passes a limit of 36 drops by 4.

    >>> recipe_drops_past_limit(40, 36), recipe_drops_past_limit(30, 36)
    (4, 0)

    Source: arithmetic.
    """
    return max(0, recipe_drops - tint_limit_drops)


@formula(level="cup")
def no_error() -> Share:
    """A cup that is tinted by eye has no recipe to miss.

    Example: no recipe is missed by nothing.

    >>> no_error()
    0

    Source: definition.
    """
    return 0


@check(
    level="cup",
    severity="stop",
    says="One drop of this tint is already past the limit of this cup. Mix a larger cup, or thin the tint.",
    beside="tint_limit_drops",
    would_do=(
        "Mix a cup of more than {cell:cup_volume}.",
        "Thin the tint in some part A first, and count drops from that.",
    ),
)
def drop_past_limit(drops_past_limit: Count) -> Truth:
    """True where the first drop is past the limit.

    >>> drop_past_limit(1), drop_past_limit(0)
    (True, False)
    """
    return drops_past_limit > 0


@check(
    level="cup",
    severity="caution",
    says="The recipe asks for more tint than this resin takes. Only the limit is counted here, so the "
    "film will hide less. Do not go past it.",
    beside="starting_drops",
    would_do=(
        "Keep to the {label:tint_limit} of {cell:tint_limit}, and pour deeper or in two coats.",
        "Use a stronger tint.",
    ),
)
def recipe_past_limit(recipe_excess: Count) -> Truth:
    """True where the recipe's drops are more than the limit.

    >>> recipe_past_limit(1), recipe_past_limit(0)
    (True, False)
    """
    return recipe_excess > 0


@check(
    level="cup",
    severity="note",
    says="Whole drops miss the recipe by more than the {label:allowed_error} of {cell:allowed_error} "
    "in so small a cup. Mix a larger cup, or measure the tint more finely.",
    beside="recipe_error",
    would_do=(
        "Mix a cup of {cell:smallest_tint_cup} or more.",
        "Thin the tint in some part A first, and count drops from that.",
        "Weigh the tint.",
    ),
)
def drops_coarse(recipe_error: Share, allowed_error: Share) -> Truth:
    """True where the nearest whole drop misses the recipe by more than is allowed.

    >>> drops_coarse(0.25, 0.05), drops_coarse(-0.06, 0.05), drops_coarse(0.05, 0.05)
    (True, True, False)
    """
    return abs(recipe_error) > allowed_error
