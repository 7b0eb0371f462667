"""From a key to the paint that shows it, in a job of a hundred faces, against the floor."""

from playwright.sync_api import Page

from e2e.budget.floor import floor_host
from e2e.budget.measures import percentile, throttled
from e2e.budget.phones import Phones, job_of, visit
from e2e.budget.table import Figure, Found

FACES = 100
ROUNDS = 6
KEYS_A_ROUND = 10
# As fast as a quick thumb, so that one key does not wait for the one before it.
BETWEEN_KEYS = 120
REST = 500
COUNT_ELEMENTS = "() => document.querySelectorAll('*').length"


def keys_to_paint(phones: Phones) -> Found:
    """Measure keys in the app and on the bare page by turns, so that other work hits both."""
    with phones.phone() as context:
        app = context.pages[0]
        visit(app, phones.server.address)
        phones.open_job(app, job_of(FACES))
        _touch_air_temperature(app)
        with floor_host(phones.folder / "floor", app.evaluate(COUNT_ELEMENTS)) as address:
            floor = context.new_page()
            visit(floor, address)
            floor.locator("input").click()
            return {f"key{processor}": _keys_by_turns(app, floor, processor) for processor in (4, 6)}


def _touch_air_temperature(page: Page) -> None:
    # The air's temperature reaches every figure of every face.
    step = page.locator("[data-step=resin]")
    if step.get_attribute("data-folded") is not None:
        step.locator(".step__toggle").click()
    step.locator("[data-field=air_temperature] input").click()


def _keys_by_turns(app: Page, floor: Page, processor: int) -> Figure:
    keys: dict[Page, list[float]] = {app: [], floor: []}
    for _ in range(ROUNDS):
        for page, taken in keys.items():
            with throttled(page, processor=processor):
                taken += _keys(page)
    ours, bare = (percentile(taken, 0.95) for taken in keys.values())
    return Figure(ours / bare, f"{ours:.0f} / {bare:.0f} ms")


def _keys(page: Page) -> list[float]:
    page.bring_to_front()
    page.evaluate("() => { marks.keys.length = 0; }")
    for number in range(KEYS_A_ROUND // 2):
        for key in ("Backspace", str(number % 10)):
            page.keyboard.press(key)
            page.wait_for_timeout(BETWEEN_KEYS)
    page.wait_for_timeout(REST)
    return page.evaluate("() => marks.keys")
