"""A calm sheet: few figures in step 3, at most one box on the page, and each figure as people measure it."""

import re

import pytest
from playwright.sync_api import expect

from e2e.pages import JobSheet, Menu

FIGURES = """() => [...document.querySelectorAll("[data-step=cups] .figure")]
  .filter((each) => each.offsetParent).map((each) => each.dataset.cell)"""
BOXES = """() => [...document.querySelectorAll(".check--stop, .check--caution, .caution")]
  .filter((each) => each.offsetParent && !each.matches(".check--calm"))
  .filter((each) => getComputedStyle(each).backgroundColor !== "rgba(0, 0, 0, 0)").length"""
# A unit that nobody on an inch job reads, behind a figure.
METRIC = re.compile(r"\d\s?(mm|cm)(²|\b)")


@pytest.fixture
def sheet(page, server):
    return JobSheet(page).open(server.address)


def typed(sheet, **texts):
    """Type into the job's fields by the names of their inputs, wherever they are folded away."""
    for name, text in texts.items():
        sheet.page.evaluate(
            """async ([name, text]) => {
              const base = document.querySelector("script[src*='app.js']").src;
              const { edit } = await import(new URL("keeping/store.js", base));
              edit(/shape|width|height|diameter/.test(name) && !/cup/.test(name) ? "f1" : "job", name, text);
            }""",
            [name, text],
        )


def test_one_face_and_one_cup_show_the_mix_its_two_parts_and_pour_by_and_no_box(sheet, page):
    sheet.type_in("Width", "16", sheet.step("Faces"))
    expect(page.get_by_role("button", name=re.compile("To the bench"))).to_be_visible()
    assert page.evaluate(FIGURES) == ["mix_volume", "reading_a", "reading_b", "pour_by"]
    for title in ("Resin and room", "Tint", "Pour and cure"):
        sheet.unfold(title)
    assert page.evaluate(BOXES) == 0


def test_of_several_cautions_one_is_a_box(sheet, page):
    typed(
        sheet, width="5 ft", height="3 ft", air_temperature="90", relative_humidity="88", lowest_tonight="45"
    )
    for title in ("Resin and room", "Pour and cure"):
        sheet.unfold(title)
    cautions = page.locator(".step .check--caution:visible, .step .check--stop:visible")
    expect(cautions.nth(2)).to_be_visible()
    assert page.evaluate(BOXES) == 1
    says = cautions.locator(".check__says").all_text_contents()
    assert len(set(says)) == len(says)


def test_a_card_by_mass_leads_with_grams(sheet, page):
    typed(sheet, width="16")
    sheet.unfold("Resin and room")
    page.get_by_role("radio", name="Demo clear, ratio by mass").check(force=True)
    expect(sheet.figure("reading_a_mass", sheet.step("Cups"))).to_have_text(re.compile(r"^\d+\sg$"))
    assert page.evaluate(FIGURES) == ["mix_volume", "reading_a_mass", "reading_b_mass", "pour_by"]


def test_nothing_on_an_inch_job_is_in_millimeters(sheet, page):
    typed(sheet, width="16")
    for title in ("Resin and room", "Cups", "Tint", "Pour and cure"):
        sheet.unfold(title)
    sheet.step("Cups").get_by_text("About this cup").click()
    for name in ("Wet edge", "Heat in the cup", "Leveling and bubbles"):
        page.get_by_role("button", name=name, exact=True).click()
    figures = [text for text in page.locator(".figure:visible").all_inner_texts() if text]
    assert len(figures) > 30
    assert [text for text in figures if METRIC.search(text)] == []
    folded = page.locator("details.more:not([open])")
    while folded.count():
        folded.evaluate_all("(all) => all.forEach((each) => { each.open = true; })")
        expect(page.locator("details.more[open] > [data-late]")).to_have_count(0)
    boxes = page.locator(".field__box").evaluate_all(
        "(all) => all.map(({ firstChild: i, textContent }) => `${i.placeholder} ${i.value} ${textContent}`)"
    )
    assert len(boxes) > 60
    assert [text for text in boxes if re.search(r"\bmm|\bcm", text)] == []


