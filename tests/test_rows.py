"""Rows, parents and levels are known by one table: a level that is added to it alone is one everywhere."""

import pytest

from tests.altered import phone_with
from webapp.inputs.entry import LEVELS_OF_SECTION
from webapp.sheet.levels import LEVELS, children, levels_table, sections_of

WORK_WITH_A_GROOVE = """async () => {
  const store = await import(new URL("keeping/store.js", window.modules));
  const { calculate, findRow, rowAt } = await import(new URL("sheet/sheet.js", window.modules));
  const { jobFileText, readJobFile } = await import(new URL("keeping/transfer.js", window.modules));
  store.openJob({ id: "j", name: "Sign", units: {}, room: {}, card: {}, bench: {}, colours: [] });
  const colour = store.addRow("colour", "job");
  const face = store.addRow("face", colour, { shape: "rectangle", width: "12 in" });
  const groove = store.addRow("groove", face, { width: "1/4" });
  store.edit(groove, "width", "3/8");
  store.setUnit("length", "mm");
  const row = findRow(store.state.sheet, groove);
  const other = store.copyRow(face);
  const copied = store.rowOf(other).row.grooves;
  store.removeRow(groove);
  const isGone = store.rowOf(groove) === null;
  store.undo();
  const { job, error } = await readJobFile(new Blob([jobFileText(store.state.job)]));
  return {
    error: error ?? "",
    name: store.rowOf(groove).row.name,
    parent: store.rowOf(groove).parent.id === face,
    typed: row.typed.width,
    above: rowAt(row, "colour").id === colour,
    copies: copied.length,
    isNewId: copied[0].id !== groove,
    isGone,
    kept: job.colours[0].faces[0].grooves[0].width,
    counted: calculate(job).rows.colour[0].rows.face[0].rows.groove.length,
  };
}"""


def with_grooves(levels):
    """Return the table with a level of grooves below a face."""
    face = levels["face"]
    face["below"].append("groove")
    face["held"].append("groove")
    face["keys"].append("grooves")
    nothing = {"marks": [], "records": [], "sections": [], "below": [], "held": [], "empty": ""}
    groove = {"name": "groove", "parent": "face", "rows": "grooves", "word": "groove", "first_name": "Groove"}
    return {**levels, "groove": {**nothing, **groove, "keys": ["id", "name"]}}


def wide_grooves(inputs):
    """Return the inputs with a width for grooves too."""
    inputs["width"]["levels"].append("groove")
    return inputs


def grooves_in_the_file(shape):
    """Return the shape of a job file as the table of levels and inputs would print it then."""
    keys = {name: shape["face"]["keys"][name] for name in ("id", "name", "width")}
    rows = {"is": "rows", "of": "groove", "word": "groove", "least": 0, "most": 40, "all": 40}
    shape["face"]["keys"]["grooves"] = rows
    return {**shape, "groove": {"keys": keys, "must": ["id"]}}


def test_a_level_that_is_only_in_the_table_is_added_typed_in_copied_removed_and_saved(browser, baked):
    with phone_with(
        browser, baked, levels=with_grooves, inputs=wide_grooves, shape=grooves_in_the_file
    ) as page:
        assert page.evaluate(WORK_WITH_A_GROOVE) == {
            "error": "",
            "name": "Groove 1",
            "parent": True,
            "typed": "3/8 in",
            "above": True,
            "copies": 1,
            "isNewId": True,
            "isGone": True,
            "kept": "3/8 in",
            "counted": 1,
        }


def test_what_is_typed_in_the_job_later_leaves_a_sheet_as_it_was(phone):
    typed = phone.evaluate(
        """async () => {
          const { example } = await import(new URL("printed.js", window.modules));
          const { calculate } = await import(new URL("sheet/sheet.js", window.modules));
          const job = JSON.parse(JSON.stringify(example));
          const root = calculate(job);
          job.colours[0].faces[0].width = "99 in";
          return root.rows.colour[0].rows.face[0].typed.width;
        }"""
    )
    assert typed == "15 3/4"


def test_the_cups_of_a_color_are_seen_from_each_of_its_faces(phone):
    levels = phone.evaluate(
        """async () => {
          const { example } = await import(new URL("printed.js", window.modules));
          const { calculate, rowAt } = await import(new URL("sheet/sheet.js", window.modules));
          const root = calculate(example);
          const face = root.rows.colour[0].rows.face[0];
          return ["", "face", "colour", "job", "cup"].map((level) => rowAt(face, level).level);
        }"""
    )
    assert levels == ["face", "face", "colour", "job", "cup"]


@pytest.mark.parametrize("name", LEVELS)
def test_a_level_stands_below_its_parent_and_no_key_has_two_meanings(name):
    level = LEVELS[name]
    assert level.parent is None or name in children(level.parent)
    keys = levels_table()[name]["keys"]
    assert len(keys) == len(set(keys))


def test_every_section_of_inputs_has_a_level_to_stand_on():
    assert {section for name in LEVELS for section in sections_of(name)} == set(LEVELS_OF_SECTION)
