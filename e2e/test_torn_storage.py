"""Torn, emptied, partly deleted, blocked and silent: what a phone keeps, and what the person sees of it.

Two jobs are on the phone, "Harbor Lane bakery" the one that was open last, with a snapshot of both.
"""

import re
from dataclasses import dataclass

import pytest
from playwright.sync_api import expect

from e2e.bench import Sheet
from e2e.conftest import PHONE
from e2e.stored import HIDE, Kept, jobs_on, open_app, run, wait_until

SAVED = re.compile(r"(?<!not )saved \d")
HANGS = (
    "This phone does not answer, so your work is kept only while this page is open: save the job to a file."
)
COPY = "Bring back Harbor Lane bakery, Quarry Road cafe"

NEVER = "const never = () => ({ addEventListener() {} });"
OPEN_HANGS = f"{NEVER} IDBFactory.prototype.open = never;"
GET_HANGS = f"{NEVER} IDBObjectStore.prototype.get = never;"


@dataclass(frozen=True)
class Way:
    """A way to harm what is kept, what is said then, and what of it is there in the end."""

    name: str
    harm: str = ""
    script: str = ""
    says: str = ""
    brings_back: bool = False
    goes_on: bool = False
    opens: str = "Harbor Lane bakery"


WAYS = (
    Way("nothing", ""),
    Way(
        "database deleted",
        "await dropped();",
        says="This phone had 2 jobs, and now it has none.",
        brings_back=True,
    ),
    Way(
        "jobs emptied",
        "await emptied('jobs');",
        says="This phone had 2 jobs, and now it has none.",
        brings_back=True,
    ),
    Way("which job was open is lost", "await emptied('meta');"),
    Way("which job was open is lost, and the sentinel", "await emptied('meta'); localStorage.clear();"),
    Way(
        "record torn",
        "await changeJobs(({ text }) => ({ text: text.slice(0, 99) }));",
        says="The job you worked on last is damaged or missing.",
        brings_back=True,
    ),
    Way(
        "record no JSON, its sum right",
        """await changeJobs(() => withText('{"name": "cu'));""",
        says="The job you worked on last is damaged or missing.",
        brings_back=True,
    ),
    Way(
        "record of another shape, its sum right",
        "await changeJobs(() => withText('[1]'));",
        says="The job you worked on last is damaged or missing.",
        brings_back=True,
    ),
    Way(
        "a store missing in a database of version 1",
        "await dropped(); (await opened(1, ['cards', 'meta'])).close();",
        says="This phone had 2 jobs, and now it has none.",
        brings_back=True,
    ),
    Way(
        "a store missing in a database of this version",
        "await dropped(); (await opened(2, ['cards', 'meta'])).close();",
        says="This phone had 2 jobs, and now it has none.",
        brings_back=True,
    ),
    Way("database of a newer version", "(await opened(7)).close();"),
    Way(
        "job of a newer version",
        """await changeJobs(({ text }) => withText(text.replace(/"version":\\d+/, '"version":99')));""",
        says="Your job was saved by a newer version of this app.",
        goes_on=True,
        opens="Example: boathouse door",
    ),
    Way("all caches gone", "for (const name of await caches.keys()) await caches.delete(name);"),
    Way("sentinel gone", "localStorage.clear();"),
    Way("sentinel nonsense", 'localStorage.setItem(\'sixteenth sentinel\', \'{"saves":"x","jobs":[]}\');'),
    Way(
        "sentinel refused",
        script="Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no'); } });",
    ),
    Way(
        "open is refused",
        script="IDBFactory.prototype.open = () => { throw new DOMException('no', 'UnknownError'); };",
        says="Your saved jobs cannot be opened just now",
        brings_back=True,
    ),
    Way("open hangs", script=OPEN_HANGS, says=HANGS, brings_back=True),
    Way("get hangs", script=GET_HANGS, says=HANGS, brings_back=True),
    Way(
        "open hangs and all caches are gone",
        "for (const name of await caches.keys()) await caches.delete(name);",
        OPEN_HANGS,
        says=HANGS,
        opens="Example: boathouse door",
    ),
)


@pytest.fixture(scope="module")
def kept(browser, server):
    """What a phone keeps after two jobs were typed on it."""
    context = browser.new_context(**PHONE)
    page = context.new_page()
    open_app(page, server.address)
    name = page.get_by_role("textbox", name="Name of the job")
    name.fill("Quarry Road cafe")
    expect(page.locator(".head")).to_contain_text(SAVED)
    page.get_by_role("button", name="Menu").click()
    page.get_by_role("button", name="New job").click()
    expect(name).to_have_value(re.compile("^Job of"))
    name.fill("Harbor Lane bakery")
    wait_until(page, lambda: sorted(jobs_on(page)) == ["Harbor Lane bakery", "Quarry Road cafe"])
    page.evaluate(HIDE)
    wait_until(page, lambda: any("Harbor" in text for _, text, _ in Kept(page).all["snapshots"]))
    yield Kept(page)
    context.close()


