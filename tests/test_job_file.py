"""A job file is opened whole, or refused with a sentence that says what is wrong and what to do."""

import copy
import json

import pytest

from webapp.errors import JobFileError
from webapp.job.demo import EXAMPLE_JOB
from webapp.job.file import read_job
from webapp.job.lifts import VERSION

BEGUN = "2025-11-14T10:40:00.000Z"
NOT_JSON = "This is no job file: it is not JSON. Choose a file that was saved as a job file."


def changed(change):
    job = copy.deepcopy(EXAMPLE_JOB)
    change(job)
    return json.dumps(job)


def cup(**changes):
    """A cup as the bench keeps it, begun and not yet tapped."""
    plan = {"format": "sixteenth-job", "version": VERSION, "colours": [{"id": "c1", "cups": []}]}
    whole = {
        "id": "k1",
        "coat": 1,
        "number": 1,
        "begun": BEGUN,
        "amounts": {"mix_time": 180, "gel_time": 2400},
    }
    return {**whole, "plan": plan, "stages": ["make_ready", "mix"], "entries": [], **changes}


def with_cups(*cups):
    return changed(lambda job: job["colours"][0].update(cups=list(cups)))


def without(key):
    return {name: value for name, value in cup().items() if name != key}


def rows(count, letter="f"):
    return [{"id": f"{letter}{place}"} for place in range(count)]


def test_a_job_comes_back_as_it_was_saved():
    assert read_job(json.dumps(EXAMPLE_JOB)) == EXAMPLE_JOB


def test_what_was_typed_is_kept_even_if_it_cannot_be_read():
    job = read_job(changed(lambda job: job["colours"][0]["faces"][0].update(width="twelve")))
    assert job["colours"][0]["faces"][0]["width"] == "twelve"


def test_markup_in_a_name_is_only_text():
    job = read_job(changed(lambda job: job.update(name="<img src=x onerror=alert(1)>")))
    assert job["name"] == "<img src=x onerror=alert(1)>"


@pytest.mark.parametrize(
    "content", [b"", b"\xff\xfe\x00", "no json", '{"a": NaN}', '{"a": -Infinity}', "1" * 5000], ids=range(6)
)
def test_what_is_not_json_is_refused(content):
    with pytest.raises(JobFileError, match="This is no job file"):
        read_job(content)


@pytest.mark.parametrize(
    "content", ["[" * 100_000, '{"a":' * 31 + "1" + "}" * 31, '{"a": [' + "[" * 30], ids=range(3)
)
def test_lists_inside_lists_without_end_are_refused_unread(content):
    with pytest.raises(JobFileError, match="lists inside lists, more than 30 deep"):
        read_job(content)


def test_brackets_in_a_name_are_no_lists():
    name = "[" * 50 + '\\"{'
    assert read_job(changed(lambda job: job.update(name=name)))["name"] == name


def test_of_a_key_that_stands_twice_the_last_counts():
    text = json.dumps(EXAMPLE_JOB).replace('"room": {', '"room": {"air_temperature": "20 degC", ', 1)
    assert read_job(text)["room"]["air_temperature"] == "72"


def test_half_a_letter_becomes_the_sign_for_a_broken_one():
    text = json.dumps(EXAMPLE_JOB).replace("Lake green", "Lake \\ud83d green \\ud83d\\ude00")
    assert read_job(text)["colours"][0]["name"] == "Lake \ufffd green \U0001f600"


def test_a_number_without_a_fraction_is_whole():
    job = read_job(json.dumps(EXAMPLE_JOB).replace(f'"version": {VERSION}', f'"version": {VERSION}.0'))
    assert job == EXAMPLE_JOB
    assert isinstance(job["version"], int)


def test_the_rows_that_a_phone_works_with_quickly_are_taken():
    job = copy.deepcopy(EXAMPLE_JOB)
    job["colours"] = [{**row, "faces": rows(200, f"f{row['id']}x")} for row in rows(5, "c")]
    assert len(read_job(json.dumps(job))["colours"]) == 5


def test_a_cup_comes_back_as_it_was_saved():
    reason = {"id": "e1", "at": BEGUN, "kind": "reason", "stage": "make_ready", "says": "The client waits."}
    job = json.loads(with_cups(cup(entries=[reason])))
    assert read_job(json.dumps(job)) == job


