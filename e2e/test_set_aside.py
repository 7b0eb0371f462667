"""A kept job that no screen can show locks nobody out: it is set aside and offered as a file."""

import re

import pytest
from playwright.sync_api import expect

from e2e.pages import JobSheet, Menu

KEEP = """async ([change, isOpen]) => {
  const entry = document.querySelector("script[type=module]").src;
  const { recordOf } = await import(entry.replace("app.js", "keeping/persistence.js"));
  const opening = indexedDB.open("sixteenth");
  const database = await new Promise((resolve) => { opening.onsuccess = () => resolve(opening.result); });
  const transaction = database.transaction(["jobs", "meta"], "readwrite");
  const asked = (request) => new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
  const [jobs, meta] = ["jobs", "meta"].map((name) => transaction.objectStore(name));
  const good = JSON.parse((await asked(jobs.getAll())).find((record) => record.name !== "Harmed").text);
  const last = await asked(meta.get("last"));
  const job = { ...good, id: `j${isOpen}`, name: "Harmed", ...change };
  const colour = job.colours[0];
  if (change.colour) job.colours = [{ ...colour, ...change.colour }];
  delete job.colour;
  const record = { ...recordOf(change.text ?? job, last.at), name: job.name };
  jobs.put(record, job.id);
  if (isOpen) meta.put({ ...last, open: job.id }, "last");
  const count = await asked(jobs.count());
  await new Promise((resolve) => { transaction.oncomplete = resolve; });
  database.close();
  const key = "sixteenth sentinel";
  const sentinel = JSON.parse(localStorage.getItem(key));
  const open = isOpen ? job.id : sentinel.open;
  localStorage.setItem(key, JSON.stringify({ ...sentinel, jobs: count, open }));
  return record.text;
}"""
LIVE_CUP = {
    "id": "u1",
    "stages": ["ready", "contact", "mixed"],
    "taps": [{"stage": "ready", "at": "2026-11-28T09:00:00.000Z"}],
    "amounts": {"mix_volume": None},
}
POISONS = {
    "cups are no list": {"colour": {"cups": False}},
    "cups are numbers": {"colour": {"cups": [7]}},
    "colors are a number": {"colours": 3},
    "a color is nothing": {"colours": [None]},
    "faces are nothing": {"colour": {"faces": None}},
    "faces are a word": {"colour": {"faces": "many"}},
    "the plan of a cup in hand is rubbish": {"colour": {"cups": [{**LIVE_CUP, "plan": {"colours": 3}}]}},
    "the plan of a cup in hand is a number": {"colour": {"cups": [{**LIVE_CUP, "plan": 7}]}},
    "units are of no kind": {"units": {"length": "parsec"}},
    "the room is a number": {"room": 5, "bench": 3, "card": 4},
    "a version that nothing lifts": {"version": 0},
    "a word in place of a job": {"text": "rubbish"},
}


@pytest.fixture
def sheet(handset, server):
    """A job sheet with a job of one's own on the disk."""
    handset.complaints.expect("is not iterable", "is not a function", "Cannot read properties")
    sheet = JobSheet(handset.start())
    sheet.open(server.address)
    sheet.type_over_the_example("20", "10")
    sheet.type_in("Name of the job", "Door sign", sheet.page.locator(".head"))
    sheet.expect_saved()
    return sheet


def expect_to_work(sheet):
    """The sheet reckons, the menu opens and lists both jobs; where one is damaged, recovery comes before."""
    expect(sheet.page.get_by_role("main").or_(sheet.page.locator(".recovery")).first).to_be_visible()
    go_on = sheet.page.get_by_role("button", name="Go on with what is here")
    if go_on.count():
        go_on.click()
    expect(sheet.page.locator("[data-part=late]")).to_have_count(0)
    menu = Menu(sheet.page).open()
    expect(menu.dialog.locator(".job__name")).to_have_count(2)
    menu.pick_job("Door sign")
    expect(sheet.page.get_by_role("textbox", name="Name of the job")).to_have_value("Door sign")
    sheet.type_in("Name of the job", "Door sign", sheet.page.locator(".head"))
    expect(sheet.page.get_by_role("img", name="Your cup of")).to_be_visible()


@pytest.mark.long
@pytest.mark.parametrize("poison", POISONS)
def test_a_kept_job_that_cannot_be_shown_locks_nobody_out(sheet, poison):
    sheet.page.evaluate(KEEP, [POISONS[poison], True])
    sheet.page.reload()
    expect_to_work(sheet)


@pytest.mark.parametrize("poison", ["a color is nothing", "faces are a word"])
def test_the_job_that_fails_is_offered_as_it_was_kept_and_the_next_opens(sheet, poison, tmp_path):
    text = sheet.page.evaluate(KEEP, [POISONS[poison], True])
    sheet.page.reload()
    expect(sheet.page.get_by_text("“Harmed” cannot be shown here")).to_be_visible()
    expect(sheet.page.get_by_role("textbox", name="Name of the job")).to_have_value("Door sign")
    expect(sheet.page.locator("[data-part=state]")).to_have_text("saved")
    with sheet.page.expect_download() as waiting:
        sheet.page.locator("[data-part=toast]").get_by_role("button", name="Save").click()
    assert re.fullmatch(r"harmed\.json", waiting.value.suggested_filename)
    assert waiting.value.path().read_text() == text
    sheet.page.reload()
    expect(sheet.page.get_by_role("textbox", name="Name of the job")).to_have_value("Door sign")


def test_a_job_that_fails_when_it_is_picked_is_set_aside_too(sheet):
    sheet.page.evaluate(KEEP, [POISONS["a color is nothing"], False])
    sheet.page.reload()
    menu = Menu(sheet.page).open()
    menu.pick_job("Harmed")
    expect(sheet.page.get_by_text("“Harmed” cannot be shown here")).to_be_visible()
    expect_to_work(sheet)
