"""The budget: `python -m e2e.budget` measures every figure that a phone has to keep to, and prints the table.

Named parts of it (see PARTS) are measured alone: `python -m e2e.budget typing plans`.
"""

import copy
import json
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, expect, sync_playwright

from e2e.browser import arguments, executable
from e2e.conftest import PHONE
from e2e.measures import MARKS, TYPE_AND_READ, Relay, percentile, throttled
from e2e.server import ROOT, Server
from webapp.job.demo import EXAMPLE_JOB
from webapp.sheet.runner import calculate

IDLE_SECONDS = 10
BROWSER_REST = 1500
RUNS = 3

REQUESTS = """() => performance.getEntriesByType("resource")
  .filter((each) => each.startTime < marks.ready).length"""

COUNT_JOBS = """() => new Promise((resolve) => {
  indexedDB.open("sixteenth").onsuccess = (event) => {
    const count = event.target.result.transaction("jobs").objectStore("jobs").count();
    count.onsuccess = () => resolve(count.result);
  };
})"""


@dataclass(frozen=True)
class Row:
    """One figure of the table with its two marks; a mark of None asks for nothing."""

    says: str
    unit: str
    excellent: float | None
    must: float | None


ROWS: dict[str, Row] = {
    "transfer": Row("transfer until offline-ready", "KiB", 100, 150),
    "requests": Row("requests until a person can type", "", 12, 20),
    "lcp": Row("largest paint, Slow 4G and processor x4", "s", 1.5, 1.8),
    "answer": Row("can type and read an answer, same", "s", 2.0, 2.6),
    "key4": Row("key to painted result, p95, 100 faces, x4", "ms", 16, 50),
    "key6": Row("key to painted result, p95, 100 faces, x6", "ms", 32, 100),
    "warm4": Row("offline start, warm, x4", "ms", 150, 300),
    "cold4": Row("offline start, cold process, x4", "ms", 500, 800),
    "cold6": Row("offline start, cold process, x6", "ms", 800, 1200),
    "shift": Row("layout shift", "", 0.01, 0.05),
    "long": Row("tasks over 50 ms after load, x4", "", 0, 2),
    "heap": Row("JS heap after 200 jobs", "MB", 30, 60),
    "wakes": Row("wake-ups a second, idle and visible", "", 1, 1),
    "bake": Row("bake, whole command", "s", None, 3),
    "rebake": Row("bake with nothing changed, whole command", "s", None, 1),
    "python": Row("plan of 1,000 faces in Python", "ms", None, None),
    "javascript": Row("plan of 1,000 faces in JavaScript", "ms", None, None),
}


def job_of(faces: int) -> dict[str, Any]:
    """Return a job with so many faces, each of another width, in colours of ten."""
    job = {**copy.deepcopy(EXAMPLE_JOB), "id": f"job-of-{faces}", "name": f"{faces} faces"}
    del job["example"]
    [colour] = job["colours"]
    [face] = colour["faces"]
    job["colours"] = [
        {
            **colour,
            "id": f"c{first}",
            "faces": [
                {**face, "id": f"f{number}", "width": f"{number + 1} cm"}
                for number in range(first, first + 10)
            ],
        }
        for first in range(0, faces, 10)
    ]
    return job


