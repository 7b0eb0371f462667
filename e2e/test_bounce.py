"""A gloved finger bounces, a hand slips: no cup is lost by it, and what was taken back can be had again."""

import re
from datetime import datetime

import pytest
from playwright.sync_api import expect

from e2e.bench import Bench, Sheet

MORNING = datetime(2025, 11, 14, 10, 40)
# From memory: contacts of a worn screen, or a wet glove, close again within some 40 ms.
BOUNCE = 40


@pytest.fixture
def sheet(page, server) -> Sheet:
    """A job with a face of one's own, on a phone whose clock stands at 10:40."""
    page.clock.install(time=MORNING)
    sheet = Sheet(page)
    sheet.open(server.address)
    sheet.type_a_face()
    return sheet


@pytest.fixture
def bench(sheet) -> Bench:
    """The bench with its first cup begun."""
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.page.clock.pause_at(datetime(2025, 11, 14, 10, 45))
    return bench


def bounce(bench, button, by="touch"):
    """Tap a button as a finger does that bounces: twice at one place."""
    expect(button).to_be_visible()
    button.scroll_into_view_if_needed()
    bench.hold_still()
    box = button.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    tap = bench.page.touchscreen.tap if by == "touch" else bench.page.mouse.click
    for _ in range(2):
        tap(x, y)
        bench.page.clock.run_for(BOUNCE)
    bench.hold_still()


def middle(locator):
    box = locator.bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def lies_on(point, locator):
    box = locator.bounding_box()
    x, y = point
    return box["x"] <= x <= box["x"] + box["width"] and box["y"] <= y <= box["y"] + box["height"]


@pytest.mark.parametrize("by", ["touch", "mouse"])
def test_a_bounce_takes_one_step_forward_and_one_back(bench, sheet, by):
    bounce(bench, bench.button, by)
    assert sheet.taps() == ["Begin the cup", "A is in"]
    bounce(bench, bench.root.locator(".bench__back"), by)
    assert sheet.taps() == ["Begin the cup"]


def test_a_bounce_on_set_aside_only_asks_and_the_answer_lies_elsewhere(bench, sheet):
    aside = bench.root.locator("[data-act=bench-finish]")
    bounce(bench, aside)
    expect(bench.sure).to_have_text("Set it aside")
    at = middle(aside)
    assert not lies_on(at, bench.sure)
    assert sheet.taps() == ["Begin the cup"]
    bench.press(aside)
    expect(bench.sure).to_be_hidden()


def test_a_bounce_counts_one_drop_and_ticks_one_line(bench):
    bench.walk_to("drops are in")
    bench.tap("drops are in")
    count = int(bench.figure.inner_text().split()[0])
    bench.hold_still()
    bounce(bench, bench.root.get_by_role("button", name="One drop more"))
    expect(bench.figure).to_have_text(f"{count + 1} drops")


def test_two_drops_a_quarter_of_a_second_apart_are_two(bench):
    bench.walk_to("drops are in")
    bench.tap("drops are in")
    count = int(bench.figure.inner_text().split()[0])
    add = bench.root.get_by_role("button", name="One drop more")
    bench.press(add)
    bench.page.clock.run_for(250)
    add.click()
    expect(bench.figure).to_have_text(f"{count + 2} drops")


def test_a_bounced_line_of_make_ready_stays_ticked(sheet):
    bench = sheet.go_to_the_bench()
    line = bench.root.locator(".ready__line").first
    bounce(bench, line)
    expect(line).to_have_attribute("aria-pressed", "true")


def test_a_bounce_on_the_way_to_the_bench_taps_nothing_there(bench, sheet):
    bench.leave()
    bounce(bench, sheet.page.locator(".running__clock, .next__button").last)
    bench.expect_button("A is in")
    assert sheet.taps() == ["Begin the cup"]


