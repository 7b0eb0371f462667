"""Starts without a server, in a browser that runs and in one that has to start, against the floor."""

import statistics

from playwright.sync_api import Page

from e2e.budget.floor import floor_host
from e2e.budget.keys import COUNT_ELEMENTS
from e2e.budget.measures import throttled
from e2e.budget.phones import Phones, visit, wait_until_ready
from e2e.budget.table import Figure, Found

WARM_STARTS = 7
COLD_STARTS = 4
# A desktop's browser opens pages of its own as it starts; what they take differs each time.
BROWSER_REST = 1500


def offline_starts(phones: Phones) -> Found:
    """Measure starts of the app and of the bare page by turns, so that other work hits both."""
    profile = phones.new_profile()
    with phones.phone(profile) as context:
        app, floor = context.pages[0], context.new_page()
        visit(app, phones.server.address)
        with floor_host(phones.folder / "floor", app.evaluate(COUNT_ELEMENTS)) as floor_address:
            visit(floor, floor_address)
        phones.server.stop()
        addresses = {app: phones.server.address, floor: floor_address}
        warm: dict[Page, list[float]] = {app: [], floor: []}
        for _ in range(WARM_STARTS):
            for page, taken in warm.items():
                taken.append(_start(page, addresses[page], 4))
    found = {"warm4": _ratio(*warm.values())}
    for processor in (4, 6):
        found[f"cold{processor}"] = _cold_starts(phones, profile, list(addresses.values()), processor)
    phones.server.start()
    return found


def _cold_starts(phones: Phones, profile: str, addresses: list[str], processor: int) -> Figure:
    taken: dict[str, list[float]] = {address: [] for address in addresses}
    for _ in range(COLD_STARTS):
        for address in addresses:
            with phones.phone(profile) as context:
                page = context.pages[0]
                page.wait_for_timeout(BROWSER_REST)
                taken[address].append(_start(page, address, processor))
    return _ratio(*taken.values())


def _start(page: Page, address: str, processor: int) -> float:
    page.bring_to_front()
    with throttled(page, processor=processor):
        # Nothing is asked of the page before it is painted: a question would be part of what is measured.
        with page.expect_console_message(lambda message: message.text == "painted"):
            page.goto(address)
        painted: float = page.evaluate("() => marks.painted")
        # The next start finds a page that has come to rest.
        wait_until_ready(page)
    return painted


def _ratio(app: list[float], floor: list[float]) -> Figure:
    ours, bare = statistics.median(app), statistics.median(floor)
    return Figure(ours / bare, f"{ours:.0f} / {bare:.0f} ms")
