"""The browser is killed in the middle of the work; the next start finds everything there.

Each kill comes within 50 ms of the last key or tap, with no chance to say goodbye.
"""

import re
from datetime import datetime, timedelta

import pytest
from playwright.sync_api import expect

from e2e import kills
from e2e.bench import Bench, Sheet
from e2e.killed import kill_after, start_again

# A kill has to hit the moments after a key, and a busy machine moves them.
pytestmark = [pytest.mark.long, pytest.mark.quiet]


@pytest.fixture
def sheet(handset, server) -> Sheet:
    """A job with a face of one's own, on a phone that can be killed."""
    sheet = Sheet(handset.start())
    sheet.open(server.address)
    sheet.type_a_face("20", "12")
    return sheet


@pytest.fixture
def bench(sheet) -> Bench:
    """The bench with its first cup begun."""
    sheet.go_to_the_bench()
    bench = Bench(sheet.page, has_own_clock=False)
    bench.begin()
    bench.expect_instruction("Pour in part A")
    return bench


def tap_at_once(bench, selector):
    """Return a tap on the middle of a button, with nothing left to be found out first."""
    node = bench.root.locator(selector)
    expect(node).not_to_have_attribute("aria-disabled", "true")
    box = node.bounding_box()
    return lambda: bench.page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)


def again(handset, server, **options):
    """Start the phone anew; return its bench."""
    page = start_again(handset)
    if options:
        page.clock.install(**options)
    page.goto(server.address)
    return Bench(page, has_own_clock=bool(options))


def face(bench):
    """Return the first face as it is kept."""
    expect(bench.page.locator("[data-part=sheet]")).to_be_visible()
    return Sheet(bench.page).job()["colours"][0]["faces"][0]


def test_the_last_key_is_there(handset, server, sheet):
    field = sheet.page.locator("[data-id=f1] [data-input=height]")
    field.fill("1")
    kill_after(handset, "input", lambda: sheet.page.keyboard.press("7"))
    assert face(again(handset, server))["height"] == "17"


def test_the_last_key_of_a_reason_is_there(handset, server, sheet):
    sheet.type_in("job", "relative_humidity", "")
    bench = sheet.take_to_the_bench("c1")
    bench.tick_the_lines()
    bench.root.get_by_label("Why begin all the same?").fill("Dry all wee")
    kill_after(handset, "input", lambda: sheet.page.keyboard.press("k"))
    expect(again(handset, server).root.get_by_label("Why begin all the same?")).to_have_value("Dry all week")


def test_the_last_line_of_make_ready_is_there(handset, server, sheet):
    bench = sheet.go_to_the_bench()
    kill_after(handset, "click", tap_at_once(bench, ".ready__line >> nth=0"))
    expect(again(handset, server).root.locator(".ready__line[aria-pressed=true]")).to_have_count(1)


def test_the_contact_of_a_and_b_is_there_and_pour_by_stands(handset, server, bench):
    bench.tap("A is in")
    bench.expect_button("A has touched B")
    kill_after(handset, "click", tap_at_once(bench, ".bench__go"))
    back = again(handset, server)
    back.expect_button("B is in")
    sheet = Sheet(back.page)
    [cup] = sheet.cups()
    assert sheet.taps()[-1] == "A has touched B"
    contact = datetime.fromisoformat(cup["entries"][-1]["at"])
    by = (contact + timedelta(seconds=cup["amounts"]["pour_by"])).astimezone()
    expect(back.clocks.locator(".clock__time")).to_have_text(by.strftime("%-I:%M\u202f%p"))


def test_the_last_drop_is_there(handset, server, bench):
    bench.walk_to("drops are in")
    bench.tap("drops are in")
    count = int(bench.figure.inner_text().split()[0])
    kill_after(handset, "click", tap_at_once(bench, ".bench__choice--drop"))
    expect(again(handset, server).figure).to_have_text(f"{count + 1} drops")


def test_a_step_back_is_there(handset, server, bench):
    bench.walk_to("Mixed")
    kill_after(handset, "click", tap_at_once(bench, ".bench__back"))
    again(handset, server).expect_button("B is in")


def test_every_stage_missed_meanwhile_is_named(handset, server, bench):
    bench.walk_to("Poured")
    kill_after(handset, "click", tap_at_once(bench, ".bench__go"))
    back = again(handset, server, time=datetime.now() + timedelta(minutes=22))
    back.expect_instruction("Mist the film")
    expect(back.under).to_contain_text(
        re.compile(r"First mist was due at \d+:\d\d\s[AP]M, 2\d minutes ago\.")
    )
    expect(back.missed).to_contain_text(
        re.compile(r"Second mist was due at \d+:\d\d\s[AP]M, 1\d minutes ago\.")
    )
    expect(back.page.locator("p[role=alert]")).to_contain_text("Second mist was due at")


def test_a_pour_by_missed_meanwhile_stops_the_pour(handset, server, bench):
    bench.walk_to("It hides")
    kill_after(handset, "click", tap_at_once(bench, ".bench__go"))
    back = again(handset, server, time=datetime.now() + timedelta(hours=2))
    back.expect_button("Stirred")
    expect(back.notices).to_contain_text("Do not pour a cup that is warm or thickening")
    expect(back.under).to_contain_text(re.compile(r"Pour-by was .*, 1 hour \d+ minutes ago\."))


def test_two_cups_in_flight_both_come_back(handset, server, sheet):
    sheet.add_colour("White border", "10", "4")
    sheet.go_to_the_bench()
    bench = Bench(sheet.page, has_own_clock=False)
    bench.begin()
    bench.walk_to("Misted again")
    bench.choose("Next: White border, cup 1 of 1")
    bench.tap("All still so, begin")
    bench.walk_to("B is in")
    kill_after(handset, "click", tap_at_once(bench, ".bench__go"))
    back = again(handset, server, time=datetime.now() + timedelta(minutes=15))
    back.expect_instruction("Scrape once more")
    expect(back.missed).to_contain_text(re.compile(r"Lake green, cup 1.*Second mist was due at", re.DOTALL))
    expect(back.clocks).to_contain_text("Pour by")


def test_killed_twenty_times_nothing_that_was_painted_is_lost_and_nothing_is_there_twice(
    playwright, server, tmp_path
):
    killed = kills.run(server.address, tmp_path, playwright, seed=16, count=20)
    assert [f"{kill.kind}: {kill.wrong}" for kill in killed if kill.wrong] == []
