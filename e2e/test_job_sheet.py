"""A job planned on the phone: typed in, read off, explained, saved and opened again."""

import json
import re
from pathlib import Path

import axe_core_python
import pytest
from playwright.sync_api import expect

from e2e.pages import JobSheet, Menu, Working

AXE = (Path(axe_core_python.__file__).parent / "axe.min.js").read_text()
RULES = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


@pytest.fixture
def sheet(page, server):
    return JobSheet(page).open(server.address)


@pytest.fixture
def working(page):
    return Working(page)


@pytest.fixture
def menu(page):
    return Menu(page)


def test_the_first_answer_is_on_the_screen_at_once_and_no_cup_of_the_example_can_be_begun(sheet):
    expect(sheet.step("Faces").get_by_text("Example: type over it")).to_be_visible()
    expect(sheet.figure("mix_volume")).to_have_text(re.compile(r"^\d+( \d/\d)?\sfl oz$"))
    sheet.expect_next("type your own face", "This one is an example")
    expect(sheet.main.get_by_role("button", name=re.compile("To the bench"))).to_have_count(0)


def test_the_bar_leads_to_the_field_and_what_is_typed_takes_the_place_of_the_example(sheet, page):
    sheet.next.click()
    page.keyboard.type("2 ft")
    expect(sheet.field("Width")).to_have_value("2 ft")
    expect(sheet.step("Faces").get_by_text("Example: type over it")).to_be_hidden()
    sheet.expect_next("measure part A", "cup 1 of")


def test_in_a_new_job_the_bar_leads_to_adding_a_face(sheet, page, menu):
    menu.open().new_job()
    sheet.expect_next("add a face")
    sheet.next.click()
    expect(sheet.main.get_by_role("button", name="Add a face")).to_be_focused()


# 1 ft2 at 1/16 in takes 9 in3 = 147.4836 mL, however it is typed (exact from 1 in = 2.54 cm).
@pytest.mark.parametrize(
    ("width", "height", "depth"),
    [
        ("12", "12 in", "1/16"),
        ("1 ft", '12"', "0.0625"),
        ("1' 0\"", "304.8 mm", "1.5875 mm"),
        ("30,48 cm", "12 0/8", "1/16"),
    ],
)
def test_a_square_foot_is_the_same_film_however_it_is_typed(sheet, width, height, depth):
    sheet.type_over_the_example(width, height, depth)
    sheet.expect_figure("face_volume", "4.99 fl oz", sheet.step("Faces"))


def test_nonsense_is_answered_beside_the_field_and_nothing_typed_is_lost(sheet):
    sheet.type_over_the_example("wide", "12")
    sheet.expect_error("Width", '"wide" does not start with a number. Type one, such as 12 3/8 in.')
    expect(sheet.field("Width")).to_have_value("wide")
    sheet.expect_figure("mix_volume", "—")
    sheet.expect_next("fix the width", "Plate")
    sheet.type_in("Width", "12")
    expect(sheet.field("Width")).not_to_have_attribute("aria-invalid", "true")


@pytest.mark.parametrize("absurd", ["-3", "0", "40 m", "3/0", "1,234", "12 in 3", "x" * 60])
def test_an_absurd_size_gives_a_sentence_and_never_an_amount(sheet, absurd):
    sheet.type_over_the_example(absurd, "12")
    expect(sheet.field("Width")).to_have_accessible_description(re.compile(r"\w.*\."))
    sheet.expect_figure("mix_volume", "—")


def test_a_cup_in_ounces_says_which_ounce_was_taken(sheet):
    sheet.main.get_by_text("My cup", exact=True).click()
    sheet.type_in("Cup capacity", "10 oz")
    expect(sheet.field("Cup capacity")).to_have_accessible_description(re.compile("oz taken as US fl oz"))


def test_a_second_face_is_typed_by_enter_alone_and_an_untouched_one_does_not_count(sheet, page):
    sheet.type_over_the_example("12", "12")
    page.get_by_role("button", name="Add a face").click()
    sheet.expect_figure("total_face_volume", "4.99 fl oz")
    for text in ("12", "12", "1/16"):
        page.keyboard.type(text)
        page.keyboard.press("Enter")
    sheet.expect_figure("total_face_volume", "9.97 fl oz")


