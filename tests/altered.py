"""A phone whose printed tables were altered: what a later version of a table would do to the same scripts."""

import functools
import http.server
import json
import re
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Page, Route

PRINTED = ("printed.js", "sentences.js", "job-shape.js")


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_arguments: object) -> None:
        """Keep the test's output to the test."""


def _answer(script: str) -> Callable[[Route], None]:
    return lambda route: route.fulfill(body=script, content_type="text/javascript")


@contextmanager
def phone_with(browser: Browser, baked: Path, **changes: Callable[[Any], Any]) -> Iterator[Page]:
    """Open a page on which each named table of the printed modules is what its change makes of it."""
    version = next(each.name for each in baked.iterdir() if each.name.startswith("v-"))
    printed = {name: (baked / version / name).read_text(encoding="utf-8") for name in PRINTED}
    for name, change in changes.items():
        line = re.compile(rf"^(export const {name} = )(.*);$", re.MULTILINE)
        module = next((each for each, text in printed.items() if line.search(text)), None)
        assert module, f"no printed module has a table {name}"
        text = printed[module]
        found = line.search(text)
        table = json.dumps(change(json.loads(found[2])), ensure_ascii=False)
        printed[module] = text[: found.start()] + f"{found[1]}{table};" + text[found.end() :]
    handler = functools.partial(_Quiet, directory=str(baked))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    page = browser.new_page()
    address = f"http://127.0.0.1:{server.server_port}/"
    page.route(address, lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    for name, text in printed.items():
        page.route(f"{address}{version}/{name}", _answer(text))
    page.goto(address)
    page.evaluate("(base) => { window.modules = base; }", f"{address}{version}/")
    try:
        yield page
    finally:
        page.close()
        server.shutdown()
        server.server_close()
        thread.join()
