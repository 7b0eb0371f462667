"""What a row of the table of inputs is, and on which levels of the sheet each section's rows stand."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Input:
    """One thing a person enters; `unit` is None where the job's own unit of that kind is meant."""

    name: str
    label: str
    section: str
    kind: str
    help: str = ""
    unit: str | None = None
    least: str | None = None
    most: str | None = None
    default: str | None = None
    fallback_input: str | None = None
    options: tuple[tuple[str, str], ...] = ()

    @property
    def levels(self) -> tuple[str, ...]:
        """The levels of the sheet whose rows carry this input."""
        return LEVELS_OF_SECTION[self.section]


LEVELS_OF_SECTION = {
    "room": ("job",),
    "card": ("job",),
    "bench": ("job",),
    "colour": ("colour",),
    "face": ("face",),
    "shape": ("face", "opening"),
}
