"""The browser killed again and again in the middle of the work: `python -m e2e.kills --seed N --count 200`.

Every kind of tap and of edit is tried, with a kill at some moment after it. What was painted has to be there
at the next start, and nothing twice; a clock counts from the moment that was tapped.
"""

import argparse
import os
import random
import re
import signal
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any

from playwright.sync_api import Error, expect, sync_playwright

from e2e.bench import Bench, Sheet
from e2e.complaints import Complaints
from e2e.conftest import Phone
from e2e.killed import browser_process, start_again
from e2e.server import Server

LONGEST_WAIT = 0.12
# A typed key is on the screen at once, so what is lost of it is what the browser had no time to hand over.
SOONEST_AFTER_A_KEY = 0.025
CLOCK_WITHIN = 1.0

# Reports what the screen shows of the bench once it is painted, and the moment of each tap.
WATCH = """() => {
  const show = () => {
    const go = document.querySelector(".bench__go");
    const big = document.querySelector(".stage__count");
    const lines = document.querySelectorAll('.ready__line[aria-pressed="true"]').length;
    const shown = go ? `${go.textContent}|${big ? big.textContent : ""}|${lines}` : "";
    if (shown === window.lastShown) return;
    window.lastShown = shown;
    requestAnimationFrame(() => setTimeout(() => painted(shown)));
  };
  new MutationObserver(show).observe(document.body,
    { subtree: true, childList: true, characterData: true, attributes: true });
  addEventListener("click", () => seen(Date.now()), { capture: true, once: true });
  addEventListener("input", () => seen(Date.now()), { capture: true, once: true });
}"""


@dataclass
class Kill:
    """One kill: what was done before it, what had been painted, and what is wrong after it."""

    kind: str
    delay: float
    painted: list[str] = field(default_factory=list)
    seen: float = 0.0
    wrong: str = ""
    is_kept: bool = False


class Victim:
    """A phone whose browser is killed; the job on it goes on from kill to kill."""

    def __init__(self, phone: Phone, address: str) -> None:
        self.phone = phone
        self.address = address
        self.page = phone.start()
        sheet = Sheet(self.page)
        sheet.open(address)
        sheet.type_a_face()
        expect(self.page.locator("[data-part=state]")).to_have_text(re.compile(r"^saved \d"))

    @property
    def sheet(self) -> Sheet:
        """The job sheet on the page of now."""
        return Sheet(self.page)

    @property
    def bench(self) -> Bench:
        """The bench on the page of now."""
        return Bench(self.page, has_own_clock=False)

    def kill(self, kill: Kill, act: Callable[[], object]) -> None:
        """Act, kill the browser some moments after the page has seen it, and start it again."""
        process = browser_process(self.phone.profile)
        timer = threading.Timer(kill.delay, os.kill, (process, signal.SIGKILL))

        def seen(_source: Any, moment: float) -> None:
            kill.seen = moment / 1000
            timer.start()

        self.page.expose_binding("seen", seen)
        self.page.expose_binding("painted", lambda _source, shown: kill.painted.append(shown))
        self.page.evaluate(WATCH)
        with suppress(Error):
            act()
            while True:
                self.page.wait_for_timeout(50)
        timer.join()
        self.page = start_again(self.phone)
        self.page.goto(self.address)
        expect(self.page.locator("[data-part=sheet], .bench").first).to_be_attached()
        expect(self.page.locator("[data-part=state]")).to_have_text(re.compile("^saved"))
        self.wait_for_the_bench()

    def wait_for_the_bench(self) -> None:
        """Wait until the bench has opened by itself, where a cup is in hand."""
        is_live = self.page.evaluate(
            """async () => {
              const base = new URL(".", document.querySelector("script[type=module]").src).href;
              const { state } = await import(base + "keeping/store.js");
              return (await import(base + "clocks/turns.js")).cupToResume(state.job) !== null;
            }"""
        )
        if is_live:
            expect(self.bench.root).to_be_visible()

    def standing(self) -> list[tuple[str, str]]:
        """Return the taps that stand of all cups, as names and moments."""
        return [
            (tap["stage"], tap["at"])
            for cup in self.sheet.cups()
            for tap in self.page.evaluate(
                """async (cup) => {
                  const base = new URL(".", document.querySelector("script[type=module]").src).href;
                  return (await import(base + "clocks/cup-record.js")).tapsOf(cup);
                }""",
                cup,
            )
        ]

    def shown(self) -> str:
        """Return what the bench shows, as `WATCH` reports it."""
        return self.page.evaluate(
            """() => {
              const go = document.querySelector(".bench__go");
              const big = document.querySelector(".stage__count");
              const lines = document.querySelectorAll('.ready__line[aria-pressed="true"]').length;
              return go ? `${go.textContent}|${big ? big.textContent : ""}|${lines}` : "";
            }"""
        )


