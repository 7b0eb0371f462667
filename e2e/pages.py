"""The page as a person meets it: a part for each screen, with what can be done there and what can be read."""

import re
from pathlib import Path

from playwright.sync_api import Download, Locator, Page, expect


class JobSheet:
    """The job sheet: its steps, faces and cups, and the bar at the thumb."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.next = page.locator(".next__button")
        self.main = page.get_by_role("main")

    def open(self, address: str) -> "JobSheet":
        """Open the page and wait until its pictures are drawn."""
        self.page.goto(address)
        expect(self.page.get_by_role("img", name="Your cup of")).to_be_visible()
        return self

    def step(self, title: str) -> Locator:
        """A step of the job sheet by its title."""
        return self.page.get_by_role("region", name=title)

    def unfold(self, title: str) -> Locator:
        """Open a step, if it is folded."""
        toggle = self.page.get_by_role("button", name=title, exact=True)
        if toggle.get_attribute("aria-expanded") == "false":
            toggle.click()
        return self.step(title)

    def field(self, label: str, within: Locator | None = None) -> Locator:
        """A field by its label."""
        return (within or self.main).get_by_role("textbox", name=label, exact=True)

    def type_in(self, label: str, text: str, within: Locator | None = None) -> None:
        """Type into a field, in place of what is there."""
        self.field(label, within).fill(text)

    def face(self, name: str) -> Locator:
        """A face by its name."""
        named = self.page.locator(".face__name", has_text=name)
        return self.step("Faces").get_by_role("listitem").filter(has=named).last

    def open_face(self, name: str) -> Locator:
        """Open a face to be edited, if it is folded to its line."""
        button = self.face(name).locator(".face__open")
        if button.get_attribute("aria-expanded") == "false":
            button.click()
        return self.face(name)

    def type_over_the_example(self, width: str, height: str, depth: str = "1/16") -> None:
        """Type a face's sizes over those of the example."""
        face = self.step("Faces")
        self.type_in("Width", width, face)
        self.type_in("Height", height, face)
        self.type_in("Depth", depth, face)

    def add_a_face(self, width: str, height: str, depth: str) -> None:
        """Add a face and type its sizes where the cursor stands, going on by Enter."""
        self.page.get_by_role("button", name="Add a face").first.click()
        for text in (width, height, depth):
            self.page.keyboard.type(text)
            self.page.keyboard.press("Enter")

    def figure(self, cell: str, within: Locator | None = None) -> Locator:
        """The first visible figure of a cell."""
        return (within or self.main).locator(f".figure[data-cell={cell}]").locator("visible=true").first

    def expect_figure(self, cell: str, reads: str, within: Locator | None = None) -> None:
        """Expect a figure to read so; its unit stands behind a space that does not break."""
        expect(self.figure(cell, within)).to_have_text(reads.replace(" ", "\u00a0"))

    def expect_next(self, what: str, where: str = "") -> None:
        """Expect the bar at the thumb to hold this next thing to do."""
        expect(self.next).to_contain_text(what)
        expect(self.next).to_contain_text(where)

    def expect_error(self, label: str, says: str) -> None:
        """Expect a field to be marked, with a sentence that it is described by."""
        field = self.field(label)
        expect(field).to_have_attribute("aria-invalid", "true")
        expect(field).to_have_accessible_description(says)

    def expect_saved(self) -> None:
        """Expect the page to say that all is on the disk."""
        expect(self.page.locator("[data-part=state]")).to_have_text(re.compile(r"^saved \d"))

    def save_to_a_file(self, folder: Path) -> Path:
        """Save the job to a file and return its path."""
        self.unfold("Record")
        with self.page.expect_download() as waiting:
            self.step("Record").get_by_role("button", name="Save to a file").click()
        download: Download = waiting.value
        path = folder / download.suggested_filename
        download.save_as(path)
        return path

    def open_a_file(self, path: Path) -> None:
        """Open a job file."""
        self.unfold("Record")
        with self.page.expect_file_chooser() as waiting:
            self.step("Record").get_by_role("button", name="Open a file").click()
        waiting.value.set_files(path)


class Working:
    """The working of a figure: what went in, down to what was typed."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.dialog = page.locator("dialog[data-part=working]")

    def expect_title(self, title: str) -> None:
        """Expect the working to be that of this quantity."""
        expect(self.dialog.get_by_role("heading", name=title, exact=True)).to_be_visible()

    def expect_says(self, words: str) -> None:
        """Expect the working to say this somewhere."""
        expect(self.dialog).to_contain_text(words.replace(" ", " "))

    def go_down(self, name: str) -> None:
        """Go on to one of the figures that went in."""
        self.dialog.locator(".working__row").filter(has_text=name).first.click()

    def go_back(self) -> None:
        """Go back to the figure before."""
        self.dialog.get_by_role("button", name="Back").click()

    def jump(self, says: str) -> None:
        """Leave for the field that the working leads to."""
        self.dialog.get_by_role("button", name=says).click()
        expect(self.dialog).not_to_be_visible()

    def close(self) -> None:
        """Close the working."""
        self.dialog.get_by_role("button", name="Close").click()


class Menu:
    """The menu: jobs, units, light, readiness."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.dialog = page.locator("dialog[data-part=menu]")

    def open(self) -> "Menu":
        """Open the menu."""
        self.page.get_by_role("button", name="Menu", exact=True).click()
        expect(self.dialog).to_be_visible()
        return self

    def close(self) -> None:
        """Close the menu."""
        self.dialog.get_by_role("button", name="Close").click()

    def choose(self, option: str) -> None:
        """Choose a unit or a theme."""
        self.dialog.get_by_role("radio", name=option, exact=True).check()

    def new_job(self) -> None:
        """Begin another job."""
        self.dialog.get_by_role("button", name="New job").click()

    def pick_job(self, name: str) -> None:
        """Open one of the jobs on the phone."""
        self.dialog.locator(".job__open", has_text=name).click()

    def delete_job(self, name: str) -> None:
        """Delete one of the jobs on the phone."""
        self.dialog.get_by_role("button", name=f"Delete {name}").click()

    def undo(self) -> None:
        """Bring back what was deleted last."""
        self.dialog.get_by_role("button", name="Undo").first.click()

    def expect_jobs(self, *names: str) -> None:
        """Expect these jobs on the phone, the latest first."""
        expect(self.dialog.locator(".job__name")).to_have_text(list(names))
