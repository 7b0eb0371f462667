"""A cup on the bench, from the gloves to the top coat, with the clock moved by hand."""

import re
from datetime import datetime

import icalendar
import pytest
from axe_core_python.sync_playwright import Axe
from playwright.sync_api import expect

from e2e.bench import WALK, Bench, Sheet

MORNING = datetime(2025, 11, 14, 10, 40)
LISTEN = """() => {
  window.heard = { buzzes: 0, tones: 0, said: [], locks: 0, released: 0 };
  navigator.vibrate = () => { heard.buzzes += 1; return true; };
  const start = OscillatorNode.prototype.start;
  OscillatorNode.prototype.start = function (...moment) {
    heard.tones += 1;
    return start.apply(this, moment);
  };
  const request = async () => {
    heard.locks += 1;
    const lock = new EventTarget();
    lock.release = async () => { heard.released += 1; lock.dispatchEvent(new Event("release")); };
    return lock;
  };
  Object.defineProperty(navigator, "wakeLock", { value: { request } });
}"""

BOUNCE = 40  # milliseconds between the taps of a finger that bounces, as tried: from memory, no source


def bounce(bench, button):
    """Tap a button as a finger does that bounces: twice at one place, 40 ms apart."""
    bench.hold_still()
    box = button.bounding_box()
    for _ in range(2):
        bench.page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
        bench.page.clock.run_for(BOUNCE)
    bench.hold_still()


# Goes down an open working, the first inputs first, until something that a person typed.
GO_DOWN = """async () => {
  const working = document.querySelector("dialog[open]");
  const down = async (depth) => {
    if (working.querySelector(".working__typed")?.textContent.startsWith("You typed")) return true;
    const count = depth < 8 ? working.querySelectorAll(".working__row").length : 0;
    for (let index = 0; index < count; index += 1) {
      working.querySelectorAll(".working__row")[index].click();
      if (await down(depth + 1)) return true;
      working.querySelector("[data-act=working-back]").click();
      for (let turn = 0; turn < 10; turn += 1) await null;
    }
    return false;
  };
  return down(0);
}"""


@pytest.fixture
def sheet(page, server) -> Sheet:
    """A job with a face of one's own, on a phone whose clock stands at 10:40."""
    page.clock.install(time=MORNING)
    page.add_init_script(f"({LISTEN})()")
    sheet = Sheet(page)
    sheet.open(server.address)
    sheet.type_a_face()
    return sheet


@pytest.fixture
def bench(sheet) -> Bench:
    """The bench with its first cup to be made ready."""
    return sheet.go_to_the_bench()


def heard(bench):
    return bench.page.evaluate("() => heard")


def test_a_cup_is_walked_from_the_gloves_to_the_cover_and_then_cures(bench):
    bench.begin()
    bench.expect_instruction("Pour in part A")
    bench.walk_to("Covered")
    bench.tap("Covered")
    expect(bench.root.get_by_role("heading", name="Curing")).to_be_visible()
    for words in ("It is tack-free", "It is cured", "Top coat is on"):
        bench.choose("Lake green, cup 1")
        bench.tap(words)
    bench.expect_instruction("poured")
    bench.tap("Back to the job sheet")
    expect(bench.root).to_have_count(0)


def test_the_example_cannot_be_begun(page, server):
    page.clock.install(time=MORNING)
    sheet = Sheet(page)
    sheet.open(server.address)
    page.locator(".next__button").click()
    expect(page.get_by_role("main", name="Bench")).to_have_count(0)
    assert sheet.cups() == []


def test_a_line_that_is_not_tapped_holds_the_start(bench):
    bench.press(bench.root.locator(".ready__line").first)
    bench.tap("Begin the cup")
    bench.expect_instruction("Check each line")
    expect(bench.root.locator(".ready__line").nth(1)).to_be_focused()


def test_the_dew_point_says_go_with_its_figures(bench):
    expect(bench.root.locator(".ready__figures:visible")).to_have_text(
        re.compile(r"^Go: [\d.]+\s°F over the dew point of [\d.]+\s°F$")
    )


