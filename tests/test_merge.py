"""Two windows changed one job: what both typed and tapped stands, whichever wrote first."""

import copy
import random

import pytest

from webapp.job.demo import EXAMPLE_JOB

MERGE = """async (cases) => {
  const { merged } = await import(`${modules}keeping/merge.js`);
  return cases.map((states) => merged(...states));
}"""


@pytest.fixture
def merged(phone):
    """Join two states of something, the later one last; the first is what both began from."""
    return lambda *states: phone.evaluate(MERGE, [states])[0]


def job_with(**changes):
    """Return a job with a color, a face and a cup that was begun."""
    tap = {"id": "e1", "at": "2026-11-14T09:00:00.000Z", "kind": "tap", "stage": "make_ready"}
    cup = {"id": "k1", "coat": 1, "number": 1, "begun": "2026-11-14T09:00:00.000Z", "entries": [tap]}
    face = {"id": "f1", "name": "Face 1", "width": "20 in", "height": "12 in"}
    colour = {"id": "c1", "name": "Lake green", "faces": [face], "cups": [cup]}
    return {
        "id": "j1",
        "name": "Harbor Lane",
        "room": {"air_temperature": "72"},
        "colours": [colour],
        **changes,
    }


def tap(name, stage, at, **more):
    """Return an entry of a cup."""
    return {"id": name, "at": f"2026-11-14T{at}.000Z", "kind": "tap", "stage": stage, **more}


def cup(name, number, *entries, **more):
    """Return a cup that was begun with its first entry."""
    return {"id": name, "coat": 1, "number": number, "begun": entries[0]["at"], "entries": [*entries], **more}


def changed(job, change):
    """Return a copy of a job after a change to it."""
    other = copy.deepcopy(job)
    change(other)
    return other


def face(job):
    """Return the first face of a job."""
    return job["colours"][0]["faces"][0]


def entries(job):
    """Return the entries of the first cup of a job, by their ids."""
    return [each["id"] for each in job["colours"][0]["cups"][0]["entries"]]


def test_two_fields_typed_in_two_windows_both_stand(merged):
    base = job_with()
    one = changed(base, lambda job: face(job).update(width="24 in"))
    other = changed(base, lambda job: job["room"].update(air_temperature="68"))
    both = merged(base, one, other)
    assert face(both)["width"] == "24 in"
    assert both["room"] == {"air_temperature": "68"}


def test_of_one_field_typed_in_both_the_later_stands(merged):
    base = job_with()
    earlier, later = [changed(base, lambda job, w=w: face(job).update(width=w)) for w in ("24 in", "30 in")]
    assert face(merged(base, earlier, later))["width"] == "30 in"


def test_taps_of_both_windows_stand_in_the_order_of_their_moments(merged):
    base = job_with()
    one = changed(
        base, lambda job: job["colours"][0]["cups"][0]["entries"].append(tap("e3", "part_b", "09:05:05"))
    )
    other = changed(
        base, lambda job: job["colours"][0]["cups"][0]["entries"].append(tap("e2", "part_b", "09:05:00"))
    )
    assert entries(merged(base, one, other)) == ["e1", "e2", "e3"]
    assert entries(merged(base, other, one)) == ["e1", "e2", "e3"]


def test_a_step_back_in_one_window_takes_no_tap_of_the_other_away(merged):
    base = job_with()
    back = {"id": "e2", "at": "2026-11-14T09:01:00.000Z", "kind": "back", "of": "e1"}
    one = changed(base, lambda job: job["colours"][0]["cups"][0]["entries"].append(back))
    other = changed(
        base, lambda job: job["colours"][0]["cups"][0]["entries"].append(tap("e3", "part_a", "09:02:00"))
    )
    assert entries(merged(base, one, other)) == ["e1", "e2", "e3"]


def test_a_row_deleted_in_one_window_is_gone_and_stays_where_the_other_changed_it(merged):
    base = job_with()
    without = changed(base, lambda job: job["colours"][0]["faces"].clear())
    renamed = changed(base, lambda job: job.update(name="Quarry Road"))
    assert merged(base, without, renamed)["colours"][0]["faces"] == []
    assert merged(base, renamed, without)["colours"][0]["faces"] == []
    typed = changed(base, lambda job: face(job).update(width="24 in"))
    assert face(merged(base, without, typed))["width"] == "24 in"
    assert face(merged(base, typed, without))["width"] == "24 in"


def test_rows_added_in_both_windows_keep_their_places(merged):
    base = {"id": "j1", "colours": [{"id": "c1"}, {"id": "c2"}]}
    copied = {"id": "j1", "colours": [{"id": "c1"}, {"id": "copy"}, {"id": "c2"}]}
    added = {"id": "j1", "colours": [{"id": "c1"}, {"id": "c2"}, {"id": "c3"}]}
    ids = [each["id"] for each in merged(base, added, copied)["colours"]]
    assert ids == ["c1", "copy", "c2", "c3"]


