"""Fixtures: the modules that the phone runs, baked and loaded in a real Chromium."""

import functools
import http.server
import shutil
import threading
from pathlib import Path

import pytest

from webapp.baker.site import bake

pytest_plugins = ["e2e.fixtures"]


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_arguments):
        """Keep the test's output to the test."""


@pytest.fixture(scope="session")
def baked(tmp_path_factory) -> Path:
    """The baked site, once for all tests that only read it."""
    folder = tmp_path_factory.mktemp("site")
    bake(folder)
    return folder


@pytest.fixture(scope="session")
def instance(baked, tmp_path_factory) -> Path:
    """The folder of a server whose site is baked already."""
    folder = tmp_path_factory.mktemp("instance")
    shutil.copytree(baked, folder / "site")
    return folder


@pytest.fixture(scope="session")
def phone(baked, browser):
    """A page of the baked site in Chromium; `window.modules` is where its modules lie."""
    handler = functools.partial(_Quiet, directory=str(baked))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    version = next(each.name for each in baked.iterdir() if each.name.startswith("v-"))
    page = browser.new_page()
    address = f"http://127.0.0.1:{server.server_port}/"
    page.route(address, lambda route: route.fulfill(body="<!doctype html>", content_type="text/html"))
    page.goto(address)
    page.evaluate("(base) => { window.modules = base; }", f"{address}{version}/")
    yield page
    page.close()
    server.shutdown()
    server.server_close()
