"""The one Playwright and the one browser of a test run: a second Playwright in a thread refuses to start."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Playwright, sync_playwright

from e2e.browser import launch


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """Playwright, running."""
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright) -> Iterator[Browser]:
    """A browser without a profile, for tests that need no phone of their own."""
    started = launch(playwright)
    yield started
    started.close()
