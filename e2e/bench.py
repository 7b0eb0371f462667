"""The bench as a person meets it: what can be done there, and what can be read."""

import re

from playwright.sync_api import Locator, Page, expect

BASE = "new URL('.', document.querySelector('script[type=module]').src).href"
WALK = [
    "A is in",
    "A has touched B",
    "B is in, start mixing",
    "Mixed",
    "drops are in",
    "It hides",
    "Stirred",
    "Poured",
    "Misted",
    "Misted again",
    "Covered",
]


# A look at the stores waits for every write that was asked for before it.
WRITTEN = """() => new Promise((resolve) => {
  const opening = indexedDB.open("sixteenth");
  opening.onsuccess = () => {
    const { result: database } = opening;
    const look = database.transaction([...database.objectStoreNames]).objectStore("jobs").count();
    look.onsuccess = look.onerror = () => {
      database.close();
      resolve();
    };
  };
  opening.onerror = () => resolve();
})"""


class Sheet:
    """The job sheet, as far as the bench needs it."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def open(self, address: str) -> None:
        """Open the page and wait until its job, its figures and its thumb bar are there."""
        self.page.goto(address)
        expect(self.page.locator(".next__what")).to_have_text(re.compile("Next"))
        self.page.evaluate(
            f"""async () => {{
              const {{ state, subscribe }} = await import({BASE} + "keeping/store.js");
              while (!state.job) {{
                await new Promise((opened) => {{
                  const stop = subscribe(() => opened(stop()));
                }});
              }}
            }}"""
        )

    def type_in(self, row: str, name: str, text: str) -> None:
        """Type into a field of a row, wherever it is folded away."""
        self.page.evaluate(
            f"async ([row, name, text]) => (await import({BASE} + 'keeping/store.js')).edit(row, name, text)",
            [row, name, text],
        )

    def type_a_face(self, width: str = "20", height: str = "12") -> None:
        """Type a face over the example, for a cup that holds all of it."""
        for name, text in (("cup_capacity", "600 mL"), ("cup_graduation", "5 mL")):
            self.type_in("job", name, text)
        face = self.page.locator("[data-id=f1]")
        face.locator("[data-input=width]").fill(width)
        face.locator("[data-input=height]").fill(height)

    def open_the_face(self) -> None:
        """Unfold the first face's fields, if they are folded."""
        if self.page.locator("[data-id=f1] [data-input=width]").count() == 0:
            step = self.page.locator("[data-step=faces]")
            if step.get_attribute("data-folded") is not None:
                step.locator(".step__toggle").click()
            step.locator("[data-id=f1] .face__open").click()

    def add_colour(self, name: str, width: str, height: str) -> None:
        """Add a colour with one face."""
        self.page.evaluate(
            f"""async ([name, width, height]) => {{
              const {{ addRow }} = await import({BASE} + "keeping/store.js");
              const colour = addRow("colour", "job", {{ name, swatch: "#f4f4f0" }});
              addRow("face", colour, {{ name, shape: "rectangle", width, height, depth: "1/16" }});
            }}""",
            [name, width, height],
        )

    def job(self) -> dict:
        """Return the job as it is kept."""
        return self.page.evaluate(f"async () => (await import({BASE} + 'keeping/store.js')).state.job")

    def cups(self) -> list[dict]:
        """Return every cup on the bench, colour by colour."""
        return [cup for colour in self.job()["colours"] for cup in colour.get("cups", [])]

    def taps(self) -> list[str]:
        """Return what was tapped for the first cup, by the words on the button of each stage."""
        return self.page.evaluate(
            f"""async () => {{
              const {{ stages }} = await import({BASE} + "sentences.js");
              const {{ state }} = await import({BASE} + "keeping/store.js");
              const {{ tapsOf }} = await import({BASE} + "clocks/cup-record.js");
              const [cup] = state.job.colours.flatMap((colour) => colour.cups);
              const buttons = new Map(stages.map(({{ name, button }}) => [name, button]));
              return tapsOf(cup).flatMap((tap) => buttons.get(tap.stage) ?? []);
            }}"""
        )

    def keep_cup(self, colour: str, cup: dict) -> None:
        """Keep a cup of a colour as it is, whole or not."""
        self.page.evaluate(
            f"async ([colour, cup]) => (await import({BASE} + 'keeping/store.js')).keepCup(colour, cup)",
            [colour, cup],
        )

    def add_face(self, colour: str, width: str, height: str, depth: str) -> None:
        """Add a face to a colour."""
        self.page.evaluate(
            f"""async ([colour, width, height, depth]) => {{
              const {{ addRow }} = await import({BASE} + "keeping/store.js");
              addRow("face", colour, {{ shape: "rectangle", width, height, depth }});
            }}""",
            [colour, width, height, depth],
        )

    def take_to_the_bench(self, colour: str, cup: str = "") -> "Bench":
        """Take a cup of a colour to the bench, or its next one, whatever the bar at the thumb says."""
        self.page.evaluate(
            """([colour, cup]) => {
              const button = document.body.appendChild(document.createElement("button"));
              button.dataset.act = "bench";
              button.dataset.colour = colour;
              button.dataset.cup = cup;
              button.click();
              button.remove();
            }""",
            [colour, cup],
        )
        bench = Bench(self.page)
        expect(bench.root).to_be_visible()
        return bench

    def go_to_the_bench(self) -> "Bench":
        """Tap the bar at the thumb when it leads to the bench."""
        self.page.locator(".next__button").click()
        bench = Bench(self.page)
        expect(bench.root).to_be_visible()
        return bench


