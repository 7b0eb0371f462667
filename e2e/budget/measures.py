"""What a budget is measured with: a counting relay, a slow network and processor, marks in the page."""

import socket
import threading
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import CDPSession, Page

SLOW_4G = {
    "offline": False,
    "latency": 150,
    "downloadThroughput": 1_600_000 / 8,
    "uploadThroughput": 750_000 / 8,
}

# Runs before the page: keeps when the sheet could be used, and what the browser observed meanwhile.
MARKS = """
window.marks = { lcp: 0, shift: 0, long: [], ready: 0, typed: -Infinity, wakes: 0, keys: [] };
const observe = (type, take) => new PerformanceObserver((list) => list.getEntries().forEach(take))
  .observe({ type, buffered: true });
observe("largest-contentful-paint", (entry) => { marks.lcp = entry.startTime; });
// What follows a key within half a second was asked for; the browser knows no key that a script types.
const isAsked = ({ hadRecentInput, startTime }) =>
  hadRecentInput || (startTime >= marks.typed && startTime < marks.typed + 500);
observe("layout-shift", (entry) => { if (!isAsked(entry)) marks.shift += entry.value; });
observe("longtask", (entry) => marks.long.push([entry.startTime, entry.duration]));
const sheetShown = () => document.querySelector("[data-part=sheet]")?.hidden === false;
const watcher = new MutationObserver(() => {
  if (!marks.ready && sheetShown()) {
    marks.ready = performance.now();
    afterPaint(() => { marks.painted = performance.now(); console.debug("painted"); });
  }
});
watcher.observe(document, { subtree: true, attributes: true, attributeFilter: ["hidden"] });
const frame = window.requestAnimationFrame.bind(window);
const later = window.setTimeout.bind(window);
const afterPaint = (act) => frame(() => { const { port1, port2 } = new MessageChannel();
  port1.onmessage = act; port2.postMessage(0); });
window.afterPaint = afterPaint;
const counted = (act) => (...rest) => { marks.wakes += 1; return act(...rest); };
window.requestAnimationFrame = (act) => frame(counted(act));
window.setTimeout = (act, ...rest) => later(counted(act), ...rest);
const every = window.setInterval.bind(window);
window.setInterval = (act, ...rest) => every(counted(act), ...rest);
window.addEventListener("input", (event) => {
  const begun = event.timeStamp;
  afterPaint(() => marks.keys.push(performance.now() - begun));
}, true);
"""

TYPE_AND_READ = """() => new Promise((resolve) => {
  const figure = "[data-cell=mix_volume] .figure__number";
  const answer = () => document.querySelector(figure)?.textContent;
  const attempt = () => {
    const field = document.querySelector("[data-field=width] input");
    if (!marks.ready || !field) return void setTimeout(attempt, 5);
    const before = answer();
    field.focus();
    field.value = "31";
    marks.typed = performance.now();
    field.dispatchEvent(new Event("input", { bubbles: true }));
    const look = () => answer() === before ? afterPaint(look) : resolve(performance.now());
    afterPaint(look);
  };
  attempt();
})"""


class Relay:
    """Passes a port on to another and counts the bytes that come back, for each path that was asked for."""

    def __init__(self, target: int) -> None:
        self.target = target
        self.answered: Counter[str] = Counter()
        self._listener = socket.create_server(("127.0.0.1", 0))
        self.port = self._listener.getsockname()[1]
        threading.Thread(target=self._accept, daemon=True).start()

    @property
    def address(self) -> str:
        """The address of the page through the relay."""
        return f"http://127.0.0.1:{self.port}/"

    def close(self) -> None:
        """Take no more calls."""
        self._listener.close()

    def _accept(self) -> None:
        while True:
            try:
                near, _ = self._listener.accept()
            except OSError:
                return
            far = socket.create_connection(("127.0.0.1", self.target))
            asked = [""]
            threading.Thread(target=self._ask, args=(near, far, asked), daemon=True).start()
            threading.Thread(target=self._answer, args=(far, near, asked), daemon=True).start()

    def _ask(self, near: socket.socket, far: socket.socket, asked: list[str]) -> None:
        # A browser sends its next request only after the answer, so a connection has one path at a time.
        for data in _passed(near, far):
            if data.startswith(b"GET "):
                asked[0] = data.split(b" ", 2)[1].decode()

    def _answer(self, far: socket.socket, near: socket.socket, asked: list[str]) -> None:
        for data in _passed(far, near):
            self.answered[asked[0]] += len(data)


def _passed(source: socket.socket, sink: socket.socket) -> Iterator[bytes]:
    try:
        while data := source.recv(65536):
            yield data
            sink.sendall(data)
        sink.shutdown(socket.SHUT_WR)
    except OSError:
        source.close()


@contextmanager
def throttled(page: Page, *, processor: int = 1, network: bool = False) -> Iterator[CDPSession]:
    """Slow the page's processor and network down for a while."""
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": processor})
    if network:
        session.send("Network.enable")
        session.send("Network.emulateNetworkConditions", SLOW_4G)
    try:
        yield session
    finally:
        session.detach()


def percentile(values: list[float], share: float) -> float:
    """Return the value that a share of the values stays at or under."""
    ranked = sorted(values)
    return ranked[min(len(ranked) - 1, int(share * len(ranked)))]
