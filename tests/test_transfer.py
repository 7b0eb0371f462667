"""The phone reads a job file as the server does: the same files taken, the same sentences for the others."""

import copy
import json
from pathlib import Path

import pytest

from tests.test_job_file import BEGUN, REFUSALS, changed, cup, with_cups
from webapp.bench.stages import STAGES
from webapp.bench.walk import TAPS
from webapp.errors import JobFileError
from webapp.job.demo import EXAMPLE_JOB
from webapp.job.file import read_job
from webapp.job.lifts import VERSION

SAVED = Path(__file__).parent / "saved" / "from_version_1.json"
READ = """async (content) => {
  const { readJobFile } = await import(`${modules}keeping/transfer.js`);
  return readJobFile(new Blob([content]));
}"""
SAVE = """async (job) => {
  const { jobFileName, jobFileText } = await import(`${modules}keeping/transfer.js`);
  return [jobFileName(job), jobFileText(job)];
}"""


def entry(id_, **facts):
    given = {"id": id_, "at": BEGUN, **facts}
    return {key: value for key, value in given.items() if value is not None}


def with_entries(entries):
    return with_cups(cup(entries=entries))


def of_version_3(changes):
    whole = cup(begun="2025-11-14T10:30:00.000Z", **changes)
    colours = [{"id": "c1", "cups": [{key: value for key, value in whole.items() if key != "entries"}]}]
    return json.dumps({"format": "sixteenth-job", "version": 3, "colours": colours})


CONTENTS = {
    "empty": "",
    "no json": "hello",
    "list": "[1]",
    "byte order mark": "\ufeff" + json.dumps(EXAMPLE_JOB),
    "version as text": changed(lambda job: job.update(version="1")),
    "version true": changed(lambda job: job.update(version=True)),
    "name a number": changed(lambda job: job.update(name=7)),
    "null section": changed(lambda job: job.update(room=None)),
    "no section": changed(lambda job: job.pop("bench")),
    "null rows": changed(lambda job: job.update(colours=None)),
    "no rows": changed(lambda job: job.pop("colours")),
    "row that is text": changed(lambda job: job["colours"].append("red")),
    "quantity as a number": changed(lambda job: job["room"].update(air_temperature=295.5)),
    "true for a quantity": changed(lambda job: job["room"].update(air_temperature=True)),
    "long name beyond the plane": changed(lambda job: job.update(name="\U0001f600" * 400)),
    "cup with every tap": with_cups(
        cup(
            stages=[stage.name for stage in STAGES],
            entries=[entry(f"e-{tap}", kind="tap", stage=tap) for tap in TAPS],
        )
    ),
    "cups that are no list": changed(lambda job: job["colours"][0].update(cups=5)),
    "cup that is text": with_cups("k"),
    "cup with a foreign key": with_cups(cup(weight=1)),
    "cup with every kind of entry": with_cups(
        cup(
            entries=[
                entry("e1", kind="tap", stage="starting_drops", count=12),
                entry("e2", kind="back", of="e1"),
                entry("e3", kind="reason", stage="make_ready", says="The hygrometer is broken"),
                entry("e4", kind="calendar"),
            ]
        )
    ),
    "entries that are no list": with_entries({"stage": "mix"}),
    "no entries": with_entries(None),
    "entry that is text": with_entries(["mix"]),
    "entry without a moment": with_entries([{"id": "e1", "kind": "tap", "stage": "mix"}]),
    "entry without an id": with_entries([entry(None, kind="tap", stage="mix")]),
    "entry without a kind": with_entries([entry("e1", stage="mix")]),
    "entry whose kind is a list": with_entries([entry("e1", kind=["tap"], stage="mix")]),
    "entry whose kind is no own key": with_entries([entry("e1", kind="constructor")]),
    "entry whose stage is a list": with_entries([entry("e1", kind="tap", stage=["mix"])]),
    "entry with a foreign key": with_entries([entry("e1", kind="tap", stage="mix", by="Jo")]),
    "entry with a count that is text": with_entries([entry("e1", kind="tap", stage="drop", count="2")]),
    "entry with a count that is true": with_entries([entry("e1", kind="tap", stage="drop", count=True)]),
    "back of nothing": with_entries([entry("e1", kind="back")]),
    "version 3 with taps that are no list": of_version_3({"taps": {"stage": "mix"}}),
    "version 3 with no taps": of_version_3({"taps": None}),
    "version 3 with a tap that is text": of_version_3({"taps": ["mix"]}),
    "version 3 with a stage that is a list": of_version_3({"taps": [{"stage": ["mix"], "at": [1]}]}),
    "version 3 with a reason that is a list": of_version_3({"taps": [], "reason": []}),
    "version 3 with a reason of a number": of_version_3({"taps": [], "reason": 0}),
    "version 3 with an empty reason": of_version_3({"taps": [], "reason": ""}),
    "version 3 with a reason before its tap": of_version_3({"taps": [], "reason": "Dry all week"}),
    "version 3 with what happened": of_version_3(
        {
            "reason": "Dry all week",
            "taps": [
                {"stage": "make_ready", "at": "2025-11-14T10:40:00.000Z"},
                {"stage": "drop", "at": "2025-11-14T10:40:01.000Z", "count": 1},
                {"stage": "drop", "at": "2025-11-14T10:40:01.000Z"},
                {"stage": "calendar", "at": "2025-11-14T10:40:02.000Z"},
            ],
        }
    ),
    "entry with an id twice": with_entries([entry("e1", kind="calendar"), entry("e1", kind="calendar")]),
    "entry that says nothing": with_entries([entry("e1", kind="reason", stage="mix", says="")]),
    "entry with a reason that is none": with_entries(
        [{**entry("e1", kind="reason", stage="mix"), "says": None}]
    ),
    "entry with drops by halves": with_entries([entry("e1", kind="tap", stage="drop", count=0.5)]),
    "entry of another century": with_entries([entry("e1", kind="calendar", at="1899-11-14T10:40:00.000Z")]),
    "amounts that are a list": with_cups(cup(amounts=[1])),
    "half a letter": json.dumps(EXAMPLE_JOB).replace("Lake", "\\ud83d"),
    "half a letter in a key": json.dumps(EXAMPLE_JOB).replace("swatch", "\\uDC00swatch"),
    "two foreign keys, one of digits": changed(lambda job: job["room"].update({"zeal": 1, "12": 1})),
    "two foreign keys beyond the plane": changed(lambda job: job.update({"\uffee": 1, "\U0001f600": 1})),
    "a key twice": json.dumps(EXAMPLE_JOB).replace('"room"', '"bench"'),
    "a number of 400 digits": json.dumps(EXAMPLE_JOB).replace('"72"', "7" * 400),
    "a number of 5,000 digits": json.dumps(EXAMPLE_JOB).replace('"72"', "7" * 5000),
    "a number past all numbers": json.dumps(EXAMPLE_JOB).replace('"72"', "-1e400"),
    "a whole number with a point": json.dumps(EXAMPLE_JOB).replace(
        f'"version": {VERSION}', f'"version": {VERSION}.0'
    ),
    "ids of version 3 with quotes, line ends and letters beyond the plane": changed(
        lambda job: job.update(
            version=3, id="j\n", colours=[{"id": 'c"\U0001f600-1', "faces": [{"id": "\\"}]}]
        )
    ),
    "lists without end": "[" * 100_000,
    "groups without end": '{"a":' * 31 + "1" + "}" * 31,
    "brackets in a name": changed(lambda job: job.update(name="[" * 50 + '\\"{')),
    "a key of the language": changed(lambda job: job.update(constructor={}, hasOwnProperty=1)),
    "version 1 without colors": json.dumps({"format": "sixteenth-job", "version": 1}),
    "version 1 with colors that are no list": json.dumps(
        {"format": "sixteenth-job", "version": 1, "colours": {"id": "c1"}}
    ),
    "version 1 with a cup that is text": json.dumps(
        {"format": "sixteenth-job", "version": 1, "colours": [{"id": "c1", "cups": ["k"]}]}
    ),
    "version 1 with a plan that is none": json.dumps(
        {
            "format": "sixteenth-job",
            "version": 1,
            "colours": [{"id": "c1", "cups": [{"plan": [1], "coat": True}]}],
        }
    ),
    "saved by version 1": SAVED.read_text(encoding="utf-8"),
    **{name: changed(change) for name, (change, _) in REFUSALS.items()},
}


