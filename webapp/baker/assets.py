"""What a site is made of: the modules and who imports whom, the joined styles, the icons."""

import re
from collections.abc import Iterable, Mapping
from pathlib import Path, PurePosixPath

from webapp.errors import BakeError

ENTRY = "app.js"
# A module of the first screen that imports nothing; the page runs it by itself too, to heal what came torn.
HEALER = "lib/dom.js"
WORKER = "service-worker.js"
MANIFEST = "manifest.webmanifest"
STYLES = "sixteenth.css"
LATER_STYLES = "later.css"
# Stands at the end of the first paint's styles, as in static/lib/dom.js: where it is missing they came torn.
STYLES_END = ":root { --styles-end: 1; }\n"

CONTENT_TYPES = {
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".webmanifest": "application/manifest+json",
}

STYLE_ORDER = (
    "tokens",
    "base",
    "layout",
    "forms",
    "figures",
    "checks",
    "faces",
    "cups",
    "tint",
    "timeline",
    "folds",
    "working",
    "book",
    "bench",
    "bench-rows",
    "bench-stage",
    "bench-ready",
    "menu",
    "print",
)
# What no first paint wears comes with `later.html`: pictures, dialogs, the bench, the printer.
AFTER_THE_FIRST_PAINT = (
    "faces-drawing",
    "cups-drawing",
    "tint",
    "timeline",
    "folds-drawing",
    "working",
    "book",
    "bench",
    "menu",
    "print",
)

_STATIC_IMPORT = re.compile(r'^\s*(?:import|export)\b(?:[^;"]*?\bfrom)?\s*"([^"]+)"', re.MULTILINE)
_LATER_IMPORT = re.compile(r'\bimport\(\s*"([^"]+)"\s*\)')
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_COMMENT_LINES = re.compile(r"^[ \t]*(?:/\*.*?\*/[ \t]*|//[^\n]*)$", re.MULTILINE | re.DOTALL)
_INDENT = re.compile(r"^[ \t]+", re.MULTILINE)
_LONG_TEMPLATE = re.compile(r"^(?:[^`\n]*`[^`\n]*`)*[^`\n]*`[^`\n]*$", re.MULTILINE)


def static_folder() -> Path:
    """Return the folder of static files: inside an installed package, beside the package in a checkout."""
    package = Path(__file__).resolve().parent.parent
    installed = package / "static"
    return installed if installed.is_dir() else package.parent / "static"


def read_modules(static: Path) -> dict[str, bytes]:
    """Return the modules by their address inside the versioned folder; the worker is none of them."""
    paths = sorted(static.rglob("*.js"))
    return {
        path.relative_to(static).as_posix(): path.read_bytes()
        for path in paths
        if path.name != WORKER and not path.name.startswith(".")
    }


def read_icons(static: Path) -> dict[str, bytes]:
    """Return icons and pictures by address; they stay at one address, since a home screen remembers it."""
    paths = sorted((static / "icons").glob("[!.]*.*"))
    return {path.relative_to(static).as_posix(): path.read_bytes() for path in paths}


def read_styles(static: Path) -> dict[str, str]:
    """Return the style files by their address in the folder of static files."""
    paths = sorted((static / "styles").glob("*.css"))
    return {path.relative_to(static).as_posix(): path.read_text() for path in paths}


def join_styles(static: Path, *, later: bool = False) -> bytes:
    """Join the style files of the first paint, or those of later, in the order of the cascade.

    A file that has no place in the order is an error. The layers keep that order over both.
    """
    paths = sorted((static / "styles").glob("*.css"), key=_place_in_cascade)
    joined = "\n".join(path.read_text().strip() + "\n" for path in paths if _is_later(path) == later)
    whole = joined if later else joined + STYLES_END
    return _INDENT.sub("", _COMMENT.sub("", whole)).encode()


def _place_in_cascade(path: Path) -> tuple[int, str]:
    # `bench-rows` follows `bench`: a concept may take more than one file.
    concept = path.stem.partition("-")[0]
    if concept not in STYLE_ORDER:
        raise BakeError(f"static/styles/{path.name} has no place in STYLE_ORDER of {Path(__file__).name}")
    return STYLE_ORDER.index(concept), path.stem


def _is_later(path: Path) -> bool:
    return not {path.stem, path.stem.partition("-")[0]}.isdisjoint(AFTER_THE_FIRST_PAINT)


def imports_of(source: str) -> tuple[list[str], list[str]]:
    """Return the addresses a module imports as it loads, and those it imports later on.

    >>> imports_of('import { edit } from "./keeping/store.js"; await import("./workings.js");')
    (['./keeping/store.js'], ['./workings.js'])
    """
    bare = _COMMENT.sub("", source)
    return _STATIC_IMPORT.findall(bare), _LATER_IMPORT.findall(bare)


def first_screen(modules: Mapping[str, bytes], entry: str = ENTRY) -> list[str]:
    """Return the modules that load before a person can type: the entry, then all that it imports."""
    found: list[str] = []
    waiting = [entry]
    while waiting:
        module = waiting.pop(0)
        if module not in found:
            found.append(module)
            waiting += static_imports(module, modules)
    return found


def static_imports(module: str, modules: Mapping[str, bytes]) -> list[str]:
    """Return the modules that a module imports as it loads."""
    return _resolved(module, modules, imports_of(_text(module, modules))[0])


def lean(source: str) -> str:
    """Return a module without comment lines and indents; its lines keep their places, as a trace needs it.

    >>> lean("/** Add one. */\\nlet one = 1; // kept\\n  // gone\\n  one += 1;\\n")
    '\\nlet one = 1; // kept\\n\\none += 1;\\n'
    """
    if _LONG_TEMPLATE.search(source):
        return source
    bare = _COMMENT_LINES.sub(lambda found: "\n" * found[0].count("\n"), source)
    return _INDENT.sub("", bare)


def lean_markup(page: str) -> str:
    """Return a page without the indents and empty lines that its templates leave."""
    return re.sub(r"\n\s+", "\n", page)


def check_imports(modules: Mapping[str, bytes]) -> None:
    """Refuse modules of which one imports another that is not there."""
    for module in modules:
        now, later = imports_of(_text(module, modules))
        _resolved(module, modules, [*now, *later])


def _text(module: str, modules: Mapping[str, bytes]) -> str:
    if module not in modules:
        raise BakeError(f"static/{module} is missing")
    return modules[module].decode()


def _resolved(module: str, modules: Mapping[str, bytes], addresses: Iterable[str]) -> list[str]:
    return [_resolve(module, modules, address) for address in addresses]


def _resolve(module: str, modules: Mapping[str, bytes], address: str) -> str:
    if not address.startswith("."):
        raise BakeError(f"static/{module} imports {address!r}: a module is imported by a relative address")
    parts: list[str] = list(PurePosixPath(module).parent.parts)
    for part in PurePosixPath(address).parts:
        if part == "..":
            if not parts:
                raise BakeError(f"static/{module} imports {address!r}, outside of static/")
            parts.pop()
        else:
            parts.append(part)
    found = "/".join(parts)
    if found not in modules:
        raise BakeError(f"static/{module} imports {address!r}, but there is no {found}")
    return found
