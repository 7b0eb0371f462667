"""A cup that is under way stays where it is: a job of an older version opens with each at the stage it had.

`saved/from_version_1.json` was saved by version 1, after its cups were walked to these places on the bench,
`saved/from_version_2.json` by version 2, which had opened that one, typed a pace and a tolerance, and begun
a cup; `saved/from_version_3.json` by version 3, which had opened the second, typed bare numbers in all fields
that took them in another unit than the job's, and begun a cup; `saved/from_version_4.json` by version 4,
which had opened the third, and walked a cup with a reason and two drops to its first mist.
"""

import json
from pathlib import Path

import pytest

from tests.altered import phone_with
from webapp.bench.stages import STAGES
from webapp.bench.walk import ENTRIES, TAPS
from webapp.inputs.table import INPUTS
from webapp.job.file import read_job
from webapp.job.lifts import VERSION, WALK_OF_VERSION_1
from webapp.quantities import read_input

FOLDER = Path(__file__).parent / "saved"
SAVED = FOLDER / "from_version_1.json"
SAVED_BY_2 = FOLDER / "from_version_2.json"
SAVED_BY_3 = FOLDER / "from_version_3.json"
SAVED_BY_4 = FOLDER / "from_version_4.json"

# What each color's cups stood at when the job was saved; "over" is done with, given up or tapped to the end.
STOOD_AT = {
    "Lake green": ["recoat_opens", "recoat_opens", "tack_free", "mix"],
    "Given to the calendar": ["tack_free"],
    "Set aside": ["over"],
    "Done with": ["over"],
    "All tapped, one coat": ["over"],
    "Cured, one coat": ["top_coat"],
    "Tack-free, one coat": ["cured"],
    "Three curing taps, two coats": ["cured"],
    "Two curing taps, two coats": ["recoat_closes"],
    "One curing tap, two coats": ["tack_free"],
    "Covered, clear, one vessel": ["tack_free"],
    "Covered, one coat": ["tack_free"],
    "Covered, two coats": ["recoat_opens"],
    "Misted": ["cover"],
    "Between mists": ["second_mist"],
    "Poured": ["first_mist"],
    "Tinted in one vessel, to pour": ["pour"],
    "Clear in one vessel, to pour": ["pour"],
    "Tinted, to the clean cup": ["clean_cup"],
    "Clear, to the clean cup": ["clean_cup"],
    "Hide test": ["tint"],
    "Tint to drop in": ["tint"],
    "Mixing clear": ["mix"],
    "Mixing": ["mix"],
    "B to fill up": ["fill"],
    "B to touch A": ["part_b"],
    "Part A to pour in": ["part_a"],
    "Made ready in part": ["make_ready"],
}
BY_2_STOOD_AT = {**STOOD_AT, "Begun by version 2": ["mix"]}
BY_3_STOOD_AT = {**BY_2_STOOD_AT, "Begun by version 3": ["mix"]}
BY_4_STOOD_AT = {**BY_3_STOOD_AT, "Begun by version 4": ["first_mist"]}
# Read by hand from what version 3 asked for, millimetres, mm in a metre and in2 for a fl oz, in canonical
# units: 1 in2/fl oz = 6.4516 cm2 / 29.5735295625 mL.
MEANT_BY_3 = {
    "card": {"greatest_coat_depth": 0.4, "stated_coverage": 20 * 6.4516 / 29.5735295625},
    "bench": {
        "cup_diameter": 8,
        "residual_film": 0.03,
        "bench_slope": 0.0015,
        "ripple_length": 1.5,
        "bubble_diameter": 0.04,
    },
    "colour": {"tip_diameter": 0.3, "tested_depth": 0.15},
}
# When the second mist of the one cup that waits for it is due: ten minutes after the end of its pour.
SECOND_MIST_AFTER_THE_POUR = 600

OPEN = """async (text) => {
  const { readJobFile } = await import(new URL("keeping/transfer.js", window.modules));
  const record = await import(new URL("clocks/cup-record.js", window.modules));
  const { cupsOf, endOf, endOfPour, newCup, stageOf } = record;
  const { calculate } = await import(new URL("sheet/sheet.js", window.modules));
  const { error, job } = await readJobFile(new Blob([text]));
  if (error) return { error };
  const places = job.colours.map((colour) => [
    colour.name, cupsOf(colour).map((cup) => stageOf(cup)?.name ?? "over"),
  ]);
  const between = cupsOf(job.colours.find((colour) => colour.name === "Between mists"))[0];
  const colourId = job.colours[0].id;
  const begun = newCup({ id: "k", coat: 1, number: 1, moment: 0, job, root: calculate(job), colourId });
  return {
    places: Object.fromEntries(places),
    wait: (endOf(between, stageOf(between)) - endOfPour(between)) / 1000,
    newStages: begun.stages,
  };
}"""

