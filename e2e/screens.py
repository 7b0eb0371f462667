"""A picture of every screen, on a phone and a tablet, light and dark: `python -m e2e.screens FOLDER`.

Where there is WebKit, its phone's pictures are taken too.

Ends with an error that names the last screen reached where a walk did not come to its end.
"""

import sys
import tempfile
from collections.abc import Iterator
from itertools import product
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Error, Page, expect, sync_playwright

from e2e import webkit, webkit_screens
from e2e.bench import WALK, Bench
from e2e.browser import launch
from e2e.conftest import PHONE
from e2e.pages import JobSheet, Menu
from e2e.server import Server

DEVICES: dict[str, dict[str, Any]] = {
    "phone": PHONE,
    "tablet": {**PHONE, "viewport": {"width": 820, "height": 1180}, "device_scale_factor": 1},
}
SCHEMES = ("light", "dark")
# A loaded machine takes its time; nothing here is measured.
PATIENCE = 120_000
STEPS = ("Resin and room", "Faces", "Cups", "Tint", "Pour and cure", "Record")


def screens(page: Page, address: str) -> Iterator[str]:
    """Walk the app as a person would, and name each screen as it is reached."""
    page.clock.install()
    sheet = JobSheet(page).open(address)
    yield "example"
    sheet.type_over_the_example("20", "12", "1/16")
    for title in STEPS:
        step = sheet.unfold(title)
        step.evaluate("(step) => scrollTo(0, step.offsetTop - 8)")
        yield f"step-{title.lower().replace(' ', '-')}"
    step = sheet.unfold("Faces")
    sheet.type_in("Width", "40 m", step)
    sheet.field("Width", step).evaluate("(field) => field.scrollIntoView({ block: 'center' })")
    yield "refused"
    sheet.type_in("Width", "20", step)
    sheet.figure("mix_volume").first.click()
    expect(page.get_by_role("dialog")).to_be_visible()
    yield "working"
    page.keyboard.press("Escape")
    Menu(page).open()
    yield "menu"
    page.get_by_role("button", name="How it is worked out").click()
    expect(page.locator(".entry").first).to_be_visible()
    yield "formula-book"
    page.keyboard.press("Escape")
    page.keyboard.press("Escape")
    page.locator("[data-act=bench]").first.evaluate("(button) => button.click()")
    bench = Bench(page)
    expect(bench.root).to_be_visible()
    yield "bench-make-ready"
    bench.tick_the_lines()
    for number, words in enumerate(("Begin the cup", *WALK)):
        bench.tap(words)
        page.clock.run_for(2000)
        yield f"bench-{number + 1:02}-after-{words.lower().replace(',', '').replace(' ', '-')}"


def walk(browser: Browser, address: str, target: Path, device: str, scheme: str) -> str:
    """Take a device's pictures into the folder; return where and why the walk stopped, or nothing."""
    reached = "the start"
    page = browser.new_page(**DEVICES[device], color_scheme=scheme, locale="en-US")
    page.set_default_timeout(PATIENCE)
    try:
        for number, name in enumerate(screens(page, address), 1):
            reached = name
            page.screenshot(path=target / f"{device}-{scheme}-{number:02}-{name}.png")
    except (AssertionError, Error) as error:
        return f"{device}, {scheme}, stopped after {reached}: {error}"
    finally:
        page.close()
    return ""


def main(folder: str) -> int:
    """Take every picture into the folder; the exit code counts the walks that stopped on the way."""
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    expect.set_options(timeout=PATIENCE)
    with tempfile.TemporaryDirectory() as instance, sync_playwright() as playwright:
        server = Server(Path(instance)).start()
        browser = launch(playwright)
        try:
            walks = [walk(browser, server.address, target, *each) for each in product(DEVICES, SCHEMES)]
            for scheme in SCHEMES if webkit.is_here() else ():
                webkit_screens.take_pictures(server.address, target, scheme)
        finally:
            browser.close()
            server.stop()
    return exit_code(walks)


def exit_code(walks: list[str]) -> int:
    """Say where walks stopped, and return how many did."""
    stops = [each for each in walks if each]
    for each in stops:
        print(each, file=sys.stderr)
    return len(stops)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
