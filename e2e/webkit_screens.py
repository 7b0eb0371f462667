"""A walk over every screen on Debian's WebKit; `python -m e2e.screens FOLDER` takes its pictures too."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.bench import WALK
from e2e.webkit import WebKitPhone, hidden_screen

STEPS = ("Resin and room", "Faces", "Cups", "Tint", "Pour and cure", "Record")
TO_THE_TOP = "const step = arguments[0].closest('.step'); scrollTo(0, step.offsetTop - 8);"
OPEN_LINE = ".ready__line[aria-pressed=false]"
# A new cup of the example is ready to be begun, whatever the bar at the thumb says.
TO_THE_BENCH = "document.querySelector('[data-act=bench]').click()"


def type_a_face(phone: WebKitPhone, width: str = "20", height: str = "12", depth: str = "1/16") -> None:
    """Type a face's sizes over those of the example."""
    for name, text in (("width", width), ("height", height), ("depth", depth)):
        phone.type_over(f"[data-id=f1] [data-input={name}]", text)


def unfold(phone: WebKitPhone, title: str) -> None:
    """Open a step, if it is folded, and bring its head to the top."""
    toggle = phone.see(".step__toggle", title)
    if toggle.get_attribute("aria-expanded") == "false":
        phone.tap(".step__toggle", title)
    phone.run(TO_THE_TOP, toggle)


def to_the_bench(phone: WebKitPhone) -> None:
    """Go to the bench, where the first cup is to be made ready."""
    phone.run(TO_THE_BENCH)
    phone.see(".ready__line")


def make_ready(phone: WebKitPhone) -> None:
    """Tap each line of make ready, and begin the cup."""
    for _ in phone.shown(OPEN_LINE):
        phone.tap(OPEN_LINE)
    go_on(phone, "Begin the cup")


def go_on(phone: WebKitPhone, words: str) -> None:
    """Tap the bench's big button, which must say this, and wait for what comes then."""
    before = phone.see(".stage__instruction").text
    phone.tap("[data-act=bench-go]", words)
    phone.until(lambda: phone.see(".stage__instruction").text != before)


def screens(phone: WebKitPhone, address: str) -> Iterator[str]:
    """Walk the app as a person would, and name each screen as it is reached."""
    phone.go(address)
    phone.see(".head", "ready offline")
    yield "example"
    type_a_face(phone)
    for title in STEPS:
        unfold(phone, title)
        yield f"step-{title.lower().replace(' ', '-')}"
    phone.type_over("[data-id=f1] [data-input=width]", "40 m")
    yield "refused"
    phone.type_over("[data-id=f1] [data-input=width]", "20")
    phone.tap(".figure[data-cell=mix_volume]")
    phone.see("dialog[data-part=working] h2")
    yield "working"
    phone.leave()
    phone.tap(".head__menu")
    phone.see("dialog[data-part=menu] h2")
    yield "menu"
    phone.tap("dialog[data-part=menu] button", "How it is worked out")
    phone.see(".entry")
    yield "formula-book"
    phone.leave()
    phone.leave()
    to_the_bench(phone)
    yield "bench-make-ready"
    make_ready(phone)
    yield "bench-01-begun"
    for number, words in enumerate(WALK, 2):
        go_on(phone, words)
        yield f"bench-{number:02}-after-{words.lower().replace(',', '').replace(' ', '-')}"


def take_pictures(address: str, target: Path, scheme: str) -> None:
    """Take a picture of every screen into the folder."""
    with hidden_screen() as screen, TemporaryDirectory() as profile:
        phone = WebKitPhone(screen, Path(profile)).start(scheme=scheme)
        try:
            for number, name in enumerate(screens(phone, address), 1):
                phone.picture(target / f"webkit-{scheme}-{number:02}-{name}.png")
        finally:
            phone.stop()
