"""The check of all names at once: what pages, scripts, styles and tables ask for, against what there is."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from webapp.errors import BakeError
from webapp.names.asked import Asked, Known, refusal
from webapp.names.known import (
    known_before_wiring,
    known_by_asking,
    known_by_pages,
    known_by_sheet,
    known_by_tables,
)
from webapp.names.pages import asked_by, elements_of, levels_of
from webapp.names.scripts import asked_by_scripts, bare, given_by_scripts, told_apart
from webapp.names.tables import asked_by_choices, asked_by_tables
from webapp.names.templates import places_of
from webapp.sheet.wiring import Sheet


@dataclass(frozen=True)
class Texts:
    """All texts in which names stand: rendered pages, their templates, and what runs on the phone.

    `written` holds the place of each name that a template has found unknown as it was rendered.
    """

    pages: Mapping[str, str]
    scripts: Mapping[str, str]
    styles: Mapping[str, str]
    templates: Mapping[str, str]
    written: Mapping[str, str]


@dataclass(frozen=True)
class Names:
    """Every name that is asked for somewhere, and all names that there are."""

    asked: tuple[Asked, ...]
    known: Known


def check_choices() -> None:
    """Refuse a choice that names what is not there, before a sheet is wired from it."""
    _stop_at(refusals(asked_by_choices(), Known(known_before_wiring())))


def check_names(texts: Texts, sheet: Sheet) -> None:
    """Refuse every name that nobody knows: where it stands, the level asked, and near misses."""
    names = names_of(texts, sheet)
    _stop_at(refusals(names.asked, names.known, texts))


def names_of(texts: Texts, sheet: Sheet) -> Names:
    """Return the names that stand in texts and tables, and what each of them may be the name of."""
    elements = [element for page in texts.pages.values() for element in elements_of(page)]
    levels = levels_of(elements)
    scripts = {address: bare(source) for address, source in texts.scripts.items()}
    asked = [
        *(each for element in elements for each in asked_by(element, levels)),
        *asked_by_scripts({**scripts, **texts.styles}),
        *asked_by_choices(),
        *asked_by_tables(sheet.book),
    ]
    given = list(given_by_scripts(scripts))
    known = Known(
        [
            *known_before_wiring(),
            *known_by_sheet(sheet),
            *known_by_tables(),
            *known_by_pages(elements, _steps(texts.templates)),
            *((each.kind, each.level, each.name) for each in given),
            *told_apart(scripts),
            *known_by_asking(asked),
        ]
    )
    return Names((*asked, *map(_as_used, given)), known)


def _steps(templates: Mapping[str, str]) -> list[str]:
    """Each step of the work has a template of its own."""
    return [
        name.removeprefix("step-").removesuffix(".html") for name in templates if name.startswith("step-")
    ]


def _as_used(given: Asked) -> Asked:
    return Asked(f"use of the {given.kind}", given.name, given.by, given.level, given.file, given.line)


def refusals(asked: Iterable[Asked], known: Known, texts: Texts | None = None) -> list[str]:
    """Return why each unknown name is refused, once for each place."""
    unknown = dict.fromkeys(each for each in asked if not known.has(each))
    return [refusal(each, known, _place(each, texts)) for each in unknown]


def _place(asked: Asked, texts: Texts | None) -> str:
    if asked.file or texts is None:
        return f"{asked.file}:{asked.line}"
    return texts.written.get(asked.name) or places_of(asked, texts.templates)


def _stop_at(sentences: list[str]) -> None:
    if sentences:
        raise BakeError("\n".join(sentences))
