"""What pages complain of: console errors, reports of the content policy, and uncaught exceptions."""

from playwright.sync_api import BrowserContext, ConsoleMessage


class Complaints:
    """What the pages of some contexts complained of, and what a test expects that breaks them on purpose."""

    def __init__(self) -> None:
        self.heard: list[str] = []
        self.expected: list[str] = []

    def listen(self, context: BrowserContext) -> None:
        """Hear every page of a context."""
        context.on("weberror", lambda each: self.heard.append(str(each.error)))
        context.on("console", self._hear)

    def _hear(self, message: ConsoleMessage) -> None:
        # A phone without signal says so for every address; that is no fault of the page.
        if message.type == "error" and "net::ERR_" not in message.text:
            self.heard.append(message.text)

    def expect(self, *words: str) -> None:
        """Expect complaints with these words."""
        self.expected += words

    def unexpected(self) -> list[str]:
        """The complaints that nobody expected."""
        return [each for each in self.heard if not any(words in each for words in self.expected)]