def test_a_stop_check_that_cannot_be_made_holds_the_start_until_a_reason_is_typed(sheet):
    sheet.type_in("job", "relative_humidity", "")
    bench = sheet.take_to_the_bench("c1")
    bench.tick_the_lines()
    expect(bench.notices).to_contain_text("Not checked: humidity is missing")
    bench.tap("Begin the cup")
    reason = bench.root.get_by_label("Why begin all the same?")
    expect(reason).to_be_focused()
    reason.fill("The hygrometer is broken; the room was dry all week")
    bench.tap("Begin the cup")
    bench.expect_instruction("Pour in part A")
    [reason] = [each for each in sheet.cups()[0]["entries"] if each["kind"] == "reason"]
    assert reason["says"] == "The hygrometer is broken; the room was dry all week"


def test_a_cup_without_amounts_leads_back_to_the_job_sheet(sheet):
    sheet.type_in("job", "cup_capacity", "")
    bench = sheet.take_to_the_bench("c1")
    expect(bench.notices).to_contain_text("This cup has no amounts yet.")
    bench.tap("Back to the job sheet")
    expect(bench.root).to_have_count(0)
    assert sheet.cups() == []


def test_the_readings_are_huge_and_the_cup_shows_its_fill_lines(bench):
    bench.begin()
    size = bench.figure.locator(".figure").evaluate("(node) => parseFloat(getComputedStyle(node).fontSize)")
    assert size >= 72
    expect(bench.root.get_by_role("img", name=re.compile("Part A to"))).to_be_visible()
    bench.tap("A is in")
    expect(bench.root.get_by_role("img", name=re.compile("then B to"))).to_be_visible()


def test_pour_by_starts_at_the_contact_and_nothing_moves_it(bench):
    bench.begin()
    bench.walk_to("B is in")
    moment = bench.clocks.locator(".clock__time").inner_text()
    bench.pass_time(60)
    bench.tap("B is in")
    bench.pass_time(240)
    bench.tap("Mixed")
    bench.tap("drops are in")
    bench.pass_time(120)
    expect(bench.clocks.locator(".clock__time")).to_have_text(moment)
    bench.tap("It hides")
    expect(bench.under).to_contain_text(moment)
    bench.tap("Stirred")
    expect(bench.under).to_contain_text(f"Pour by {moment}")


def test_the_mix_clock_counts_down_and_says_where_to_scrape(bench):
    bench.begin()
    bench.walk_to("Mixed")
    bench.page.clock.pause_at(datetime(2025, 11, 14, 10, 50))
    bench.step_back()
    bench.pass_time(1)
    bench.tap("B is in")
    expect(bench.figure).to_have_text("3:00")
    bench.expect_instruction("Stir slowly")
    bench.pass_time(50)
    expect(bench.figure).to_have_text("2:10")
    bench.expect_instruction("Scrape the sides.")
    bench.pass_time(45)
    bench.expect_instruction("Scrape the bottom.")
    bench.pass_time(45)
    bench.expect_instruction("the sides and the bottom again")
    bench.pass_time(60)
    bench.expect_instruction("Scrape once more")
    expect(bench.under).to_contain_text("Mixing time was up at")


def test_without_a_mix_time_the_clock_counts_up_and_says_so(sheet):
    sheet.type_in("job", "mix_time", "")
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("Mixed")
    expect(bench.notices).to_contain_text("gives no mix time, so this clock counts up")
    bench.pass_time(75)
    expect(bench.figure).to_have_text(re.compile(r"1:1\d"))
    expect(bench.under).to_have_text("counting up")


def test_a_card_without_mist_times_has_no_clock_for_them_and_says_so(sheet):
    sheet.type_in("job", "second_mist", "")
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("Misted again")
    expect(bench.notices).to_contain_text("gives no time for this")
    expect(bench.figure).to_be_hidden()


def test_step_back_takes_back_the_last_tap_and_its_clocks(bench):
    bench.begin()
    bench.walk_to("B is in")
    expect(bench.clocks).to_contain_text("Pour by")
    bench.step_back()
    bench.expect_button("A has touched B")
    expect(bench.clocks).to_be_hidden()
    bench.step_back()
    bench.expect_button("A is in")