def test_a_cup_begun_in_both_windows_is_one_cup_the_first(merged):
    base = job_with(colours=[{"id": "c1", "faces": [], "cups": []}])
    first = changed(
        base, lambda job: job["colours"][0]["cups"].append(cup("k1", 1, tap("e1", "make_ready", "09:00:00")))
    )
    second = changed(
        base,
        lambda job: job["colours"][0]["cups"].append(
            cup("k2", 1, tap("e2", "make_ready", "09:00:02"), tap("e3", "part_b", "09:03:00"))
        ),
    )
    [only] = merged(base, first, second)["colours"][0]["cups"]
    assert only["id"] == "k1"
    assert [each["id"] for each in only["entries"]] == ["e1", "e2", "e3"]


def test_a_cup_set_aside_in_one_window_is_not_taken_for_the_one_begun_in_its_place(merged):
    base = job_with(colours=[{"id": "c1", "faces": [], "cups": []}])
    gone = cup("k1", 1, tap("e1", "make_ready", "09:00:00"), tap("e2", "set_aside", "09:01:00"))
    one = changed(base, lambda job: job["colours"][0]["cups"].append(gone))
    other = changed(
        base, lambda job: job["colours"][0]["cups"].append(cup("k2", 1, tap("e3", "make_ready", "09:02:00")))
    )
    assert [each["id"] for each in merged(base, one, other)["colours"][0]["cups"]] == ["k1", "k2"]


def test_without_a_common_state_nothing_is_lost(merged):
    one = {"id": "j1", "name": "Harbor", "colours": [{"id": "c1"}]}
    other = {"id": "j1", "room": {"air_temperature": "72"}, "colours": [{"id": "c2"}]}
    both = merged(None, one, other)
    assert both["name"] == "Harbor"
    assert both["room"] == {"air_temperature": "72"}
    assert [each["id"] for each in both["colours"]] == ["c1", "c2"]


def random_change(job, rng, window):
    """Change a job at random; two windows never touch the same field, and the ids that they make differ."""
    job = copy.deepcopy(job)
    typed = {}
    for step in range(rng.randint(1, 6)):
        what = rng.choice(["field", "face", "tap", "colour", "cup"])
        colour = job["colours"][rng.randrange(len(job["colours"]))]
        if what == "field":
            typed[f"{window}_{step}"] = job["room"][f"{window}_{step}"] = str(rng.random())
        elif what == "face":
            colour["faces"].insert(
                rng.randint(0, len(colour["faces"])), {"id": f"f{window}{step}", "width": "1 in"}
            )
        elif what == "tap" and colour["cups"]:
            moment = f"{rng.randint(10, 22)}:{rng.randint(10, 59)}:{rng.randint(10, 59)}"
            colour["cups"][0]["entries"].append(tap(f"e{window}{step}", "drop", moment))
        elif what == "colour":
            job["colours"].append({"id": f"c{window}{step}", "faces": [], "cups": []})
        elif what == "cup":
            number = 10 * (1 + "ab".index(window)) + step
            colour["cups"].append(
                cup(f"k{window}{step}", number, tap(f"e{window}{step}k", "make_ready", "09:00:00"))
            )
    return job


def ids_in(value):
    """Return the ids of all rows, wherever they stand."""
    if isinstance(value, list):
        return {each for row in value for each in ids_in(row)}
    if not isinstance(value, dict):
        return set()
    own = {value["id"]} if "id" in value else set()
    return own | {each for part in value.values() for each in ids_in(part)}


def unordered(value):
    """Return what is told by a job but for the order of its rows."""
    if isinstance(value, list):
        return sorted((unordered(each) for each in value), key=repr)
    if isinstance(value, dict):
        return sorted((key, unordered(each)) for key, each in value.items())
    return value


@pytest.fixture(scope="module")
def states():
    """Return states that both windows began from, with a change of each."""
    rng = random.Random(16)
    bases = [job_with(), {**copy.deepcopy(EXAMPLE_JOB), "id": "j2"}]
    for base in bases:
        for colour in base["colours"]:
            colour.setdefault("cups", [])
    return [
        (base, random_change(base, rng, "a"), random_change(base, rng, "b"))
        for base in bases
        for _ in range(150)
    ]


def test_changes_that_do_not_meet_are_joined_alike_in_either_order(phone, states):
    there = phone.evaluate(MERGE, states)
    back = phone.evaluate(MERGE, [[base, other, one] for base, one, other in states])
    assert [unordered(each) for each in there] == [unordered(each) for each in back]


def test_nothing_that_was_typed_or_tapped_is_lost(phone, states):
    for (_, one, other), both in zip(states, phone.evaluate(MERGE, states), strict=True):
        assert ids_in(both) == ids_in(one) | ids_in(other)
        assert both["room"] == {**one["room"], **other["room"]}


def test_what_is_joined_already_is_not_changed_by_joining_it_again(phone, states):
    joined = phone.evaluate(MERGE, states)
    again = phone.evaluate(
        MERGE, [[one, both, one] for (_, one, _), both in zip(states, joined, strict=True)]
    )
    assert again == joined
    same = phone.evaluate(MERGE, [[base, one, one] for base, one, _ in states])
    assert same == [one for _, one, _ in states]