@pytest.fixture
def phone_with(browser, server, kept):
    """Return a function that opens the app on a phone that keeps the two jobs, and was harmed."""
    contexts = []

    def start(way):
        context = kept.on_a_phone(browser, server.address, way.harm, **PHONE)
        contexts.append(context)
        page = context.pages[0]
        if way.script:
            page.add_init_script(way.script)
        open_app(page, server.address)
        return page

    yield start
    for context in contexts:
        context.close()


@pytest.mark.long
@pytest.mark.parametrize("way", WAYS, ids=lambda way: way.name)
def test_a_harmed_phone_says_what_is_so_and_brings_the_work_back(phone_with, way):
    page = phone_with(way)
    name = page.get_by_role("textbox", name="Name of the job")
    if way.says:
        expect(page.get_by_text(way.says)).to_be_visible()
    if way.brings_back:
        page.get_by_role("button", name=COPY).click()
    if way.goes_on:
        page.get_by_role("button", name="Go on with what is here").click()
    expect(page.locator(".recovery")).to_have_count(0)
    expect(name).to_have_value(way.opens)
    if way.script and way.says:
        expect(page.get_by_role("button", name="Save", exact=True)).to_be_visible()
        expect(page.locator("[data-part=state]")).not_to_have_text(SAVED)
        return
    before = jobs_on(page)
    name.fill("Harbor Lane bakery, left")
    expect(page.locator(".head")).to_contain_text(SAVED)
    kept = {*before, "Harbor Lane bakery, left"} - {way.opens}
    wait_until(page, lambda: {*jobs_on(page)} == kept)
    assert "Quarry Road cafe" in kept