OPEN_WHAT_THE_PHONE_HAS = """async (text) => {
  const { openStorage, recordOf } = await import(new URL("keeping/persistence.js", window.modules));
  const { cupsOf, stageOf } = await import(new URL("clocks/cup-record.js", window.modules));
  const storage = await openStorage(() => {});
  const job = JSON.parse(text);
  await storage.change([["jobs", job.id, recordOf(job, new Date(0).toISOString())]]);
  const opened = await storage.open(job.id);
  const places = opened.colours.map((colour) => [
    colour.name, cupsOf(colour).map((cup) => stageOf(cup)?.name ?? "over"),
  ]);
  return [opened.version, Object.fromEntries(places)];
}"""


LIFT = """async ([job, card]) => {
  const { lift, liftCard } = await import(new URL("keeping/lift.js", window.modules));
  return { job: lift(job), card: liftCard(card) };
}"""


def as_it_is(stages):
    return stages


def with_a_third_mist(stages):
    """A stage for hands, and one after them, that no cup of version 1 had."""
    place = [stage["name"] for stage in stages].index("cover")
    mist, wait = stages[place - 1], stages[-1]
    added = {**mist, "name": "third_mist", "duration": ["third_mist"]}
    return [*stages[:place], added, *stages[place:], {**wait, "name": "polish", "duration": ["polish_wait"]}]


def without_the_second_mist(stages):
    return [{**stage, "retired": stage["retired"] or stage["name"] == "second_mist"} for stage in stages]


def with_another_name_for_the_wait(stages):
    renamed = {"second_mist": ["mist_wait", "second_mist"]}
    return [{**stage, "duration": renamed.get(stage["name"], stage["duration"])} for stage in stages]


@pytest.mark.parametrize(
    "change",
    [as_it_is, with_a_third_mist, without_the_second_mist, with_another_name_for_the_wait],
    ids=lambda change: change.__name__,
)
def test_every_cup_saved_by_an_older_version_is_where_it_was(browser, baked, change):
    with phone_with(browser, baked, stages=change) as page:
        opened = page.evaluate(OPEN, SAVED.read_text(encoding="utf-8"))
        by_2 = page.evaluate(OPEN, SAVED_BY_2.read_text(encoding="utf-8"))
        by_3 = page.evaluate(OPEN, SAVED_BY_3.read_text(encoding="utf-8"))
        by_4 = page.evaluate(OPEN, SAVED_BY_4.read_text(encoding="utf-8"))
    assert opened["places"] == STOOD_AT
    assert by_2["places"] == BY_2_STOOD_AT
    assert by_3["places"] == BY_3_STOOD_AT
    assert by_4["places"] == BY_4_STOOD_AT
    assert opened["wait"] == by_2["wait"] == by_3["wait"] == SECOND_MIST_AFTER_THE_POUR


def test_a_new_cup_has_the_stage_that_was_added_and_not_the_one_that_was_retired(browser, baked):
    names = {}
    for change in (as_it_is, with_a_third_mist, without_the_second_mist):
        with phone_with(browser, baked, stages=change) as page:
            names[change] = page.evaluate(OPEN, SAVED.read_text(encoding="utf-8"))["newStages"]
    assert set(names[with_a_third_mist]) - set(names[as_it_is]) == {"third_mist", "polish"}
    assert set(names[as_it_is]) - set(names[without_the_second_mist]) == {"second_mist"}


def test_a_job_that_the_phone_has_kept_since_version_1_opens_as_one_of_this(browser, baked):
    with phone_with(browser, baked) as page:
        version, places = page.evaluate(OPEN_WHAT_THE_PHONE_HAS, SAVED.read_text(encoding="utf-8"))
    assert version == VERSION
    assert places == STOOD_AT


