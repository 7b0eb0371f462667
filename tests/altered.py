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

from playwright.sync_api import Browser, Page


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_arguments: object) -> None:
        """Keep the test's output to the test."""


@contextmanager
def phone_with(browser: Browser, baked: Path, **changes: Callable[[Any], Any]) -> Iterator[Page]:
    """Open a page on which each named table of `printed.js` is what its change makes of it."""
    version = next(each.name for each in baked.iterdir() if each.name.startswith("v-"))
    printed = (baked / version / "printed.js").read_text(encoding="utf-8")
    for name, change in changes.items():
        line = re.compile(rf"^(export const {name} = )(.*);$", re.MULTILINE)
        found = line.search(printed)
        assert found, f"printed.js has no table {name}"
        table = json.dumps(change(json.loads(found[2])), ensure_ascii=False)
        printed = printed[: found.start()] + f"{found[1]}{table};" + printed[found.end() :]
    handler = functools.partial(_Quiet, directory=str(baked))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    page = browser.new_page()
    address = f"http://127.0.0.1:{server.server_port}/"
    page.route(address, lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    script = {"body": printed, "content_type": "text/javascript"}
    page.route(f"{address}{version}/printed.js", lambda route: route.fulfill(**script))
    page.goto(address)
    page.evaluate("(base) => { window.modules = base; }", f"{address}{version}/")
    try:
        yield page
    finally:
        page.close()
        server.shutdown()
        server.server_close()
        thread.join()