class Bench:
    """Measures with one server and as many fresh phones as it takes."""

    def __init__(self, playwright: Playwright, folder: Path) -> None:
        self.playwright = playwright
        self.folder = folder
        self.server = Server(folder / "instance").start()
        self.found: dict[str, float] = {}
        self._profiles = 0

    def phone(self, profile: str | None = None) -> BrowserContext:
        """Start a phone with a new profile, or with one that was used before."""
        self._profiles += 1
        folder = self.folder / (profile or f"profile-{self._profiles}")
        context = self.playwright.chromium.launch_persistent_context(
            str(folder), executable_path=executable(), args=arguments(), **PHONE
        )
        context.add_init_script(MARKS)
        return context

    def first_visits(self) -> None:
        """Measure transfer and requests, then paints on a slow phone and network."""
        relay = Relay(self.server.port)
        context = self.phone()
        page = context.pages[0]
        page.goto(relay.address)
        wait_until_ready(page)
        self.found["transfer"] = relay.answered / 1024
        self.found["requests"] = page.evaluate(REQUESTS) + 1
        context.close()
        relay.close()
        slow = [self._slow_visit() for _ in range(RUNS)]
        for place, name in enumerate(("lcp", "answer", "shift", "long")):
            self.found[name] = statistics.median(each[place] for each in slow)

    def _slow_visit(self) -> tuple[float, float, float, float]:
        context = self.phone()
        page = context.pages[0]
        with throttled(page, processor=4, network=True):
            page.goto(self.server.address, wait_until="commit")
            answer = page.evaluate(TYPE_AND_READ)
            wait_until_ready(page)
            page.wait_for_timeout(1000)
            marks = page.evaluate("() => marks")
            loaded = page.evaluate("() => performance.getEntriesByType('navigation')[0].loadEventEnd")
        context.close()
        long = sum(1 for start, _ in marks["long"] if start > max(loaded, marks["painted"]))
        return marks["lcp"] / 1000, answer / 1000, marks["shift"], long

    def typing(self) -> None:
        """Measure from key to paint in a job of a hundred faces."""
        context = self.phone()
        page = context.pages[0]
        page.goto(self.server.address)
        wait_until_ready(page)
        self._open(page, job_of(100))
        for processor, name in ((4, "key4"), (6, "key6")):
            with throttled(page, processor=processor):
                self.found[name] = percentile(self._keys(page), 0.95)
        context.close()

    def _open(self, page: Page, job: dict[str, Any]) -> None:
        file = self.folder / "job.json"
        file.write_text(json.dumps(job))
        page.get_by_role("button", name="Menu").click()
        with page.expect_file_chooser() as chooser:
            page.get_by_role("button", name="Open a file").click()
        chooser.value.set_files(file)
        expect(page.get_by_role("textbox", name="Name of the job")).to_have_value(job["name"])

    def _keys(self, page: Page) -> list[float]:
        # The air's temperature reaches every figure of every face.
        step = page.locator("[data-step=resin]")
        if step.get_attribute("data-folded") is not None:
            step.locator(".step__toggle").click()
        step.locator("[data-field=air_temperature] input").click()
        page.evaluate("() => { marks.keys.length = 0; }")
        for number in range(20):
            for key in ("Backspace", str(number % 10)):
                page.keyboard.press(key)
                # As fast as a quick thumb, so that one key does not wait for the one before it.
                page.wait_for_timeout(120)
        page.wait_for_timeout(500)
        return page.evaluate("() => marks.keys")

    def offline_starts(self) -> None:
        """Measure starts without a server, in a browser that runs and in one that has to start."""
        context = self.phone("offline")
        page = context.pages[0]
        page.goto(self.server.address)
        wait_until_ready(page)
        self.server.stop()
        with throttled(page, processor=4):
            self.found["warm4"] = statistics.median(self._start(page) for _ in range(RUNS))
        context.close()
        for processor, name in ((4, "cold4"), (6, "cold6")):
            starts = []
            for _ in range(RUNS):
                context = self.phone("offline")
                page = context.pages[0]
                # A desktop's browser opens pages of its own as it starts; what they take differs each time.
                page.wait_for_timeout(BROWSER_REST)
                with throttled(page, processor=processor):
                    starts.append(self._start(page))
                context.close()
            self.found[name] = statistics.median(starts)
        self.server.start()

    def _start(self, page: Page) -> float:
        # Nothing is asked of the page before it is painted: a question would be part of what is measured.
        with page.expect_console_message(lambda message: message.text == "painted"):
            page.goto(self.server.address)
        painted: float = page.evaluate("() => marks.painted")
        # The next start finds a page that has come to rest.
        wait_until_ready(page)
        return painted

    def staying(self) -> None:
        """Measure the heap after two hundred jobs, and how often an idle page wakes."""
        context = self.phone()
        page = context.pages[0]
        page.goto(self.server.address)
        wait_until_ready(page)
        page.evaluate("() => { marks.wakes = 0; }")
        page.wait_for_timeout(IDLE_SECONDS * 1000)
        self.found["wakes"] = page.evaluate("() => marks.wakes") / IDLE_SECONDS
        page.evaluate(
            """async () => {
              for (let number = 0; number < 200; number += 1) {
                document.querySelector("[data-act=new-job]").click();
                await new Promise((resolve) => afterPaint(resolve));
                const name = document.querySelector(".head__job");
                name.value = `Job ${number}`;
                name.dispatchEvent(new Event("input", { bubbles: true }));
                await new Promise((resolve) => afterPaint(resolve));
              }
            }"""
        )
        expect(page.get_by_role("textbox", name="Name of the job")).to_have_value("Job 199")
        jobs = page.evaluate(COUNT_JOBS)
        if jobs != 200:
            raise RuntimeError(f"the phone keeps {jobs} jobs, where 200 were made")
        session = context.new_cdp_session(page)
        session.send("HeapProfiler.collectGarbage")
        self.found["heap"] = session.send("Runtime.getHeapUsage")["usedSize"] / 1e6
        context.close()

    def baking(self) -> None:
        """Measure the whole command, first and unchanged."""
        for name in ("bake", "rebake"):
            command = [sys.executable, "-m", "webapp", "bake", str(self.folder / "baked")]
            self.found[name] = seconds(
                lambda command=command: subprocess.run(
                    command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL
                )
            )

    def plans(self) -> None:
        """Measure a plan of a thousand faces in both languages."""
        job = job_of(1000)
        calculate(job)
        self.found["python"] = 1000 * seconds(lambda: calculate(job))
        context = self.phone()
        page = context.pages[0]
        page.goto(self.server.address)
        wait_until_ready(page)
        self.found["javascript"] = page.evaluate(
            """async (job) => {
              const folder = document.querySelector("script[type=module]").src.replace(/app\\.js$/, "");
              const { calculate } = await import(`${folder}sheet/sheet.js`);
              calculate(job);
              const begun = performance.now();
              calculate(job);
              return performance.now() - begun;
            }""",
            job,
        )
        context.close()


