"""The job sheet on paper as a person holds it: how many pages, and what stands on them."""

import re

from playwright.sync_api import Locator, Page, expect

from e2e.pages import JobSheet

# What a browser leaves of a page of either size inside margins of 12 mm, in its own pixels.
WIDTHS = {"A4": 703, "Letter": 725}

READINGS = """(paper) => [...paper.querySelectorAll("[data-cell]")].filter((each) => each.checkVisibility())
  .map((each) => [each.dataset.cell, each.textContent])"""
ON_THE_SCREEN = """() => [...document.querySelectorAll(".figure[data-cell]:not([data-as=clock])")]
  .filter((each) => each.checkVisibility())
  .map((each) => [each.dataset.cell, each.textContent])"""
# A word that is cut shows as a box that holds more than it is wide.
CUT = """(paper) => [paper, ...paper.querySelectorAll("*")]
  .filter((each) => getComputedStyle(each).display !== "inline" && each.scrollWidth > each.clientWidth + 1)
  .map((each) => each.textContent)"""
SMALLEST = """(paper) => Math.min(...[...paper.querySelectorAll("*")].filter((each) => each.checkVisibility()
  && !each.closest("svg")).map((each) => parseFloat(getComputedStyle(each).fontSize))) * 72 / 96"""


class Paper:
    """What a browser would print of the page now."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.sheet = page.locator("[data-part=paper]")

    def pages(self, size: str) -> int:
        """Print to a file, as the browser's own menu does, and count the pages."""
        self.page.emulate_media(media="print")
        printed = self.page.pdf(format=size)
        self.page.emulate_media(media="screen")
        return len(re.findall(rb"/Type\s*/Page\b(?!s)", printed))

    def show(self, size: str = "Letter") -> "Paper":
        """Show on the screen what would be printed."""
        self.page.evaluate("dispatchEvent(new Event('beforeprint'))")
        self.page.emulate_media(media="print")
        self.page.set_viewport_size({"width": WIDTHS[size], "height": 900})
        expect(self.sheet).to_be_visible()
        return self

    def block(self, title: str) -> Locator:
        """A block of the sheet by its heading."""
        heading = self.page.get_by_role("heading", name=title, exact=True)
        return self.sheet.locator("section").filter(has=heading)

    def row(self, first: str) -> Locator:
        """A row of any of its tables by what stands first in it."""
        return self.sheet.get_by_role("row").filter(has=self.page.get_by_role("rowheader", name=first))

    def readings(self) -> list[tuple[str, str]]:
        """Every figure on the sheet with the name of its cell."""
        return [tuple(each) for each in self.sheet.evaluate(READINGS)]

    def on_the_screen(self, sheet: JobSheet, *steps: str) -> dict[str, set[str]]:
        """What the figures of these steps read, by their cells; on paper the column says that it is drops."""
        found: dict[str, set[str]] = {}
        for step in steps:
            sheet.unfold(step)
            for cell, text in self.page.evaluate(ON_THE_SCREEN):
                found.setdefault(cell, set()).add(text.removesuffix("\u00a0drops"))
        return found

    def cut(self) -> list[str]:
        """What does not fit where it stands."""
        return self.sheet.evaluate(CUT)

    def smallest(self) -> float:
        """The smallest text, in points."""
        return self.sheet.evaluate(SMALLEST)
