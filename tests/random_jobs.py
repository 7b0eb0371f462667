"""Random jobs for the parity of the two languages: full, sparse, extreme, nonsensical, half typed."""

import math
from random import Random
from typing import Any

from webapp.conversions import conversions, from_canonical
from webapp.inputs.entry import Input
from webapp.inputs.table import INPUTS
from webapp.job.demo import DEMO_CARDS, EXAMPLE_JOB
from webapp.kinds import JOB_UNITS
from webapp.quantities import bounds

NONSENSE = ("abc", "-3", "0", "3/0", "1,500", "12 3", "1e9", "<i>9</i>", "99999999", "2 parsecs", "  ", ".")
SENSIBLE = {
    name: text
    for group in (
        *DEMO_CARDS,
        EXAMPLE_JOB["room"],
        EXAMPLE_JOB["bench"],
        EXAMPLE_JOB["colours"][0]["faces"][0],
    )
    for name, text in group.items()
}
# The example's bare numbers are in its own units, and these jobs are in any.
SENSIBLE |= {"width": "18 in", "height": "12 1/4 in", "depth": "1/16 in", "air_temperature": "72 degF"}
SENSIBLE |= {
    "corner_radius": "1 in",
    "outer_diameter": "20 in",
    "inner_diameter": "12 in",
    "length": "24 in",
    "lowest_tonight": "60 degF",
}
SENSIBLE |= {"stated_peak_exotherm": "250 degF", "peak_exotherm_mass": "150 g", "stated_film_set_time": "3 h"}
# A cut-out leaves something of its face.
IN_A_FACE = {
    each.name: "1 in" for each in INPUTS.values() if each.section == "shape" and each.kind == "length"
}
IN_A_FACE |= {"outer_diameter": "2 in", "length": "3 in", "stated_area": "2 in2", "glyph_area_sum": "1/4"}
IN_A_FACE |= {"corner_radius": "1/4 in", "stroke_width": "1/4 in", "rise": "1/4 in", "pieces": "1"}
# how a job is drawn: the odds of (sensible, anywhere in bounds, an end of the bounds, blank, nonsense)
KINDS_OF_JOB = (
    (0.98, 0.02, 0.0, 0.0, 0.0),
    (0.96, 0.02, 0.0, 0.02, 0.0),
    (0.6, 0.35, 0.0, 0.05, 0.0),
    (0.5, 0.2, 0.05, 0.2, 0.05),
    (0.2, 0.2, 0.2, 0.2, 0.2),
)


def random_job(seed: int) -> dict[str, Any]:
    """Return a job that the seed alone decides."""
    draw = Random(seed)
    odds = KINDS_OF_JOB[seed % len(KINDS_OF_JOB)]

    def fields(*sections: str, sensible: dict[str, Any] = SENSIBLE) -> dict[str, Any]:
        rows = [each for each in INPUTS.values() if each.section in sections]
        typed = {each.name: _typed(each, draw, odds, sensible) for each in rows}
        return {name: value for name, value in typed.items() if value is not None}

    def rows(level: str, count: int, more: Any) -> list[dict[str, Any]]:
        sections = {each.section for each in INPUTS.values() if level in each.levels}
        listed = []
        for number in range(count):
            sensible = SENSIBLE | IN_A_FACE if level == "opening" else SENSIBLE
            own = fields(*sections, sensible=sensible) if draw.random() > 0.05 else {}
            listed.append(
                {"id": f"{level}-{number}-{draw.random()}", "name": f"{level} {number}", **own, **more()}
            )
        return listed

    def openings() -> dict[str, Any]:
        return {"openings": rows("opening", draw.choice((0, 0, 1, 2)), dict)}

    def faces() -> dict[str, Any]:
        return {"faces": rows("face", draw.choice((0, 1, 2, 3, 3)), openings)}

    return {
        "format": "sixteenth-job",
        "version": 1,
        "name": f"job {seed}",
        "units": {kind: draw.choice(units) for kind, units in JOB_UNITS.items()},
        "room": fields("room"),
        "card": fields("card"),
        "bench": fields("bench"),
        "colours": rows("colour", draw.choice((1, 1, 2)), faces),
    }


def random_text(each: Input, draw: Random) -> str:
    """Return what a person might type for an input: sensible, extreme, nonsense or nothing."""
    typed = _typed(each, draw, KINDS_OF_JOB[-1])
    return typed if isinstance(typed, str) else ""


def _typed(each: Input, draw: Random, odds: tuple[float, ...], sensible: dict[str, Any] = SENSIBLE) -> Any:
    if each.kind == "choice":
        return draw.choice(
            [None, *(value for value, _ in each.options), *([] if odds[4] == 0 else ["nothing"])]
        )
    way = draw.choices(("sensible", "anywhere", "end", "blank", "nonsense"), odds)[0]
    if way == "blank":
        return draw.choice((None, "", "  "))
    if way == "nonsense":
        return draw.choice(NONSENSE)
    least, most = (end if end is not None else 1.0 for end in bounds(each))
    if way == "end":
        return draw.choice((each.least, each.most))
    if way == "anywhere":
        low = max(least, most * 1e-4)
        value = (
            math.exp(draw.uniform(math.log(low), math.log(most))) if low > 0 else draw.uniform(least, most)
        )
        return _as_text(value, each, draw)
    return sensible.get(each.name) or each.default or _as_text(_middle(each, least, most), each, draw)


def _middle(each: Input, least: float, most: float) -> float:
    if each.kind == "temperature":
        return 296.0
    return math.sqrt(max(least, most * 1e-4) * most)


def _as_text(value: float, each: Input, draw: Random) -> Any:
    if each.kind == "count":
        return str(max(1, round(value)))
    unit = draw.choice(list(conversions(each.kind)))
    if draw.random() < 0.2 and each.kind not in ("temperature",):
        return value
    number = f"{from_canonical(value, unit, each.kind):.9f}"
    return f"{number} {unit}".strip()
