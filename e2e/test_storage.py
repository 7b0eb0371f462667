"""What was typed stays on the phone: emptied, damaged, full, refused, and in two windows."""

import json
import re

import pytest
from playwright.sync_api import expect

SAVED = re.compile(r"(?<!not )saved \d")
READ_RECORDS = """async () => {
  const request = indexedDB.open("sixteenth");
  const database = await new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
  const all = database.transaction("jobs").objectStore("jobs").getAll();
  const rows = await new Promise((resolve) => { all.onsuccess = () => resolve(all.result); });
  database.close();
  return rows;
}"""
EMPTY = """() => new Promise((resolve) => {
  indexedDB.deleteDatabase("sixteenth").onsuccess = () => resolve();
})"""
DAMAGE = """async () => {
  const request = indexedDB.open("sixteenth");
  const database = await new Promise((resolve) => { request.onsuccess = () => resolve(request.result); });
  const store = database.transaction("jobs", "readwrite").objectStore("jobs");
  const keys = await new Promise((resolve) => {
    const all = store.getAllKeys();
    all.onsuccess = () => resolve(all.result);
  });
  await new Promise((resolve) => {
    store.put({ name: "?", at: "2000-01-01T00:00:00.000Z", text: '{"name":"cu', sum: "0" }, keys[0]);
    store.transaction.oncomplete = resolve;
  });
  database.close();
}"""

# Chromium's own override of the quota no longer reaches IndexedDB on this machine's address.
FULL = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...row) {
  if (window.isFull) throw new DOMException("full", "QuotaExceededError");
  return put.apply(this, row);
};
"""


def open_page(page, server):
    """Open the page and wait until it takes what is typed."""
    page.goto(server.address)
    expect(page.locator("[data-part=sheet], .recovery").filter(visible=True).first).to_be_visible()


def name_of_job(page):
    return page.get_by_role("textbox", name="Name of the job")


def rename(page, name):
    """Type a name for the job, which makes the example a job of one's own, and wait until the disk has it."""
    name_of_job(page).fill(name)
    expect(page.locator(".head")).to_contain_text(SAVED)
    while name not in [row["name"] for row in page.evaluate(READ_RECORDS)]:
        page.wait_for_timeout(20)


def keep_a_snapshot(page):
    """Leave the page for a moment, as a call does; that is when a snapshot is kept."""
    page.wait_for_function("async () => (await caches.keys()).includes('sixteenth-snapshots')")


def come_back_after(harm, page, server):
    """Leave the app, let harm be done to what it keeps, and open it again."""
    page.goto(f"{server.address}plan")
    page.evaluate(harm)
    open_page(page, server)


def test_a_fresh_start_is_no_loss(page, server):
    open_page(page, server)
    expect(page.locator("[data-part=sheet]")).to_be_visible()
    expect(page.get_by_text("Saved work is missing")).to_have_count(0)
    page.reload()
    expect(page.get_by_text("Saved work is missing")).to_have_count(0)
    assert page.evaluate(READ_RECORDS) == []


def test_an_emptied_phone_says_so_and_brings_the_work_back(page, server):
    open_page(page, server)
    rename(page, "Harbor Lane bakery")
    keep_a_snapshot(page)
    come_back_after(EMPTY, page, server)
    expect(page.get_by_text("This phone had 1 job, and now it has none.")).to_be_visible()
    page.get_by_role("button", name="Bring back Harbor Lane bakery").click()
    expect(name_of_job(page)).to_have_value("Harbor Lane bakery")
    page.reload()
    expect(name_of_job(page)).to_have_value("Harbor Lane bakery")


def test_an_emptied_phone_may_start_afresh(page, server):
    open_page(page, server)
    rename(page, "Harbor Lane bakery")
    come_back_after(EMPTY, page, server)
    page.get_by_role("button", name="Start afresh").click()
    expect(page.locator("[data-part=sheet]")).to_be_visible()
    page.reload()
    expect(page.locator("[data-part=sheet]")).to_be_visible()
    expect(page.get_by_text("Saved work is missing")).to_have_count(0)


