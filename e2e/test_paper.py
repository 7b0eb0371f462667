"""A job printed to take to the bench: on one page, in the screen's own figures, black on white."""

import json

import pytest
from playwright.sync_api import expect

from e2e.bench import Bench
from e2e.pages import JobSheet, Menu
from e2e.paper import Paper

CARD = {
    "name": "Harbor gloss",
    "ratio_basis": "volume",
    "stated_ratio_a": "1",
    "stated_ratio_b": "1",
    "pot_life": "40 min",
    "pot_life_temperature": "25 degC",
    "pot_life_mass": "150 g",
    "mix_time": "3 min",
    "first_mist": "0 min",
    "second_mist": "9 min",
    "tint_limit": "2 %",
    "greatest_coat_depth": "1/8 in",
    "stated_tack_free_time": "7 h",
    "stated_recoat_opens": "5 h",
    "stated_recoat_closes": "20 h",
    "stated_cure_time": "36 h",
    "stated_top_coat_wait": "48 h",
}
BY_MASS = {
    **CARD,
    "name": "Dock clear",
    "ratio_basis": "mass",
    "stated_ratio_a": "100",
    "stated_ratio_b": "42",
    "density_a": "1.12 g/mL",
    "density_b": "0.99 g/mL",
    "resin_part": "b",
}
INCHES = {"length": "in", "volume": "fl oz", "temperature": "degF"}
METRIC = {"length": "mm", "volume": "mL", "temperature": "degC"}
LONG_NAME = "A name that is long because the customer wanted all of it on the sheet, ÅÄÖ"


def face(number, name, width, height, **more):
    sizes = {"width": f"{width} in", "height": f"{height} in", "depth": "1/16 in"}
    return {"id": f"f{number}", "name": name, "shape": "rectangle", **sizes, **more}


def job(name="Ferry landing", units=INCHES, card=CARD, cup=("16 fl oz", "1/4 fl oz"), **more):
    green = [
        face(1, "Ground, left half", 24, 14),
        face(2, "Ground, right half", 24, 14),
        face(3, "Sign", 20, 6),
    ]
    red = [face(4, "Buoy", 9, 7), face(5, "Letters", 14, 3, pieces="4"), face(6, LONG_NAME, 5, 5)]
    return {
        "format": "sixteenth-job",
        "version": 3,
        "id": "job-paper",
        "name": name,
        "units": units,
        "room": {"air_temperature": "72 degF", "relative_humidity": "45 %"},
        "card": card,
        "bench": {"cup_capacity": cup[0], "cup_graduation": cup[1]},
        "colours": [
            {"id": "c1", "name": "Lake green", "swatch": "#0f6b5c", "tint": "drops", "faces": green},
            {"id": "c2", "name": "Barn red", "swatch": "#8f2d1b", "tint": "drops", "faces": red},
        ],
        **more,
    }


@pytest.fixture
def sheet(page, server):
    return JobSheet(page).open(server.address)


@pytest.fixture
def paper(page):
    return Paper(page)


@pytest.fixture
def opened(sheet, page, tmp_path):
    """Open a job from its file."""

    def open_job(job):
        page.emulate_media(media="screen")
        path = tmp_path / "job.json"
        path.write_text(json.dumps(job))
        sheet.open_a_file(path)
        expect(page.get_by_role("textbox", name="Name of the job")).to_have_value(job["name"])

    return open_job


def test_six_faces_in_two_colors_take_one_page_and_read_as_on_the_screen(opened, sheet, page, paper):
    for planned in (
        job("In inches"),
        job("In millimeters", units=METRIC, cup=("400 mL", "5 mL")),
        job("By mass", units=METRIC, card=BY_MASS),
    ):
        opened(planned)
        assert {size: paper.pages(size) for size in ("A4", "Letter")} == {"A4": 1, "Letter": 1}
        screen = paper.on_the_screen(sheet, "Resin and room", "Faces", "Cups", "Tint", "Pour and cure")
        both = [(cell, text) for cell, text in paper.show().readings() if cell in screen]
        assert len({cell for cell, _ in both}) >= 10
        assert [(cell, text, screen[cell]) for cell, text in both if text not in screen[cell]] == []


def test_twelve_cups_take_two_pages(opened, paper):
    wide = job("Twelve cups")
    wide["colours"][0]["faces"][0] |= {"width": "64 in", "height": "30 in"}
    opened(wide)
    assert {size: paper.pages(size) for size in ("A4", "Letter")} == {"A4": 2, "Letter": 2}
    expect(paper.show().row("Cup 10 of 10")).to_be_visible()
    expect(paper.row("Cup 2 of 2")).to_be_visible()


