"""What a person types is read the same in both languages, or refused with what to type."""

import json
from pathlib import Path

import pytest

from webapp.errors import QuantityError
from webapp.inputs.table import INPUTS
from webapp.quantities import read_input, read_quantity
from webapp.showing import show

CASES = json.loads((Path(__file__).parent / "quantity_cases.json").read_text(encoding="utf-8"))
JOB_UNITS = {"length": "in", "volume": "mL", "temperature": "degF"}


def in_python(cases):
    """Run the table of cases with the Python grammar, in the form that the phone's page gives it back."""
    return {
        "read": [_read(text, kind, unit) for text, kind, unit, _ in cases["read"]],
        "refused": [_refusal(text, kind) for text, kind, _ in cases["refused"]],
        "inputs": [_input_refusal(name, typed) for name, typed, _ in cases["inputs"]],
        "shown": [show(*case[:4]) for case in cases["shown"]],
    }


def _read(text, kind, unit):
    try:
        return read_quantity(text, kind, unit).value
    except QuantityError:
        return None


def _refusal(text, kind):
    with pytest.raises(QuantityError) as refused:
        read_quantity(text, kind, "in" if kind == "length" else "mL")
    return str(refused.value)


def _input_refusal(name, typed):
    with pytest.raises(QuantityError) as refused:
        read_input(typed, INPUTS[name], JOB_UNITS)
    return str(refused.value)


IN_JAVASCRIPT = """async (cases) => {
  const { readQuantity, readInput, show } = await import(new URL("sheet/quantities.js", window.modules));
  const units = { length: "in", volume: "mL", temperature: "degF" };
  const own = { length: "in", volume: "mL", ratio: "mL" };
  return {
    read: cases.read.map(([text, kind, unit]) => readQuantity(text, kind, unit).value ?? null),
    refused: cases.refused.map(([text, kind]) => readQuantity(text, kind, own[kind]).error),
    inputs: cases.inputs.map(([name, typed]) => readInput(name, typed, units).error),
    shown: cases.shown.map(([value, kind, unit, grain]) => show(value, kind, unit, grain)),
  };
}"""


@pytest.fixture(params=["Python", "JavaScript"])
def answers(request):
    if request.param == "Python":
        return in_python(CASES)
    return request.getfixturevalue("phone").evaluate(IN_JAVASCRIPT, CASES)


def test_typed_quantities_are_read_as_a_person_means_them(answers):
    expected = [row[-1] for row in CASES["read"]]
    assert answers["read"] == pytest.approx(expected, rel=1e-8)


def test_what_cannot_be_read_is_refused_with_what_to_type(answers):
    assert answers["refused"] == [row[-1] for row in CASES["refused"]]


def test_what_is_out_of_bounds_is_refused_at_its_field(answers):
    assert answers["inputs"] == [row[-1] for row in CASES["inputs"]]


def test_quantities_are_shown_with_the_figures_that_matter(answers):
    assert answers["shown"] == [row[-1] for row in CASES["shown"]]


def test_ounces_of_a_volume_are_said_to_be_us_fluid_ounces():
    assert read_quantity("8 oz", "volume", "mL").note == "oz taken as US fl oz"
    assert read_quantity("8 fl oz", "volume", "mL").note == ""


def test_a_number_in_a_job_file_is_in_the_canonical_unit():
    assert read_input(30, INPUTS["width"], JOB_UNITS).value == 30
    assert read_input(0.48, INPUTS["relative_humidity"], JOB_UNITS).value == 0.48


@pytest.mark.parametrize("name", [name for name, row in INPUTS.items() if row.kind != "choice"])
def test_every_default_and_bound_of_the_inputs_can_be_read(name):
    row = INPUTS[name]
    for text in (row.least, row.most, row.default):
        if text is not None:
            assert read_input(text, row, JOB_UNITS).value is not None