def wait_until_ready(page: Page) -> None:
    """Wait until the page says that it is ready for offline."""
    expect(page.locator(".head")).to_contain_text("ready offline", timeout=60_000)


def seconds(act: Callable[[], object]) -> float:
    """Return how long something takes."""
    begun = time.perf_counter()
    act()
    return time.perf_counter() - begun


PARTS: dict[str, Callable[[Bench], None]] = {
    "baking": Bench.baking,
    "first_visits": Bench.first_visits,
    "typing": Bench.typing,
    "offline_starts": Bench.offline_starts,
    "staying": Bench.staying,
    "plans": Bench.plans,
}


def table(found: dict[str, float]) -> list[str]:
    """Return the table's lines; MISSED stands beside a figure that is past what it must keep to."""
    lines = [f"{'figure':<46}{'measured':>12}{'excellent':>11}{'must':>8}"]
    for name, row in ROWS.items():
        if name in found:
            marks = ["" if mark is None else f"{mark:g}" for mark in (row.excellent, row.must)]
            missed = "  MISSED" if row.must is not None and found[name] > row.must else ""
            measured = f"{found[name]:.3g} {row.unit}".strip()
            lines.append(f"{row.says:<46}{measured:>12}{marks[0]:>11}{marks[1]:>8}{missed}")
    return lines


def main(parts: list[str]) -> int:
    """Measure the parts, or all of them, and print the table; the exit code counts what was missed."""
    folder = Path(tempfile.mkdtemp())
    with sync_playwright() as playwright:
        bench = Bench(playwright, folder)
        try:
            for part in parts or PARTS:
                PARTS[part](bench)
        finally:
            bench.server.stop()
            shutil.rmtree(folder, ignore_errors=True)
    lines = table(bench.found)
    print("\n".join(lines))
    return sum(line.endswith("MISSED") for line in lines)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
