"""Ending a phone's browser as a crash or an empty battery does, and starting it again on the same profile."""

import os
import signal
import threading
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from playwright.sync_api import Error, Page

from e2e.conftest import Phone

WITHIN = 0.04


def browser_process(profile: Path) -> int:
    """Return the process of the browser that has this profile: the one that is no helper of another."""
    for folder in Path("/proc").iterdir():
        if not folder.name.isdigit():
            continue
        try:
            line = (folder / "cmdline").read_bytes().split(b"\0")
        except OSError:
            continue
        is_helper = any(each.startswith(b"--type=") for each in line)
        if f"--user-data-dir={profile}".encode() in line and not is_helper:
            return int(folder.name)
    raise LookupError(f"no browser has the profile {profile}")


def kill_after(phone: Phone, event: str, act: Callable[[], object], delay: float = WITHIN) -> None:
    """Act on the phone, and kill its browser so many seconds after the page has seen the event of it."""
    assert phone.context
    page = phone.context.pages[0]
    kill = threading.Timer(delay, os.kill, (browser_process(phone.profile), signal.SIGKILL))
    page.expose_binding("seen", lambda source: kill.start())
    page.evaluate("(event) => addEventListener(event, () => seen(), { capture: true, once: true })", event)
    with suppress(Error):
        act()
    kill.join()


def start_again(phone: Phone, **options: object) -> Page:
    """Start a browser on the profile of one that was killed."""
    assert phone.context
    with suppress(Error):
        phone.context.close()
    phone.context = None
    for lock in phone.profile.glob("Singleton*"):
        lock.unlink()
    return phone.start(**options)
