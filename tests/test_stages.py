"""The bench's stages: the table is whole, every cell it names exists, clocks count from where they must."""

import json

import pytest

from webapp.bench.ready import READY_LINES
from webapp.bench.stage import CONTACT, DUE, EARLIEST, END_OF_POUR, LATEST, OWN_START
from webapp.bench.stages import STAGES
from webapp.bench.walk import LAST_HAND_STAGE, MOMENTS, TAPS, hand_stages, stages_table
from webapp.formulas.constants import CONSTANTS
from webapp.job.demo import EXAMPLE_JOB
from webapp.job.file import read_job
from webapp.job.lifts import VERSION
from webapp.sheet.runner import calculate
from webapp.sheet.wiring import load_sheet

NAMES = [stage.name for stage in STAGES]
BY_NAME = {stage.name: stage for stage in STAGES}


def cells_of(stage):
    beside = [cell for each in stage.beside for cell in each.cells]
    ready = [cell for line in stage.lines for cell in line.cells]
    return [each for each in (*stage.duration[:1], *stage.figures, *beside, *ready) if each]


def test_a_cup_walks_in_the_order_of_the_work():
    assert NAMES == [
        "make_ready",
        "part_a",
        "part_b",
        "fill",
        "mix",
        "tint",
        "clean_cup",
        "pour",
        "first_mist",
        "second_mist",
        "cover",
        "tack_free",
        "recoat_opens",
        "recoat_closes",
        "cured",
        "top_coat",
    ]


def test_hands_leave_a_cup_once_it_is_covered():
    assert hand_stages()[-2:] == ("second_mist", "cover")
    assert {row["name"] for row in stages_table() if not row["by_hand"]} == {
        "tack_free",
        "recoat_opens",
        "recoat_closes",
        "cured",
        "top_coat",
    }


def test_no_tap_has_the_name_of_another():
    assert len(TAPS) == len(set(TAPS))


@pytest.mark.parametrize("stage", STAGES, ids=NAMES)
def test_every_cell_of_a_stage_is_in_the_sheet(stage):
    sheet = load_sheet()
    known = {node.name for node in sheet.nodes}
    assert set(cells_of(stage)) <= known
    assert set(stage.heat_checks) <= set(sheet.book.checks)


def test_the_ready_lines_ask_checks_that_there_are():
    known = set(load_sheet().book.checks)
    assert {check for line in READY_LINES for check in line.checks} <= known


@pytest.mark.parametrize("stage", STAGES, ids=NAMES)
def test_a_stage_has_one_instruction_and_one_button(stage):
    assert stage.title
    assert stage.instruction.endswith((".", "?"))
    assert 0 < len(stage.button) <= 24
    assert len(stage.instruction) <= 64


@pytest.mark.parametrize("stage", [each for each in STAGES if each.duration], ids=lambda each: each.name)
def test_a_clock_says_what_it_is_what_was_missed_and_why_there_is_none(stage):
    assert stage.counts_from in (CONTACT, END_OF_POUR, OWN_START)
    assert stage.bound in (DUE, EARLIEST, LATEST)
    assert stage.clock
    assert stage.late
    assert stage.past
    assert stage.without
    assert stage.rings


def test_mists_and_what_must_not_be_early_count_from_the_end_of_the_pour():
    counted = [name for name in NAMES if BY_NAME[name].counts_from == END_OF_POUR]
    assert counted == ["first_mist", "second_mist", "tack_free", "recoat_opens", "cured", "top_coat"]


def test_what_must_not_be_late_counts_from_the_contact():
    late = [name for name in NAMES if BY_NAME[name].bound == LATEST]
    assert late == ["pour", "recoat_closes"]
    assert all(BY_NAME[name].counts_from == CONTACT for name in late)