def test_a_damaged_job_is_noticed_and_brought_back(page, server):
    open_page(page, server)
    rename(page, "Harbor Lane bakery")
    keep_a_snapshot(page)
    come_back_after(DAMAGE, page, server)
    expect(page.get_by_text("The job you worked on last is damaged or missing.")).to_be_visible()
    page.get_by_role("button", name="Bring back Harbor Lane bakery").click()
    expect(name_of_job(page)).to_have_value("Harbor Lane bakery")


def test_a_browser_that_keeps_nothing_says_so_and_still_works(page, server):
    page.add_init_script("Object.defineProperty(window, 'indexedDB', { value: undefined });")
    open_page(page, server)
    expect(page.get_by_text("This browser keeps nothing once it is closed")).to_be_visible()
    name_of_job(page).fill("Quarry Road cafe")
    expect(page.locator("[data-cell='mix_volume']:visible").first).to_contain_text("fl")
    expect(page.locator(".head")).not_to_contain_text(SAVED)


def test_a_full_phone_says_so_and_saves_again_once_there_is_room(page, server):
    page.add_init_script(FULL)
    open_page(page, server)
    rename(page, "Quarry Road")
    page.evaluate("() => { window.isFull = true; }")
    name_of_job(page).fill("Quarry Road cafe")
    expect(page.get_by_text("Not saved: this phone is full.")).to_be_visible()
    page.evaluate("() => { window.isFull = false; }")
    name_of_job(page).press("End")
    page.keyboard.type("s")
    expect(page.locator(".head")).to_contain_text(SAVED)
    page.reload()
    expect(name_of_job(page)).to_have_value("Quarry Road cafes")


def test_a_second_window_takes_over_what_the_first_one_typed(page, server):
    open_page(page, server)
    rename(page, "Quarry Road")
    other = page.context.new_page()
    open_page(other, server)
    expect(name_of_job(other)).to_have_value("Quarry Road")
    rename(other, "Quarry Road, left to right")
    page.bring_to_front()
    page.evaluate("() => window.dispatchEvent(new Event('focus'))")
    expect(name_of_job(page)).to_have_value("Quarry Road, left to right")


@pytest.fixture
def job_file(page, server, tmp_path):
    """A job saved to a file from the menu."""
    open_page(page, server)
    rename(page, "Quarry Road café: front")
    page.get_by_role("button", name="Menu").click()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save to a file").click()
    assert download.value.suggested_filename == "quarry-road-café-front.json"
    download.value.save_as(tmp_path / "job.json")
    return tmp_path / "job.json"


def test_a_job_file_can_be_opened_again_and_overwrites_nothing(page, job_file):
    before = page.evaluate(READ_RECORDS)
    changed = {**json.loads(job_file.read_text()), "name": "From the other phone"}
    job_file.write_text(json.dumps(changed))
    open_file(page, job_file)
    expect(name_of_job(page)).to_have_value("From the other phone")
    after = page.evaluate(READ_RECORDS)
    assert len(after) == len(before) + 1
    assert before[0] in after


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("not json", "it is not JSON"),
        ('{"format": "sixteenth-job", "version": 99}', "Update the app"),
        ('{"format": "sixteenth-job", "version": 1, "tax": 1}', '"tax" in the job is not known here'),
        ("[" + " " * 5_000_000 + "]", "larger than 5 MB"),
    ],
    ids=["no JSON", "too new", "foreign key", "too big"],
)
def test_a_bad_file_is_refused_in_a_sentence_and_the_job_stays(page, server, tmp_path, content, says):
    open_page(page, server)
    rename(page, "Quarry Road")
    (tmp_path / "bad.json").write_text(content)
    page.get_by_role("button", name="Menu").click()
    open_file(page, tmp_path / "bad.json")
    expect(page.get_by_text(says)).to_be_visible()
    expect(name_of_job(page)).to_have_value("Quarry Road")


def open_file(page, path):
    with page.expect_file_chooser() as chooser:
        page.get_by_role("button", name="Open a file").click()
    chooser.value.set_files(path)