def test_amounts_are_told_as_lines_to_fill_to_and_as_what_the_scale_reads(opened, sheet, paper):
    one = job("One plate", cup=("16 fl oz", "1/4 fl oz"))
    one["colours"] = [{**one["colours"][0], "faces": [face(1, "Plate", 12, 12)]}]
    opened(one)
    # 1 ft2 at 1/16 in takes 4.99 fl oz (exact), so 5.49 with a tenth more, and some stays in the cup: 5 3/4.
    row = paper.show().row("Lake green")
    expect(row).to_contain_text("to the 2 7/8 fl oz line")
    expect(row).to_contain_text("to the 5 3/4 fl oz line (2 7/8 fl oz more)")
    expect(paper.sheet.get_by_role("columnheader").nth(1)).to_contain_text("(resin)")
    opened({**one, "name": "By mass", "card": BY_MASS})
    # Arithmetic: at 100 to 42 by mass 129 g of A take 54.2 g of B, so 54 g; tared before B, as on the screen.
    row = paper.show().row("Lake green")
    expect(row).to_contain_text("to 129 g")
    expect(row).to_contain_text("tare, then to 54 g")
    expect(paper.sheet.get_by_role("columnheader").nth(1)).to_contain_text("(hardener)")


def test_nothing_on_paper_is_cut_or_small_and_a_dark_screen_prints_black_on_white(opened, page, paper):
    opened(job(LONG_NAME))
    page.emulate_media(color_scheme="dark")
    for size in ("A4", "Letter"):
        assert paper.show(size).cut() == []
    expect(paper.row(LONG_NAME)).to_be_visible()
    assert paper.smallest() >= 9
    expect(paper.sheet).to_have_css("color", "rgb(0, 0, 0)")
    assert page.evaluate("() => getComputedStyle(document.body).backgroundColor") in (
        "rgba(0, 0, 0, 0)",
        "rgb(255, 255, 255)",
    )


def test_the_worst_check_stands_first_and_a_blank_figure_says_what_it_lacks(opened, paper):
    wet = job("Wet room", card={**CARD, "stated_cure_time": ""})
    wet["room"] |= {"surface_temperature": "45 degF"}
    opened(wet)
    said = paper.show().sheet.locator(".paper__checks > li")
    worst = [text.split(": ")[0] for text in said.all_inner_texts()]
    assert worst[0] == "Stop"
    assert "Caution" in worst
    assert worst == sorted(worst, key=["Stop", "Caution", "Not checked"].index)
    expect(paper.row("Cured, not before")).to_contain_text("no cure time")
    expect(paper.row("Tack-free, not before")).to_contain_text("a cold film can stall")
    expect(paper.row("Recoat, not before")).to_contain_text("as above")


def test_the_example_says_that_it_is_practice_and_a_job_of_ones_own_does_not(sheet, opened, paper):
    practice = paper.show().sheet.get_by_text("Practice:")
    expect(practice).to_be_visible()
    opened(job())
    expect(paper.show().sheet.get_by_text("Practice:")).to_be_hidden()


def test_an_open_bench_prints_the_sheet_with_its_cup_once_and_no_button(opened, sheet, page, paper):
    opened(job("On the bench"))
    sheet.next.click()
    bench = Bench(page)
    expect(bench.root).to_be_visible()
    paper.show()
    expect(bench.root).to_be_hidden()
    expect(page.get_by_role("button")).to_have_count(0)
    expect(page.get_by_role("textbox")).to_have_count(0)
    expect(paper.row("Cup 1 of 4")).to_have_count(1)


def test_print_in_the_menu_prints_the_job_as_it_is_now(opened, page, paper):
    opened(job())
    page.evaluate("() => { print = () => document.body.setAttribute('data-printed', ''); }")
    Menu(page).open()
    page.get_by_role("dialog").get_by_role("button", name="Print").click()
    expect(page.locator("body")).to_have_attribute("data-printed", "")
    expect(paper.sheet).to_contain_text("Ferry landing")
    page.emulate_media(media="print")
    expect(page.get_by_role("dialog")).to_be_hidden()
    expect(paper.sheet).to_be_visible()
    page.emulate_media(media="screen")
    expect(paper.sheet).to_be_hidden()
