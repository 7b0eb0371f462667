"""What a row of the table of stages is: a stage with its clock, its figures and its lines.

A cup on the bench is its amounts, frozen when it began, and its taps. A stage is over when it is tapped,
and every clock is the moment of a tap plus an amount: nothing counts seconds. Mists and what must not be
early count from the end of the pour; what must not be late counts from the contact of A and B.
"""

from dataclasses import dataclass

CONTACT, END_OF_POUR, OWN_START = "contact", "end_of_pour", "start"
"""What a clock counts from: A touching B, the end of the pour, or the tap that brought the stage up."""

DUE, LATEST, EARLIEST = "due", "latest", "earliest"
"""What the clock's end means: do it then, have it done by then, do not do it before then."""


@dataclass(frozen=True)
class Prompt:
    """What to do from a share of the stage's duration on: scrape the sides at a third of the mix."""

    share: float
    says: str
    mark: str


@dataclass(frozen=True)
class ReadyLine:
    """A line to tap before a cup begins; `checks` are the sheet's, whose worst gives its go or no-go."""

    name: str
    says: str
    help: str
    cells: tuple[str, ...] = ()
    checks: tuple[str, ...] = ()


@dataclass(frozen=True)
class Beside:
    """A smaller figure under the big one: the first of its cells that is not blank, and words after it."""

    cells: tuple[str, ...]
    says: str


@dataclass(frozen=True)
class Stage:
    """One stage: one instruction, one button, and at most one clock.

    `figures` are cells: the first that is not blank is the big figure; `beside` are more of them, each with
    its words, for the line under it. `counts_from`, `duration` and `bound` make the clock, which takes the
    first of the amounts in `duration` that was frozen with the cup: behind a new name stand those that older
    cups have. `clock` is its name in a list, `late` what is said once it has passed (the moment follows),
    `past` what to do then (for what must not be early, in the instruction's place), `without` what is said
    where the card gives no duration. `quiet` is said in quiet text below, after what is known of the cup's
    heat where the stage has `heat_checks`: of these checks the first that is wrong stands there as a caution.
    `fills_with` is the part that the cup is filled with, drawn with its fill line. `warning` rings that many
    seconds ahead. `called` is what its tap is called, `asks` what is said before a step back takes that away.
    `only` names the cups that have the stage. A name is never used again, and no row is ever
    taken out: a stage that new cups do without is `retired`, and stays for the cups that were begun with it.
    """

    name: str
    title: str
    instruction: str
    button: str
    called: str
    cautions: tuple[str, ...] = ()
    quiet: tuple[str, ...] = ()
    heat_checks: tuple[str, ...] = ()
    figures: tuple[str, ...] = ()
    figure_before: str = ""
    beside: tuple[Beside, ...] = ()
    fills_with: str = ""
    counts_from: str = ""
    duration: tuple[str, ...] = ()
    bound: str = ""
    clock: str = ""
    late: str = ""
    past: str = ""
    without: str = ""
    rings: bool = False
    warning: float = 0.0
    asks: str = ""
    only: str = ""
    retired: bool = False
    prompts: tuple[Prompt, ...] = ()
    lines: tuple[ReadyLine, ...] = ()


@dataclass(frozen=True)
class Only:
    """Which cups have a stage: the value at `path` in them is not `is_not`, or is under that at `under`."""

    path: tuple[str | int, ...]
    is_not: str | int | None = None
    under: tuple[str | int, ...] = ()