def test_a_half_typed_face_keeps_the_colour_from_coming_out_short(sheet, page):
    sheet.type_over_the_example("12", "12")
    page.get_by_role("button", name="Add a face").click()
    page.keyboard.type("12")
    sheet.expect_figure("total_face_volume", "—")
    sheet.expect_next("type the height", "Face 2")


def test_a_deleted_face_comes_back_by_undo_and_by_the_menu(sheet, page, menu):
    sheet.type_over_the_example("12", "12")
    face = sheet.open_face("Plate")
    face.get_by_role("button", name="Delete", exact=True).click()
    expect(sheet.face("Plate")).to_have_count(0)
    page.get_by_role("button", name="Undo", exact=True).click()
    expect(sheet.face("Plate")).to_be_visible()
    # No hand is back so soon; a second deletion within 0.6 s is taken for a bounce.
    page.wait_for_timeout(700)
    sheet.open_face("Plate").get_by_role("button", name="Delete", exact=True).click()
    menu.open().undo()
    menu.close()
    expect(sheet.face("Plate")).to_be_visible()


def test_a_copied_face_has_the_same_sizes_and_a_name_of_its_own(sheet):
    sheet.type_over_the_example("12", "12")
    sheet.open_face("Plate").get_by_role("button", name="Copy", exact=True).click()
    expect(sheet.face("Plate 2")).to_contain_text("12 × 12 in")
    sheet.expect_figure("total_face_volume", "9.97 fl oz")


def test_another_shape_asks_for_its_own_sizes(sheet):
    sheet.type_over_the_example("12", "12")
    face = sheet.step("Faces")
    face.locator(".picker__chosen").click()
    face.get_by_role("radio", name="Circle", exact=True).check()
    expect(sheet.field("Width")).to_be_hidden()
    sheet.type_in("Diameter", "12", face)
    # pi/4 of the square foot's 147.4836 mL.
    sheet.expect_figure("face_volume", "3.92 fl oz", face)


def test_the_sizes_of_other_shapes_leave_no_gap(sheet):
    face = sheet.step("Faces")
    width, depth = (sheet.field(label, face).bounding_box() for label in ("Width", "Depth"))
    # Between the two fields stands the second's label and nothing more.
    assert depth["y"] - (width["y"] + width["height"]) < width["height"]


def test_a_step_keeps_its_height_when_it_leaves_the_screen(sheet, page):
    step = sheet.unfold("Resin and room")
    step.get_by_text("Figures of this card").click()
    expect(sheet.field("Pot life")).to_be_visible()
    page.wait_for_timeout(200)
    height = step.bounding_box()["height"]
    page.evaluate("() => scrollTo(0, document.body.scrollHeight)")
    expect(step).to_have_attribute("data-far", "")
    assert abs(step.bounding_box()["height"] - height) < 2


def test_every_figure_walks_down_to_what_was_typed_and_back_to_its_field(sheet, working):
    sheet.type_over_the_example("12 3/8", "12")
    sheet.figure("face_volume", sheet.step("Faces")).click()
    working.expect_title("Film of the face")
    working.go_down("Film of one piece")
    working.go_down("Face area")
    working.go_down("Shape area")
    working.go_down("Rectangle area")
    working.expect_says("12 3/8 in × 12 in")
    working.go_down("Width")
    working.expect_says("You typed 12 3/8 in.")
    working.go_back()
    working.expect_title("Rectangle area")
    working.go_down("Width")
    working.jump("Change what you typed")
    expect(sheet.field("Width")).to_be_focused()


def test_a_blank_figure_says_why_and_leads_to_what_is_missing(sheet):
    sheet.type_over_the_example("12", "")
    reason = sheet.step("Faces").get_by_role("button", name="Height is missing").first
    reason.click()
    expect(sheet.field("Height")).to_be_focused()


