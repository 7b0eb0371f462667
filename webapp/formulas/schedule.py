"""Schedule: when each stage of a cup falls due, counted from the moment A touches B.

What must not be early counts from the end of the pour, what must not be late from the contact itself.
"""

from webapp.formulas.book import check, formula
from webapp.units import Seconds, Truth


@formula(level="cup")
def pour_end(changeover: Seconds, spreading_time: Seconds) -> Seconds:
    """From the moment A touches B to the planned end of the pour.

    Range: any.
    Example: 2 min of mixing, 2 min of tint, 1 min for the cups and 10 min of spreading end after 15 min.

    >>> pour_end(300, 600)
    900

    Source: arithmetic.
    """
    return changeover + spreading_time


@formula(level="cup")
def first_mist_due(pour_end: Seconds, first_mist: Seconds) -> Seconds:
    """From the moment A touches B to the first mist.

    Range: any.
    Example: a pour that ends after 15 min and is misted 1 min later is misted after 16 min.

    >>> first_mist_due(900, 60)
    960

    Source: the resin card.
    """
    return pour_end + first_mist


@formula(level="cup")
def second_mist_due(pour_end: Seconds, second_mist: Seconds) -> Seconds:
    """From the moment A touches B to the second mist.

    Range: any.
    Example: a pour that ends after 15 min, misted again 13 min later, is misted after 28 min.

    >>> second_mist_due(900, 780)
    1680

    Source: the resin card.
    """
    return pour_end + second_mist


@formula(level="cup")
def tack_free_due(pour_end: Seconds, tack_free_time: Seconds) -> Seconds:
    """From the moment A touches B until the film is tack-free.

    Range: any.
    Example: a pour that ends after 15 min is tack-free 8 hr later, after 8.25 hr.

    >>> tack_free_due(900, 28800) / 3600
    8.25

    Source: arithmetic; what must not be early counts from the end of the pour.
    """
    return pour_end + tack_free_time


@formula(level="cup")
def recoat_opens_due(pour_end: Seconds, recoat_opens: Seconds) -> Seconds:
    """From the moment A touches B until the next coat may be poured.

    Range: any.
    Example: a pour that ends after 15 min may be recoated 4 hr later, after 4.25 hr.

    >>> recoat_opens_due(900, 14400) / 3600
    4.25

    Source: arithmetic; what must not be early counts from the end of the pour.
    """
    return pour_end + recoat_opens


@formula(level="cup")
def recoat_closes_due(recoat_closes: Seconds) -> Seconds:
    """From the moment A touches B until the next coat no longer bonds without sanding.

    Range: any.
    Example: a window that closes after 26 hr closes 26 hr after A touched B.

    >>> recoat_closes_due(93600) / 3600
    26.0

    Source: what must not be late counts from the moment A touches B.
    """
    return recoat_closes


@formula(level="cup")
def cured_due(pour_end: Seconds, cure_time: Seconds) -> Seconds:
    """From the moment A touches B until the film is cured.

    Range: any.
    Example: a pour that ends after 15 min is cured 30 hr later, after 30.25 hr.

    >>> cured_due(900, 108000) / 3600
    30.25

    Source: arithmetic; what must not be early counts from the end of the pour.
    """
    return pour_end + cure_time


@formula(level="cup")
def top_coat_due(pour_end: Seconds, top_coat_wait: Seconds) -> Seconds:
    """From the moment A touches B until the top coat may go on.

    Range: any.
    Example: a pour that ends after 15 min takes its top coat 40 hr later, after 40.25 hr.

    >>> top_coat_due(900, 144000) / 3600
    40.25

    Source: arithmetic; what must not be early counts from the end of the pour.
    """
    return pour_end + top_coat_wait


@check(
    level="cup",
    severity="caution",
    says="This cup takes {cell:pour_end} until it is poured, but has only {cell:pour_by} from when "
    "A touches B.",
    beside="pour_by",
    would_do=(
        "Mix less than {cell:cup_total} in a cup.",
        "Get a helper: spreading it takes {cell:spreading_time}.",
        "Cool the parts: the {label:resin_temperature} is {cell:resin_temperature}.",
    ),
)
def pour_ends_late(pour_end: Seconds, pour_by: Seconds) -> Truth:
    """True where the planned end of the pour is past pour-by, half a hundredth forgiven.

    >>> pour_ends_late(1207, 1200), pour_ends_late(1200, 1200)
    (True, False)
    """
    return pour_end - pour_by > 0.005 * pour_by