def test_step_back_from_part_a_leads_to_the_gloves(bench, sheet):
    bench.begin()
    bench.step_back()
    bench.expect_instruction("Check each line")
    for _ in range(5):
        bench.step_back()
    expect(bench.root.locator(".ready__line[aria-pressed=true]")).to_have_count(0)
    assert sheet.taps() == []


def test_a_glove_that_bounces_taps_once(bench, sheet):
    bench.begin()
    bench.expect_button("A is in")
    bounce(bench, bench.button)
    bench.expect_button("A has touched B")
    assert sheet.taps() == ["Begin the cup", "A is in"]


def test_drops_stop_at_the_limit_and_the_next_cup_starts_with_them(sheet):
    sheet.type_a_face("24", "18")
    sheet.type_in("job", "tint_limit", "0.1%")
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("in")
    while (
        not bench.button.inner_text().endswith(("are in", "is in")) or "drop" not in bench.button.inner_text()
    ):
        bench.press(bench.button)
        bench.hold_still()
    started = int(bench.figure.locator(".figure__number").inner_text())
    limit = int(bench.under.locator(".figure__number").inner_text())
    bench.press(bench.button)
    add = bench.root.get_by_role("button", name="One drop more")
    for _ in range(limit - started):
        bench.press(add)
    expect(bench.figure).to_have_text(f"{limit} drops")
    expect(add).to_have_attribute("aria-disabled", "true")
    expect(bench.notices).to_contain_text("This is the limit")
    bench.tap("It hides")
    for words in ("Stirred", "Poured", "Misted"):
        bench.tap(words)
    bench.choose("Next: Lake green, cup 2 of 2")
    bench.tap("All still so, begin")
    bench.walk_to("Mixed")
    bench.tap("Mixed")
    bench.expect_button(f"{limit} drops are in")
    expect(bench.under).to_contain_text("as in Lake green, cup 1")


def test_a_clear_colour_has_no_tint(sheet):
    sheet.type_in("c1", "tint", "clear")
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("Mixed")
    bench.tap("Mixed")
    bench.expect_button("Stirred")


def test_a_cup_past_its_pour_by_is_set_aside_and_mixed_again(bench):
    bench.begin()
    bench.walk_to("Poured")
    bench.sleep(3600)
    expect(bench.notices).to_contain_text("Do not pour a cup that is warm or thickening")
    expect(bench.notices).to_contain_text("thin in a foil tray")
    expect(bench.under).to_contain_text("Pour-by was")
    bench.set_aside()
    bench.expect_button("Next: Lake green, cup 1")


COMBINING_TO_POUR = ("A has touched B", "B is in", "Mixed", "drops are in", "It hides", "Stirred", "Poured")


def test_a_cool_cups_heat_is_quiet_text_from_combining_to_the_pour(bench):
    bench.begin()
    expect(bench.quiet).to_be_hidden()
    bench.tap("A is in")
    for words in COMBINING_TO_POUR:
        bench.expect_button(words)
        expect(bench.heat).to_be_hidden()
        expect(bench.quiet).to_contain_text(
            re.compile(r"At pour-by about \d+\s°F; left standing it (can|will) smoke\.")
        )
        assert len(bench.boxes()) <= 1
        bench.tap(words)
    expect(bench.quiet).to_be_hidden()


def test_what_is_not_known_of_a_cups_heat_is_said(sheet):
    sheet.type_in("job", "pot_life", "")
    bench = sheet.take_to_the_bench("c1")
    bench.begin_all_the_same()
    bench.walk_to("Mixed")
    expect(bench.quiet).to_contain_text("Heat not checked: pot life is missing on the resin card.")
    expect(bench.quiet).to_contain_text("Getting warm?")


def test_a_cup_that_warms_itself_is_a_caution_from_combining_to_the_pour(sheet):
    # Parts and room at 95 °F: 600 mL that gel so early are hot in the hand before they are poured.
    sheet.type_in("job", "air_temperature", "95")
    bench = sheet.take_to_the_bench("c1")
    bench.begin_all_the_same()
    bench.tap("A is in")
    for words in COMBINING_TO_POUR:
        bench.expect_button(words)
        expect(bench.heat).to_contain_text("This cup")
        boxes = bench.boxes()
        assert any("This cup" in box for box in boxes)
        assert len(boxes) <= 2
        expect(bench.quiet).not_to_contain_text("At pour-by")
        bench.tap(words)
    expect(bench.heat).to_be_hidden()


