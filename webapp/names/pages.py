"""The marks of a rendered page: one table of what each `data-` attribute names, and on which level.

A template has the levels of the rows that it is made for: `data-rows` names one, and what comes in later
(`data-late`, `data-asked`, `data-editor`, `data-cups`) has those of the template that it comes into.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from html.parser import HTMLParser

from webapp.names.asked import ANY, Asked
from webapp.sheet.levels import LEVELS

Name = tuple[str, str, str]
"""A kind, a name of that kind, and its level."""

PAGE = ""
"""What stands in no template stands in the page itself, whose row is the job."""


@dataclass(frozen=True)
class Element:
    """An element of a rendered page: its tag and attributes, and the id of the template that it stands in."""

    tag: str
    attributes: dict[str, str]
    template: str = PAGE


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.elements: list[Element] = []
        self.template = PAGE

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append(Element(tag, {name: value or "" for name, value in attrs}, self.template))
        if tag == "template":
            self.template = self.elements[-1].attributes.get("id", PAGE)

    def handle_endtag(self, tag: str) -> None:
        if tag == "template":
            self.template = PAGE


def elements_of(page: str) -> list[Element]:
    """Return the elements of a rendered page, in their order."""
    reader = _Reader()
    reader.feed(page)
    reader.close()
    return reader.elements


def levels_of(elements: list[Element]) -> dict[str, set[str]]:
    """Return the levels that each template's rows stand on; one that only a script copies has none."""
    levels: dict[str, set[str]] = {PAGE: {"job"}}
    while True:
        before = {name: set(found) for name, found in levels.items()}
        for element in elements:
            for template, reached in _brought_in(element, levels.get(element.template, set())):
                levels.setdefault(template, set()).update(reached)
        if levels == before:
            return levels


def _brought_in(element: Element, own: set[str]) -> Iterator[tuple[str, set[str]]]:
    marks = element.attributes
    if "data-rows" in marks:
        yield marks.get("data-template", PAGE), {marks["data-rows"]} & set(LEVELS)
    elif "data-asked" in marks:
        yield marks.get("data-template", PAGE), own
    for mark in ("data-cups", "data-late", "data-editor"):
        if mark in marks:
            yield marks[mark], own


def asked_by(element: Element, levels: Mapping[str, set[str]]) -> Iterator[Asked]:
    """Yield every name that an element's attributes hold, on each level that its rows may stand on."""
    own = sorted(levels.get(element.template, ())) or [ANY]
    for attribute, value in element.attributes.items():
        resolve = ATTRIBUTES.get(attribute)
        if attribute.startswith("data-"):
            yield Asked("mark", attribute, f"<{element.tag}>", template=element.template)
        if resolve:
            for level in own:
                for kind, name, asked_level in resolve(value, level, element):
                    yield Asked(kind, name, attribute, asked_level, template=element.template)


Resolver = Callable[[str, str, Element], Iterator[Name]]


def _word(kind: str) -> Resolver:
    """A name that stands on no level."""
    return lambda value, level, element: iter([(kind, value, ANY)])


def _words(kind: str) -> Resolver:
    """Several names that stand on no level."""
    return lambda value, level, element: ((kind, name, ANY) for name in value.split())


def _at_row(kind: str) -> Resolver:
    """Names at the element's row, or at the row that its `data-level` leads to; "*" is all there are."""

    def resolve(value: str, level: str, element: Element) -> Iterator[Name]:
        at = element.attributes.get("data-level", level)
        return ((kind, name, at if at in LEVELS else ANY) for name in value.split() if name != "*")

    return resolve


def _in_row(kind: str) -> Resolver:
    """A name at the element's own row."""
    return lambda value, level, element: iter([(kind, value, level)])


def _chosen(value: str, level: str, element: Element) -> Iterator[Name]:
    """A choice and some of its options."""
    choice, *options = value.split() or [""]
    yield "choice", choice, element.attributes.get("data-level", level)
    yield from ((f"option of {choice}", option, ANY) for option in options)


def _above(value: str, level: str, element: Element) -> Iterator[Name]:
    """A cell and the figure that it must be above."""
    cell, *least = value.split() or [""]
    yield "cell", cell, element.attributes.get("data-level", level)
    yield from (("figure", each, ANY) for each in least if not each.isdigit())


def _address(value: str, level: str, element: Element) -> Iterator[Name]:
    """An address within the page: a drawn mark or shape."""
    kind, _, name = value.removeprefix("#").partition("-")
    if value.startswith("#"):
        yield f"drawn {kind}", name, ANY


def _id(value: str, level: str, element: Element) -> Iterator[Name]:
    """A template's id is of no use where nobody asks for the template."""
    if element.tag == "template":
        yield "use of the template", value, ANY


def _nothing(value: str, level: str, element: Element) -> Iterator[Name]:
    """Words, keys and flags, which name nothing."""
    return iter(())


MARKS: dict[str, Resolver] = {
    "data-above": _above,
    "data-act": _word("action"),
    "data-as": _word("way of reading"),
    "data-asked": _chosen,
    "data-because": _at_row("cell"),
    "data-but": _at_row("figure with a check beside it"),
    "data-by": _in_row("cell of the rows below"),
    "data-cell": _at_row("cell"),
    "data-checks": _at_row("figure with a check beside it"),
    "data-choice": _in_row("choice"),
    "data-cups": _word("template"),
    "data-draw": _word("picture"),
    "data-editor": _word("template"),
    "data-field": _in_row("input"),
    "data-fold": _nothing,
    "data-fold-checks": _at_row("check in or below the row"),
    "data-folded": _nothing,
    "data-good": _nothing,
    "data-input": _in_row("input"),
    "data-late": _word("template"),
    "data-level": _in_row("level in reach"),
    "data-of": _in_row("cell of the rows below"),
    "data-part": _word("use of the part"),
    "data-present": _at_row("cell"),
    "data-rows": _in_row("level below"),
    "data-say": _word("sentence"),
    "data-step": _word("step"),
    "data-swatch": _nothing,
    "data-template": _word("template"),
    "data-when": _chosen,
    "data-when-example": _nothing,
    "data-wrong": _nothing,
}
"""What each mark of a page names. A mark that is not here is refused."""

ATTRIBUTES: dict[str, Resolver] = {
    **MARKS,
    "aria-controls": _words("id"),
    "aria-describedby": _words("id"),
    "aria-labelledby": _words("id"),
    "for": _word("id"),
    "href": _address,
    "id": _id,
}
"""All attributes whose names are resolved: the marks, and what refers to an id."""