def on_the_bench(victim: Victim) -> Bench:
    """Return the bench with a cup in hand, going there if need be."""
    expect(victim.page.locator("[data-part=sheet]")).to_be_attached()
    bench = victim.bench
    if bench.root.count() == 0:
        bench = victim.sheet.take_to_the_bench("c1")
        bench.has_own_clock = False
    bench.hold_still()
    return bench


def tap_on(bench: Bench, selector: str) -> Callable[[], object]:
    """Return a tap on the middle of a button that takes it at once."""
    button = bench.root.locator(selector).first
    button.scroll_into_view_if_needed()
    box = button.bounding_box()
    assert box
    return lambda: bench.page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)


def way_to_tap(victim: Victim, draw: random.Random) -> tuple[str, str, Callable[[], object]]:
    """Choose what is tapped next on the bench: its kind, the change of taps that it makes, and the tap."""
    bench = on_the_bench(victim)
    open_lines = bench.root.locator('.ready__line[aria-pressed="false"]')
    words = bench.button.inner_text()
    if open_lines.count() and words.startswith("Begin"):
        return "line", "+", tap_on(bench, '.ready__line[aria-pressed="false"]')
    if "Back to the job sheet" in words or words.startswith(("Next", "Go on")):
        raise LookupError("this cup is done")
    ways = ["go", "go", "go"]
    if bench.root.locator(".bench__choice--drop:visible:not([aria-disabled=true])").count():
        ways.append("drop")
    if bench.forward.is_visible() and bench.forward.inner_text().startswith("Step forward"):
        ways += ["forward", "forward"]
    elif len(victim.standing()) > 6:
        ways.append("back")
    way = draw.choice(ways)
    if way == "back":
        back = tap_on(bench, ".bench__back")
        asks = words.startswith(("B is in", "Misted", "It is tack-free"))
        if asks:
            bench.press(bench.root.locator(".bench__back"))
            expect(bench.root.locator(".bench__thumb")).to_be_visible()
            bench.hold_still()
            if bench.sure.is_visible():
                return "back, asked", "-", tap_on(bench, "[data-act=bench-sure]")
            return "go", "+", tap_on(bench, ".bench__go")
        return "back", "-", back
    selector = {"go": ".bench__go", "drop": ".bench__choice--drop", "forward": "[data-act=bench-forward]"}[
        way
    ]
    return way, "+", tap_on(bench, selector)


def kill_at_a_tap(victim: Victim, draw: random.Random) -> Kill:
    """Kill some moments after a tap on the bench, and hold what is there against what was painted."""
    kind, change, act = way_to_tap(victim, draw)
    bench = victim.bench
    before, shown_before = victim.standing(), victim.shown()
    kill = Kill(f"{kind}: {bench.button.inner_text()}", draw.uniform(0, LONGEST_WAIT))
    victim.kill(kill, act)
    after = victim.standing()
    kill.is_kept = len(after) != len(before)
    was_painted = any(shown not in ("", shown_before) for shown in kill.painted)
    kept = before == after
    longer, shorter = (after, before) if change == "+" else (before, after)
    if not kept and (longer[:-1] != shorter and sorted(shorter) != sorted(longer)[: len(shorter)]):
        kill.wrong = f"taps were {before}, and are {after}"
    elif abs(len(after) - len(before)) > 1:
        kill.wrong = f"tapped once, and there are {len(after)} after {len(before)}"
    elif was_painted and kept:
        kill.wrong = f"painted {kill.painted[-1]!r}, and the tap is lost"
    elif kind in ("go", "line", "drop") and not kept:
        moment = datetime.fromisoformat(after[-1][1]).timestamp()
        if abs(moment - kill.seen) > CLOCK_WITHIN and after[-1][0] != "part_b":
            kill.wrong = f"tapped at {kill.seen}, and the clock counts from {moment}"
    return kill


