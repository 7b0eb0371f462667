"""What a phone keeps, written and harmed by hand: the database, the ring of snapshots, the sentinel."""

import json
from collections.abc import Callable

from playwright.sync_api import Browser, BrowserContext, Page, expect

DATABASE = """
const promised = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = request.onblocked = () => reject(request.error ?? new Error("blocked"));
});
const stores = ["jobs", "cards", "meta", "trash"];
const opened = (version, made = stores) => {
  const request = indexedDB.open("sixteenth", version);
  request.onupgradeneeded = () => {
    const { result } = request;
    for (const store of made) if (!result.objectStoreNames.contains(store)) result.createObjectStore(store);
  };
  return promised(request);
};
const put = async (store, key, value) => {
  const database = await opened();
  await promised(database.transaction(store, "readwrite").objectStore(store).put(value, key));
  database.close();
};
const changeJobs = async (change) => {
  for (const [id, row] of await rows("jobs")) await put("jobs", id, { ...row, ...change(row) });
};
const withText = (text) => ({ text, sum: sumOf(text) });
const emptied = async (store) => {
  const database = await opened();
  await promised(database.transaction(store, "readwrite").objectStore(store).clear());
  database.close();
};
const dropped = () => promised(indexedDB.deleteDatabase("sixteenth"));
const rows = async (store) => {
  const database = await opened();
  const objects = database.transaction(store).objectStore(store);
  const [keys, values] = await Promise.all([promised(objects.getAllKeys()), promised(objects.getAll())]);
  database.close();
  return keys.map((key, place) => [key, values[place]]);
};
const snapshots = async () => {
  const ring = await caches.open("sixteenth-snapshots");
  return Promise.all((await ring.keys()).map(async ({ url }) => {
    const kept = await ring.match(url);
    return [new URL(url).pathname, await kept.text(), kept.headers.get("X-Checksum")];
  }));
};
const sumOf = (text) => {
  let sum = 0x811c9dc5;
  for (const letter of text) sum = Math.imul(sum ^ letter.charCodeAt(0), 0x01000193);
  return (sum >>> 0).toString(16).padStart(8, "0");
};
"""

READ_ALL = """async () => ({
  stores: await Promise.all(["jobs", "cards", "meta", "trash"].map(async (each) => [each, await rows(each)])),
  sentinel: localStorage.getItem("sixteenth sentinel"),
  snapshots: await snapshots(),
})"""

WRITE_ALL = """async ({ stores, sentinel, snapshots }) => {
  await opened(2).then((database) => database.close());
  for (const [store, rows] of stores) for (const [key, value] of rows) await put(store, key, value);
  localStorage.setItem("sixteenth sentinel", sentinel);
  const ring = await caches.open("sixteenth-snapshots");
  for (const [path, text, sum] of snapshots) {
    await ring.put(path, new Response(text, { headers: { "X-Checksum": sum } }));
  }
}"""

HIDE = """() => {
  Object.defineProperty(document, "visibilityState", { configurable: true, get: () => "hidden" });
  document.dispatchEvent(new Event("visibilitychange"));
}"""


def run(page: Page, script: str, argument: object = None) -> object:
    """Run a script that may name the helpers of the database above."""
    return page.evaluate(f"(argument) => {{ {DATABASE} return ({script})(argument); }}", argument)


class Kept:
    """What one phone keeps, to be laid on others."""

    def __init__(self, page: Page) -> None:
        self.all = run(page, READ_ALL)

    def on_a_phone(self, browser: Browser, address: str, harm: str = "", **options: object) -> BrowserContext:
        """Return a new phone that keeps the same, and was harmed since; the app is not open on it yet."""
        context = browser.new_context(**options)
        page = context.new_page()
        page.goto(f"{address}plan")
        run(page, WRITE_ALL, self.all)
        if harm:
            run(page, f"async () => {{ {harm} }}")
        page.goto("about:blank")
        return context


def jobs_on(page: Page) -> dict[str, dict]:
    """Return the jobs in the database by their names."""
    return {row["name"]: json.loads(row["text"]) for _, row in run(page, "() => rows('jobs')")}


def open_app(page: Page, address: str) -> None:
    """Open the app and wait until it takes what is typed, or says what is missing."""
    page.goto(address)
    expect(page.locator("[data-part=sheet], .recovery").filter(visible=True).first).to_be_visible()


def wait_until(page: Page, is_so: Callable[[], bool]) -> None:
    """Wait until something is so that no node of the page tells."""
    for _ in range(400):
        if is_so():
            return
        page.wait_for_timeout(25)
    raise AssertionError("it never came to be so")
