"""Cost and stock: what to buy, what is left over, and what a colour, a face and the job cost."""

from webapp.formulas.book import check, formula
from webapp.formulas.rules import whole_up
from webapp.units import Count, CubicCentimetres, Money, MoneyPerSecond, Seconds, Share, Truth


@formula(level="colour")
def colour_mix(coat_mix: CubicCentimetres, coats_to_pour: Count) -> CubicCentimetres:
    """What a colour takes out of the bottles, all coats together.

    Range: any.
    Example: 360 mL a coat in two coats is 720 mL.

    >>> colour_mix(360, 2)
    720

    Source: arithmetic.
    """
    return coat_mix * coats_to_pour


@formula(level="job")
def usable_stock(
    stock_a: CubicCentimetres, stock_b: CubicCentimetres, part_a_share: Share
) -> CubicCentimetres:
    """What can be mixed from the bottles on the shelf; the scarcer part decides.

    Range: any.
    Example: 500 mL of A and 400 mL of B at 1 to 1 mix to 800 mL.

    >>> usable_stock(500, 400, 0.5)
    800.0

    Source: arithmetic.
    """
    return min(stock_a / part_a_share, stock_b / (1 - part_a_share))


@formula(level="job")
def kits_to_buy(
    total_colour_mix: CubicCentimetres, usable_stock: CubicCentimetres, kit_volume: CubicCentimetres
) -> Count:
    """Kits to buy for this job, A and B in the ratio, on top of what is on the shelf.

    Range: any; none where the shelf has enough.
    Example: 3000 mL with 800 mL on the shelf takes 3 kits of 946 mL.

    >>> kits_to_buy(3000, 800, 946), kits_to_buy(700, 800, 946)
    (3, 0)

    Source: arithmetic.
    """
    return max(0, whole_up((total_colour_mix - usable_stock) / kit_volume))


@formula(level="job")
def kit_cost(kits_to_buy: Count, kit_price: Money) -> Money:
    """What the kits to buy cost.

    Range: any.
    Example: 3 kits at 80 cost 240.

    >>> kit_cost(3, 80)
    240

    Source: arithmetic; the price is the shop's.
    """
    return kits_to_buy * kit_price


@formula(level="job")
def left_over(
    usable_stock: CubicCentimetres,
    kits_to_buy: Count,
    kit_volume: CubicCentimetres,
    total_colour_mix: CubicCentimetres,
) -> CubicCentimetres:
    """What can still be mixed after the job.

    Range: any.
    Example: 800 mL on the shelf and 3 kits of 946 mL less 3000 mL leave 638 mL.

    >>> left_over(800, 3, 946, 3000)
    638

    Source: arithmetic.
    """
    return max(0, usable_stock + kits_to_buy * kit_volume - total_colour_mix)


@formula(level="colour")
def colour_cost(colour_mix: CubicCentimetres, kit_price: Money, kit_volume: CubicCentimetres) -> Money:
    """What the resin of a colour costs, at the price of a kit.

    Range: any.
    Example: 473 mL out of kits of 946 mL at 80 cost 40.

    >>> colour_cost(473, 80, 946)
    40.0

    Source: arithmetic; the price is the shop's.
    """
    return colour_mix * kit_price / kit_volume


@formula(level="face")
def face_cost(
    colour_cost: Money, face_volume: CubicCentimetres, total_face_volume: CubicCentimetres
) -> Money:
    """What the resin of a face costs: its share of the colour by volume.

    Range: any.
    Example: a face of 150 mL in a colour of 450 mL that costs 42 costs 14.

    >>> face_cost(42, 150, 450)
    14.0

    Source: arithmetic; extra and residue are shared out by volume.
    """
    return colour_cost * face_volume / total_face_volume


@formula(level="job")
def labour_cost(labour_time: Seconds, wage: MoneyPerSecond) -> Money:
    """What the hours on the job cost.

    Range: any.
    Example: 6 hr at 45 an hour cost 270.

    >>> labour_cost(6 * 3600, 45 / 3600)
    270.0

    Source: arithmetic; the wage is the shop's.
    """
    return labour_time * wage


@formula(level="job")
def job_cost(total_colour_cost: Money, labour_cost: Money) -> Money:
    """What the job costs: the resin that it uses up, and the hours.

    Range: any.
    Example: resin for 120 and hours for 270 cost 390.

    >>> job_cost(120, 270)
    390

    Source: arithmetic.
    """
    return total_colour_cost + labour_cost


@check(
    level="job",
    severity="note",
    says="The shelf does not hold enough for this job. Buy the kits counted here, all of one batch, "
    "before you "
    "start.",
    beside="kits_to_buy",
)
def stock_short(kits_to_buy: Count) -> Truth:
    """True where kits must be bought.

    >>> stock_short(1), stock_short(0)
    (True, False)
    """
    return kits_to_buy > 0