def test_contact_pour_and_cover_come_in_that_order():
    places = [NAMES.index(name) for name in (MOMENTS[CONTACT], MOMENTS[END_OF_POUR], LAST_HAND_STAGE)]
    assert places == sorted(places)


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("make_ready", "Gloves"),
        ("part_b", "lasting allergy"),
        ("tint", "limit"),
        ("first_mist", "flammable"),
        ("second_mist", "flammable"),
        ("top_coat", "respirator"),
    ],
)
def test_a_caution_stands_where_it_matters(name, word):
    assert word in " ".join(BY_NAME[name].cautions)


def test_the_heat_of_a_cup_is_looked_after_from_combining_to_the_pour():
    looked_after = [stage.name for stage in STAGES if stage.heat_checks]
    assert looked_after == ["part_b", "fill", "mix", "tint", "clean_cup", "pour"]
    for name in ("mix", "tint", "clean_cup", "pour"):
        assert "foil tray" in " ".join(BY_NAME[name].quiet)


def test_heat_is_no_caution_that_always_stands_there_and_nothing_is_called_dangerous():
    said = [words for stage in stages_table() for words in (*stage["cautions"], stage["instruction"])]
    assert not [words for words in said if "smoke" in words]
    assert "dangerous" not in json.dumps(stages_table())


def test_the_hide_test_is_a_puddle_as_deep_as_the_film():
    said = " ".join([BY_NAME["tint"].instruction, *BY_NAME["tint"].quiet])
    for words in ("puddle as deep as the film", "ring of tape", "printed black and white stripes"):
        assert words in said
    assert "A thin smear proves nothing about a film ten times as deep." in said


def test_the_pour_takes_the_cups_own_time_and_for_cups_of_older_versions_the_working_time():
    assert BY_NAME["pour"].duration == ("pour_by", "usable_time")


def test_a_blank_mixing_time_is_planned_as_four_minutes_and_the_working_names_whose_choice_that_is():
    card = {name: text for name, text in EXAMPLE_JOB["card"].items() if name != "mix_time"}
    root = calculate(EXAMPLE_JOB | {"card": card}, load_sheet())
    planned = root.cells["planned_mix_time"]
    assert (planned.value, planned.winner) == (240, "assumed_mix_time")
    [assumed] = [each for each in CONSTANTS if each.name == "assumed_mix_time"]
    assert assumed.source == "our choice: planned where the card gives no mixing time"
    # With 2 min for the tint and 1 min to change cups, as the bench's defaults say.
    assert root.cells["changeover"].value == 420
    assert root.cells["mix_time"].value is None


def test_what_burns_or_cures_defers_to_the_maker():
    for name in ("part_b", "first_mist", "second_mist"):
        assert "maker's SDS" in " ".join(BY_NAME[name].cautions)


def test_a_cup_past_its_pour_by_is_spread_thin_and_a_smoking_one_left_alone():
    says = BY_NAME["pour"].past
    assert "Do not pour" in says
    assert "thin in a foil tray" in says
    assert "do not lift it" in says


def test_prompts_cover_sides_and_bottom_in_rising_shares():
    prompts = BY_NAME["mix"].prompts
    shares = [prompt.share for prompt in prompts]
    assert shares == sorted(shares)
    assert shares[0] == 0
    assert shares[-1] < 1
    said = " ".join(prompt.says for prompt in prompts)
    assert "sides" in said
    assert "bottom" in said


def test_the_table_is_plain_data():
    assert json.loads(json.dumps(stages_table()))[0]["lines"][0]["name"] == "gloves"


def test_a_job_file_takes_every_tap():
    at = "2025-11-14T10:40:00.000Z"
    taps = [{"id": f"e-{name}", "at": at, "kind": "tap", "stage": name} for name in TAPS]
    cup = {
        "id": "k1",
        "coat": 1,
        "number": 1,
        "begun": at,
        "amounts": {},
        "plan": {"format": "sixteenth-job", "version": VERSION, "colours": [{"id": "c1"}]},
        "stages": NAMES,
        "entries": taps,
    }
    job = {"format": "sixteenth-job", "version": VERSION, "colours": [{"id": "c1", "cups": [cup]}]}
    assert read_job(json.dumps(job))["colours"][0]["cups"][0]["entries"] == taps
