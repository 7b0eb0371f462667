"""The app's own site: its static files, its printed formulas and its page, baked into a folder."""

from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from webapp import forms
from webapp.baker.assets import lean_markup, static_folder
from webapp.baker.writer import Page, Site, Sources, write_site
from webapp.printer.module import print_sheet, print_workings
from webapp.sheet.wiring import load_sheet

TEMPLATES = Path(__file__).resolve().parent.parent / "templates"


def bake(folder: Path) -> Site:
    """Bake the site into a folder that any static host serves; only what changed is written."""
    return write_site(folder, own_sources())


def own_sources() -> Sources:
    """Return what the site is baked from."""
    sheet = load_sheet()
    printed = {"printed.js": print_sheet(sheet), "workings.js": print_workings(sheet)}
    return Sources(static_folder(), printed, render_index)


def render_index(page: Page) -> str:
    """Render the one page from its templates and the forms that the table of inputs gives."""
    return lean_markup(_index_template().render(page=page))


@cache
def _index_template() -> Template:
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    environment.globals |= {
        "fields": forms.page_fields(),
        "fields_in": forms.fields_in,
        "groups_in": forms.groups_in,
        "only_with": forms.ONLY_WITH,
        "options_that_ask": forms.options_that_ask,
    }
    return environment.get_template("index.html")
