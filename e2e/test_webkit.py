"""The other engine, which every phone of one large maker has: the same app on Debian's WebKit."""

import re
import time

import icalendar
import pytest

from e2e.bench import WALK
from e2e.webkit import WebKitPhone, hidden_screen, is_here
from e2e.webkit_screens import go_on, make_ready, screens, to_the_bench, type_a_face, unfold

WIDER = """return [document.scrollingElement, ...document.querySelectorAll("dialog[open] *, .bench__body")]
  .filter((node) => node.checkVisibility() && /auto|scroll|visible/.test(getComputedStyle(node).overflowX)
    && node.scrollWidth > node.clientWidth && !node.closest("math, .working__formula")
    && (node === document.scrollingElement || getComputedStyle(node).overflowY === "auto"))
  .map((node) => node.className || node.localName)"""
# So long (seconds) the page goes on saying "saved" before it owns that the disk has not yet the last key.
UNSEEN = 0.25
# From the mix to a size, as its working leads; each is a row of the one before.
DOWN_TO_THE_WIDTH = (
    "Cups",
    "Greater count of cups",
    "Cups by your sizes",
    "Film for one coat, with the extra",
    "Film of all faces in this coat",
    "Film of the face in this coat",
    "Film of the face",
    "Film of one piece",
    "Face area",
    "Shape area",
    "Rectangle area",
    "Width",
)
NOT_UNDERLINED = """return [...document.querySelectorAll(".figure")].filter((node) => node.checkVisibility()
  && !/^underline dotted/.test(["Line", "Style"].map((part) =>
    getComputedStyle(node)[`textDecoration${part}`]).join(" "))).map((node) => node.dataset.cell)"""


@pytest.fixture(scope="session")
def hidden():
    """A screen that nobody sees."""
    if not is_here():
        pytest.skip("there is no WebKit on this machine: `python -m e2e.browser` installs Debian's")
    with hidden_screen() as name:
        yield name


@pytest.fixture
def webkit(hidden, tmp_path):
    """A phone with WebKit that is still off."""
    phone = WebKitPhone(hidden, tmp_path / "phone")
    yield phone
    phone.stop()
    assert phone.complaints() == []


@pytest.fixture
def first_visit(webkit):
    """Start the phone, open the app for the first time, and type a face over the example."""

    def visit(server):
        webkit.start().go(server.address)
        webkit.see(".head", "ready offline")
        type_a_face(webkit)

    return visit


def test_every_screen_fits_and_every_figure_looks_like_something_to_tap(webkit, server):
    for name in screens(webkit.start(), server.address):
        assert webkit.run(WIDER) == [], name
        assert webkit.run(NOT_UNDERLINED) == [], name


def test_a_cup_is_walked_to_the_cover_though_server_and_browser_end(webkit, own_server, first_visit):
    first_visit(own_server)
    to_the_bench(webkit)
    make_ready(webkit)
    go_on(webkit, "A is in")
    own_server.stop()
    go_on(webkit, "A has touched B")
    pour_by = webkit.see(".clock__time").text
    webkit.kill()
    webkit.start().go(own_server.address)
    webkit.see("[data-act=bench-go]", "B is in")
    assert webkit.see(".clock__time").text == pour_by
    for words in WALK[WALK.index("B is in, start mixing") : WALK.index("Misted")]:
        go_on(webkit, words)
    webkit.tap(".bench__choice", "to the phone’s calendar")
    path = webkit.profile / "lake-green-cup-1.ics"
    webkit.until(lambda: path.exists() and path.stat().st_size)
    events = icalendar.Calendar.from_ical(path.read_bytes()).walk("VEVENT")
    summaries = [str(each["summary"]).rpartition(": ")[2] for each in events]
    assert summaries[:3] == ["first mist", "second mist", "tack-free"]
    assert all(each.walk("VALARM") for each in events)
    for words in ("Misted", "Misted again", "Covered"):
        go_on(webkit, words)
    webkit.see(".bench__curing", "Lake green, cup 1")


def test_what_was_typed_outlives_a_kill_and_a_figure_leads_down_to_it(webkit, server, first_visit):
    first_visit(server)
    time.sleep(UNSEEN)
    webkit.until(lambda: re.fullmatch(r"saved \d+:\d\d( [AP]M)?", webkit.see("[data-part=state]").text))
    webkit.kill()
    webkit.start().go(server.address)
    unfold(webkit, "Faces")
    webkit.tap(".face__open", "20 × 12")
    typed = [webkit.see(f"[data-id=f1] [data-input={name}]") for name in ("width", "height", "depth")]
    assert [field.get_attribute("value") for field in typed] == ["20", "12", "1/16"]
    webkit.tap(".figure[data-cell=mix_volume]")
    for name in DOWN_TO_THE_WIDTH:
        webkit.tap(".working__row", name)
        webkit.see("dialog[data-part=working] h2", name)
    assert webkit.see(".working__typed").text == "You typed 20 in."


def test_on_paper_stand_the_figures_and_blanks_to_write_in_but_no_button(webkit, server, first_visit):
    first_visit(server)
    paper = re.sub(r"\s+", " ", webkit.printed())
    for words in (
        "Practice: the example",
        "What to mix",
        "Plate 20 × 12 in",
        "8.31 fl oz",
        "Cup 2 of 2",
        "Lot A",
    ):
        assert words in paper
    for words in ("Add a face", "Save to a file", "Next:"):
        assert words not in paper
