"""Tint: how many drops a cup may take, and where to start."""

from webapp.formulas.book import check, formula, valid_range
from webapp.formulas.rules import whole_down
from webapp.units import Count, CubicCentimetres, Share, Truth


@formula(level="colour")
def counted_drop_volume(counted_volume: CubicCentimetres, counted_drops: Count) -> CubicCentimetres:
    """One drop of your own bottle, from drops counted into a measure.

    Range: at least one drop.
    Example: 40 drops to 1 mL are 0.025 mL each.

    >>> counted_drop_volume(1, 40)
    0.025

    Source: arithmetic.
    """
    return counted_volume / counted_drops


@formula(level="cup")
def tint_limit_volume(cup_volume: CubicCentimetres, tint_limit: Share) -> CubicCentimetres:
    """The most tint that one cup may take.

    Range: any.
    Example: 8 fl oz that may take 2.083 % takes 4.93 mL, a teaspoon.

    >>> round(tint_limit_volume(236.588, 0.02083), 2)
    4.93

    Source: the resin card's limit; a teaspoon in 8 fl oz is common practice, no source.
    """
    return cup_volume * tint_limit


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
    Example: 30 % of a limit of 36 drops is 10 drops.

    >>> first_drops(0.3, 36), first_drops(0.3, 2)
    (10, 1)

    Source: our choice of the share, for the shop to change.
    """
    return max(1, whole_down(first_share * tint_limit_drops))


@valid_range(says="one drop is already past the limit of this cup")
def first_drops_range(tint_limit_drops: Count) -> Truth:
    """A limit of at least one drop."""
    return tint_limit_drops >= 1


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


@check(
    level="cup",
    severity="stop",
    says="One drop of this tint is already past the limit of this cup. Mix a larger cup, or thin the tint in "
    "some part A first and count from that.",
    beside="tint_limit_drops",
)
def drop_past_limit(drops_past_limit: Count) -> Truth:
    """True where the first drop is past the limit.

    >>> drop_past_limit(1), drop_past_limit(0)
    (True, False)
    """
    return drops_past_limit > 0
