"""What a thumb does from opening the app to the first A and B: every tap and every key counts.

A look further down the page is neither.
"""

import re

from playwright.sync_api import Locator, Page, expect

from e2e.budget.phones import Phones, visit
from e2e.budget.table import Figure, Found

# What stands on the can, and the face at hand.
CAN = {"stated_ratio_a": "2", "stated_ratio_b": "1"}
SIZES = ("24", "12", "1/16")
REST = 500


class Thumb:
    """A thumb on the page that counts what it does."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.count = 0

    def tap(self, goal: Locator) -> None:
        """Tap something, and wait as a person does until the page has answered."""
        self.count += 1
        goal.click()
        self.page.wait_for_timeout(REST)

    def type(self, text: str) -> None:
        """Type into the field that has the cursor, whose text a first tap has selected."""
        self.count += len(text)
        self.page.keyboard.type(text)

    def enter(self) -> None:
        """Go on to the next field."""
        self.count += 1
        self.page.keyboard.press("Enter")

    def type_sizes(self) -> None:
        """Let the bar lead to the face, or to the button that adds one, and type its sizes from there."""
        self.tap(self.page.locator(".next__button"))
        if self.page.locator("[data-act=add-face]:focus").count():
            self.tap(self.page.locator("[data-act=add-face]:focus"))
        for place, text in enumerate(SIZES):
            if place:
                self.enter()
            self.type(text)

    def follow_the_bar(self) -> None:
        """Type from the can what the bar asks for, until A and B of the first cup can be read."""
        for _ in CAN:
            if self._reads_a_and_b():
                return
            self.tap(self.page.locator(".next__button"))
            self.type(CAN[self.page.evaluate("() => document.activeElement.dataset.input")])
        if not self._reads_a_and_b():
            raise RuntimeError(f"no A and B can be read after {self.count} taps and keys")

    def _reads_a_and_b(self) -> bool:
        # What is far down the page is not drawn before somebody looks there.
        self.page.locator("[data-step=cups]").evaluate("(step) => step.scrollIntoView()")
        self.page.wait_for_timeout(REST)
        return all(
            self.page.locator(f".figure[data-cell=reading_{part}]", has_text=re.compile(r"\d"))
            .locator("visible=true")
            .count()
            for part in "ab"
        )


def taps_to_the_first_a_and_b(phones: Phones) -> Found:
    """Count at a first visit with a card of one's own, then for another job with the card that is kept."""
    with phones.phone() as context:
        page = context.pages[0]
        visit(page, phones.server.address)
        own = Thumb(page)
        own.type_sizes()
        own.tap(page.get_by_role("button", name="Resin and room", exact=True))
        own.tap(page.get_by_role("radio", name="My own card"))
        own.follow_the_bar()
        kept = Thumb(page)
        kept.tap(page.get_by_role("button", name="Menu", exact=True))
        kept.tap(page.get_by_role("button", name="New job"))
        expect(page.locator(".next__what")).to_have_text("Next: add a face")
        kept.type_sizes()
        kept.follow_the_bar()
    return {"own": Figure(own.count), "kept": Figure(kept.count)}
