"""The app's own site: its static files, its printed formulas and its page, baked into a folder."""

from functools import cache
from pathlib import Path
from typing import cast

from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template

from webapp.baker.assets import lean_markup, read_modules, read_styles, static_folder
from webapp.baker.groups import GROUPS
from webapp.baker.stamp import fingerprint_of, leave_stamp, standing_site
from webapp.baker.writer import Page, Site, Sources, write_site
from webapp.names.asked import Known
from webapp.names.check import Texts, check_choices, check_names
from webapp.names.known import known_by_sheet, known_by_tables
from webapp.names.templates import template_globals
from webapp.printer.module import print_job_shape, print_sentences, print_sheet, print_workings
from webapp.sheet.wiring import load_sheet

PACKAGE = Path(__file__).resolve().parent.parent
TEMPLATES = PACKAGE / "templates"
NO_PAGE = Page("", "", "", (), "")


def bake(folder: Path) -> Site:
    """Bake the site into a folder that any static host serves; only what changed is written."""
    sources = fingerprint_of(PACKAGE, static_folder())
    site = standing_site(folder, sources)
    if site is None:
        site = write_site(folder, own_sources())
        leave_stamp(site, sources)
    return site


def own_sources() -> Sources:
    """Return what the site is baked from, once every name in it is known."""
    check_choices()
    sheet = load_sheet()
    check_names(own_texts(), sheet)
    printed = {
        "printed.js": print_sheet(sheet),
        "sentences.js": print_sentences(sheet),
        "job-shape.js": print_job_shape(),
        "workings.js": print_workings(sheet),
    }
    return Sources(static_folder(), printed, {"later.html": render_later()}, render_index, GROUPS)


def own_texts() -> Texts:
    """Return the texts in which names stand: both pages as rendered, and what they are made of."""
    static = static_folder()
    modules = {name: content.decode() for name, content in read_modules(static).items()}
    templates = {path.name: path.read_text() for path in sorted(TEMPLATES.glob("*.html"))}
    pages = {"index.html": render_index(NO_PAGE), "later.html": render_later()}
    written = cast(dict[str, str], _environment().globals["written"])
    return Texts(pages, modules, read_styles(static), templates, written)


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
    return new_environment()


def new_environment() -> Environment:
    """Return the environment that renders the page's templates, with the names that those may ask for."""
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=StrictUndefined,
    )
    known = Known([*known_by_sheet(load_sheet()), *known_by_tables()])
    environment.globals |= template_globals(known)
    return environment
