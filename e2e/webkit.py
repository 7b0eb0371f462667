"""The other engine: Debian's WebKit on a phone of its own, driven by Selenium on a screen that nobody sees.

`python -m e2e.browser` installs it. Its phone keeps its profile, so that it can be killed and started again.
"""

import os
import re
import shutil
import signal
import subprocess
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any, TypeVar

from selenium.common.exceptions import (
    ElementNotInteractableException,
    StaleElementReferenceException,
    WebDriverException,
)
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.remote_connection import RemoteConnection
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.wait import WebDriverWait
from selenium.webdriver.webkitgtk.options import Options
from selenium.webdriver.webkitgtk.service import Service

PACKAGES = ("webkit2gtk-driver", "xvfb", "python3-gi", "gir1.2-webkit2-4.1", "poppler-utils")
PROGRAMS = ("WebKitWebDriver", "Xvfb", "pdftotext")
# Debian's own Python, which has the bindings to WebKit.
PYTHON = "/usr/bin/python3"
BINDINGS = 'import gi; gi.require_version("Gtk", "3.0"); gi.require_version("WebKit2", "4.1")'
WINDOW = Path(__file__).parent / "webkit_window.py"
# Room for a tablet of two dots a pixel.
SCREEN = "1700x2400x24"
# What is expected comes in milliseconds; only a machine with other work makes it wait.
PATIENCE = 60
# A phone without signal says so for every address; that is no fault of the page.
WITHOUT_SIGNAL = re.compile("NETWORK ERROR|Could not connect")
# What is drawn anew, or not yet scrolled to, is looked up again.
PASSING = (ElementNotInteractableException, StaleElementReferenceException)
# What lies below the screen is not drawn yet, but there: the driver itself would call it hidden.
SHOWN = """return [...document.querySelectorAll(arguments[0])].filter((node) =>
  node.checkVisibility() && node.textContent.replace(/\\s/g, " ").includes(arguments[1]))"""
# Nothing scrolls to what is not drawn, but to the step that it stands in.
TO_THE_MIDDLE = """for (const node of [arguments[0].closest("[data-far]"), arguments[0]])
  node?.scrollIntoView({ block: "center" });"""
# For a while after a tap the bench takes no other, as that may be a bounce.
HELD = "return document.documentElement.hasAttribute('data-held')"

Answer = TypeVar("Answer")


def is_here() -> bool:
    """Whether this machine has all that the phone takes."""
    return (
        all(map(shutil.which, (*PROGRAMS, PYTHON)))
        and subprocess.run([PYTHON, "-c", BINDINGS], capture_output=True).returncode == 0
    )


@contextmanager
def hidden_screen() -> Iterator[str]:
    """Run a screen that nobody sees; yield its name."""
    reading, writing = os.pipe()
    command = ["Xvfb", "-displayfd", str(writing), "-screen", "0", SCREEN, "-nolisten", "tcp"]
    with subprocess.Popen(command, pass_fds=[writing], stderr=subprocess.DEVNULL) as process:
        os.close(writing)
        with open(reading) as says:
            name = says.readline().strip()
        try:
            yield f":{name}"
        finally:
            process.terminate()


class WebKitPhone:
    """A phone with WebKit, and a profile that outlives it; what its console says is kept there."""

    def __init__(self, screen: str, profile: Path) -> None:
        self.profile = profile
        self.environment = {**os.environ, "DISPLAY": screen, "GDK_SCALE": "2", "LANG": "C.UTF-8"}
        self.driver: WebDriver | None = None
        profile.mkdir(parents=True, exist_ok=True)

    def start(self, width: int = 360, height: int = 740, scheme: str = "light") -> "WebKitPhone":
        """Start the browser."""
        options = Options()
        options.binary_location = PYTHON
        for each in (WINDOW, self.profile, width, height, scheme):
            options.add_argument(str(each))
        self.service = Service(shutil.which(PROGRAMS[0]), env=self.environment)
        self.service.start()
        connection = RemoteConnection(client_config=ClientConfig(self.service.service_url))
        self.driver = WebDriver(connection, options=options)
        return self

    def go(self, address: str) -> None:
        """Open an address."""
        self.driver.get(address)

    def run(self, script: str, *arguments: object) -> Any:
        """Run a script in the page and return what it returns."""
        return self.driver.execute_script(script, *arguments)

    def stop(self) -> None:
        """Close the browser, as a person would."""
        if self.driver:
            with suppress(WebDriverException):
                self.driver.quit()
            self.kill()

    def kill(self) -> None:
        """End the browser and its helpers at once, as an empty battery does."""
        with suppress(ProcessLookupError):
            os.killpg(int((self.profile / "process.txt").read_text()), signal.SIGKILL)
        self.service.stop()
        self.driver = None

    def complaints(self) -> list[str]:
        """Return the errors that the page's console has shown."""
        lines = (self.profile / "console.txt").read_text().splitlines()
        return [each for each in lines if " ERROR" in each and not WITHOUT_SIGNAL.search(each)]

    def until(self, true: Callable[[], Answer]) -> Answer:
        """Wait until something is true and return it; what is drawn anew meanwhile is looked up again."""
        return WebDriverWait(self.driver, PATIENCE, poll_frequency=0.05, ignored_exceptions=PASSING).until(
            lambda _driver: true()
        )

    def shown(self, selector: str, words: str = "") -> list[WebElement]:
        """Return what the page shows by a selector, and says these words."""
        return self.run(SHOWN, selector, words)

    def see(self, selector: str, words: str = "") -> WebElement:
        """Wait for the first on the screen that says these words."""
        return self.until(lambda: next(iter(self.shown(selector, words)), None))

    def tap(self, selector: str, words: str = "") -> None:
        """Tap the first that says these words, once it takes taps."""
        self.until(lambda: self._at_hand(selector, words, lambda node: node.click()))

    def type_over(self, selector: str, text: str) -> None:
        """Type into a field, in place of what is there."""
        self.until(lambda: self._at_hand(selector, "", lambda field: field.clear()))
        self.see(selector).send_keys(text)

    def _at_hand(self, selector: str, words: str, act: Callable[[WebElement], None]) -> bool:
        if self.run(HELD):
            return False
        for each in self.shown(selector, words):
            if each.get_attribute("aria-disabled") != "true":
                self.run(TO_THE_MIDDLE, each)
                act(each)
                return True
        return False

    def leave(self) -> None:
        """Leave what lies over the page, by the key for it."""
        self.driver.switch_to.active_element.send_keys(Keys.ESCAPE)

    def picture(self, path: Path) -> None:
        """Take a picture of the screen."""
        self.driver.save_screenshot(str(path))

    def printed(self) -> str:
        """Print the page and return the text of its pages, laid out as on the paper."""
        paper = self.profile / "page.pdf"
        paper.unlink(missing_ok=True)
        os.kill(int((self.profile / "process.txt").read_text()), signal.SIGUSR1)
        self.until(paper.exists)
        command = ["pdftotext", "-layout", str(paper), "-"]
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout
