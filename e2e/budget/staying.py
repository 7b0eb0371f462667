"""A page that stays open: its heap after many jobs, and how often it wakes while nothing happens."""

from playwright.sync_api import expect

from e2e.budget.phones import Phones, visit
from e2e.budget.table import Figure, Found

IDLE_SECONDS = 10
JOBS = 200

MAKE_JOBS = """async (jobs) => {
  for (let number = 0; number < jobs; number += 1) {
    document.querySelector("[data-act=new-job]").click();
    await new Promise((resolve) => afterPaint(resolve));
    const name = document.querySelector(".head__job");
    name.value = `Job ${number}`;
    name.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => afterPaint(resolve));
  }
}"""

COUNT_JOBS = """() => new Promise((resolve) => {
  indexedDB.open("sixteenth").onsuccess = (event) => {
    const count = event.target.result.transaction("jobs").objectStore("jobs").count();
    count.onsuccess = () => resolve(count.result);
  };
})"""


def staying(phones: Phones) -> Found:
    """Measure the wake-ups of an idle page, then the heap after many jobs."""
    with phones.phone() as context:
        page = context.pages[0]
        visit(page, phones.server.address)
        page.evaluate("() => { marks.wakes = 0; }")
        page.wait_for_timeout(IDLE_SECONDS * 1000)
        wakes = page.evaluate("() => marks.wakes") / IDLE_SECONDS
        page.evaluate(MAKE_JOBS, JOBS)
        expect(page.get_by_role("textbox", name="Name of the job")).to_have_value(f"Job {JOBS - 1}")
        # The disk may lag behind on a loaded machine, but no job is ever left out.
        page.wait_for_function(f"async () => await ({COUNT_JOBS})() === {JOBS}")
        session = context.new_cdp_session(page)
        session.send("HeapProfiler.collectGarbage")
        heap = session.send("Runtime.getHeapUsage")["usedSize"]
    return {"wakes": Figure(wakes), "heap": Figure(heap / 1e6)}
