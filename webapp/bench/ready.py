"""The lines to tap before a cup begins."""

from webapp.bench.stage import ReadyLine

READY_LINES = (
    ReadyLine(
        "gloves", "Gloves, goggles, sleeves on", "Thick nitrile or laminate; thin rubber protects poorly."
    ),
    ReadyLine("ventilation", "Fresh air is moving", "No flame, spark or heater in the room."),
    ReadyLine("level", "Face clean, dry and level", "Both ways, with a level. Paint under it is dry."),
    ReadyLine(
        "dew_point",
        "Surface clear of the dew point",
        "Nearer than this, the film can blush or lift.",
        ("dew_margin", "dew_point"),
        ("below_dew_point", "dew_margin_small"),
    ),
    ReadyLine(
        "resin",
        "A and B run clear",
        "Thick, cloudy or grainy? Warm the closed bottle as the maker's sheet says, then let it cool.",
    ),
)
