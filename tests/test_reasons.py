"""Every sentence that the sheet says calls each thing it speaks of by the label of that thing's record."""

import re
from copy import deepcopy

import pytest

from tests.random_jobs import random_job
from webapp.errors import FormulaError
from webapp.formulas.book import book_of, check, formula, marks_in, valid_range
from webapp.inputs.table import INPUTS
from webapp.job.demo import EXAMPLE_JOB
from webapp.names.tables import asked_by_tables
from webapp.sheet.labels import called, in_sentence
from webapp.sheet.levels import LEVELS, ancestors
from webapp.sheet.reasons import because, row_title, sentence, ways_out
from webapp.sheet.report import job_sheet_text, plan
from webapp.sheet.runner import Blank, calculate
from webapp.sheet.wiring import kind_of, load_sheet
from webapp.units import Centimetres, Truth

SHEET = load_sheet()
BOOK = SHEET.book
CELLS = [node for node in SHEET.nodes if node.kind != "check"]
EMPTY = [(parent, level.name) for level in LEVELS.values() if level.empty for parent in [level.parent]]
SENTENCES = {
    **{name: (each.formula.levels, (each.says, *each.would_do)) for name, each in BOOK.checks.items()},
    **{name: (BOOK.formulas[each.of].levels, (each.says,)) for name, each in BOOK.ranges.items()},
}


def all_rows(seed):
    """A row of each level, of a job with all its cells."""
    job = {**random_job(seed), "colours": deepcopy(EXAMPLE_JOB["colours"])}
    job["colours"][0]["faces"][0]["openings"] = [{"id": "o1", "name": "Eye", "shape": "circle"}]
    rows = {}
    for row in calculate(job).everything():
        rows.setdefault(row.level, row)
    return rows


ROWS = all_rows(1)


def is_plain(says):
    """Whether a sentence is one that a person can read: no mark, no identifier, a capital and an end."""
    return re.fullmatch(r"[A-Z0-9\"][^{}_]*[.]", says, re.DOTALL) is not None


def says_label(says, name):
    """Whether a sentence speaks of a name by its label."""
    return called(name) in says or in_sentence(name) in says


@pytest.mark.parametrize("kind", ["missing", "arithmetic"])
@pytest.mark.parametrize("node", CELLS, ids=lambda node: f"{node.level}-{node.name}")
def test_why_a_cell_is_blank_is_said_by_its_label_and_its_row(node, kind):
    row = ROWS[node.level]
    says = because(Blank(kind, node.name, row))
    assert is_plain(says)
    assert says.startswith(called(node.name))
    assert row.level == "job" or row_title(row) in says


@pytest.mark.parametrize(("level", "below"), EMPTY)
def test_a_row_without_rows_says_what_it_lacks(level, below):
    says = because(Blank("empty", below, ROWS[level]))
    assert is_plain(says)
    assert LEVELS[below].empty in says


@pytest.mark.parametrize("name", SENTENCES)
def test_a_sentence_of_a_check_or_a_range_calls_all_it_marks_by_their_labels_on_every_row(name):
    levels, texts = SENTENCES[name]
    for level in levels:
        for text in texts:
            says = sentence(text, ROWS[level])
            assert is_plain(says), says
            for kind, marked in marks_in(text):
                assert kind == "cell" or says_label(says, marked), says


@pytest.mark.parametrize("name", SENTENCES)
def test_a_way_out_shows_only_cells_that_stand_on_the_row_or_above_it(name):
    levels, texts = SENTENCES[name]
    for level in levels:
        seen = {node.name for node in CELLS if node.level in ancestors(level)}
        assert {marked for text in texts for _, marked in marks_in(text)} <= seen


# A check that is wrong only of several cups may call them so.
SEVERAL = {"wet_edge_lost": {"cups_on_piece"}}


@pytest.mark.parametrize("name", SENTENCES)
def test_a_sentence_reads_well_where_what_it_counts_is_one(name):
    """A count of one stands before no plural: no sentence counts "1 cups"."""
    _, texts = SENTENCES[name]
    counts = {cell for text in texts for _, cell in marks_in(text) if kind_of(cell, SHEET) == "count"}
    for text in texts:
        for cell in counts - SEVERAL.get(name, set()):
            found = re.search(rf"\{{cell:{cell}\}} (\w+s)\b(?<!\bis)(?<!\bhas)", text)
            assert found is None, text


@pytest.mark.parametrize("name", [name for name, each in BOOK.checks.items() if each.would_do])
def test_of_several_ways_out_each_is_a_sentence_of_its_own(name):
    ways = BOOK.checks[name].would_do
    assert len(ways) >= 2
    assert len(set(ways)) == len(ways)


def example(**changes):
    """The example with other figures typed in its room, card, bench, colour or face."""
    job = {**EXAMPLE_JOB, "colours": [{**EXAMPLE_JOB["colours"][0]}]}
    [colour] = job["colours"]
    colour["faces"] = [{**colour["faces"][0]}]
    for name, typed in changes.items():
        section = INPUTS[name].section
        if section in ("room", "card", "bench"):
            job[section] = {**job[section], name: typed}
        else:
            (colour["faces"][0] if section in ("face", "shape") else colour)[name] = typed
    return job


def said(job, name):
    """What a check says on the first row where it is wrong, and what would do."""
    for row in calculate(job).everything():
        for result in row.checks:
            if result.name == name and result.state == "wrong":
                record = BOOK.checks[name]
                return sentence(record.says, row), ways_out(record, row)
    raise AssertionError(f"{name} is not wrong on any row")