def kill_at_a_key(victim: Victim, draw: random.Random) -> Kill:
    """Kill some moments after a key in a field of the job sheet."""
    name, level = draw.choice([("width", "f1"), ("height", "f1"), ("name", "job")])
    if victim.bench.root.count():
        victim.bench.leave()
    sheet = victim.sheet
    digits = str(draw.randrange(100, 999))
    if name == "name":
        box = victim.page.locator("[data-part=job-name]")
    else:
        sheet.open_the_face()
        box = victim.page.locator(f"[data-id=f1] [data-input={name}]")
    box.fill(digits[:2])
    kill = Kill(f"key: {name}", draw.uniform(SOONEST_AFTER_A_KEY, LONGEST_WAIT))
    victim.kill(kill, lambda: victim.page.keyboard.press(digits[2]))
    expect(victim.page.locator("[data-part=sheet]")).to_be_attached()
    job = victim.sheet.job()
    kept = job["name"] if level == "job" else job["colours"][0]["faces"][0][name]
    kill.is_kept = kept == digits
    if not kill.is_kept:
        kill.wrong = f"typed {digits}, and there is {kept}"
    return kill


def run(address: str, profile: Path, playwright: Any, seed: int, count: int) -> list[Kill]:
    """Kill a phone's browser so often, and return what came of each."""
    draw = random.Random(seed)
    kills: list[Kill] = []
    rounds = 0
    phone = Phone(playwright, profile / "0", Complaints())
    victim = Victim(phone, address)
    while len(kills) < count:
        try:
            act = kill_at_a_key if draw.random() < 0.2 else kill_at_a_tap
            kills.append(kill := act(victim, draw))
            print(f"{len(kills)}: {kill.kind}, {kill.wrong or 'well'}", file=sys.stderr, flush=True)
        except LookupError:
            # The cup is covered or over: another phone begins anew.
            phone.stop()
            rounds += 1
            phone = Phone(playwright, profile / str(rounds), Complaints())
            victim = Victim(phone, address)
    phone.stop()
    return kills


def say(kills: list[Kill], seconds: float) -> str:
    """Return what came of all kills, kind by kind, and each that went wrong."""
    kinds = Counter(kill.kind for kill in kills)
    kept = Counter(kill.kind for kill in kills if kill.is_kept)
    lines = [f"{kinds[kind]:4} kills, {kept[kind]:4} kept   {kind}" for kind in sorted(kinds)]
    painted = sum(bool(kill.painted) for kill in kills)
    wrong = [
        f"{number}: {kill.kind}, {kill.delay * 1000:.0f} ms: {kill.wrong}"
        for number, kill in enumerate(kills)
        if kill.wrong
    ]
    total = (
        f"{len(kills)} kills in {seconds:.0f} s, {painted} with something painted, {len(wrong)} went wrong"
    )
    return "\n".join([*lines, *wrong, total])


def main() -> int:
    """Kill as often as was asked; the exit code counts what went wrong."""
    asked = argparse.ArgumentParser(description="Kill the browser in the middle of the work.")
    asked.add_argument("--seed", type=int, default=16)
    asked.add_argument("--count", type=int, default=200)
    options = asked.parse_args()
    expect.set_options(timeout=20_000)
    start = time.monotonic()
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = Server(Path(folder) / "instance").start()
        try:
            kills = run(server.address, Path(folder), playwright, options.seed, options.count)
        finally:
            server.stop()
    print(say(kills, time.monotonic() - start))
    return sum(bool(kill.wrong) for kill in kills)


if __name__ == "__main__":
    sys.exit(main())
