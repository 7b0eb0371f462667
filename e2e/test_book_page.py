"""The formula book on the phone: everything the figures come from, searched and read without signal."""

import re
from pathlib import Path

import axe_core_python
import pytest
from playwright.sync_api import expect

from e2e.folds import FormulaBook
from e2e.pages import JobSheet, Working
from webapp.formulas.book import load_book
from webapp.formulas.constants import CONSTANTS

AXE = (Path(axe_core_python.__file__).parent / "axe.min.js").read_text()
RULES = ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
OPEN_ALL = "() => document.querySelectorAll('.book details').forEach((each) => { each.open = true; })"
WRITES_OF_SEARCHES = """(searches) => {
  const field = document.querySelector("[data-part=book-words]");
  const watcher = new MutationObserver(() => {});
  watcher.observe(document.querySelector(".book"), { subtree: true, attributes: true, childList: true });
  const shown = () => [...document.querySelectorAll(".entry, .book__group")].map((each) => each.hidden);
  return searches.map((words) => {
    const before = shown();
    field.value = words;
    field.dispatchEvent(new Event("input", { bubbles: true }));
    const after = shown();
    const moved = after.filter((hidden, place) => hidden !== before[place]).length;
    return [watcher.takeRecords().length, moved];
  });
}"""


@pytest.fixture
def sheet(page, server):
    return JobSheet(page).open(server.address)


@pytest.fixture
def book(page, sheet):
    return FormulaBook(page).open()


def test_every_formula_check_and_constant_has_its_entry(book):
    loaded = load_book()
    wanted = {*loaded.formulas, *loaded.checks, *(each.name for each in CONSTANTS)}
    names = book.dialog.locator(".entry").evaluate_all("(all) => all.map((each) => each.dataset.name)")
    assert len(names) == len(wanted)
    assert set(names) == wanted


def test_it_is_grouped_in_the_order_of_the_work(book):
    titles = book.dialog.locator(".book__step").all_text_contents()
    wanted = ["Ratio", "Areas", "Film", "Cups", "Tint", "Will the edge hold?", "Cure", "Constants"]
    assert [each for each in titles if each in wanted] == wanted


def test_it_is_searched_by_words_of_a_name_a_purpose_an_input_or_a_source(book):
    book.search.fill("dew margin")
    expect(book.shown.locator(".entry__name", has_text=re.compile("^Dew margin$"))).to_be_visible()
    book.search.fill("ramanujan")
    book.expect_found("Ellipse edge")
    book.search.fill("blush")
    book.expect_found("Small dew margin", "High humidity")
    book.search.fill("humidity alduchov error")
    book.expect_found("Dew point error")
    expect(book.dialog.get_by_role("status")).to_contain_text("1 of ")
    book.search.fill("no such word at all")
    expect(book.shown).to_have_count(0)
    book.search.fill("")
    expect(book.entry("film_volume")).to_be_visible()


def test_an_entry_says_purpose_level_unit_inputs_formula_example_and_source(book):
    entry = book.turn_to("film_volume")
    for words in (
        "Volume of a level film on one piece",
        "For each face, in cm³.",
        "face area × (depth + texture depth)",
        "Texture depth",
        "entered for a face",
        "Example: 1000 cm² at 0.15 cm is 150 cm³",
        "Source: geometry; a level film fills the hollows.",
    ):
        expect(entry).to_contain_text(words)
    expect(entry.locator("math").first).to_be_visible()


def test_a_check_says_its_sentence_and_what_it_stands_beside(book):
    entry = book.turn_to("dew_margin_small")
    expect(entry).to_contain_text(
        "The dew margin is [dew margin], less than [least margin over the dew point]"
    )
    expect(entry).to_contain_text("Stands beside: Dew margin")
    expect(entry.locator(".entry__unit")).to_have_text("caution")


def test_an_entry_leads_to_its_inputs_down_to_a_constant_with_its_source(book):
    entry = book.turn_to("working_time")
    entry.get_by_role("button", name="Gas constant").click()
    constant = book.entry("gas_constant")
    expect(constant).to_contain_text("8.314462618 J/(mol K)")
    expect(constant).to_contain_text("Source: CODATA 2018")
    expect(constant).to_be_in_viewport()


def test_a_shared_rule_explains_itself_where_it_is_called(book):
    entry = book.turn_to("working_time")
    entry.get_by_text("The speed factor", exact=True).click()
    expect(entry).to_contain_text("How many times faster the cure runs")
    expect(entry).to_contain_text("1 ÷ reference temperature − 1 ÷ temperature")


def test_a_working_opens_its_formula_in_the_book_and_comes_back(sheet, page):
    sheet.type_over_the_example("12", "12")
    sheet.figure("face_volume", sheet.step("Faces")).click()
    working = Working(page)
    working.go_down("Film of one piece")
    working.dialog.get_by_role("button", name="In the whole list").click()
    book = FormulaBook(page)
    expect(book.entry("film_volume")).to_contain_text("face area × (depth + texture depth)")
    book.close()
    working.expect_title("Film of one piece")


def test_the_book_opens_without_signal(page, own_server):
    page.goto(own_server.address)
    lines = page.locator("[data-part=offline]")
    expect(lines).to_contain_text("How it is worked out: ready offline", timeout=20_000)
    own_server.stop()
    page.reload()
    book = FormulaBook(page).open()
    expect(book.turn_to("dew_point")).to_contain_text("Alduchov and Eskridge")


def test_every_entry_opens_and_no_barrier_is_found_in_any(book, page):
    page.evaluate(OPEN_ALL)
    expect(book.dialog.locator(".entry__body")).to_have_count(book.dialog.locator(".entry").count())
    assert page.evaluate("() => document.querySelector('.book__body').scrollWidth") <= 360
    page.evaluate(AXE)
    found = page.evaluate(
        "async (tags) => (await axe.run('.book', { runOnly: { type: 'tag', values: tags } })).violations"
        ".map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 200)}`)",
        RULES,
    )
    assert found == []


def test_a_search_writes_only_what_comes_or_goes_and_the_count(book, page):
    searches = ["d", "de", "dew", "dew", "dew p", "", "source of", "pot life"]
    writes = page.evaluate(WRITES_OF_SEARCHES, searches)
    assert sum(moved for _, moved in writes) > 100
    # Beside the entries that come or go only the one text that counts them is written.
    assert [row for row in writes if row[0] > row[1] + 1] == []
    assert writes[3] == [0, 0]
