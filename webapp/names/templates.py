"""Names in a template: resolved as they are rendered, and found in the sources when a page is refused."""

import re
import sys
from collections.abc import Callable, Collection, Mapping
from typing import Any

from jinja2 import Template

from webapp import forms
from webapp.errors import BakeError
from webapp.names.asked import ANY, Asked, Known, refusal
from webapp.sheet.labels import called

FOLDER = "webapp/templates"
MOST_PLACES = 3


class Fields(dict[str, Any]):
    """The page's fields by name; one that there is not stops the bake."""

    def __init__(self, fields: Mapping[str, Any], resolve: Callable[..., None]) -> None:
        super().__init__(fields)
        self._resolve = resolve

    def __missing__(self, name: str) -> Any:
        self._resolve("input", name)


def template_globals(known: Known) -> dict[str, Any]:
    """Return what templates may ask for; each refuses a name that is not there.

    A template does not know the level of its own row. An unknown cell of that row is noted in `written` with
    its place, and refused with its level once the page is rendered and read.
    """
    written: dict[str, str] = {}

    def resolve(kind: str, name: str, level: str = ANY) -> None:
        asked = Asked(kind, name, "the template", level)
        if not known.has(asked):
            raise BakeError(refusal(asked, known, _place_in_rendering(name)))

    def known_cells(names: str, level: str = ANY) -> str:
        """Return names of cells as they are, once each is known on the level or is noted with its place."""
        for name in names.replace("*", "").split():
            if level:
                resolve("cell", name, level)
            elif not known.has(Asked("cell", name, "the template")):
                written[name] = _place_in_rendering(name)
        return names

    def label_of(name: str) -> str:
        resolve("cell", name)
        return called(name)

    def section_without(section: str, without: Collection[str]) -> None:
        resolve("section", section)
        for name in without:
            resolve(f"input of the section {section}", name)

    def fields_in(section: str, without: Collection[str] = ()) -> list[str]:
        section_without(section, without)
        return [name for name in forms.fields_in(section) if name not in without]

    def groups_in(section: str, without: Collection[str] = ()) -> list[tuple[str, list[str]]]:
        section_without(section, without)
        return forms.groups_in(section, without)

    return {
        "known": known_cells,
        "written": written,
        "called": label_of,
        "fields": Fields(forms.page_fields(), resolve),
        "fields_in": fields_in,
        "groups_in": groups_in,
        "lab": forms.LAB,
        "only_with": forms.ONLY_WITH,
        "sizes": forms.sizes(),
    }


def _place_in_rendering(name: str) -> str:
    """Return file and line of the template that hands a name on, past the macros that only pass it along."""
    passed = []
    frame = sys._getframe(1)
    while frame:
        template = frame.f_globals.get("__jinja_template__")
        if isinstance(template, Template):
            passed.append((template, template.get_corresponding_lineno(frame.f_lineno)))
        frame = frame.f_back  # type: ignore[assignment]
    places = [f"{FOLDER}/{template.name}:{line}" for template, line in passed]
    written = [
        place
        for place, (template, line) in zip(places, passed, strict=True)
        if _has_word(name, _source_of(template).splitlines()[line - 1])
    ]
    return [*written, *places, FOLDER][0]


def _source_of(template: Template) -> str:
    loader = template.environment.loader
    return loader.get_source(template.environment, template.name or "")[0] if loader else ""


def places_of(asked: Asked, templates: Mapping[str, str]) -> str:
    """Return where a name of a rendered page stands in the templates, its own `<template>` first."""
    own: list[str] = []
    others: list[str] = []
    for file, source in templates.items():
        inside = ""
        for number, line in enumerate(source.splitlines(), 1):
            started = re.search(r'<template id="([^"]+)"', line)
            inside = started[1] if started else inside
            if _has_word(asked.name, line):
                place = f"{FOLDER}/{file}:{number}"
                (own if asked.template and inside == asked.template else others).append(place)
    return " or ".join((own or others)[:MOST_PLACES]) or f"{FOLDER}, <template id={asked.template!r}>"


def _has_word(name: str, line: str) -> bool:
    return re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", line) is not None
