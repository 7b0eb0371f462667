"""What is known of a kind of quantity stands in one record, and both languages go by it."""

import pytest

from tests.altered import phone_with
from webapp.conversions import conversions
from webapp.inputs.table import INPUTS
from webapp.kinds import JOB_UNITS, KINDS
from webapp.showing import unit_shown
from webapp.units import canonical_units

CHOICES = [
    {"length": length, "volume": volume, "temperature": temperature}
    for length in JOB_UNITS["length"]
    for volume in JOB_UNITS["volume"]
    for temperature in JOB_UNITS["temperature"]
]
SHOWN = """async (choices) => {
  const { unitShown } = await import(new URL("sheet/quantities.js", window.modules));
  const { units } = await import(new URL("printed.js", window.modules));
  const kinds = Object.keys(units);
  return choices.map((chosen) => Object.fromEntries(kinds.map((kind) => [kind, unitShown(kind, chosen)])));
}"""
READ = """async ([text, kind, unit]) => {
  const { readQuantity, show } = await import(new URL("sheet/quantities.js", window.modules));
  const { value, note, error } = readQuantity(text, kind, unit);
  return error ?? [value, note, show(value, kind, unit)];
}"""


def test_every_kind_that_a_formula_or_an_input_has_is_in_the_table():
    assert set(KINDS) == set(canonical_units()) - {"truth"}
    assert {each.kind for each in INPUTS.values()} - {"choice", "text"} <= set(KINDS)


@pytest.mark.parametrize("name", KINDS)
def test_a_record_names_only_units_that_there_are(name):
    kind = KINDS[name]
    names = [unit.name for unit in kind.units]
    assert len(names) == len(set(names))
    assert set(kind.job_units) <= set(names)
    if kind.shown_with:
        other, table = kind.shown_with
        assert list(table) == list(KINDS[other].job_units)
        assert set(table.values()) <= set(names)
    for unit in kind.units:
        assert set(unit.taken_as) <= {unit.name, *unit.spellings}
        if unit.finer:
            assert conversions(name)[unit.finer[0]].factor < conversions(name)[unit.name].factor


def test_phone_and_server_show_each_kind_in_the_unit_that_goes_with_the_jobs(phone):
    assert phone.evaluate(SHOWN, CHOICES) == [
        {kind: unit_shown(kind, chosen) for kind in KINDS} for chosen in CHOICES
    ]


def test_the_phone_goes_by_the_record_alone(browser, baked):
    def other_habits(units):
        thou = next(unit for unit in units["length"]["shown"] if unit["name"] == "thou")
        gallon = next(unit for unit in units["volume"]["shown"] if unit["name"] == "gal")
        thou["takenAs"] = {"mils": "hairs"}
        gallon["finer"] = ["L", 1]
        return {**units, "volume": {**units["volume"], "isCompound": True, "example": "a pint"}}

    with phone_with(browser, baked, units=other_habits) as page:
        assert page.evaluate(READ, ["2 mils", "length", "in"])[1] == "mils taken as hairs"
        assert page.evaluate(READ, ["1 L 500 mL", "volume", "mL"])[0] == 1500
        assert page.evaluate(READ, ["0.5 gal", "volume", "gal"])[2] == "1.89 L"
        assert page.evaluate(READ, ["much", "volume", "mL"]).endswith("such as a pint.")
