"""The commands at the desk: baking, and planning a large job in both languages."""

import json
import resource
import subprocess
import sys
import time
from collections.abc import Callable
from functools import partial

from e2e.budget.phones import Phones, job_of, visit
from e2e.budget.table import Figure, Found
from e2e.server import ROOT
from webapp.sheet.report import plan_as_json

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
    """Measure a plan of a thousand faces in processor time, and that it grows no faster than the job."""
    small, large = job_of(250), job_of(1000)
    plan_as_json(large)
    # By turns, so that other work hits both; the least is nearest to what the plan itself takes.
    runs = [
        [_seconds(partial(plan_as_json, job), time.process_time) for job in (small, large)]
        for _ in range(RUNS)
    ]
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
        "plan_command": Figure(_seconds(lambda: _run(["plan", str(file)]), _time_of_commands)),
        "javascript": Figure(javascript),
    }


def _run(arguments: list[str]) -> None:
    command = [sys.executable, "-m", "webapp", *arguments]
    subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)


def _time_of_commands() -> float:
    ended = resource.getrusage(resource.RUSAGE_CHILDREN)
    return ended.ru_utime + ended.ru_stime


def _seconds(act: Callable[[], object], clock: Callable[[], float] = time.perf_counter) -> float:
    begun = clock()
    act()
    return clock() - begun
