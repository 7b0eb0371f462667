"""The pictures that README and the home screen show: `python -m e2e.pictures` takes them anew."""

import tempfile
from pathlib import Path

from playwright.sync_api import Playwright, expect, sync_playwright

from e2e.browser import launch
from e2e.conftest import PHONE
from e2e.server import ROOT, Server

PICTURES = {
    "screen-narrow": {**PHONE, "viewport": {"width": 412, "height": 915}, "device_scale_factor": 1.75},
    "screen-wide": {"viewport": {"width": 1280, "height": 800}, "device_scale_factor": 1},
}
ICONS = ROOT / "static" / "icons"


def take(playwright: Playwright, address: str, name: str) -> None:
    """Take the picture of a job with a face of its own."""
    browser = launch(playwright)
    page = browser.new_page(**PICTURES[name], color_scheme="light", locale="en-US")
    page.goto(address)
    expect(page.locator(".head")).to_contain_text("ready offline", timeout=60_000)
    page.get_by_role("textbox", name="Name of the job").fill("Boathouse door")
    page.locator("[data-step=faces] .step__toggle").click()
    page.evaluate("() => document.activeElement.blur()")
    if name == "screen-narrow":
        page.locator("[data-step=faces]").evaluate("(step) => scrollTo(0, step.offsetTop - 8)")
    page.screenshot(path=ICONS / f"{name}.png", animations="disabled")
    browser.close()


def main() -> None:
    """Take every picture."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = Server(Path(folder)).start()
        try:
            for name in PICTURES:
                take(playwright, server.address, name)
        finally:
            server.stop()


if __name__ == "__main__":
    main()
