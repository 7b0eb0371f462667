"""The walk that takes a picture of every screen: it waits for a slow machine, and says where it stopped."""

import re

from e2e import screens
from e2e.screens import DEVICES, walk


def test_the_walk_waits_for_a_bench_that_comes_late(browser, server):
    page = browser.new_page(**DEVICES["tablet"], service_workers="block")

    def late(route):
        page.wait_for_timeout(1500)
        route.continue_()

    page.route("**/bench/walk.js", late)
    reached = next(name for name in screens.screens(page, server.address) if name.startswith("bench-02"))
    page.close()
    assert reached == "bench-02-after-a-is-in"


def test_a_walk_that_stops_on_the_way_says_so_and_names_the_last_screen(browser, tmp_path, monkeypatch):
    def stops(page, _address):
        yield "example"
        page.get_by_role("button", name="No such button").click(timeout=10)

    monkeypatch.setattr(screens, "screens", stops)
    says = walk(browser, "about:blank", tmp_path, "tablet", "dark")
    assert re.match("tablet, dark, stopped after example: .*Timeout 10ms", says)
    assert [each.name for each in tmp_path.iterdir()] == ["tablet-dark-01-example.png"]
    assert screens.exit_code([says, ""]) == 1
