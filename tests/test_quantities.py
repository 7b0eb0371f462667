"""What a person types is read the same in both languages, or refused with what to type."""

import json
import re
from pathlib import Path

import pytest

from webapp.errors import QuantityError
from webapp.inputs.table import INPUTS
from webapp.quantities import (
    bound_text,
    bounds,
    default_text,
    read_input,
    read_quantity,
    unit_of_input,
    units_of_input,
)
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
  // What things are called comes to the page with the reasons.
  await import(new URL("sheet/reasons.js", window.modules));
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


IN_INCHES = {"length": "in", "volume": "fl oz", "temperature": "degF"}
MEASURED = [name for name, row in INPUTS.items() if row.kind not in ("choice", "text")]
REFUSED_AND_TAKEN = """async ([typed, units]) => {
  const { readInput, hintFor } = await import(new URL("sheet/quantities.js", window.modules));
  await import(new URL("sheet/reasons.js", window.modules));
  return Object.entries(typed).map(([name, each]) => [
    name, each.map((one) => readInput(name, one, units).error ?? ""), hintFor(name, units),
  ]);
}"""


def beyond(row):
    """What is past each bound of an input, and what cannot be read: text and numbers of a job file."""
    least, most = bounds(row)
    ends = [end * 2 - 1 for end in (least,) if end is not None and end > -1]
    ends += [least * 0.99] if least else []
    ends += [most * 1.01 + 1e-6] if most is not None else []
    return [*ends, "0", "-1", "99999999", "1 foo", "much", "1 1", ""]


def refusals(name, units):
    said = []
    for typed in beyond(INPUTS[name]):
        try:
            read_input(typed, INPUTS[name], units)
        except QuantityError as error:
            said.append(str(error))
        else:
            said.append("")
    return said


@pytest.mark.parametrize("length", ["in", "mm", "cm"])
def test_a_refusal_and_a_hint_speak_in_the_units_of_the_job(phone, length):
    units = IN_INCHES if length == "in" else {"length": length, "volume": "mL", "temperature": "degC"}
    rows = [[name, refusals(name, units), hint_of(name, units)] for name in MEASURED]
    typed = {name: beyond(INPUTS[name]) for name in MEASURED}
    assert phone.evaluate(REFUSED_AND_TAKEN, [typed, units]) == rows
    said = [text for _, texts, hint in rows for text in (*texts, hint) if text]
    assert len(said) > 500
    if length == "in":
        assert [text for text in said if re.search(r"\bmm|\bcm|\d °C|\bmeter|metre", text)] == []
    else:
        of_bounds = [text for text in said if re.search("less than|more than|at least", text)]
        assert [text for text in of_bounds if re.search(r"\bin\b|in²|\bft|°F|degF", text)] == []


def hint_of(name, units):
    return default_text(INPUTS[name], unit_of_input(INPUTS[name], units))


@pytest.mark.parametrize("end", ["least", "most"])
def test_the_bound_that_a_refusal_names_is_accepted(end):
    named = 0
    for name in MEASURED:
        row = INPUTS[name]
        for unit in units_of_input(row) if getattr(row, end) else ():
            text = bound_text(row, end, unit)
            value = read_quantity(text, row.kind, unit).value
            assert read_input(value, row, {}).value == value
            named += 1
    assert named > 130


@pytest.mark.parametrize("name", MEASURED)
def test_every_default_and_bound_of_the_inputs_can_be_read(name):
    row = INPUTS[name]
    for text in (row.least, row.most, row.default):
        if text is not None:
            assert read_input(text, row, JOB_UNITS).value is not None
