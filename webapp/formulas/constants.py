"""Constants with a unit, each with value and unit as its source prints it; the sheet takes them as inputs."""

from dataclasses import dataclass
from functools import cache

from webapp.units import canonical_units, registry


@dataclass(frozen=True)
class Constant:
    """A named constant: value and unit as printed in its source, the kind of quantity, and the source."""

    name: str
    value: float
    unit: str
    shown: str
    kind: str
    source: str
    label: str

    @property
    def canonical(self) -> float:
        """The value in the canonical unit of its kind."""
        return _canonical(self.value, self.unit, self.kind)


@cache
def _canonical(value: float, unit: str, kind: str) -> float:
    quantity = registry().Quantity(value, unit).to(canonical_units()[kind].pint)
    return float(quantity.magnitude)


CONSTANTS = (
    Constant(
        "gravity",
        980.665,
        "cm/s**2",
        "980.665 cm/s²",
        "acceleration",
        "standard gravity, CGPM 1901; NIST SP 811, app. B",
        "Gravity",
    ),
    Constant(
        "gas_constant",
        8.314462618,
        "joule/mol/kelvin",
        "8.314462618 J/(mol K)",
        "molar heat capacity",
        "CODATA 2018",
        "Gas constant",
    ),
    Constant(
        "ice_point",
        273.15,
        "kelvin",
        "273.15 K",
        "temperature",
        "definition of the Celsius scale, NIST SP 811",
        "Ice point",
    ),
)
