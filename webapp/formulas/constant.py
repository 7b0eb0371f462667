"""A constant with a unit: value and unit as its source prints it; the sheet takes it as an input."""

from dataclasses import dataclass
from functools import cache

from webapp.units import canonical_units, exact_registry


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
    quantity = exact_registry().Quantity(value, unit).to(canonical_units()[kind].pint)
    return float(quantity.magnitude)