def test_the_server_gives_the_cups_of_version_1_the_stages_that_they_had():
    job = read_job(SAVED.read_bytes())
    assert job["version"] == VERSION
    walks = {colour["name"]: colour["cups"][0]["stages"] for colour in job["colours"]}
    assert len(walks["Lake green"]) == 16
    assert "tint" not in walks["Clear, to the clean cup"]
    assert "clean_cup" not in walks["Tinted in one vessel, to pour"]
    assert "recoat_opens" not in walks["Covered, one coat"]


def written_as_version_1_did(cup):
    """Put a cup's taps and its reason back in place of its entries."""
    entries = cup.pop("entries")
    cup["taps"] = [
        {"stage": each["kind"]} | {key: each[key] for key in each if key not in ("id", "kind")}
        for each in entries
        if each["kind"] != "reason"
    ]
    for reason in (each for each in entries if each["kind"] == "reason"):
        cup["reason"] = reason["says"]


def test_nothing_that_was_in_a_saved_job_is_lost():
    before = json.loads(SAVED.read_bytes())
    after = read_job(SAVED.read_bytes())
    for colour in after["colours"]:
        for cup in colour["cups"]:
            del cup["stages"]
            cup["plan"]["version"] = 1
            written_as_version_1_did(cup)
    assert {**after, "version": 1} == before


def plans(job):
    return [job, *(cup["plan"] for colour in job["colours"] for cup in colour["cups"])]


def test_what_version_2_called_otherwise_is_kept_in_the_job_and_in_the_plans_of_its_cups():
    before, after = json.loads(SAVED_BY_2.read_bytes()), read_job(SAVED_BY_2.read_bytes())
    paced = [plan for plan in plans(before) if "spread_rate" in plan["bench"]]
    assert len(paced) == 2
    for old, new in zip(plans(before), plans(after), strict=True):
        assert new["version"] == VERSION
        assert new["card"].get("stated_ratio_tolerance") == old["card"].get("ratio_tolerance")
        rest = {name: value for name, value in old["bench"].items() if name != "spread_rate"}
        # 929.0304 cm2 at 120 cm2/min take 7.74 min.
        assert new["bench"] == rest | ({"square_foot_time": "7.74 min"} if old in paced else {})


# 929.0304 cm2, 144 in2 and 0.09290304 m2 are one square foot.
@pytest.mark.parametrize(
    ("rate", "time"),
    [
        ("100", "9.29 min"),
        ("100 cm2/min", "9.29 min"),
        ("72 in2/min", "2 min"),
        (" 387,1 cm2/min ", "2.4 min"),
        (929.0304 / 90, "1.5 min"),
        ("10000", "0.0929 min"),
        ("as fast as I can", None),
        ("0", None),
        ("-4", None),
        ("", None),
        (None, None),
        (True, None),
    ],
)
def test_a_pace_of_version_2_becomes_the_time_for_a_square_foot(phone, rate, time):
    bench = {"cup_capacity": "16 oz", "spread_rate": rate, "usable_share": "80 %"}
    job = {"format": "sixteenth-job", "version": 2, "card": {"ratio_tolerance": "about 3"}, "bench": bench}
    lifted = read_job(json.dumps(job))
    rest = {"cup_capacity": "16 oz", "usable_share": "80 %"}
    assert lifted["bench"] == (rest if time is None else rest | {"square_foot_time": time})
    assert lifted["card"] == {"stated_ratio_tolerance": "about 3"}
    assert phone.evaluate(LIFT, [job, {}])["job"] == lifted


def test_a_card_that_the_phone_has_kept_since_version_2_is_lifted_too(phone):
    card = {"name": "Slow", "ratio_tolerance": "3 %", "pot_life": "40 min"}
    lifted = phone.evaluate(LIFT, [{"version": VERSION}, card])["card"]
    assert lifted == {"name": "Slow", "pot_life": "40 min", "stated_ratio_tolerance": "3 %"}
    again = phone.evaluate(LIFT, [{"version": VERSION}, lifted])["card"]
    assert again == lifted


def amounts_of(job, section, rows):
    """What these inputs of a section, or of a list of rows, are read as in the units of the job."""
    groups = job["colours"] if section == "colour" else [job[section]]
    typed = [(name, group[name]) for group in groups for name in rows if name in group]
    return {name: read_input(text, INPUTS[name], job["units"]).value for name, text in typed}