def test_step_back_over_the_contact_asks_elsewhere_and_stepping_forward_keeps_pour_by(bench, sheet):
    bench.walk_to("B is in")
    pour_by = bench.clocks.locator(".clock__time").inner_text()
    bench.pass_time(120)
    back = bench.root.locator(".bench__back")
    bounce(bench, back)
    expect(bench.root.locator(".bench__sure")).to_contain_text(
        re.compile(r"Contact 10:45:\d\d.AM\. Pour-by counts from it, even if you tap it again\.")
    )
    bench.expect_button("B is in")
    assert not lies_on(middle(back), bench.sure)
    bounce(bench, bench.sure)
    bench.expect_button("A has touched B")
    expect(bench.clocks).to_be_hidden()
    expect(bench.forward).to_have_text(re.compile(r"Step forward: contact 10:45:\d\d.AM"))
    bench.pass_time(120)
    bench.press(bench.forward)
    bench.expect_button("B is in")
    expect(bench.clocks.locator(".clock__time")).to_have_text(pour_by)
    expect(bench.forward).to_be_hidden()


def test_a_contact_tapped_again_does_not_move_pour_by(bench):
    bench.walk_to("B is in")
    pour_by = bench.clocks.locator(".clock__time").inner_text()
    bench.step_back()
    bench.pass_time(300)
    bench.tap("A has touched B")
    expect(bench.clocks.locator(".clock__time")).to_have_text(pour_by)
    expect(bench.forward).to_be_hidden()


@pytest.mark.parametrize(
    ("until", "over"), [("Misted", "end of pour"), ("It is tack-free", "cover"), ("Mixed", "")]
)
def test_step_back_asks_over_the_end_of_pour_and_the_cover_and_no_other(bench, until, over):
    for words in (
        "A is in",
        "A has touched B",
        "B is in",
        "Mixed",
        "drops are in",
        "It hides",
        "Stirred",
        "Poured",
        "Misted",
        "Misted again",
        "Covered",
    ):
        if bench.button.inner_text().startswith(until):
            break
        bench.tap(words)
    if over == "cover":
        bench.choose("Lake green, cup 1")
    bench.expect_button(until)
    bench.press(bench.root.locator(".bench__back"))
    bench.hold_still()
    if over:
        expect(bench.sure).to_have_text(f"Step back over {over}")
        bench.expect_button(until)
    else:
        expect(bench.sure).to_be_hidden()
        bench.expect_button("B is in")


def test_two_steps_back_are_stepped_forward_one_by_one(bench, sheet):
    bench.walk_to("drops are in")
    walked = sheet.taps()
    bench.step_back()
    bench.step_back()
    bench.press(bench.forward)
    expect(bench.forward).to_contain_text("Step forward: mixed")
    bench.press(bench.forward)
    bench.expect_button("drops are in")
    assert sheet.taps() == walked
    expect(bench.forward).to_be_hidden()


def test_a_cup_set_aside_is_offered_and_taken_up_again_where_it_was(bench, sheet):
    bench.walk_to("Mixed")
    pour_by = bench.clocks.locator(".clock__time").inner_text()
    walked = sheet.taps()
    bench.set_aside()
    bench.expect_button("Next: Lake green, cup 1")
    expect(bench.forward).to_have_text("Take Lake green, cup 1 up again")
    bench.press(bench.forward)
    bench.expect_button("Mixed")
    assert sheet.taps() == walked
    expect(bench.clocks.locator(".clock__time")).to_have_text(pour_by)
    expect(bench.forward).to_be_hidden()


def test_another_tap_takes_the_question_back(bench):
    bench.walk_to("B is in")
    bench.press(bench.root.locator(".bench__back"))
    expect(bench.sure).to_be_visible()
    bench.tap("B is in")
    expect(bench.sure).to_be_hidden()
    bench.expect_button("Mixed")


def test_the_keyboard_steps_back_and_a_held_key_is_one_tap(bench):
    bench.walk_to("B is in")
    bench.hold_still()
    bench.root.locator(".bench__back").focus()
    for _ in range(4):
        bench.page.keyboard.down("Enter")
        bench.page.clock.run_for(700)
    bench.page.keyboard.up("Enter")
    expect(bench.sure).to_be_visible()
    for _ in range(8):
        if bench.sure.evaluate("(button) => button === document.activeElement"):
            break
        bench.page.keyboard.press("Tab")
    bench.hold_still()
    bench.page.keyboard.press("Enter")
    bench.expect_button("A has touched B")


def test_a_bounce_deletes_one_face(sheet):
    for width in ("10", "11"):
        sheet.add_face("c1", width, "4", "1/16")
    sheet.open_the_face()
    bench = Bench(sheet.page)
    bounce(bench, sheet.page.locator("[data-act=remove-row]:visible").first)
    expect(sheet.page.locator("[data-act=open-face].face__open")).to_have_count(2)
