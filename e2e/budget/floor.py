"""The floor: a bare page with as many elements, one input that writes one text, and the same service worker.

What the browser takes for that page, on this machine and at this moment, no page could better.
"""

import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from jinja2 import Template

from e2e.server import static_host
from webapp.baker.assets import WORKER, static_folder
from webapp.baker.writer import Page, Sources, write_site

BARE = Path(__file__).parent / "bare"
SAME_AS_THE_APP = (WORKER, "manifest.webmanifest", "icons/mark.svg", "keeping/offline.js")


@contextmanager
def floor_host(folder: Path, elements: int) -> Iterator[str]:
    """Bake a bare page of so many elements and serve it; yield its address."""
    shutil.rmtree(folder, ignore_errors=True)
    static = folder / "static"
    for name in SAME_AS_THE_APP:
        (static / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(static_folder() / name, static / name)
    shutil.copy(BARE / "app.js", static)
    sources = Sources(static, {}, {}, lambda page: bare_page(page, elements))
    with static_host(write_site(folder / "site", sources).folder) as address:
        yield address


def bare_page(page: Page, elements: int) -> str:
    """Render the bare page with so many elements in all."""
    template = Template((BARE / "index.html").read_text(), autoescape=True)
    without_rows = len(re.findall("<[a-z]", template.render(page=page, rows=0)))
    return template.render(page=page, rows=elements - without_rows)