@pytest.mark.parametrize("units", ["in", "mm", "cm"])
def test_a_bare_number_of_version_3_stays_the_amount_that_it_was(phone, units):
    before = json.loads(SAVED_BY_3.read_bytes())
    for job in plans(before):
        job["units"]["length"] = units
    after = read_job(json.dumps(before))
    assert phone.evaluate(LIFT, [before, {}])["job"] == after
    begun = after["colours"][-1]["cups"][-1]["plan"]
    for section, meant in MEANT_BY_3.items():
        assert amounts_of(after, section, meant) == pytest.approx(meant)
        assert amounts_of(begun, section, meant) == pytest.approx(meant)


# What is typed behind a number, and what cannot be read, stays as it was typed.
@pytest.mark.parametrize(
    ("typed", "in_inches"),
    [
        ("75", "75 mm"),
        (" 2 1/2 ", " 2 1/2 mm"),
        ("0", "0 mm"),
        ("-3", "-3 mm"),
        ("3 in", "3 in"),
        ('3"', '3"'),
        ("1 ft 3", "1 ft 3"),
        ("80 mm", "80 mm"),
        ("", ""),
        ("about 70", "about 70"),
        ("1,500", "1,500"),
        (7.5, 7.5),
        (None, None),
    ],
)
def test_the_unit_is_written_behind_a_bare_number_only_where_the_job_would_read_another(
    phone, typed, in_inches
):
    for units, expected in (({"length": "in"}, in_inches), ({"length": "mm"}, typed), (None, in_inches)):
        job = {"format": "sixteenth-job", "version": 3, "bench": {"cup_diameter": typed}, "colours": []}
        job |= {} if units is None else {"units": units}
        lifted = read_job(json.dumps(job))
        assert lifted["bench"].get("cup_diameter") == expected
        assert phone.evaluate(LIFT, [job, {}])["job"]["bench"].get("cup_diameter") == expected


def test_a_coverage_of_version_3_was_in_square_inches_whatever_the_jobs_units(phone):
    for length, expected in (("in", "20"), ("mm", "20 in2/fl oz"), ("cm", "20 in2/fl oz")):
        job = {"format": "sixteenth-job", "version": 3, "units": {"length": length}}
        job |= {"card": {"stated_coverage": "20"}}
        assert read_job(json.dumps(job))["card"]["stated_coverage"] == expected
        assert phone.evaluate(LIFT, [job, {}])["job"]["card"]["stated_coverage"] == expected


def test_a_card_that_the_phone_has_kept_since_version_3_keeps_its_depth_and_coverage_in_any_job(phone):
    card = {
        "name": "Slow",
        "greatest_coat_depth": "4",
        "stated_coverage": "20",
        "stated_coverage_depth": "2 mm",
    }
    lifted = phone.evaluate(LIFT, [{"version": VERSION}, card])["card"]
    assert lifted == {**card, "greatest_coat_depth": "4 mm", "stated_coverage": "20 in2/fl oz"}
    assert phone.evaluate(LIFT, [{"version": VERSION}, lifted])["card"] == lifted


def test_what_happened_to_a_cup_of_version_4_is_kept_as_entries_with_the_same_ids_on_every_phone(phone):
    before, after = json.loads(SAVED_BY_4.read_bytes()), read_job(SAVED_BY_4.read_bytes())
    assert phone.evaluate(LIFT, [before, {}])["job"] == after
    cups = [[cup for colour in job["colours"] for cup in colour["cups"]] for job in (before, after)]
    for old, new in zip(*cups, strict=True):
        assert "taps" not in new
        assert len({each["id"] for each in new["entries"]}) == len(new["entries"])
        written_as_version_1_did(new)
        assert new["taps"] == old["taps"]
        assert new.get("reason") == old.get("reason")
    [cup] = read_job(SAVED_BY_4.read_bytes())["colours"][-1]["cups"]
    drops = [each for each in cup["entries"] if each.get("stage") == "drop"]
    # Both were tapped at 9:28:15.804, the second as a finger bounced.
    assert [each["id"] for each in drops] == ["drop-20251114092815804", "drop-20251114092815804-2"]


def test_no_name_of_version_1_has_left_the_table():
    saved = json.loads(SAVED.read_bytes())
    taps = {tap["stage"] for colour in saved["colours"] for cup in colour["cups"] for tap in cup["taps"]}
    assert {"top_coat", "recoat_closes", "second_mist", "clean_cup"} <= taps
    assert taps <= {*TAPS, *ENTRIES}
    assert [name for name, _ in WALK_OF_VERSION_1 if name not in {stage.name for stage in STAGES}] == []
