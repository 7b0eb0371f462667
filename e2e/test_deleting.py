"""What is deleted: asked twice while a cup is at work, and kept for a day so that it can be taken back."""

import re

import pytest
from playwright.sync_api import expect

from e2e.bench import Sheet
from e2e.conftest import PHONE
from e2e.pages import Menu
from e2e.stored import jobs_on, run, wait_until

# In milliseconds, and a little more: for so long after one a second deletion is not taken.
BOUNCE = 700
SAVED = re.compile(r"(?<!not )saved \d")


@pytest.fixture
def sheet(browser, server):
    """A job with a face of one's own."""
    context = browser.new_context(**PHONE)
    sheet = Sheet(context.new_page())
    sheet.open(server.address)
    sheet.type_a_face("20", "12")
    sheet.page.get_by_role("textbox", name="Name of the job").fill("Harbor Lane")
    expect(sheet.page.locator(".head")).to_contain_text(SAVED)
    yield sheet
    context.close()


@pytest.fixture
def sheet_with_a_cup(sheet):
    """The same, its first cup in hand."""
    bench = sheet.go_to_the_bench()
    bench.has_own_clock = False
    bench.begin()
    bench.expect_instruction("Pour in part A")
    bench.leave()
    return sheet


def delete_colour(page):
    """Find the button of the first color, once no tap can pass for a bounce of the one before."""
    page.wait_for_timeout(BOUNCE)
    return page.locator("[data-id=c1] > .button-row--tight [data-act=remove-row]")


def trash_on(page):
    return run(page, "() => rows('trash')")


def test_a_color_with_a_cup_in_hand_asks_before_it_goes(sheet_with_a_cup):
    page = sheet_with_a_cup.page
    sheet_with_a_cup.open_the_face()
    delete_colour(page).click()
    expect(page.get_by_text("Lake green, cup 1 is in hand, and its clocks go too.")).to_be_visible()
    # The same key once more keeps it.
    page.keyboard.press("Enter")
    expect(page.get_by_text("its clocks go too")).to_have_count(0)
    assert len(sheet_with_a_cup.cups()) == 1
    delete_colour(page).click()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert sheet_with_a_cup.job()["colours"] == []


def test_a_color_without_a_cup_goes_at_once(sheet):
    sheet.open_the_face()
    delete_colour(sheet.page).click()
    assert sheet.job()["colours"] == []


def test_a_job_with_a_cup_in_hand_asks_before_it_goes(sheet_with_a_cup):
    page = sheet_with_a_cup.page
    menu = Menu(page).open()
    menu.delete_job("Harbor Lane")
    expect(menu.dialog.get_by_text("Lake green, cup 1 is in hand")).to_be_visible()
    menu.dialog.get_by_role("button", name="Keep the job").click()
    assert list(jobs_on(page)) == ["Harbor Lane"]
    page.wait_for_timeout(BOUNCE)
    menu.delete_job("Harbor Lane")
    menu.dialog.get_by_role("button", name="Delete the job").click()
    wait_until(page, lambda: jobs_on(page) == {})


def test_a_deleted_job_can_be_taken_back_after_a_relaunch_with_its_cup(sheet_with_a_cup, server):
    page = sheet_with_a_cup.page
    menu = Menu(page).open()
    menu.delete_job("Harbor Lane")
    menu.dialog.get_by_role("button", name="Delete the job").click()
    wait_until(page, lambda: jobs_on(page) == {})
    sheet_with_a_cup.open(server.address)
    menu.open().dialog.get_by_role("button", name="Undo: Harbor Lane deleted").click()
    menu.pick_job("Harbor Lane")
    expect(page.get_by_role("textbox", name="Name of the job")).to_have_value("Harbor Lane")
    assert len(jobs_on(page)["Harbor Lane"]["colours"][0]["cups"]) == 1
    assert trash_on(page) == []


def test_a_deleted_face_and_its_color_can_be_taken_back_after_a_relaunch(sheet, server):
    page = sheet.page
    sheet.open_the_face()
    page.wait_for_timeout(BOUNCE)
    page.locator("[data-id=f1] [data-act=remove-row]").last.click()
    expect(page.locator("[data-id=f1]")).to_have_count(0)
    page.wait_for_timeout(BOUNCE)
    delete_colour(page).click()
    wait_until(page, lambda: [each["name"] for _, each in trash_on(page)].count("Lake green") == 1)
    sheet.open(server.address)
    menu = Menu(page).open()
    menu.dialog.get_by_role("button", name="Undo: Lake green deleted").click()
    wait_until(page, lambda: len(jobs_on(page)["Harbor Lane"]["colours"]) == 1)
    page.wait_for_timeout(BOUNCE)
    menu.dialog.get_by_role("button", name="Undo: Plate deleted").click()
    wait_until(page, lambda: len(jobs_on(page)["Harbor Lane"]["colours"][0]["faces"]) == 1)
    assert jobs_on(page)["Harbor Lane"]["colours"][0]["faces"][0]["width"] == "20"
    expect(menu.dialog.get_by_role("button", name=re.compile("^Undo"))).to_have_count(0)


def test_what_was_deleted_a_day_ago_is_let_go(sheet, server):
    page = sheet.page
    sheet.open_the_face()
    delete_colour(page).click()
    wait_until(page, lambda: len(trash_on(page)) == 1)
    old = "for (const [id, what] of await rows('trash')) await put('trash', id, { ...what, until: 1 });"
    run(page, f"async () => {{ {old} }}")
    sheet.open(server.address)
    wait_until(page, lambda: trash_on(page) == [])
    expect(Menu(page).open().dialog.get_by_role("button", name=re.compile("^Undo"))).to_have_count(0)
