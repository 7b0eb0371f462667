"""The phones that are measured: each with a profile of its own, all of them guests of one server."""

import copy
import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, Page, Playwright, expect

from e2e.browser import arguments, executable
from e2e.budget.measures import MARKS
from e2e.conftest import PHONE
from e2e.server import Server
from webapp.job.demo import EXAMPLE_JOB


class Phones:
    """One server and as many phones as it takes."""

    def __init__(self, playwright: Playwright, folder: Path) -> None:
        self.playwright = playwright
        self.folder = folder
        self.server = Server(folder / "instance").start()
        self._profiles = 0

    def new_profile(self) -> str:
        """Return the name of a profile that no phone has used."""
        self._profiles += 1
        return f"profile-{self._profiles}"

    @contextmanager
    def phone(self, profile: str = "") -> Iterator[BrowserContext]:
        """Start a phone with a new profile, or with one that was used before."""
        context = self.playwright.chromium.launch_persistent_context(
            str(self.folder / (profile or self.new_profile())),
            executable_path=executable(),
            args=arguments(),
            **PHONE,
        )
        context.add_init_script(MARKS)
        try:
            yield context
        finally:
            context.close()

    def open_job(self, page: Page, job: dict[str, Any]) -> None:
        """Open a job from its file, as a person does."""
        file = self.folder / "job.json"
        file.write_text(json.dumps(job))
        page.get_by_role("button", name="Menu").click()
        with page.expect_file_chooser() as chooser:
            page.get_by_role("button", name="Open a file").click()
        chooser.value.set_files(file)
        expect(page.get_by_role("textbox", name="Name of the job")).to_have_value(job["name"])


def visit(page: Page, address: str) -> None:
    """Go to an address and wait until the page says that it is ready for offline."""
    page.goto(address)
    wait_until_ready(page)


def wait_until_ready(page: Page) -> None:
    """Wait until the page says that it is ready for offline."""
    expect(page.locator(".head")).to_contain_text("ready offline", timeout=60_000)


def job_of(faces: int) -> dict[str, Any]:
    """Return a job with so many faces, each of another width, in colours of ten or of twenty-five."""
    job = {**copy.deepcopy(EXAMPLE_JOB), "id": f"job_of_{faces}", "name": f"{faces} faces"}
    # A job holds at most 40 colours.
    each = 10 if faces <= 400 else 25
    del job["example"]
    [colour] = job["colours"]
    [face] = colour["faces"]
    job["colours"] = [
        {
            **colour,
            "id": f"c{first}",
            "faces": [
                {**face, "id": f"f{number}", "width": f"{number + 1} cm"}
                for number in range(first, min(first + each, faces))
            ],
        }
        for first in range(0, faces, each)
    ]
    return job
