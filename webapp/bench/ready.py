"""The lines to tap before a cup begins."""

from webapp.bench.stage import ReadyLine

READY_LINES = (
    ReadyLine(
        "gloves", "Gloves, goggles, sleeves on", "Thick nitrile or laminate: thin ones let it through."
    ),
    ReadyLine("ventilation", "Fresh air is moving", "No flame, spark or heater in the room."),
    ReadyLine("level", "Face clean, dry and level", "Level both ways. Primer and paint dry."),
    ReadyLine(
        "dew_point",
        "Surface clear of the dew point",
        "Any closer, and the film can blush or peel.",
        ("dew_margin", "dew_point"),
        ("below_dew_point", "dew_margin_small"),
    ),
    ReadyLine(
        "resin",
        "A and B run clear",
        "Thick, cloudy or grainy? Warm the closed bottle as the data sheet says, then let it cool.",
    ),
)