def read_on_the_server(content):
    try:
        return {"job": read_job(content.encode())}
    except JobFileError as error:
        return {"error": str(error)}


@pytest.mark.parametrize("name", CONTENTS, ids=str)
def test_a_file_is_read_alike_on_phone_and_server(phone, name):
    assert phone.evaluate(READ, CONTENTS[name]) == read_on_the_server(CONTENTS[name])


def test_a_file_over_5_mb_is_refused_unread(phone):
    answer = phone.evaluate(READ, " " * 5_000_001)
    assert answer["error"].startswith("This file is larger than 5 MB")


def test_a_saved_file_is_taken_by_the_server_and_named_after_the_job(phone):
    job = {**copy.deepcopy(EXAMPLE_JOB), "name": "Café “Quarry Road” / front"}
    name, text = phone.evaluate(SAVE, job)
    assert name == "café-quarry-road-front.json"
    assert read_job(text) == job


def test_a_job_without_a_name_still_has_a_file_name(phone):
    name, _ = phone.evaluate(SAVE, {**copy.deepcopy(EXAMPLE_JOB), "name": ""})
    assert name == "job.json"


BEGIN_AND_SAVE = """async ([job, moment]) => {
  const { newCup, withCalendar, withReason, withTap } = await import(`${modules}clocks/cup-record.js`);
  const { calculate } = await import(`${modules}sheet/sheet.js`);
  const { jobFileText } = await import(`${modules}keeping/transfer.js`);
  const root = calculate(job);
  Object.assign(root.cells.usable_time, { value: 1e300 });
  let cup = newCup({ id: "k1", coat: 1, number: 1, moment, job, root, colourId: "c1" });
  cup = withTap(cup, { id: "e1", moment }, "starting_drops", 7);
  cup = withReason(cup, { id: "e2", moment }, "make_ready", "");
  job.colours[0].cups = [withCalendar(cup, { id: "e3", moment })];
  return jobFileText(job);
}"""


# A phone whose battery was flat counts from 1970; 7,258,118,400 s after that the year 2200 begins: `date -u`.
@pytest.mark.parametrize("moment", [0, 1763116800000, 7258118400000], ids=["never set", "set", "set wrong"])
def test_whatever_clock_a_phone_has_it_keeps_no_cup_that_could_not_be_opened_again(phone, moment):
    [cup_kept] = read_job(phone.evaluate(BEGIN_AND_SAVE, [EXAMPLE_JOB, moment]))["colours"][0]["cups"]
    assert "usable_time" not in cup_kept["amounts"]
    assert cup_kept["amounts"]["cup_capacity"] > 0
    assert {each["at"][:2] for each in cup_kept["entries"]} <= {"20", "21"}
