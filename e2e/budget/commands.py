"""The commands at the desk: baking, and planning a large job in both languages."""

import json
import subprocess
import sys
import time
from collections.abc import Callable

from e2e.budget.phones import Phones, job_of, visit
from e2e.budget.table import Figure, Found
from e2e.server import ROOT
from webapp.sheet.report import plan

RUNS = 3

CALCULATE = """async (job) => {
  const folder = document.querySelector("script[type=module]").src.replace(/app\\.js$/, "");
  const { calculate } = await import(`${folder}sheet/sheet.js`);
  calculate(job);
  const begun = performance.now();
  calculate(job);
  return performance.now() - begun;
}"""


def baking(phones: Phones) -> Found:
    """Measure the whole command, first and unchanged."""
    folder = phones.folder / phones.new_profile()
    command = ["bake", str(folder)]
    return {name: Figure(_seconds(lambda: _run(command))) for name in ("bake", "rebake")}


def plans(phones: Phones) -> Found:
    """Measure a plan of a thousand faces, and that it grows with the faces and no faster."""
    small, large = job_of(250), job_of(1000)
    plan(large)
    # By turns, so that other work hits both; the least is nearest to what the plan itself takes.
    runs = [(_seconds(lambda: plan(small)), _seconds(lambda: plan(large))) for _ in range(RUNS)]
    of_small, of_large = (min(each) for each in zip(*runs, strict=True))
    file = phones.folder / "large-job.json"
    file.write_text(json.dumps(large))
    with phones.phone() as context:
        page = context.pages[0]
        visit(page, phones.server.address)
        javascript = page.evaluate(CALCULATE, large) / 1000
    return {
        "plan": Figure(of_large),
        "plan_growth": Figure(of_large / (4 * of_small)),
        "plan_command": Figure(_seconds(lambda: _run(["plan", str(file)]))),
        "javascript": Figure(javascript),
    }


def _run(arguments: list[str]) -> None:
    command = [sys.executable, "-m", "webapp", *arguments]
    subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)


def _seconds(act: Callable[[], object]) -> float:
    begun = time.perf_counter()
    act()
    return time.perf_counter() - begun