def test_the_sentence_for_what_is_not_json_says_what_to_choose():
    with pytest.raises(JobFileError) as refused:
        read_job("hello")
    assert str(refused.value) == NOT_JSON


def test_a_file_over_5_mb_is_refused_unread():
    with pytest.raises(JobFileError, match="larger than 5 MB"):
        read_job(b" " * 5_000_001)


REFUSALS = {
    "other format": (lambda job: job.update(format="letter"), 'its "format" is not "sixteenth-job"'),
    "too new": (
        lambda job: job.update(version=VERSION + 1),
        f"version {VERSION + 1}, and this app reads up to version {VERSION}. Update the app",
    ),
    "no version": (lambda job: job.pop("version"), 'has no "version"'),
    "a version between two": (lambda job: job.update(version=2.5), 'has no "version"'),
    "a version that no file will have": (lambda job: job.update(version=10**7), 'has no "version"'),
    "foreign key of the job": (
        lambda job: job.update(owner="me"),
        '"owner" in the job is not known here',
    ),
    "foreign key of a face": (
        lambda job: job["colours"][0]["faces"][0].update(sheen="high"),
        '"sheen" in face 1 of color 1 of the job is not known here',
    ),
    "prototype": (
        lambda job: job["room"].update(__proto__="x"),
        '"__proto__" in "room" of the job is not known here',
    ),
    "a room's figure on the card": (
        lambda job: job["card"].update(air_temperature="20 degC"),
        '"air_temperature" in "card" of the job is not known here',
    ),
    "list for a quantity": (
        lambda job: job["colours"][0]["faces"][0].update(width=[1]),
        '"width" in face 1 of color 1 of the job is neither text nor a number',
    ),
    "rows that are no list": (
        lambda job: job.update(colours={}),
        '"colours" of the job is not a list of rows',
    ),
    "no id": (lambda job: job["colours"][0].pop("id"), 'Color 1 of the job has no "id"'),
    "one id twice": (lambda job: job["colours"].append(dict(job["colours"][0])), 'have the id "c1"'),
    "unit": (
        lambda job: job["units"].update(length="cubit"),
        '"length" in "units" of the job is "cubit", which is not known here. Write one of: in, mm, cm.',
    ),
    "a shape that is spelled otherwise": (
        lambda job: job["colours"][0]["faces"][0].update(shape="known_area"),
        '"shape" in face 1 of color 1 of the job is "known_area", which is not known here. '
        "Write one of: rectangle, rounded_rectangle, circle, ring,",
    ),
    "a number for a choice": (
        lambda job: job["colours"][0].update(tint=1),
        '"tint" in color 1 of the job is not text',
    ),
    "a number without end": (
        lambda job: job["room"].update(air_temperature=float("inf")),
        "This is no job file: it is not JSON",
    ),
    "a swatch that is no color": (
        lambda job: job["colours"][0].update(swatch="red"),
        '"swatch" in color 1 of the job is no color in six digits',
    ),
    "an id with a quote": (
        lambda job: job["colours"][0]["faces"][0].update(id='f"1'),
        'The id "f"1" of face 1 of color 1 of the job has other signs than letters, digits and _',
    ),
    "an id with a line end": (
        lambda job: job["colours"][0].update(id="c1\n"),
        "has other signs than letters",
    ),
    "the job's id with a quote": (lambda job: job.update(id="'"), 'The id "\'" of the job has other signs'),
    "the id that only the job has": (lambda job: job["colours"][0].update(id="job"), 'have the id "job"'),
    "text for a mark of the example": (
        lambda job: job.update(example="yes"),
        '"example" in the job is neither true nor false',
    ),
    "a face too many for a color": (
        lambda job: job["colours"][0].update(faces=rows(201)),
        "Color 1 of the job has 201 faces, and at most 200 can be worked with",
    ),
    "a face too many for the job": (
        lambda job: job.update(colours=[{"id": f"c{n}", "faces": rows(143, f"f{n}x")} for n in range(7)]),
        "The job has more than 1000 faces",
    ),
    "a color too many": (lambda job: job.update(colours=rows(41, "c")), "The job has 41 colors"),
    "a cut-out too many": (
        lambda job: job["colours"][0]["faces"][0].update(openings=rows(41, "o")),
        "Face 1 of color 1 of the job has 41 cut-outs, and at most 40",
    ),
    "a cup too many": (
        lambda job: job["colours"][0].update(cups=[{}] * 1001),
        "Color 1 of the job has 1001 cups, and at most 1000",
    ),
    "cups that are none": (
        lambda job: job["colours"][0].update(cups=False),
        '"cups" of color 1 of the job is not a list of rows',
    ),
    **{
        f"a cup without {key}": (
            lambda job, key=key: job["colours"][0].update(cups=[without(key)]),
            f'Cup 1 of color 1 of the job has no "{key}"',
        )
        for key in ("id", "coat", "number", "begun", "amounts", "plan", "stages", "entries")
    },
    **{
        f"a cup's {what}": (
            lambda job, changes=changes: job["colours"][0].update(cups=[cup(**changes)]),
            says,
        )
        for what, changes, says in (
            ("day that its month has not", {"begun": "2025-02-30T10:40:00.000Z"}, '"begun" in cup 1'),
            ("year before any cup", {"begun": "1999-12-31T23:59:59.999Z"}, "between the years 2000 and 2200"),
            ("year after any cup", {"begun": "2200-01-01T00:00:00.000Z"}, "between the years 2000 and 2200"),
            ("moment in another way of writing", {"begun": "2025-11-14 10:40"}, '"2025-11-14T10:40:00.000Z"'),
            (
                "coat of none",
                {"coat": 0},
                '"coat" in cup 1 of color 1 of the job is not a whole number from 1',
            ),
            ("true for a number", {"number": True}, '"number" in cup 1'),
            ("amount as text", {"amounts": {"gel_time": "12"}}, '"gel_time" in "amounts" of cup 1'),
            (
                "amount past the end of time",
                {"amounts": {"gel_time": 1e13}},
                '"gel_time" in "amounts" of cup 1',
            ),
            # The bench's cups are from 5 mL to 20 L: webapp/inputs/bench.py
            ("size past any cup", {"amounts": {"cup_capacity": 21_000}}, '"cup_capacity" in "amounts"'),
            ("amount with a foreign name", {"amounts": {"Gel time": 1}}, '"Gel time" in "amounts" of cup 1'),
            ("plan that is none", {"plan": {"format": "letter"}}, "the plan of cup 1"),
            (
                "plan without its color",
                {"plan": {"format": "sixteenth-job", "version": VERSION, "colours": []}},
                '"colours" of the plan of cup 1 of color 1 of the job has not the one row',
            ),
            (
                "plan with a cup in it",
                {"plan": json.loads(with_cups({}))},
                "Color 1 of the plan of cup 1 of color 1 of the job has 1 cups",
            ),
            ("stage of nobody's", {"stages": ["make_ready", "polish"]}, '"stages" in cup 1 of color 1'),
            (
                "tap without a moment",
                {"entries": [{"id": "e1", "kind": "tap", "stage": "mix"}]},
                'Entry 1 of cup 1 of color 1 of the job has no "at"',
            ),
            (
                "drops by halves",
                {"entries": [{"id": "e1", "kind": "tap", "stage": "drop", "at": BEGUN, "count": 0.5}]},
                '"count" in entry 1',
            ),
        )
    },
    "stage": (
        lambda job: job["colours"][0].update(
            cups=[cup(entries=[{"id": "e1", "at": BEGUN, "kind": "tap", "stage": "dance"}])]
        ),
        '"stage" in entry 1 of cup 1 of color 1 of the job is "dance", which is not known here',
    ),
    "long name": (lambda job: job.update(name="n" * 401), "longer than 400 letters"),
}


def test_an_id_that_no_page_could_ask_for_is_replaced_in_what_an_older_version_saved():
    old = json.loads(with_cups(cup(id='k"1')))
    old["version"] = old["colours"][0]["cups"][0]["plan"]["version"] = 3
    for colours in (old["colours"], old["colours"][0]["cups"][0]["plan"]["colours"]):
        colours[0]["id"] = "c\n1"
    [colour] = read_job(json.dumps(old))["colours"]
    [kept] = colour["cups"]
    # A quote is the sign 0x22, a line end 0x0a: Unicode's chart of the Latin letters.
    assert [colour["id"], kept["id"], kept["plan"]["colours"][0]["id"]] == ["c_a1", "k_221", "c_a1"]


@pytest.mark.parametrize("case", REFUSALS, ids=str)
def test_a_wrong_file_is_refused_by_what_is_wrong(case):
    change, says = REFUSALS[case]
    with pytest.raises(JobFileError) as refused:
        read_job(changed(change))
    assert says in str(refused.value)