def test_at_most_two_boxes_stand_on_the_bench_and_a_stop_is_one(sheet):
    sheet.type_in("job", "air_temperature", "95")
    sheet.type_in("job", "tint_limit", "")
    bench = sheet.take_to_the_bench("c1")
    bench.begin_all_the_same()
    bench.walk_to("Mixed")
    bench.tap("Mixed")
    bench.expect_button("It hides")
    bench.sleep(3600)
    boxes = bench.boxes()
    assert len(boxes) == 2
    assert any("Pour-by was" in box for box in boxes)


def test_the_hide_test_is_drawn_as_a_puddle_as_deep_as_the_film(bench):
    bench.begin()
    bench.walk_to("drops are in")
    picture = bench.root.get_by_role("img", name="a ring of tape on black and white stripes")
    expect(picture).to_have_count(0)
    bench.tap("drops are in")
    bench.expect_instruction("puddle as deep as the film")
    expect(picture).to_be_visible()
    assert picture.locator(".hide-test__stripe").count() == 7
    expect(bench.quiet).to_contain_text("A thin smear proves nothing about a film ten times as deep.")


def test_a_face_that_needs_no_second_coat_wants_no_mix_of_it(sheet):
    # The first face wants two coats of 3/32 in, as the resin takes 3 mm at most, the other one of 1/16 in: of
    # the same size, they take 3 and 2 parts in the first coat, and the first face alone 3 in the second.
    sheet.type_in("f1", "depth", "3/16")
    sheet.add_face("c1", "20", "12", "1/16")
    bench = sheet.go_to_the_bench()
    bench.begin()
    first = sheet.cups()[0]["amounts"]
    assert first["coats_to_pour"] == 2
    for number in range(2, int(first["cups"]) + 1):
        bench.walk_to("Misted")
        bench.choose(f"cup {number} of")
        bench.tap("All still so")
    bench.walk_to("Misted")
    assert sheet.job()["colours"][0]["coat_number"] == "2"
    bench.step_back()
    assert sheet.job()["colours"][0]["coat_number"] == "1"
    bench.tap("Poured")
    bench.choose("coat 2")
    bench.begin_all_the_same()
    bench.expect_button("A is in")
    second = sheet.cups()[-1]["amounts"]
    share = second["cups"] * second["cup_volume"] / (first["cups"] * first["cup_volume"])
    assert share == pytest.approx(0.6, abs=0.05)


def test_the_second_mist_of_one_colour_is_named_while_another_is_mixed(sheet):
    sheet.add_colour("White border", "10", "4")
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("Misted again")
    bench.choose("Next: White border, cup 1 of 1")
    bench.tap("All still so, begin")
    bench.walk_to("Mixed")
    expect(bench.clocks).to_contain_text("Lake green, cup 1: second mist")
    bench.sleep(13 * 60)
    expect(bench.missed).to_contain_text(re.compile(r"Second mist was due at \d+:\d\d.AM, \d+ minutes ago\."))
    bench.press(bench.missed.get_by_role("button"))
    expect(bench.notices).to_contain_text("Mist now, if the film is still wet.")
    bench.tap("Misted again")
    bench.tap("Covered")
    bench.expect_button("Mixed")


def test_a_mist_rings_buzzes_and_is_said_aloud(bench):
    bench.begin()
    bench.walk_to("Misted again")
    before = heard(bench)
    bench.pass_time(602)
    after = heard(bench)
    assert after["buzzes"] > before["buzzes"]
    assert after["tones"] > before["tones"]
    expect(bench.page.locator("p[role=alert]")).to_contain_text("Lake green, cup 1: second mist, now.")


def test_the_screen_stays_awake_on_the_bench_only(bench):
    bench.begin()
    assert heard(bench)["locks"] == 1
    bench.leave()
    assert heard(bench)["released"] == 1


def test_leaving_the_bench_loses_no_clock(bench, sheet):
    bench.begin()
    bench.walk_to("Mixed")
    moment = bench.clocks.locator(".clock__time").inner_text()
    bench.leave()
    bench.pass_time(30)
    expect(bench.page.locator(".next__what")).to_contain_text("mix")
    again = sheet.go_to_the_bench()
    expect(again.clocks.locator(".clock__time")).to_have_text(moment)


