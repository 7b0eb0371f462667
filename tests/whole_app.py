"""The app as a person comes upon it: the rendered pages, the phone's modules, the bench and the sheet."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from html.parser import HTMLParser

from webapp.baker.site import own_texts
from webapp.bench.stages import STAGES, Stage
from webapp.names.pages import PAGE, Element, levels_of
from webapp.names.scripts import bare
from webapp.sheet.wiring import Key, Node, Sheet, load_sheet

# Elements that are written without an end.
ALONE = {
    "area",
    "base",
    "circle",
    "ellipse",
    "input",
    "line",
    "link",
    "meta",
    "path",
    "rect",
    "source",
    "use",
}
# Folders whose modules know no cell by name: what they show is named elsewhere.
GENERIC = ("lib/", "keeping/", "working/")


@dataclass(frozen=True)
class Mark(Element):
    """An element of a page, and the classes of those that it lies in."""

    around: tuple[str, ...] = ()


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.marks: list[Mark] = []
        self.open: list[Mark] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        own = {name: value or "" for name, value in attrs}
        outer = self.open[-1] if self.open else Mark("", {})
        is_template = outer.tag == "template"
        template = outer.attributes.get("id", PAGE) if is_template else outer.template
        around = (*(() if is_template else outer.around), *own.get("class", "").split())
        self.marks.append(Mark(tag, own, template, around))
        if tag not in ALONE:
            self.open.append(self.marks[-1])

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in ALONE:
            self.open.pop()

    def handle_endtag(self, tag: str) -> None:
        while self.open and self.open.pop().tag != tag:
            pass


@dataclass(frozen=True)
class App:
    """What a person can come upon: the rendered pages, the phone's modules, the bench and the sheet."""

    page: str
    modules: Mapping[str, str]
    stages: tuple[Stage, ...]
    sheet: Sheet

    @cached_property
    def nodes(self) -> dict[Key, Node]:
        """The sheet's cells by level and name."""
        return {(node.level, node.name): node for node in self.sheet.nodes}

    @cached_property
    def own_modules(self) -> str:
        """The modules that name cells, without their comments."""
        return "\n".join(bare(text) for name, text in self.modules.items() if not name.startswith(GENERIC))

    @cached_property
    def everywhere(self) -> list[Mark]:
        """Every element of the pages and their templates."""
        reader = _Reader()
        reader.feed(self.page)
        return reader.marks

    @cached_property
    def levels(self) -> dict[str, set[str]]:
        """The levels of the rows that each template is made for; one never taken in has none."""
        return levels_of(list(self.everywhere))

    @cached_property
    def marks(self) -> list[Mark]:
        """The elements of the page itself, and of the templates that it takes in."""
        return [mark for mark in self.everywhere if self.levels.get(mark.template)]

    def places(self, attribute: str) -> list[tuple[Mark, str, str]]:
        """Return each mark with such an attribute, each of its words, and each level that it reads from."""
        return [
            (mark, word, mark.attributes.get("data-level", level))
            for mark in self.marks
            for word in mark.attributes.get(attribute, "").split()
            for level in sorted(self.levels[mark.template])
        ]

    def is_within(self, mark: Mark, classes: set[str]) -> bool:
        """Tell whether a mark lies in an element of such a class wherever the page takes it in."""
        if classes & set(mark.around):
            return True
        takers = [
            each
            for each in self.marks
            if mark.template
            and mark.template
            in (each.attributes.get(f"data-{way}") for way in ("template", "late", "editor", "cups"))
        ]
        return bool(takers) and all(self.is_within(each, classes) for each in takers)


def the_app() -> App:
    """Return the app as it is baked today."""
    texts = own_texts()
    return App("".join(texts.pages.values()), texts.scripts, STAGES, load_sheet())