# While `isSilent` nothing that is asked of the database is answered; once it is over, all of it is.
SILENT = """
const asked = [];
globalThis.answerAll = () => {
  globalThis.isSilent = false;
  for (const go of asked.splice(0)) go();
};
const proxied = (act) => function (...of) {
  const request = act.apply(this, of);
  const listener = { value: null };
  Object.defineProperty(request, "onsuccess", {
    set(heard) {
      listener.value = heard;
    },
  });
  request.addEventListener("success", (event) => {
    const tell = () => listener.value?.call(request, event);
    if (globalThis.isSilent) asked.push(tell);
    else tell();
  });
  return request;
};
IDBFactory.prototype.open = proxied(IDBFactory.prototype.open);
"""
PUT_HANGS = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...row) {
  return globalThis.isSilent ? {} : put.apply(this, row);
};
"""
PUT_THROWS = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...row) {
  if (globalThis.isSilent) throw new DOMException("full", "QuotaExceededError");
  return put.apply(this, row);
};
"""
ABORTS = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (...row) {
  const request = put.apply(this, row);
  if (globalThis.isSilent) this.transaction.abort();
  return request;
};
"""


@pytest.mark.parametrize(
    ("script", "says"),
    [
        (PUT_HANGS, HANGS),
        (PUT_THROWS, "Not saved: this phone is full. Save the job to a file now."),
        (ABORTS, "Not saved: the browser refused it. Save the job to a file now."),
    ],
    ids=["put hangs", "put throws", "transaction aborts"],
)
def test_what_the_disk_does_not_take_is_never_called_saved(phone_with, script, says):
    page = phone_with(Way("", script=script))
    name, head = page.get_by_role("textbox", name="Name of the job"), page.locator("[data-part=state]")
    name.fill("Harbor Lane")
    expect(head).to_have_text(SAVED)
    page.evaluate("() => { globalThis.isSilent = true; }")
    name.fill("Harbor Lane, left")
    expect(head).not_to_have_text(SAVED, timeout=400)
    expect(page.get_by_text(says)).to_be_visible()
    with page.expect_download() as download:
        page.get_by_role("button", name="Save", exact=True).click()
    assert "Harbor Lane, left" in download.value.path().read_text()
    expect(head).to_have_text("not saved")
    assert "Harbor Lane, left" not in jobs_on(page)


# A disk is slow twice, and what is typed comes between; all in one go, as it is given up after seconds.
TYPED_ON = """async () => {
  const [name, head] = ["job-name", "state"].map((part) => document.querySelector(`[data-part=${part}]`));
  const { set } = Object.getOwnPropertyDescriptor(IDBTransaction.prototype, "oncomplete");
  const held = [];
  let isSlow = true;
  Object.defineProperty(IDBTransaction.prototype, "oncomplete", {
    set(heard) {
      set.call(this, () => (isSlow ? held.push(heard) : heard()));
    },
  });
  const type = (text) => {
    name.value = text;
    name.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const until = async (isSo) => {
    while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 5));
  };
  type("Harbor Lane, left");
  await until(() => held.length === 1 && head.textContent === "saving");
  type("Harbor Lane, right");
  held.shift()();
  await until(() => held.length === 1);
  const says = head.textContent;
  isSlow = false;
  held.shift()();
  return says;
}"""


def test_what_is_typed_on_is_not_called_saved_because_the_one_before_is(phone_with):
    page = phone_with(Way(""))
    name, head = page.get_by_role("textbox", name="Name of the job"), page.locator("[data-part=state]")
    name.fill("Harbor Lane")
    expect(head).to_have_text(SAVED)
    assert page.evaluate(TYPED_ON) == "saving"
    expect(head).to_have_text(SAVED)


def test_a_disk_that_answers_late_takes_what_was_typed_meanwhile(phone_with):
    page = phone_with(Way("", script=f"{SILENT} globalThis.isSilent = true;"))
    page.get_by_role("button", name=COPY).click()
    name = page.get_by_role("textbox", name="Name of the job")
    name.fill("Harbor Lane, left")
    expect(page.locator("[data-part=state]")).not_to_have_text(SAVED)
    page.evaluate("() => globalThis.answerAll()")
    expect(page.locator("[data-part=state]")).to_have_text(SAVED)
    assert sorted(jobs_on(page)) == ["Harbor Lane, left", "Quarry Road cafe"]


def test_a_window_of_an_older_version_that_sleeps_holds_nothing_up(browser, server, kept):
    context = kept.on_a_phone(browser, server.address, **PHONE)
    asleep, page = context.pages[0], context.new_page()
    asleep.goto(f"{server.address}plan")
    older = "await dropped(); globalThis.held = await opened(1, ['jobs', 'cards', 'meta']);"
    run(asleep, f"async () => {{ {older} }}")
    open_app(page, server.address)
    expect(page.get_by_text(HANGS)).to_be_visible()
    page.get_by_role("button", name=COPY).click()
    page.get_by_role("textbox", name="Name of the job").fill("Harbor Lane, left")
    asleep.close()
    expect(page.locator("[data-part=state]")).to_have_text(SAVED)
    wait_until(page, lambda: sorted(jobs_on(page)) == ["Harbor Lane, left", "Quarry Road cafe"])
    context.close()


def test_work_that_comes_late_is_opened_where_nothing_was_typed(phone_with):
    gone = "for (const name of await caches.keys()) await caches.delete(name);"
    page = phone_with(Way("", gone, f"{SILENT} globalThis.isSilent = true;"))
    expect(page.get_by_text(HANGS)).to_be_visible()
    page.evaluate("() => globalThis.answerAll()")
    expect(page.get_by_role("textbox", name="Name of the job")).to_have_value("Harbor Lane bakery")


@pytest.mark.parametrize("how", ["await dropped();", "for (const s of stores) await emptied(s);"])
def test_what_is_cleared_under_an_open_page_takes_no_other_job_along(phone_with, how):
    page = phone_with(Way(""))
    name = page.get_by_role("textbox", name="Name of the job")
    name.fill("Harbor Lane")
    expect(page.locator("[data-part=state]")).to_have_text(SAVED)
    wait_until(page, lambda: any('"Harbor Lane"' in text for _, text, _ in Kept(page).all["snapshots"]))
    run(page, f"async () => {{ {how} localStorage.clear(); await caches.delete('sixteenth-snapshots'); }}")
    name.fill("Harbor Lane, left")
    expect(
        page.get_by_text("The browser cleared what this phone keeps. Your jobs are put back")
    ).to_be_visible()
    wait_until(page, lambda: sorted(jobs_on(page)) == ["Harbor Lane, left", "Quarry Road cafe"])
    page.reload()
    expect(name).to_have_value("Harbor Lane, left")


def test_a_damaged_job_of_the_list_comes_back_from_the_newest_copy(phone_with):
    harm = "await changeJobs(({ name, text }) => (name.startsWith('Quarry') ? { text: text.slice(9) } : {}));"
    page = phone_with(Way("", harm))
    page.get_by_role("button", name="Menu").click()
    page.locator(".job__open", has_text="Quarry Road cafe").click()
    expect(page.get_by_role("textbox", name="Name of the job")).to_have_value("Quarry Road cafe")
    expect(page.get_by_text("This job was damaged. It is back as it was")).to_be_visible()


def test_what_is_brought_back_has_the_cup_in_hand(browser, server):
    context = browser.new_context(**PHONE)
    sheet = Sheet(context.new_page())
    sheet.open(server.address)
    sheet.type_a_face("20", "12")
    bench = sheet.go_to_the_bench()
    bench.has_own_clock = False
    bench.begin()
    bench.tap("A is in")
    bench.tap("A has touched B")
    wait_until(sheet.page, lambda: any("part_b" in text for _, text, _ in Kept(sheet.page).all["snapshots"]))
    sheet.page.goto(f"{server.address}plan")
    run(sheet.page, "async () => { await dropped(); }")
    open_app(sheet.page, server.address)
    sheet.page.get_by_role("button", name="Bring back").first.click()
    bench.expect_button("B is in")
    context.close()
