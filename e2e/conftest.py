"""Fixtures: a phone with a profile of its own, and a server that can be ended."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, Playwright

from e2e.browser import arguments, executable
from e2e.server import Server

pytest_plugins = ["e2e.fixtures"]

PHONE = {
    "viewport": {"width": 360, "height": 740},
    "has_touch": True,
    "is_mobile": True,
    "device_scale_factor": 2,
}


class Phone:
    """A browser with a profile folder, so that what it keeps outlives it; it listens for complaints."""

    def __init__(self, playwright: Playwright, profile: Path) -> None:
        self.playwright = playwright
        self.profile = profile
        self.complaints: list[str] = []
        self.expected: list[str] = []
        self.context: BrowserContext | None = None

    def start(self, **options: object) -> Page:
        """Start the browser and return its page; every console error and exception is kept as a complaint."""
        self.context = self.playwright.chromium.launch_persistent_context(
            str(self.profile),
            executable_path=executable(),
            args=arguments(),
            accept_downloads=True,
            **{**PHONE, **options},
        )
        self.context.on("weberror", lambda each: self.complaints.append(str(each.error)))
        self.context.on("console", self._hear)
        return self.context.pages[0]

    def _hear(self, message) -> None:
        # A phone without signal says so for every address; that is no fault of the page.
        if message.type == "error" and "net::ERR_" not in message.text:
            self.complaints.append(message.text)

    def expect_complaints(self, *words: str) -> None:
        """Expect complaints with these words, as something is broken on purpose."""
        self.expected += words

    def unexpected(self) -> list[str]:
        """The complaints that nobody expected."""
        return [each for each in self.complaints if not any(words in each for words in self.expected)]

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


@pytest.fixture
def handset(playwright, tmp_path) -> Iterator[Phone]:
    """A phone that is still off, for tests that start it, end it and start it again."""
    phone = Phone(playwright, tmp_path / "profile")
    yield phone
    phone.stop()
    assert phone.unexpected() == []


@pytest.fixture
def page(handset) -> Page:
    """A phone's page, still blank."""
    return handset.start()
