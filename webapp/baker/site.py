"""The app's own site: its static files, its printed formulas and its page, baked into a folder."""

from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from webapp import forms
from webapp.baker.assets import lean_markup, static_folder
from webapp.baker.stamp import fingerprint_of, leave_stamp, standing_site
from webapp.baker.writer import Page, Site, Sources, write_site
from webapp.printer.module import print_sheet, print_workings
from webapp.sheet.wiring import load_sheet

PACKAGE = Path(__file__).resolve().parent.parent
TEMPLATES = PACKAGE / "templates"


def bake(folder: Path) -> Site:
    """Bake the site into a folder that any static host serves; only what changed is written."""
    sources = fingerprint_of(PACKAGE, static_folder())
    site = standing_site(folder, sources)
    if site is None:
        site = write_site(folder, own_sources())
        leave_stamp(site, sources)
    return site


def own_sources() -> Sources:
    """Return what the site is baked from."""
    sheet = load_sheet()
    printed = {"printed.js": print_sheet(sheet), "workings.js": print_workings(sheet)}
    return Sources(static_folder(), printed, {"later.html": render_later()}, render_index)


def render_index(page: Page) -> str:
    """Render the one page from its templates and the forms that the table of inputs gives."""
    return lean_markup(_template("index.html").render(page=page))


def render_later() -> str:
    """Render what the page takes in after its first screen: rows, fields and dialogs not yet asked for."""
    return lean_markup(_template("later.html").render())


def _template(name: str) -> Template:
    return _environment().get_template(name)


@cache
def _environment() -> Environment:
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
        "sizes": forms.sizes(),
    }
    return environment