def test_a_reload_comes_back_to_the_bench_with_every_missed_stage_named(bench):
    bench.begin()
    bench.walk_to("Misted again")
    bench.page.clock.fast_forward(40 * 60 * 1000)
    bench.page.reload()
    again = Bench(bench.page)
    again.expect_instruction("Mist the film again")
    expect(again.under).to_have_text(
        re.compile(r"^Second mist was due at \d+:\d\d.AM, (30|31) minutes ago\.$"), use_inner_text=True
    )


def test_amounts_are_frozen_while_the_job_changes(bench, sheet):
    bench.begin()
    reading = bench.figure.inner_text()
    sheet.type_in("f1", "width", "60")
    bench.tap("A is in")
    bench.step_back()
    assert bench.figure.inner_text() == reading


def test_coming_times_go_to_the_calendar_and_again_with_a_higher_sequence(bench):
    bench.page.evaluate("() => { navigator.canShare = undefined; window.showSaveFilePicker = undefined; }")
    bench.page.evaluate("() => delete window.showSaveFilePicker")
    bench.begin()
    bench.walk_to("Misted again")
    events = []
    for words in ("to the phone’s calendar", "to the calendar again"):
        with bench.page.expect_download() as download:
            bench.choose(words)
        assert download.value.suggested_filename == "lake-green-cup-1.ics"
        calendar = icalendar.Calendar.from_ical(download.value.path().read_bytes())
        events.append(calendar.walk("VEVENT"))
    first, second = events
    names = [str(event["SUMMARY"]).rpartition(": ")[2] for event in first]
    assert names == ["second mist", "tack-free", "cured", "top coat"]
    assert [event["UID"] for event in first] == [event["UID"] for event in second]
    assert {event["SEQUENCE"] for event in first} == {0}
    assert {event["SEQUENCE"] for event in second} == {1}


def test_every_button_is_made_for_a_gloved_hand(bench):
    def measure():
        boxes = bench.root.get_by_role("button").all()
        shown = [
            each.bounding_box()
            for each in boxes
            if each.is_visible() and "figure" not in (each.get_attribute("class") or "").split()
        ]
        for box in shown:
            assert box["height"] >= 96
            assert box["width"] >= 96
        for one in shown:
            for other in shown:
                if one is other:
                    continue
                apart = max(
                    other["x"] - one["x"] - one["width"],
                    one["x"] - other["x"] - other["width"],
                    other["y"] - one["y"] - one["height"],
                    one["y"] - other["y"] - other["height"],
                )
                assert apart >= 11.9 or is_covered(one, other)

    def is_covered(one, other):
        """A list scrolls under the thumb's buttons: what lies behind them is out of sight."""
        thumb = bench.root.locator(".bench__thumb").bounding_box()["y"]
        return max(one["y"], other["y"]) >= thumb - 12

    measure()
    bench.begin()
    for words in ("A is in", "A has touched B", "B is in", "Mixed", "drops are in"):
        measure()
        bench.tap(words)
    measure()
    for words in ("It hides", "Stirred", "Poured", "Misted"):
        bench.tap(words)
        measure()


def test_every_figure_walks_to_what_was_typed(bench):
    bench.begin()
    page = bench.page
    for words in (
        "A is in",
        "A has touched B",
        "B is in",
        "Mixed",
        "drops are in",
        "It hides",
        "Stirred",
        "Poured",
    ):
        for index in range(bench.root.locator(".figure:visible").count()):
            bench.press(bench.root.locator(".figure:visible").nth(index))
            working = page.get_by_role("dialog")
            expect(working).to_be_visible()
            assert page.evaluate(GO_DOWN), f"{words}, figure {index}"
            page.evaluate("() => document.querySelector('dialog[open]').close()")
        bench.tap(words)


