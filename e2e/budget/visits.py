"""The first visit: what it transfers, and what a slow phone on a slow network shows and when."""

import statistics

from playwright.sync_api import expect

from e2e.budget.measures import TYPE_AND_READ, Relay, throttled
from e2e.budget.phones import Phones, visit, wait_until_ready
from e2e.budget.table import Figure, Found
from webapp.baker.groups import GROUPS

VISITS = 3
REST = 1000

UNTIL_READY = """() => performance.getEntriesByType("resource")
  .filter((each) => each.startTime < marks.ready).map((each) => new URL(each.name).pathname)"""


def first_visit(phones: Phones) -> Found:
    """Measure transfer and requests, through a relay that counts what is sent for each address."""
    relay = Relay(phones.server.port)
    with phones.phone() as context:
        page = context.pages[0]
        visit(page, relay.address)
        first = ["/", *page.evaluate(UNTIL_READY)]
        for group in GROUPS:
            expect(page.locator("[data-part=offline]")).to_contain_text(f"{group.says}: ready offline")
    relay.close()
    packs = {group.pack for group in GROUPS}
    apart = sum(size for path, size in relay.answered.items() if path.rpartition("/")[2] in packs)
    return {
        "first": Figure(sum(relay.answered[path] for path in set(first)) / 1024),
        "offline": Figure((sum(relay.answered.values()) - apart) / 1024),
        "beside": Figure(apart / 1024),
        "requests": Figure(len(first)),
    }


def slow_visits(phones: Phones) -> Found:
    """Measure paints and the first answer at Slow 4G with a processor four times slower."""
    visits = [_slow_visit(phones) for _ in range(VISITS)]
    return {name: Figure(statistics.median(each[name] for each in visits)) for name in visits[0]}


def _slow_visit(phones: Phones) -> dict[str, float]:
    with phones.phone() as context:
        page = context.pages[0]
        with throttled(page, processor=4, network=True):
            page.goto(phones.server.address, wait_until="commit")
            answer = page.evaluate(TYPE_AND_READ)
            wait_until_ready(page)
            page.wait_for_timeout(REST)
            marks = page.evaluate("() => marks")
            loaded = page.evaluate("() => performance.getEntriesByType('navigation')[0].loadEventEnd")
    return {
        "lcp": marks["lcp"] / 1000,
        "answer": answer / 1000,
        "shift": marks["shift"],
        "long": sum(start > max(loaded, marks["painted"]) for start, _ in marks["long"]),
    }
