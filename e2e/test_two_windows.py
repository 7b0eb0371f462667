"""Two windows with one job: both say what they know, and what was typed or tapped in either stays."""

import re

import pytest
from playwright.sync_api import expect

from e2e.bench import Bench, Sheet
from e2e.conftest import PHONE
from e2e.stored import jobs_on, wait_until

SAVED = re.compile(r"(?<!not )saved \d")
# Windows that hear nothing of one another, as a phone that sleeps, or an old browser.
DEAF = """
globalThis.BroadcastChannel = undefined;
const listen = EventTarget.prototype.addEventListener;
EventTarget.prototype.addEventListener = function (name, ...rest) {
  if (name !== "visibilitychange" && name !== "focus") listen.call(this, name, ...rest);
};
"""


@pytest.fixture
def windows(browser, server):
    """Return a function that opens two windows with one job of one's own."""
    contexts = []

    def opened(are_deaf=False):
        context = browser.new_context(**PHONE)
        contexts.append(context)
        if are_deaf:
            context.add_init_script(DEAF)
        first = Sheet(context.new_page())
        first.open(server.address)
        first.type_a_face("20", "12")
        expect(first.page.locator(".head")).to_contain_text(SAVED)
        wait_until(first.page, lambda: face_on(first.page)["height"] == "12")
        second = Sheet(context.new_page())
        second.open(server.address)
        return first, second

    yield opened
    for context in contexts:
        context.close()


def face_on(page):
    """Return the first face of the only job, as the disk has it."""
    [job] = jobs_on(page).values()
    return job["colours"][0]["faces"][0]


def cups_on(page):
    """Return the cups of the first color of the only job, as the disk has them."""
    [job] = jobs_on(page).values()
    return job["colours"][0].get("cups", [])


def test_what_is_typed_in_one_window_stands_in_the_other_at_once(windows):
    first, second = windows()
    first.page.locator("[data-id=f1] [data-input=width]").fill("31")
    wait_until(second.page, lambda: second.job()["colours"][0]["faces"][0]["width"] == "31")
    expect(second.page.locator("[data-cell=total_face_volume]:visible")).to_contain_text("12.9")


def test_sizes_typed_in_two_windows_that_hear_nothing_of_each_other_both_stay(windows):
    first, second = windows(are_deaf=True)
    first.page.locator("[data-id=f1] [data-input=width]").fill("31")
    wait_until(first.page, lambda: face_on(first.page)["width"] == "31")
    second.type_in("f1", "depth", "1/8 in")
    wait_until(first.page, lambda: face_on(first.page)["depth"] == "1/8 in")
    assert face_on(first.page)["width"] == "31"
    wait_until(second.page, lambda: second.job()["colours"][0]["faces"][0]["width"] == "31")
    second.page.reload()
    assert face_on(second.page)["depth"] == "1/8 in"
    assert second.job()["colours"][0]["faces"][0] == face_on(second.page)


def test_a_later_tap_elsewhere_leaves_the_contact_where_it_was(windows):
    first, second = windows(are_deaf=True)
    bench = first.go_to_the_bench()
    bench.has_own_clock = False
    bench.begin()
    bench.tap("A is in")
    bench.expect_button("A has touched B")
    second.page.reload()
    other = Bench(second.page, has_own_clock=False)
    other.expect_button("A has touched B")
    bench.tap("A has touched B")
    bench.expect_button("B is in")
    by = bench.clocks.locator(".clock__time").first.inner_text()
    second.page.wait_for_timeout(1200)
    other.tap("A has touched B")
    other.expect_button("B is in")
    expect(other.clocks.locator(".clock__time").first).to_have_text(by)
    first.page.reload()
    expect(Bench(first.page).clocks.locator(".clock__time").first).to_have_text(by)


def test_a_cup_begun_in_two_windows_is_one_cup_and_both_show_it(windows):
    first, second = windows(are_deaf=True)
    benches = []
    for sheet in (first, second):
        bench = sheet.go_to_the_bench()
        bench.has_own_clock = False
        benches.append(bench)
    benches[0].begin()
    benches[0].expect_instruction("Pour in part A")
    # The first line that is tapped here begins a cup too; it is the one that was begun there.
    benches[1].root.locator(".ready__line").first.click()
    benches[1].expect_instruction("Pour in part A")
    [begun] = cups_on(first.page)
    assert [each["id"] for each in second.cups()] == [begun["id"]] == [each["id"] for each in first.cups()]
    benches[1].tap("A is in")
    benches[1].expect_button("A has touched B")
    assert len(cups_on(first.page)) == 1


def test_a_cup_that_the_other_window_begins_is_shown_in_this_one_too(windows):
    first, second = windows()
    bench, other = first.go_to_the_bench(), second.go_to_the_bench()
    bench.has_own_clock = other.has_own_clock = False
    bench.begin()
    other.expect_instruction("Pour in part A")
