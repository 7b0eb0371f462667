"""A job file is opened whole, or refused with a sentence that says what is wrong and what to do."""

import copy
import json

import pytest

from webapp.errors import JobFileError
from webapp.job.demo import EXAMPLE_JOB
from webapp.job.file import read_job
from webapp.job.lifts import VERSION

DANCE = {"id": "e1", "at": "2025-11-14T10:40:00Z", "kind": "tap", "stage": "dance"}
NOT_JSON = "This is no job file: it is not JSON. Choose a file that was saved as a job file."


def changed(change):
    job = copy.deepcopy(EXAMPLE_JOB)
    change(job)
    return json.dumps(job)


def test_a_job_comes_back_as_it_was_saved():
    assert read_job(json.dumps(EXAMPLE_JOB)) == EXAMPLE_JOB


def test_what_was_typed_is_kept_even_if_it_cannot_be_read():
    job = read_job(changed(lambda job: job["colours"][0]["faces"][0].update(width="twelve")))
    assert job["colours"][0]["faces"][0]["width"] == "twelve"


def test_markup_in_a_name_is_only_text():
    job = read_job(changed(lambda job: job.update(name="<img src=x onerror=alert(1)>")))
    assert job["name"] == "<img src=x onerror=alert(1)>"


@pytest.mark.parametrize(
    "content", [b"", b"\xff\xfe\x00", "no json", "[" * 100_000, '{"a": NaN}'], ids=range(5)
)
def test_what_is_not_json_is_refused(content):
    with pytest.raises(JobFileError):
        read_job(content)


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
    "foreign key of the job": (
        lambda job: job.update(owner="me"),
        '"owner" in the job file is not known here',
    ),
    "foreign key of a face": (
        lambda job: job["colours"][0]["faces"][0].update(sheen="high"),
        '"sheen" in face 1 of color 1 of the job is not known here',
    ),
    "prototype": (lambda job: job["room"].update(__proto__="x"), '"__proto__" in "room" is not known here'),
    "a room's figure on the card": (
        lambda job: job["card"].update(air_temperature="20 degC"),
        '"air_temperature" in "card" is not known here',
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
        'The unit of length in the job file is "cubit"',
    ),
    "stage": (
        lambda job: job["colours"][0].update(cups=[{"id": "k", "stages": [], "entries": [DANCE]}]),
        "has an entry that is not known here",
    ),
    "long name": (lambda job: job.update(name="n" * 401), "longer than 400 letters"),
}


@pytest.mark.parametrize("case", REFUSALS, ids=str)
def test_a_wrong_file_is_refused_by_what_is_wrong(case):
    change, says = REFUSALS[case]
    with pytest.raises(JobFileError) as refused:
        read_job(changed(change))
    assert says in str(refused.value)
