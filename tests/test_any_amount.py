"""Whatever is inside the bounds of a formula's arguments, nothing impossible comes out of it."""

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.amounts import NEVER_NEGATIVE, argument
from tests.running import drawn
from webapp.formulas.book import Formula, load_book

BOOK = load_book()
ON_THE_SHEET = [name for name, row in BOOK.formulas.items() if row.levels]
ANY_AMOUNT = settings(
    max_examples=drawn(400), deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)


def result_of(row: Formula, arguments: dict[str, float]) -> float | None:
    """Return what a formula gives, or None where the sheet would leave the cell blank."""
    inside = BOOK.ranges.get(f"{row.name}_range")
    try:
        if inside and not inside.formula.function(*[arguments[each] for each in inside.formula.parameters]):
            return None
        value = row.function(**arguments)
    except (ArithmeticError, ValueError):
        return None
    return None if isinstance(value, complex) or not math.isfinite(value) else value


@pytest.mark.parametrize("name", ON_THE_SHEET)
@ANY_AMOUNT
@given(data=st.data())
def test_no_formula_gives_an_impossible_amount(name: str, data: st.DataObject) -> None:
    row = BOOK.formulas[name]
    arguments = {each: data.draw(argument(each, unit.kind), each) for each, unit in row.parameters.items()}
    value = result_of(row, arguments)
    if value is not None and row.unit.kind in NEVER_NEGATIVE:
        assert value >= 0