def test_ones_own_card_stays_blank_where_the_can_says_nothing_and_costs_only_what_rests_on_it(sheet, page):
    sheet.type_over_the_example("12", "12")
    resin = sheet.unfold("Resin and room")
    resin.get_by_role("radio", name="My own card").check()
    sheet.type_in("What the card is called", "Shop resin")
    sheet.type_in("Ratio figure for A", "2")
    sheet.type_in("Ratio figure for B", "1")
    expect(sheet.figure("mix_volume")).to_have_text(re.compile(r"^\d+( \d/\d)?\sfl oz$"))
    sheet.step("Cups").get_by_text("About this cup").click()
    expect(sheet.figure("reading_a_mass")).to_have_text("—")
    expect(sheet.figure("working_time")).to_have_text("—")
    sheet.type_in("Pot life", "45 min")
    sheet.type_in("Pot life temperature", "72 degF")
    sheet.expect_figure("working_time", "45 min")


def test_a_room_too_hot_to_pour_stops_the_job_with_a_sentence(sheet):
    sheet.type_over_the_example("12", "12")
    sheet.unfold("Resin and room")
    sheet.type_in("Air temperature", "50 degC")
    stop = sheet.step("Resin and room").locator(".check--stop").locator("visible=true")
    expect(stop.first).to_be_visible()
    sheet.expect_figure("mix_volume", "—")


def test_a_stop_names_the_fields_by_their_labels_and_folds_what_would_do_below(sheet):
    sheet.type_over_the_example("12", "12")
    resin = sheet.unfold("Resin and room")
    sheet.type_in("Air temperature", "120 degF")
    stop = resin.locator(".check--stop").filter(has_text="no time to pour").locator("visible=true").first
    way = stop.get_by_text("Cool the parts: the resin temperature is 120 °F.")
    expect(way).to_be_hidden()
    stop.get_by_text("Ways to fix").click()
    expect(way).to_be_visible()
    sheet.type_in("Resin temperature", "130 degF")
    expect(stop.get_by_text("Cool the parts: the resin temperature is 130 °F.")).to_be_visible()


def test_units_change_what_is_read_and_leave_what_was_typed(sheet, menu):
    sheet.type_over_the_example("12 in", "12 in", "1/16 in")
    menu.open().choose("fl oz")
    menu.close()
    # 9 in3 are 4.98701 US fl oz (exact from the gallon of 231 in3).
    sheet.expect_figure("face_volume", "4.99 fl oz", sheet.step("Faces"))
    expect(sheet.field("Width")).to_have_value("12 in")


def test_a_bare_number_stays_the_same_amount_when_the_units_change(sheet, menu):
    sheet.type_over_the_example("12", "12")
    sheet.unfold("Resin and room")
    sheet.type_in("Air temperature", "70")
    menu.open().choose("mm")
    menu.choose("°C")
    menu.close()
    # A square foot of 1/16 in is 9 in3, 147.4836 mL; 70 degF are 21.1 degC.
    sheet.expect_figure("face_volume", "147 mL", sheet.step("Faces"))
    expect(sheet.field("Width")).to_have_value("12 in")
    expect(sheet.field("Air temperature")).to_have_value("70 °F")


def test_a_job_that_is_kept_says_so_when_the_page_comes_back(sheet, page):
    sheet.type_over_the_example("12", "12")
    sheet.expect_saved()
    page.reload()
    expect(page.locator(".head")).to_contain_text("saved · ready offline")


def test_what_was_typed_is_there_after_the_page_comes_back(sheet, page):
    sheet.type_over_the_example("17 1/2", "12")
    sheet.expect_saved()
    page.reload()
    sheet.unfold("Faces")
    expect(sheet.face("Plate")).to_contain_text("17 1/2 × 12 in")


def test_a_job_is_saved_to_a_file_and_opened_again(sheet, tmp_path, menu):
    sheet.type_over_the_example("17 1/2", "12")
    path = sheet.save_to_a_file(tmp_path)
    job = json.loads(path.read_text())
    assert job["format"] == "sixteenth-job"
    assert job["colours"][0]["faces"][0]["width"] == "17 1/2"
    menu.open().new_job()
    sheet.open_a_file(path)
    sheet.unfold("Faces")
    expect(sheet.face("Plate")).to_contain_text("17 1/2 × 12 in")


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("list.json", "not json", "not JSON"),
        ("new.json", '{"format": "sixteenth-job", "version": 99}', "version 99"),
        ("odd.json", '{"format": "sixteenth-job", "version": 1, "colour": []}', '"colour"'),
    ],
)
def test_a_file_that_is_no_job_gets_a_sentence_with_its_name(sheet, page, tmp_path, name, text, says):
    path = tmp_path / name
    path.write_text(text)
    sheet.open_a_file(path)
    expect(page.locator(".toast")).to_contain_text(name)
    expect(page.locator(".toast")).to_contain_text(says)


