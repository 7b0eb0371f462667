"""The browser that tests drive: the system's Chromium, else Debian's, else Playwright's own.

`python -m e2e.browser` makes sure that there is one, and Debian's WebKit beside it.
"""

import os
import shutil
import subprocess
import sys

from playwright.sync_api import Browser, Playwright

from e2e import webkit

FLAGS = [
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]


def executable() -> str | None:
    """Return the system's Chromium, or None where Playwright's own is meant."""
    return shutil.which("chromium")


def arguments() -> list[str]:
    """Return the flags that Chromium is started with; root cannot use its sandbox."""
    return [*FLAGS, "--no-sandbox"] if os.geteuid() == 0 else FLAGS


def launch(playwright: Playwright) -> Browser:
    """Start a headless browser."""
    return playwright.chromium.launch(executable_path=executable(), args=arguments())


def installed(*packages: str) -> bool:
    """Install Debian's packages; say whether that went well."""
    as_root = [] if os.geteuid() == 0 else ["sudo", "-n"]
    commands = (
        [*as_root, "apt-get", "update", "-q"],
        [*as_root, "apt-get", "install", "-y", "-q", *packages],
    )
    return bool(shutil.which("apt-get")) and all(subprocess.run(each).returncode == 0 for each in commands)


def main() -> None:
    """Install Debian's WebKit and Chromium where missing, else Playwright's own."""
    if not webkit.is_here() and not installed(*webkit.PACKAGES):
        print("There is no WebKit here: what it would be asked is left out of the tests.", file=sys.stderr)
    if executable() or installed("chromium"):
        return
    sys.exit(
        subprocess.run([sys.executable, "-m", "playwright", "install", "--with-deps", "chromium"]).returncode
    )


if __name__ == "__main__":
    main()