# Types into every field past a bound, or blanks all again, and returns what the whole page says then: texts,
# hints and titles, in folds and out of them.
TYPED_EVERYWHERE = """async (pick) => {
  const base = document.querySelector("script[src*='app.js']").src;
  const { edit, settle, state } = await import(new URL("keeping/store.js", base));
  const { inputs } = await import(new URL("printed.js", base));
  const rows = { colour: "c1", face: "f1", shape: "f1" };
  let typed = 0;
  for (const [name, { section, kind, least, most }] of Object.entries(inputs)) {
    if (kind === "choice" || kind === "text") continue;
    const past = { below: least && "0", above: most && "9999999" };
    const text = { negative: "-5", foreign: "3 foo", blank: "", ...past }[pick];
    if (typeof text !== "string") continue;
    edit(rows[section] ?? "job", name, text);
    typed += 1;
  }
  settle();
  await new Promise((painted) => requestAnimationFrame(() => setTimeout(painted, 100)));
  const spoken = [...document.querySelectorAll("[aria-label], [placeholder], title")].map((each) => (
    each.getAttribute("aria-label") ?? each.getAttribute("placeholder") ?? each.textContent
  ));
  const texts = [...document.querySelectorAll("main *")].flatMap((each) => [...each.childNodes])
    .filter((each) => each.nodeType === Node.TEXT_NODE && each.textContent.trim());
  const notes = document.querySelectorAll(".field__note:not([hidden])").length;
  return { typed, notes, said: [...spoken, ...texts.map((each) => each.textContent)] };
}"""


def test_whatever_an_inch_job_refuses_it_says_nothing_in_millimeters(sheet, page):
    typed(sheet, width="16")
    for title in ("Resin and room", "Cups", "Tint", "Pour and cure"):
        sheet.unfold(title)
    folded = page.locator("details.more:not([open])")
    while folded.count():
        folded.evaluate_all("(all) => all.forEach((each) => { each.open = true; })")
        expect(page.locator("details.more[open] > [data-late]")).to_have_count(0)
    refused = 0
    for pick in ("below", "negative", "above", "foreign", "blank"):
        found = page.evaluate(TYPED_EVERYWHERE, pick)
        assert found["typed"] > 60
        refused += found["notes"]
        assert len(found["said"]) > 400
        assert [text for text in found["said"] if re.search(r"\b(mm|cm)(²|2|/m)?\b|millimet", text)] == []
    assert refused > 120


def test_the_wet_edge_is_a_caution_beside_the_cup_and_names_the_face(sheet, page):
    # Round a ring the last cup meets the first.
    typed(sheet, shape="ring", outer_diameter="60", inner_diameter="36")
    cups = sheet.unfold("Cups")
    caution = cups.locator(".pour .seam .check--caution", has_text="cannot keep the edge wet")
    expect(caution).to_be_visible()
    seam = cups.locator(".seam", has_text="cannot keep the edge wet")
    expect(seam.locator(".seam__name")).to_contain_text("Plate")
    caution.get_by_text("Ways to fix").click()
    expect(caution.get_by_text(re.compile(r"alone \d, with two people \d\."))).to_be_visible()
    above = sheet.figure("pour_by", cups).bounding_box()
    below = cups.get_by_role("button", name=re.compile("bench")).bounding_box()
    here = caution.bounding_box()
    assert above["y"] < here["y"] < below["y"]
    typed(sheet, shape="rectangle")
    expect(caution).to_have_count(0)


def test_the_starting_cup_follows_the_units_until_one_has_its_own(sheet, page):
    expect(page.get_by_role("img", name="Your cup of 16 fl oz")).to_be_visible()
    menu = Menu(page).open()
    menu.choose("mm")
    menu.close()
    expect(page.get_by_role("img", name="Your cup of 400 mL")).to_be_visible()
    sheet.main.get_by_text("My cup", exact=True).click()
    expect(sheet.field("Cup mark spacing")).to_have_value("5 mL")
    sheet.type_in("Cup capacity", "500 mL")
    menu.open().choose("in")
    menu.close()
    expect(page.get_by_role("img", name="Your cup of 500 mL")).to_be_visible()


def test_a_night_that_is_typed_makes_a_band_of_what_must_not_be_early(sheet, page):
    typed(sheet, width="16")
    step = sheet.unfold("Pour and cure")
    expect(sheet.figure("cured_due", step)).to_be_visible()
    expect(step.locator("[data-cell=cured_due_at_night]")).to_be_hidden()
    typed(sheet, lowest_tonight="60")
    for cell in ("tack_free", "recoat_opens", "cured", "top_coat"):
        expect(step.locator(f"[data-cell={cell}_due_at_night]")).to_be_visible()
    expect(step.locator("[data-cell=recoat_closes_due_at_night]")).to_have_count(0)
    typed(sheet, lowest_tonight="45")
    expect(step.get_by_text(re.compile("the film can stall")).first).to_be_visible()
