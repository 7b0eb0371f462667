"""The one Playwright and the one browser of a test run: a second Playwright in a thread refuses to start."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Playwright, expect, sync_playwright

from e2e.browser import launch

# What is expected comes in milliseconds; only a machine with other work makes it wait.
PATIENCE = 20_000


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    """Playwright, running."""
    expect.set_options(timeout=PATIENCE)
    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def browser(playwright) -> Iterator[Browser]:
    """A browser without a profile, for tests that need no phone of their own."""
    started = launch(playwright)
    yield started
    started.close()