def test_a_row_more_than_there_may_be_is_refused_at_its_button(sheet, page, tmp_path):
    path = tmp_path / "full.json"
    openings = [{"id": f"o{place}", "shape": "circle", "diameter": "1/4"} for place in range(40)]
    plate = {"id": "f1", "name": "Board", "width": "24", "height": "18", "openings": openings}
    colours = [{"id": "c1", "name": "Lake green", "faces": [plate]}]
    path.write_text(json.dumps({"format": "sixteenth-job", "version": 3, "colours": colours}))
    sheet.open_a_file(path)
    expect(sheet.step("Resin and room")).to_contain_text("No resin card yet")
    sheet.unfold("Faces")
    face = sheet.open_face("Board")
    face.get_by_text("Cut-outs, edge, grooves, texture").click()
    face.get_by_role("button", name="Add a cut-out").click()
    expect(page.locator(".toast")).to_contain_text("A face holds at most 40 cut-outs.")
    expect(face.locator(".openings > *")).to_have_count(40)


def test_an_example_without_colors_opens_and_is_typed_in(sheet, page, tmp_path):
    path = tmp_path / "bare.json"
    path.write_text('{"format": "sixteenth-job", "version": 3, "example": true}')
    sheet.open_a_file(path)
    page.get_by_role("textbox", name="Name of the job").fill("Gate")
    sheet.unfold("Faces").get_by_role("button", name="Add a color").click()
    sheet.expect_saved()
    expect(sheet.face("Face 1")).to_be_visible()
    expect(page.get_by_role("textbox", name="Name of the job")).to_have_value("Gate")


def test_several_jobs_live_on_one_phone_and_a_deleted_one_comes_back(sheet, page, menu):
    sheet.type_over_the_example("12", "12")
    sheet.expect_saved()
    menu.open().new_job()
    page.get_by_role("textbox", name="Name of the job").fill("Second job")
    sheet.expect_saved()
    menu.open()
    menu.expect_jobs("Second job", "Boathouse door")
    menu.delete_job("Boathouse door")
    menu.expect_jobs("Second job")
    menu.undo()
    menu.expect_jobs("Second job", "Boathouse door")
    menu.pick_job("Boathouse door")
    expect(page.get_by_role("textbox", name="Name of the job")).to_have_value("Boathouse door")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_barrier_is_found_on_any_screen_of_the_page(sheet, page, scheme):
    page.emulate_media(color_scheme=scheme)
    for title in ("Resin and room", "Tint", "Pour and cure", "Record"):
        sheet.unfold(title)
    page.evaluate("() => document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    page.evaluate(AXE)
    assert barriers(page) == []
    sheet.figure("mix_volume").click()
    assert barriers(page) == []
    Working(page).close()
    Menu(page).open()
    assert barriers(page) == []


@pytest.mark.parametrize(("width", "size"), [(320, 18), (360, 36), (740, 18), (820, 18)])
def test_nothing_needs_sideways_scrolling(sheet, page, width, size):
    page.set_viewport_size({"width": width, "height": 640})
    page.evaluate("(size) => { document.documentElement.style.fontSize = `${size}px`; }", size)
    for title in ("Resin and room", "Tint", "Pour and cure", "Record"):
        sheet.unfold(title)
    assert page.evaluate("() => document.documentElement.scrollWidth") <= width


def barriers(page):
    """Return what axe finds, by rule and the first node."""
    found = page.evaluate(
        "async (tags) => (await axe.run(document, { runOnly: { type: 'tag', values: tags } })).violations"
        ".map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 200)}`)",
        RULES,
    )
    return found