class Bench:
    """The bench on the screen; `has_own_clock` where the test moves the phone's clock."""

    def __init__(self, page: Page, has_own_clock: bool = True) -> None:
        self.page = page
        self.has_own_clock = has_own_clock
        self.root = page.get_by_role("main", name="Bench")
        self.button = self.root.locator("[data-act=bench-go]")
        self.figure = self.root.locator(".stage__figure")
        self.under = self.root.locator(".stage__under")
        self.sure = self.root.locator("[data-act=bench-sure]")
        self.forward = self.root.locator("[data-act=bench-forward]")
        self.clocks = self.root.get_by_role("list", name="Clocks")
        self.missed = self.root.get_by_role("list", name="Missed")
        self.notices = self.root.locator(".stage__notices")
        self.heat = self.root.locator(".stage__heat")
        self.quiet = self.root.locator(".stage__quiet")

    def pass_time(self, seconds: float) -> None:
        """Let the phone's clock run on; what is due on the way comes due; no write is left behind."""
        self.page.evaluate(WRITTEN)
        self.page.clock.run_for(int(seconds * 1000))

    def sleep(self, seconds: float) -> None:
        """Let time pass as it does for a phone that sleeps: timers fire at most once."""
        self.page.clock.fast_forward(int(seconds * 1000))
        self.page.clock.run_for(1100)

    def hold_still(self) -> None:
        """Wait as a hand does from one tap to the next, until the bench takes another."""
        held = self.page.locator("html[data-held]")
        if not self.has_own_clock:
            return expect(held).to_have_count(0)
        # By this clock the disk would seem silent.
        self.page.evaluate(WRITTEN)
        for _ in range(200):
            if not held.count():
                return None
            self.page.clock.run_for(100)
        raise AssertionError("the bench takes no tap")

    def press(self, button: Locator) -> None:
        """Tap a button, once the bench takes the tap."""
        expect(button).to_be_visible()
        self.hold_still()
        button.click()

    def tick_the_lines(self) -> None:
        """Tap each line of make ready."""
        expect(self.root.locator(".ready__line").first).to_be_visible()
        for line in self.root.locator(".ready__line").all():
            self.press(line)

    def tap(self, words: str) -> None:
        """Tap the big button, which must say this."""
        expect(self.button).to_contain_text(words)
        self.press(self.button)
        self.hold_still()

    def begin(self) -> None:
        """Make a cup ready and begin it."""
        self.tick_the_lines()
        self.tap("Begin the cup")

    def begin_all_the_same(self) -> None:
        """Make a cup ready and begin it with a reason, whatever holds it."""
        for line in self.root.locator(".ready__line").all():
            if line.get_attribute("aria-pressed") == "false":
                self.press(line)
        reason = self.root.get_by_label("Why begin all the same?")
        if reason.is_visible():
            reason.fill("To see what stands there then")
        self.tap("egin")

    def walk_to(self, words: str) -> None:
        """Tap stage by stage until the big button says this."""
        for each in WALK:
            if words in each:
                break
            self.tap(each)
        self.expect_button(words)

    def step_back(self) -> None:
        """Tap step back, and say yes where the bench asks first."""
        self.press(self.root.locator(".bench__back"))
        self.hold_still()
        if self.sure.is_visible():
            self.press(self.sure)
            self.hold_still()

    def choose(self, words: str) -> None:
        """Tap a line that stands under the stage."""
        self.press(self.root.locator(".bench__choice", has_text=words))
        self.hold_still()

    def set_aside(self) -> None:
        """Give the cup up, and say yes to the question."""
        self.choose("Set this cup aside")
        self.press(self.sure)
        self.hold_still()

    def boxes(self) -> list[str]:
        """Return what stands in the boxes of stops and cautions, those left out that were made quiet."""
        kinds = (
            ".check--stop:not(.check--calm), .check--caution:not(.check--calm), .caution:not(.caution--calm)"
        )
        return [box.inner_text() for box in self.root.locator(kinds).all() if box.is_visible()]

    def leave(self) -> None:
        """Go back to the job sheet."""
        self.press(self.root.get_by_role("button", name="Back to the job sheet").last)
        expect(self.root).to_have_count(0)
        self.hold_still()

    def expect_button(self, words: str) -> None:
        """The big button says this."""
        expect(self.button).to_contain_text(words)

    def expect_instruction(self, words: str) -> None:
        """The one instruction says this."""
        expect(self.root.get_by_role("heading", level=1)).to_contain_text(words)
