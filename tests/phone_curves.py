"""The two curves that only the phone works out: a cup's heat and the bead over a stroke."""

from dataclasses import dataclass

ON_THE_PHONE = """async ([address, name, cases]) => {
  const module = await import(new URL(address, window.modules));
  return cases.map((each) => module[name](each));
}"""


@dataclass(frozen=True)
class HeatCurve:
    """Gel in seconds, the peak in kelvins, and every (conversion, kelvins) on the way."""

    gel_time: float
    peak_temperature: float
    states: tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Bead:
    """Height in cm, section in cm2, and the half profile (out, up) from the apex to the edge."""

    height: float
    section: float
    profile: tuple[tuple[float, float], ...]


def heat_curves(phone, *cups):
    """The heat curve of each cup."""
    return [
        HeatCurve(
            found["gel"]["time"],
            found["peak"]["state"][1],
            tuple(tuple(moment["state"]) for moment in found["moments"]),
        )
        for found in phone.evaluate(ON_THE_PHONE, ["sheet/heat-curve.js", "heatCurve", cups])
    ]


def beads(phone, *strokes):
    """The greatest bead over each stroke, given as (width, capillary length, edge angle)."""
    names = ("stroke_width", "capillary_length", "edge_angle")
    cases = [dict(zip(names, each, strict=True)) for each in strokes]
    found = phone.evaluate(ON_THE_PHONE, ["sheet/bead-profile.js", "beadProfile", cases])
    return [
        Bead(each["height"], each["section"], tuple(tuple(point) for point in each["profile"]))
        for each in found
    ]