def test_a_check_is_said_in_the_persons_own_units():
    cold = example(surface_temperature="40 degF", air_temperature="72 degF")
    says, _ = said(cold, "too_cold_to_cure")
    # The example's card cures at 15 degC, 59 degF, and no colder.
    assert says.startswith("The face is at 40 °F, under the lowest cure temperature of 59 °F: ")
    metric = {**cold, "units": {**cold["units"], "temperature": "degC"}}
    says, _ = said(metric, "too_cold_to_cure")
    assert says.startswith("The face is at 4 °C, under the lowest cure temperature of 15 °C: ")


def test_a_way_out_names_the_thing_as_its_field_does_and_what_it_reads():
    _, ways = said(example(air_temperature="120 degF"), "no_time_to_pour")
    assert ways[0] == "Cool the parts: the resin temperature is 120 °F."


def test_an_amount_to_mix_is_said_in_fractions_of_the_cups_marks():
    hot = {"air_temperature": "90 degF", "resin_temperature": "90 degF", "pot_life": "20 min", "width": "31"}
    _, ways = said(example(**hot), "cup_warm_while_poured")
    # The cup is marked every quarter of an ounce.
    assert [way for way in ways if way.startswith("Mix less")] == ["Mix less than 5 1/4 fl oz in a cup."]


def test_a_way_out_is_passed_over_where_its_figure_is_not_known():
    coarse = {"cup_graduation": "100 mL"}
    _, all_ways = said(example(**coarse), "ratio_coarse")
    _, fewer = said(example(**coarse, density_a=""), "ratio_coarse")
    assert [way for way in all_ways if way not in fewer] == [
        way for way in all_ways if way.startswith("Weigh")
    ]
    assert len(fewer) == len(all_ways) - 1


def test_a_range_that_was_left_says_so_in_the_persons_own_units():
    row = next(row for row in calculate(example(surface_temperature="40 degF")).everything())
    says = because(row.cells["curing_temperature"].blank)
    assert says.startswith("The face is at 40 °F, under the lowest cure temperature of 59 °F; ")


def test_the_plan_gives_what_would_do_for_programs_and_for_people():
    job = example(air_temperature="120 degF")
    [found] = [each for each in plan(job)["checks"] if each["name"] == "no_time_to_pour"]
    assert "Wait for a cooler hour." in found["would_do"]
    assert "{" not in found["says"]
    assert "    to fix: Wait for a cooler hour." in job_sheet_text(job).splitlines()
    [right] = [each for each in plan(EXAMPLE_JOB)["checks"] if each["name"] == "no_time_to_pour"]
    assert (right["state"], right["would_do"]) == ("right", [])


def length(says, ways=()):
    @check(level="face", severity="note", beside="depth", says=says, would_do=ways)
    def too_long(depth: Centimetres) -> Truth:
        """Too long."""
        return depth > 1

    return too_long


@pytest.mark.parametrize(
    ("says", "ways", "refused"),
    [
        ("Depth is {cel:depth}.", (), "a mark is {label:NAME} or {cell:NAME}, found 'Depth is {cel:depth}.'"),
        ("Too deep.", ("Pour {label:depth less.",), "found 'Pour {label:depth less.'"),
        ("Width is {cell:width}.", (), "says what width reads, but too_long does not ask for width"),
    ],
)
def test_a_mark_that_cannot_be_filled_stops_the_book_with_file_and_name(says, ways, refused):
    with pytest.raises(FormulaError, match=re.escape(refused)) as stopped:
        book_of([length(says, ways)])
    assert str(stopped.value).startswith("test_reasons.py: too_long: ")


def test_a_range_may_show_only_what_its_formula_asks_for():
    @formula(level="face")
    def reach(depth: Centimetres) -> Centimetres:
        """Reach.

        Source: none.
        """
        return depth

    @valid_range(says="Width is {cell:width}.")
    def reach_range(depth: Centimetres) -> Truth:
        """Range."""
        return depth > 1

    with pytest.raises(FormulaError, match="reach_range: says what width reads, but reach does not ask for"):
        book_of([reach, reach_range])


@pytest.mark.parametrize(
    ("name", "level"), [("widht", "face"), ("opening_area", "face"), ("cup_volume", "face")]
)
def test_a_name_that_is_not_there_or_not_in_sight_is_asked_of_the_bake_with_its_level(name, level):
    book = book_of([length(f"The {{label:{name}}} is too long.", ("Mend the {label:depth}.",))])
    asked = [each for each in asked_by_tables(book) if each.by.startswith("the check too_long, label")]
    assert [(each.kind, each.name, each.level) for each in asked] == [
        ("cell in reach", name, level),
        ("cell in reach", "depth", level),
    ]
    assert {each.file for each in asked} == {"webapp/formulas/test_reasons.py"}


IN_JAVASCRIPT = """async ([job, texts]) => {
  const { calculate, everyRow } = await import(new URL("sheet/sheet.js", window.modules));
  const { sentence } = await import(new URL("sheet/reasons.js", window.modules));
  const rows = [...everyRow(calculate(job))];
  return texts.map(([level, text]) => [
    sentence(text), ...rows.filter((row) => row.level === level).map((row) => sentence(text, row)),
  ]);
}"""


@pytest.mark.parametrize("seed", range(0, 30, 3))
def test_the_phone_says_every_sentence_of_every_row_the_same(phone, seed):
    job = random_job(seed)
    rows = list(calculate(job).everything())
    texts = [(level, text) for levels, found in SENTENCES.values() for level in levels for text in found]
    ours = [
        [sentence(text), *(sentence(text, row) for row in rows if row.level == level)]
        for level, text in texts
    ]
    assert phone.evaluate(IN_JAVASCRIPT, [job, texts]) == ours
