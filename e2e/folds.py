"""What is folded beside the work, and the formula book, as a person meets them."""

from playwright.sync_api import Locator, Page, expect


class Fold:
    """One line beside the work, by its title, with more under it when it is tapped."""

    def __init__(self, page: Page, title: str) -> None:
        self.page = page
        self.toggle = page.get_by_role("button", name=title, exact=True)
        self.node = page.locator(".fold").filter(has=self.toggle)
        self.body = self.node.locator(".fold__body")

    def open(self) -> "Fold":
        """Open it, if it is folded."""
        if self.toggle.get_attribute("aria-expanded") == "false":
            self.toggle.click()
        return self

    def picture(self) -> Locator:
        """Its picture."""
        return self.node.get_by_role("img")

    def figure(self, cell: str) -> Locator:
        """A figure in it, in the line before the rest."""
        return self.node.locator(f".figure[data-cell={cell}]").first

    def expect_open(self) -> None:
        """Expect it to be open."""
        expect(self.toggle).to_have_attribute("aria-expanded", "true")

    def expect_folded(self) -> None:
        """Expect it to be folded to its line."""
        expect(self.toggle).to_have_attribute("aria-expanded", "false")
        expect(self.body).to_be_hidden()

    def expect_verdict(self, words: str) -> None:
        """Expect its line to end in this verdict."""
        expect(self.node.locator(".fold__verdict")).to_have_text(words)

    def expect_figure(self, cell: str, reads: str) -> None:
        """Expect a figure to read so; its unit stands behind a space that does not break."""
        expect(self.figure(cell)).to_have_text(reads.replace(" ", "\u00a0"))


class FormulaBook:
    """The formula book: a list to search, each entry a tap away."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.dialog = page.locator("dialog[data-part=book]")
        self.search = self.dialog.get_by_role("searchbox", name="Search by any word")
        self.shown = self.dialog.locator(".entry").locator("visible=true")

    def open(self) -> "FormulaBook":
        """Open it from the menu."""
        self.page.get_by_role("button", name="Menu", exact=True).click()
        self.page.get_by_role("button", name="How it is worked out", exact=True).click()
        expect(self.dialog).to_be_visible()
        return self

    def close(self) -> None:
        """Close it."""
        self.dialog.get_by_role("button", name="Close how it is worked out").click()

    def entry(self, name: str) -> Locator:
        """The entry of a formula, a check or a constant."""
        return self.dialog.locator(f".entry[data-name={name}]")

    def turn_to(self, name: str) -> Locator:
        """Open an entry."""
        self.entry(name).locator(".entry__head").click()
        return self.entry(name)

    def expect_found(self, *titles: str) -> None:
        """Expect these entries and no others."""
        expect(self.shown.locator(".entry__name")).to_have_text(list(titles))
