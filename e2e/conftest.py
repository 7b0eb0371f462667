"""Fixtures: a phone with a profile of its own, and a server that can be ended."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, Playwright

from e2e.browser import arguments, executable
from e2e.complaints import Complaints
from e2e.server import Server

pytest_plugins = ["e2e.fixtures"]

PHONE = {
    "viewport": {"width": 360, "height": 740},
    "has_touch": True,
    "is_mobile": True,
    "device_scale_factor": 2,
}


class Phone:
    """A browser with a profile folder, so that what it keeps outlives it."""

    def __init__(self, playwright: Playwright, profile: Path, complaints: Complaints) -> None:
        self.playwright = playwright
        self.profile = profile
        self.complaints = complaints
        self.context: BrowserContext | None = None

    def start(self, **options: object) -> Page:
        """Start the browser and return its page."""
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.profile),
            executable_path=executable(),
            args=arguments(),
            accept_downloads=True,
            **{**PHONE, **options},
        )
        self.complaints.listen(self.context)
        return self.context.pages[0]

    def stop(self) -> None:
        """Close the browser, as a person would."""
        if self.context:
            self.context.close()
            self.context = None


@pytest.fixture(scope="session")
def server(tmp_path_factory) -> Iterator[Server]:
    """The real server, shared by the tests that never end it."""
    running = Server(tmp_path_factory.mktemp("instance")).start()
    yield running
    running.stop()


@pytest.fixture
def own_server(server, tmp_path) -> Iterator[Server]:
    """A server for one test, which may end it; it finds the site baked already."""
    shutil.copytree(server.instance, tmp_path / "instance")
    running = Server(tmp_path / "instance").start()
    yield running
    running.stop()


@pytest.fixture(autouse=True)
def complaints(request) -> Iterator[Complaints]:
    """What the pages of a test complain of; nothing, unless the test expects it."""
    heard = Complaints()
    browser = request.getfixturevalue("browser") if "browser" in request.fixturenames else None
    if browser:
        browser.on("context", heard.listen)
    yield heard
    if browser:
        browser.remove_listener("context", heard.listen)
    assert heard.unexpected() == []


@pytest.fixture
def handset(playwright, tmp_path, complaints) -> Iterator[Phone]:
    """A phone that is still off, for tests that start it, end it and start it again."""
    phone = Phone(playwright, tmp_path / "profile", complaints)
    yield phone
    phone.stop()


@pytest.fixture
def page(handset) -> Page:
    """A phone's page, still blank."""
    return handset.start()