def test_the_job_sheet_shows_the_running_clocks_and_leads_back(bench):
    bench.begin()
    bench.walk_to("Misted again")
    bench.leave()
    running = bench.page.get_by_role("list", name="Running clocks")
    expect(running).to_contain_text(re.compile(r"Lake green, cup 1: second mist.*in 8:\d\d"))
    bench.sleep(15 * 60)
    expect(running).to_contain_text("Second mist was due at")
    bench.press(running.get_by_role("button").first)
    bench.expect_button("Misted again")


def test_a_cup_of_a_damaged_file_is_passed_over(sheet):
    for cup in (
        {},
        {"id": "k1", "begun": "yesterday", "entries": [], "amounts": {}, "plan": {"colours": [{}]}},
        {
            "id": "k2",
            "begun": "2025-11-14T09:00:00.000Z",
            "entries": [{"id": "e1", "kind": "tap", "stage": "mix", "at": "?"}],
            "amounts": {},
        },
        {
            "id": "k3",
            "begun": "2025-11-14T09:00:00.000Z",
            "entries": [],
            "amounts": {"mix_time": None},
            "plan": {},
        },
    ):
        sheet.keep_cup("c1", cup)
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("Covered")


def test_a_pour_of_a_second_coat_waits_for_the_recoat_window(sheet):
    sheet.type_in("job", "planned_coats", "2")
    bench = sheet.go_to_the_bench()
    bench.begin()
    bench.walk_to("Covered")
    bench.tap("Covered")
    bench.expect_button("Next: Lake green, cup 1 of 1, coat 2")
    bench.tap("Next: Lake green")
    bench.tap("All still so")
    expect(bench.notices).to_contain_text(re.compile(r"Coat 1, Lake green, cup 1: recoat opens \d+:\d\d"))
    bench.sleep(8 * 3600)
    bench.leave()
    bench = sheet.take_to_the_bench("c1")
    expect(bench.notices).not_to_contain_text("recoat")


def test_a_cup_set_aside_by_mistake_is_taken_up_again(bench, sheet):
    bench.begin()
    bench.tap("A is in")
    bench.set_aside()
    [cup] = sheet.cups()
    bench.leave()
    again = sheet.take_to_the_bench("c1", cup["id"])
    again.expect_instruction("Set aside at")
    again.step_back()
    again.expect_button("A has touched B")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_bench_has_no_fault_that_axe_finds(sheet, scheme):
    sheet.page.emulate_media(color_scheme=scheme)
    bench = sheet.go_to_the_bench()
    faults = list(found_by_axe(bench.page))
    bench.begin()
    for words in (
        "A is in",
        "A has touched B",
        "B is in",
        "Mixed",
        "drops are in",
        "It hides",
        "Stirred",
        "Poured",
    ):
        bench.expect_button(words)
        faults += found_by_axe(bench.page)
        bench.tap(words)
    bench.sleep(3600)
    faults += found_by_axe(bench.page)
    for words in ("Misted", "Misted again", "Covered"):
        bench.tap(words)
    faults += found_by_axe(bench.page)
    bench.leave()
    faults += found_by_axe(bench.page, ".running")
    assert faults == []


def found_by_axe(page, part=".bench"):
    """Return what axe finds wrong in a part of the page, AAA contrast and target sizes included."""
    tags = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
    result = Axe().run(page, part, {"runOnly": {"type": "tag", "values": tags}})
    assert result["passes"]
    return [
        f"{fault['id']}: {node['html'][:120]} {node.get('failureSummary', '')[:200]}"
        for fault in result["violations"]
        for node in fault["nodes"]
    ]


@pytest.mark.parametrize(("width", "text"), [(320, "112.5%"), (360, "225%")], ids=["narrow", "large text"])
def test_nothing_is_cut_off_on_a_narrow_phone_or_with_large_text(sheet, width, text):
    sheet.page.set_viewport_size({"width": width, "height": 740})
    bench = sheet.go_to_the_bench()
    sheet.page.evaluate("(text) => { document.documentElement.style.fontSize = text; }", text)
    bench.begin()
    for words in WALK:
        bench.expect_button(words)
        wide = bench.root.evaluate(
            "(bench) => [...bench.querySelectorAll('*')].filter((each) => each.checkVisibility()"
            " && each.getBoundingClientRect().right > innerWidth + 1).map((each) => each.className)"
        )
        assert wide == [], words
        bench.tap(words)
