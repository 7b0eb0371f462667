"""A first visit over a poor signal: it works, or says that it has not come whole, and it recovers."""

import re
from collections import Counter

import pytest
from playwright.sync_api import expect

from e2e.faulty import FAULTS, faulty_host

SENTENCE = "Not all of this page has come yet."
# Of a first visit: the page, its styles and icon, ten modules, the worker, its pack, and what that asks for.
REQUESTS = 20
# How often a page that waits for signal asks for one file in some seconds; a storm asks hundreds of times.
A_FEW = 8
SOME_SECONDS = 3000
# Half a script may break any rule of its language.
ANY = ("",)
# Beyond the 8 s after which the page asks again for styles that hold up every paint.
STYLES_MAY_TAKE = 20_000


@pytest.fixture
def folder(server):
    """The baked site."""
    return server.instance / "site"


@pytest.fixture
def visit(handset, folder):
    """Visit a host that fails from one request on, with a clock of the page's styles that runs ahead."""
    page = handset.start()
    handset.complaints.expect("MIME type", "Failed to load resource", "when fetching the script")
    session = page.context.new_cdp_session(page)
    session.send("Animation.enable")
    session.send("Animation.setPlaybackRate", {"playbackRate": 20})

    def visit(host):
        page.goto(host.address, wait_until="commit")
        return page

    return visit


def sentence(page):
    """What the page says when it has not come whole."""
    return page.get_by_text(SENTENCE)


def expect_the_menu_to_open(page):
    """The page is alive to its last screen."""
    expect(page.locator("[data-part=late]")).to_have_count(0)
    page.get_by_role("button", name="Menu", exact=True).click()
    expect(page.get_by_role("heading", name="Jobs on this phone")).to_be_visible()


def wait_for_an_end(page):
    """The page is whole, or says that it is not."""
    page.wait_for_function(
        "() => { const late = document.querySelector('[data-part=late]'); return late"
        " ? getComputedStyle(late).visibility === 'visible' : document.readyState !== 'loading'; }"
    )


def expect_a_reload_to_help(page):
    """The page says that it is not whole, and goes on by its own link."""
    page.get_by_role("link", name="Reload").click()
    expect_the_menu_to_open(page)


CASES = [(fault, first) for fault in FAULTS for first in range(2, REQUESTS + 1)]


@pytest.mark.long
@pytest.mark.parametrize(("fault", "first"), CASES, ids=lambda each: str(each))
def test_it_works_or_says_so_asks_little_and_recovers(visit, folder, fault, first):
    with faulty_host(folder, fault, first) as host:
        page = visit(host)
        wait_for_an_end(page)
        page.wait_for_timeout(SOME_SECONDS)
        assert max(Counter(host.asked).values()) <= A_FEW
        host.mended.set()
        if sentence(page).count():
            page.get_by_role("link", name="Reload").click()
        expect_the_menu_to_open(page)


@pytest.mark.long
def test_a_page_of_which_half_came_says_so(visit, folder):
    with faulty_host(folder, "torn", only="/") as host:
        page = visit(host)
        expect(sentence(page)).to_be_visible()
        host.mended.set()
        expect_a_reload_to_help(page)


@pytest.mark.long
@pytest.mark.parametrize("only", ["", "/"])
def test_where_the_browser_gave_up_on_the_page_its_own_reload_helps(visit, folder, only):
    # Told that more was to come, it drops what it has not read yet, the sentence maybe too.
    with faulty_host(folder, "half sent", only=only) as host:
        page = visit(host)
        page.wait_for_timeout(SOME_SECONDS)
        assert len(host.asked) <= REQUESTS
        host.mended.set()
        page.reload()
        expect_the_menu_to_open(page)


def test_a_script_torn_in_the_browsers_own_cache_is_loaded_anew_by_reload(visit, folder, handset):
    handset.complaints.expect(*ANY)
    with faulty_host(folder, "torn", only="/printed.js") as host:
        page = visit(host)
        expect(sentence(page)).to_be_visible()
        # It was asked for, once more past the cache, and not again and again.
        assert sum(path.endswith("/printed.js") for path in host.asked) == 2
        host.mended.set()
        expect_a_reload_to_help(page)


@pytest.mark.long
@pytest.mark.parametrize("only", ["/app.js", "/printed.js", "/marks.js", "/sixteenth.css"])
def test_a_file_torn_once_is_loaded_anew_by_itself(visit, folder, handset, only):
    handset.complaints.expect(*ANY)
    with faulty_host(folder, "torn", only=only, times=1) as host:
        page = visit(host)
        expect(page.locator("[data-part=late]")).to_have_count(0, timeout=STYLES_MAY_TAKE)
        expect_the_menu_to_open(page)


@pytest.mark.long
@pytest.mark.parametrize("fault", FAULTS)
def test_styles_that_do_not_come_leave_no_white_page(visit, folder, fault):
    with faulty_host(folder, fault, only="/sixteenth.css") as host:
        page = visit(host)
        page.wait_for_function(
            "() => performance.getEntriesByType('paint').length > 0", timeout=STYLES_MAY_TAKE
        )
        expect(sentence(page)).to_be_visible()
        host.mended.set()
        expect_a_reload_to_help(page)


def test_a_tap_on_what_has_not_come_is_answered_at_once_and_not_done_much_later(visit, folder):
    with faulty_host(folder, "cut", 14) as host:
        page = visit(host)
        menu = page.get_by_role("button", name="Menu", exact=True)
        expect(page.get_by_role("textbox", name="Name of the job")).to_be_enabled()
        for _ in range(3):
            menu.click()
        expect(sentence(page)).to_be_visible()
        page.wait_for_timeout(SOME_SECONDS + 4000)
        host.mended.set()
        page.evaluate("() => dispatchEvent(new Event('online'))")
        expect(page.locator("[data-part=late]")).to_have_count(0)
        expect(page.locator("dialog[data-part=menu]")).not_to_be_visible()
        expect_the_menu_to_open(page)


def test_it_goes_on_by_itself_when_signal_is_back_and_keeps_what_was_typed(visit, folder):
    with faulty_host(folder, "cut", 15) as host:
        page = visit(host)
        width = page.get_by_role("main").get_by_role("textbox", name="Width", exact=True)
        width.fill("31")
        expect(sentence(page)).to_be_visible()
        host.mended.set()
        expect_the_menu_to_open(page)
        expect(width).to_have_value("31")
        expect(page.locator("[data-part=state]")).to_have_text(re.compile(r"^saved \d"))
