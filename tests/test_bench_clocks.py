"""The bench's clocks on the phone: moments from taps and frozen amounts, whose turn it is, what rings when.

The amounts here are chosen by hand, so the expected moments are sums that can be done in the head.
"""

from datetime import UTC, datetime

import pytest

from webapp.bench.walk import has
from webapp.job.lifts import WALK_OF_VERSION_1

AMOUNTS = {
    "mix_time": 180,
    "pour_by": 1800,
    "usable_time": 2400,
    "first_mist": 60,
    "second_mist": 600,
    "tack_free_time": 8 * 3600,
    "recoat_opens": 5 * 3600,
    "recoat_closes": 20 * 3600,
    "cure_time": 24 * 3600,
    "top_coat_wait": 48 * 3600,
    "cup_volume": 150,
    "starting_drops": 12,
    "tint_limit_drops": 40,
    "vessels_per_cup": 2,
    "coats_to_pour": 1,
}
PLAN = {"colours": [{"id": "c1", "tint": "drops"}]}
HAND = [
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
]


def at(clock):
    """Return a time of day of the test's own day as a stored moment; past 24 h it is the next day."""
    hours, minutes, *seconds = [int(each) for each in clock.split(":")]
    day = datetime(2025, 11, 14 + hours // 24, hours % 24, minutes, *seconds, tzinfo=UTC)
    return day.strftime("%Y-%m-%dT%H:%M:%S.000Z")


def entry(id_, clock, kind, **facts):
    return {"id": id_, "at": at(clock), "kind": kind, **facts}


def tap(stage, clock):
    """Return a tap with an id that no other tap of another moment has."""
    return entry(f"{stage}-{clock}", clock, "tap", stage=stage)


def back(of, clock):
    return entry(f"back-{clock}", clock, "back", of=of)


def mark(id_, clock):
    return {"id": id_, "moment": moment(clock)}


def cup(*taps, amounts=AMOUNTS, plan=PLAN, **facts):
    begun = {
        "id": "k1",
        "coat": 1,
        "number": 1,
        "begun": at("10:00"),
        "amounts": amounts,
        "plan": plan,
        "entries": [tap(*each) for each in taps],
        **facts,
    }
    return {"stages": [name for name, only in WALK_OF_VERSION_1 if has(begun, only)], **begun}


def job(*cups, name="Teal"):
    return {"colours": [{"id": "c1", "name": name, "cups": list(cups)}]}


POURED = [("part_b", "10:00"), ("fill", "10:01"), ("mix", "10:05"), ("pour", "10:20")]
COVERED = [(name, "10:00") for name in HAND[:3]] + [(name, "10:20") for name in HAND[3:]]


@pytest.fixture
def run(phone):
    """Call an exported function of a module with plain arguments; moments come back as stored text."""

    def call(module, name, *arguments):
        return phone.evaluate(
            """async ([module, name, given]) => {
              const { [name]: called } = await import(new URL(module, window.modules));
              const read = ({ id, moment }) => (
                id ? { id, moment: read(moment) } : Date.parse(moment)
              );
              const taken = given.map((each) => (each && each.moment ? read(each) : each));
              const result = called(...taken);
              return result === undefined ? null : JSON.parse(JSON.stringify(result));
            }""",
            [module, name, list(arguments)],
        )

    return call


def moment(clock):
    return {"moment": at(clock)}


def ends(run, cups):
    """Return when each running clock of the first cup ends, by stage."""
    clocks = run("clocks/clocks.js", "runningClocks", job(*cups))
    return {
        each["stage"]["name"]: datetime.fromtimestamp(each["at"] / 1000, UTC).strftime("%d %H:%M")
        for each in clocks
    }


def test_pour_by_counts_from_contact(run):
    assert ends(run, [cup(("part_b", "10:00"))]) == {"pour": "14 10:30"}


def test_a_cup_of_an_older_version_is_poured_by_the_time_that_was_frozen_with_it(run):
    older = {name: value for name, value in AMOUNTS.items() if name != "pour_by"}
    assert ends(run, [cup(("part_b", "10:00"), amounts=older)]) == {"pour": "14 10:40"}


def test_nothing_moves_pour_by_later(run):
    mixed_slowly = [("part_b", "10:00"), ("fill", "10:04"), ("mix", "10:20"), ("starting_drops", "10:25")]
    assert ends(run, [cup(*mixed_slowly)]) == {"pour": "14 10:30"}


def test_the_mix_clock_starts_when_b_is_in(run):
    assert ends(run, [cup(("part_b", "10:00"), ("fill", "10:01"))]) == {"mix": "14 10:04", "pour": "14 10:30"}


def test_after_the_pour_all_but_the_recoat_limit_count_from_its_end(run):
    assert ends(run, [cup(*POURED)]) == {
        "first_mist": "14 10:21",
        "second_mist": "14 10:30",
        "tack_free": "14 18:20",
        "cured": "15 10:20",
        "top_coat": "16 10:20",
    }


def test_with_a_coat_to_come_the_recoat_window_counts_from_pour_and_from_contact(run):
    found = ends(run, [cup(*POURED, amounts={**AMOUNTS, "coats_to_pour": 2})])
    assert found["recoat_opens"] == "14 15:20"
    assert found["recoat_closes"] == "15 06:00"


def test_a_figure_that_the_card_lacks_makes_no_clock(run):
    amounts = {name: value for name, value in AMOUNTS.items() if name != "second_mist"}
    assert "second_mist" not in ends(run, [cup(*POURED, amounts=amounts)])


def stages_tapped(run, record):
    return [each["stage"] for each in run("clocks/cup-record.js", "tapsOf", record)]


def test_a_step_back_takes_its_clocks_away_and_no_entry(run):
    before = cup(*POURED)
    stepped = run("clocks/cup-record.js", "withStepBack", before, mark("b1", "10:21"))
    assert stages_tapped(run, stepped) == ["part_b", "fill", "mix"]
    assert ends(run, [stepped]) == {"pour": "14 10:30"}
    assert stepped["entries"] == [
        *before["entries"],
        {"id": "b1", "at": at("10:21"), "kind": "back", "of": "pour-10:20"},
    ]


def test_a_step_back_leaves_what_the_calendar_was_given(run):
    given = run("clocks/cup-record.js", "withCalendar", cup(*POURED), mark("e1", "10:21"))
    stepped = run("clocks/cup-record.js", "withStepBack", given, mark("b1", "10:22"))
    assert stages_tapped(run, stepped) == ["part_b", "fill", "mix"]
    assert run("clocks/cup-record.js", "timesGivenOut", stepped) == 1


def with_entries(record, *entries):
    return {**record, "entries": [*record["entries"], *entries]}


def test_what_was_taken_back_stands_again_at_its_first_moment(run):
    record = with_entries(cup(*POURED), back("pour-10:20", "10:22"), back("back-10:22", "10:24"))
    assert ends(run, [record])["first_mist"] == "14 10:21"
    again = with_entries(record, back("pour-10:20", "10:25"))
    assert ends(run, [again]) == {"pour": "14 10:30"}


def test_the_contact_is_the_earliest_that_was_ever_given(run):
    mistaken = with_entries(cup(("part_b", "10:00")), back("part_b-10:00", "10:01"))
    assert ends(run, [mistaken]) == {}
    assert ends(run, [with_entries(mistaken, tap("part_b", "10:09"))]) == {"pour": "14 10:30"}


def test_the_end_of_a_pour_that_was_tapped_too_soon_is_the_next_tap(run):
    record = with_entries(cup(*POURED), back("pour-10:20", "10:22"), tap("pour", "10:26"))
    assert ends(run, [record])["first_mist"] == "14 10:27"


def test_a_reason_is_one_entry_while_it_is_typed(run):
    record = cup()
    for says, clock in (("D", "10:01"), ("Dry", "10:02"), ("Dry all week", "10:03")):
        record = run("clocks/cup-record.js", "withReason", record, mark(clock, clock), "make_ready", says)
    assert record["entries"] == [entry("10:01", "10:03", "reason", stage="make_ready", says="Dry all week")]
    assert run("clocks/cup-record.js", "reasonOf", record) == "Dry all week"


def joined(run, one, other):
    return run("keeping/entries.js", "joined", one["entries"], other["entries"])


def test_two_copies_of_a_cup_are_joined_by_what_happened_in_each(run):
    begun = cup(("part_b", "10:00"))
    here, there = with_entries(begun, tap("fill", "10:02")), with_entries(begun, tap("drop", "10:01"))
    both = [tap("part_b", "10:00"), tap("drop", "10:01"), tap("fill", "10:02")]
    assert joined(run, here, there) == joined(run, there, here) == both
    assert joined(run, here, here) == here["entries"]


def test_what_one_window_took_back_no_other_brings_back(run):
    poured = cup(*POURED)
    stepped = with_entries(poured, back("pour-10:20", "10:21"))
    for one, other in ((poured, stepped), (stepped, poured)):
        record = {**poured, "entries": joined(run, one, other)}
        assert stages_tapped(run, record) == ["part_b", "fill", "mix"]


def test_of_a_contact_tapped_in_two_windows_the_earlier_counts(run):
    here, there = cup(("part_b", "10:00:05")), cup(("part_b", "10:00"))
    for one, other in ((here, there), (there, here)):
        assert ends(run, [{**here, "entries": joined(run, one, other)}]) == {"pour": "14 10:30"}


def test_of_a_reason_typed_in_two_windows_the_later_counts(run):
    begun = with_entries(cup(), entry("e1", "10:01", "reason", stage="make_ready", says="Dry"))
    later = with_entries(cup(), entry("e1", "10:02", "reason", stage="make_ready", says="Dry all week"))
    assert joined(run, begun, later) == joined(run, later, begun) == later["entries"]


def test_what_was_missed_is_named_with_how_long_ago(run):
    taps = [*POURED, ("first_mist", "10:21")]
    [clock] = run("clocks/clocks.js", "missedClocks", job(cup(*taps)), moment("10:42"))
    said = run("clocks/clocks.js", "lateSentence", clock, moment("10:42"))
    assert said.startswith("Second mist was due at ")
    assert said.endswith(", 12 minutes ago.")


def test_every_missed_stage_is_named_after_a_long_absence(run):
    missed = run("clocks/clocks.js", "missedClocks", job(cup(*POURED)), moment("34:30"))
    names = [each["stage"]["name"] for each in missed]
    assert names == ["first_mist", "second_mist", "tack_free", "cured"]


@pytest.mark.parametrize("end", ["set_aside", "finished"])
def test_a_cup_that_is_over_has_no_clock(run, end):
    assert ends(run, [cup(*POURED, (end, "11:00"))]) == {}


def test_a_coat_that_was_poured_over_has_no_clock(run):
    above = cup(*POURED, id="k2", coat=2)
    clocks = run("clocks/clocks.js", "runningClocks", job(cup(*COVERED), above))
    assert {each["cup"]["id"] for each in clocks} == {"k2"}


def stage_of(run, record):
    found = run("clocks/cup-record.js", "stageOf", record)
    return found and found["name"]


def test_a_cup_walks_stage_by_stage(run):
    taps = []
    walked = []
    for _ in range(20):
        stage = stage_of(run, cup(*taps))
        if stage is None:
            break
        walked.append(stage)
        taps.append((stage, "10:00"))
    assert walked == [*HAND, "tack_free", "cured", "top_coat"]


def test_a_clear_cup_has_no_tint_and_one_vessel_no_clean_cup(run):
    clear = cup(amounts={**AMOUNTS, "vessels_per_cup": 1}, plan={"colours": [{"tint": "clear"}]})
    names = [each["name"] for each in run("clocks/cup-record.js", "walkOf", clear)]
    assert "tint" not in names
    assert "clean_cup" not in names
    assert names.index("pour") == names.index("mix") + 1


def test_curing_stages_come_in_the_order_of_their_clocks(run):
    amounts = {**AMOUNTS, "coats_to_pour": 2}
    assert stage_of(run, cup(*COVERED, amounts=amounts)) == "recoat_opens"
    assert stage_of(run, cup(*COVERED, ("recoat_opens", "15:30"), amounts=amounts)) == "tack_free"


def test_the_next_cup_starts_with_the_drops_of_the_last(run):
    first = cup(*COVERED, id="k1")
    first["entries"][5:5] = [
        {**tap("starting_drops", "10:05"), "count": 12},
        tap("drop", "10:06"),
        tap("drop", "10:07"),
    ]
    second = cup(id="k2", number=2)
    colour = job(first, second)["colours"][0]
    assert run("clocks/cup-record.js", "dropsIn", first) == 14
    assert run("clocks/cup-record.js", "firstDrops", second, colour)["count"] == 14


@pytest.mark.parametrize(
    "facts", [{"amounts": {**AMOUNTS, "cup_volume": 100}}, {}], ids=["other size", "set aside"]
)
def test_other_cups_start_with_the_sheets_drops(run, facts):
    first = cup(*COVERED, id="k1")
    first["entries"].append({**tap("starting_drops", "10:05"), "count": 20})
    if not facts:
        first["entries"].append(tap("set_aside", "10:40"))
    second = cup(id="k2", number=2, **facts)
    colour = job(first, second)["colours"][0]
    assert run("clocks/cup-record.js", "firstDrops", second, colour)["count"] == 12


def next_cup(run, cups, number, coats=1):
    sheet = {"id": "job", "rows": {"colour": [{"id": "c1", "rows": {}, "cells": {}}]}}
    sheet["rows"]["colour"][0]["cells"] = {"cups": {"value": number}, "coats_to_pour": {"value": coats}}
    found = run("clocks/turns.js", "nextCup", job(*cups)["colours"][0], sheet)
    return found and (found["coat"], found["number"])


def test_cups_are_counted_through_the_coats(run):
    one, two = cup(*COVERED, id="k1"), cup(*COVERED, id="k2", number=2)
    assert next_cup(run, [], 2) == (1, 1)
    assert next_cup(run, [one], 2) == (1, 2)
    assert next_cup(run, [one, two], 2) is None
    assert next_cup(run, [one, two], 2, coats=2) == (2, 1)


def coat_of(run, *cups):
    return run("clocks/turns.js", "coatOf", job(*cups)["colours"][0])


def test_a_coat_is_on_when_each_of_its_cups_is_poured(run):
    amounts = {**AMOUNTS, "cups": 2, "coats_to_pour": 2}
    one = cup(*POURED, id="k1", amounts=amounts)
    two = cup(*POURED[:3], id="k2", number=2, amounts=amounts)
    poured = cup(*POURED, id="k2", number=2, amounts=amounts)
    aside = cup(*POURED[:3], ("set_aside", "10:40"), id="k3", number=2, amounts=amounts)
    assert coat_of(run) == 1
    assert coat_of(run, one) == 1
    assert coat_of(run, one, two) == 1
    assert coat_of(run, one, aside) == 1
    assert coat_of(run, one, aside, poured) == 2


def test_no_coat_comes_after_the_last(run):
    amounts = {**AMOUNTS, "cups": 1, "coats_to_pour": 2}
    first, second = cup(*POURED, amounts=amounts), cup(*POURED, id="k2", coat=2, amounts=amounts)
    assert coat_of(run, first) == 2
    assert coat_of(run, first, second) == 2
    assert coat_of(run, cup(*POURED, amounts={**AMOUNTS, "cups": 1})) == 1


def test_a_cup_set_aside_is_mixed_again(run):
    aside = cup(("part_b", "10:00"), ("set_aside", "10:40"))
    assert next_cup(run, [aside], 2) == (1, 1)


def test_the_cup_tapped_last_is_the_one_to_come_back_to(run):
    early, late = cup(("part_b", "10:00"), id="k1"), cup(("part_a", "10:05"), id="k2")
    assert run("clocks/turns.js", "cupToResume", job(early, late))["id"] == "k2"
    assert run("clocks/turns.js", "cupToResume", job(cup(*COVERED))) is None


def test_after_a_mist_the_cup_being_mixed_comes_back(run):
    waiting = cup(*[(name, "10:22") for name in HAND[:9]], id="k1")
    mixed = cup(*[(name, "10:21") for name in HAND[:4]], id="k2")
    assert run("clocks/turns.js", "cupAfterTap", job(waiting, mixed), waiting, moment("10:22"))["id"] == "k2"
    assert run("clocks/turns.js", "cupAfterTap", job(waiting, mixed), mixed, moment("10:22"))["id"] == "k2"


def ringing(run, record, since, now):
    clocks = run("clocks/clocks.js", "runningClocks", job(record))
    found = run("clocks/clocks.js", "ringing", clocks, moment(since), moment(now))
    return [(each["clock"]["stage"]["name"], each["kind"]) for each in found]


def test_a_mist_rings_when_it_is_due_and_again_while_nobody_comes(run):
    record = cup(*POURED, ("first_mist", "10:21"))
    assert ringing(run, record, "10:29:58", "10:29:59") == []
    assert ringing(run, record, "10:29:59", "10:30:00") == [("second_mist", "end")]
    assert ringing(run, record, "10:30:00", "10:30:01") == []
    assert ringing(run, record, "10:30:19", "10:30:20") == [("second_mist", "again")]
    assert ringing(run, record, "10:34:39", "10:34:40") == []


def test_pour_by_rings_two_minutes_ahead(run):
    record = cup(("part_b", "10:00"))
    assert ringing(run, record, "10:27:59", "10:28:00") == [("pour", "warning")]
    assert ringing(run, record, "10:29:59", "10:30:00") == [("pour", "end")]


def test_what_a_sleeping_page_slept_through_rings_once_it_wakes(run):
    assert ringing(run, cup(*POURED, ("first_mist", "10:21")), "10:22", "10:50") == [("second_mist", "end")]


@pytest.mark.parametrize(
    ("span", "words"),
    [
        (0, "0 seconds"),
        (1_000, "1 second"),
        (59_999, "59 seconds"),
        (60_000, "1 minute"),
        (720_000, "12 minutes"),
        (3_600_000, "1 hour"),
        (7_500_000, "2 hours 5 minutes"),
        (3 * 86_400_000, "3 days"),
    ],
)
def test_a_span_in_words(run, span, words):
    assert run("lib/moments.js", "inWords", span) == words


@pytest.mark.parametrize(
    ("span", "face"),
    [
        (0, ["0:00"]),
        (84_000, ["1:24"]),
        (3_599_000, ["59:59"]),
        (3_600_000, ["1", "hr", "0", "min"]),
        (49 * 3_600_000, ["2", "d", "1", "hr"]),
    ],
)
def test_a_span_as_a_clock_shows_it(run, span, face):
    assert run("lib/moments.js", "clockFace", span) == face


@pytest.fixture
def stopped(phone, browser):
    """A page of the same modules whose clock stands at a full second and runs only when a test says so."""
    page = browser.new_page()
    page.route(phone.url, lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    page.clock.install(time=datetime(2025, 11, 14, 10, 0))
    page.goto(phone.url)
    page.clock.pause_at(datetime(2025, 11, 14, 11, 0))
    page.evaluate("(base) => { window.modules = base; }", phone.evaluate("() => window.modules"))
    yield page
    page.close()


def test_ticks_come_once_a_second_only_while_seen_and_heard(stopped):
    stopped.evaluate(
        """async () => {
          const { createTicking } = await import(new URL("clocks/clocks.js", window.modules));
          const page = new EventTarget();
          window.ticks = [];
          const stop = createTicking({ page }).subscribe((moment) => ticks.push(moment % 60000));
          const become = (state) => {
            page.visibilityState = state;
            page.dispatchEvent(new Event("visibilitychange"));
          };
          Object.assign(window, { stop, become });
          become("visible");
        }"""
    )

    def ticks_in(milliseconds):
        stopped.evaluate("() => { ticks.length = 0; }")
        stopped.clock.run_for(milliseconds)
        return stopped.evaluate("() => ticks")

    assert ticks_in(2500) == [1000, 2000]
    stopped.evaluate("() => become('hidden')")
    assert ticks_in(3000) == []
    assert stopped.evaluate("() => { become('visible'); return ticks; }") == [5500]
    assert ticks_in(1000) == [6000]
    stopped.evaluate("() => stop()")
    assert ticks_in(3000) == []


def test_announcements_come_at_most_once_a_second_and_none_is_lost(stopped):
    stopped.evaluate(
        """async () => {
          const { onceASecond } = await import(new URL("clocks/reminders.js", window.modules));
          window.said = [];
          window.say = onceASecond((text) => said.push([text, Date.now() % 60000]), () => Date.now());
        }"""
    )
    for text in ("one", "two", "two", "three"):
        stopped.evaluate("(text) => say(text)", text)
        stopped.clock.run_for(30)
    stopped.clock.run_for(1500)
    assert stopped.evaluate("() => said") == [["one", 0], ["two three", 1000]]
