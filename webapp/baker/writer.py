"""Writing a site: one versioned folder of files that never change, and the few that point to it.

The version is a hash of the contents, never of the clock, so the same sources bake the same bytes.
"""

import hashlib
import json
import os
import re
from collections.abc import Callable, Mapping
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from webapp.baker import assets
from webapp.baker.compress import known_twins, twins_of
from webapp.errors import BakeError
from webapp.security import content_policy

INDEX = "index.html"
PACK = "later.txt"
VERSION_LENGTH = 12
UNKNOWN = "0" * VERSION_LENGTH
_OURS = re.compile(rf"v-[0-9a-f]{{{VERSION_LENGTH}}}|icons")


@dataclass(frozen=True)
class Page:
    """What the index needs to know of the site that it opens; all addresses are relative."""

    folder: str
    styles: str
    app: str
    modules: tuple[str, ...]
    policy: str


@dataclass(frozen=True)
class Sources:
    """What a site is baked from: static files, printed modules, pages, and the index's renderer."""

    static: Path
    printed: Mapping[str, str]
    pages: Mapping[str, str]
    index: Callable[[Page], str]


@dataclass(frozen=True)
class Site:
    """A baked site: its folder, version, address of styles, files, and those just written."""

    folder: Path
    version: str
    styles: str
    files: tuple[str, ...]
    written: tuple[str, ...]


def write_site(folder: Path, sources: Sources) -> Site:
    """Write a site into a folder: what changed, the index and the worker last, then drop leftovers."""
    modules = assets.read_modules(sources.static)
    doubles = sorted(set(modules) & set(sources.printed))
    if doubles:
        raise BakeError(f"static/{doubles[0]} stands in the way of the module that a printer writes")
    modules = {name: assets.lean(text.decode()).encode() for name, text in modules.items()}
    modules |= {name: text.encode() for name, text in sources.printed.items()}
    assets.check_imports(modules)
    first = assets.first_screen(modules)
    pages = {name: text.encode() for name, text in sources.pages.items()}
    versioned = {**modules, **pages, assets.STYLES: assets.join_styles(sources.static)}
    fixed = {
        assets.MANIFEST: (sources.static / assets.MANIFEST).read_bytes(),
        **assets.read_icons(sources.static),
    }
    worker = (sources.static / assets.WORKER).read_text()

    draft = sources.index(_page(UNKNOWN, first))
    version = _version({**versioned, **fixed, INDEX: draft.encode(), assets.WORKER: worker.encode()})
    page = _page(version, first)
    later = {f"{page.folder}/{name}": versioned[name] for name in sorted({*modules, *pages} - set(first))}
    files = {f"{page.folder}/{name}": content for name, content in versioned.items()} | fixed
    pack = f"{page.folder}/{PACK}"
    last = {
        INDEX: draft.replace(_page(UNKNOWN, first).folder, page.folder).encode(),
        assets.WORKER: _worker(version, files, pack, worker).encode(),
    }
    files[pack] = _pack(
        {**later, **{name: fixed[name] for name in sorted(fixed) if not name.endswith(".png")}}
    )
    wanted = _with_twins(folder, {**dict(sorted(files.items())), **last})
    written = tuple(name for name, content in wanted.items() if _write_if_changed(folder / name, content))
    _drop_leftovers(folder, set(wanted))
    return Site(folder, version, page.styles, tuple(wanted), written)


def _page(version: str, first: list[str]) -> Page:
    folder = f"v-{version}"
    modules = tuple(f"{folder}/{name}" for name in first)
    return Page(
        folder, f"{folder}/{assets.STYLES}", f"{folder}/{assets.ENTRY}", modules, content_policy(meta=True)
    )


def _version(contents: Mapping[str, bytes]) -> str:
    total = hashlib.sha256()
    for name in sorted(contents):
        content = contents[name]
        total.update(f"{name}\n{len(content)}\n".encode() + content)
    return total.hexdigest()[:VERSION_LENGTH]


def _pack(files: Mapping[str, bytes]) -> bytes:
    # Without quotes to escape it packs smaller than JSON would.
    return b"\0".join(name.encode() + b"\n" + content for name, content in files.items())


def _worker(version: str, files: Mapping[str, bytes], pack: str, source: str) -> str:
    # A home screen fetches its pictures as it is set up; the browser asks for the icon at every start.
    kept = [name for name in sorted(files) if not name.endswith(".png") or name == assets.ICON]
    constants = {"VERSION": version, "FILES": kept, "PACK": pack}
    lines = [f"const {name} = {json.dumps(value, indent=0)};\n" for name, value in constants.items()]
    return "".join([*lines, "\n", source])


def _with_twins(folder: Path, files: Mapping[str, bytes]) -> dict[str, bytes]:
    # The order stays: what points to the version is written after the version is whole.
    known = known_twins(folder)
    with ThreadPoolExecutor() as pool:
        twins = list(pool.map(lambda name: twins_of(name, files[name], known), files))
    wanted: dict[str, bytes] = {}
    for (name, content), made in zip(files.items(), twins, strict=True):
        wanted |= {f"{name}{suffix}": twin for suffix, twin in made.items()}
        wanted[name] = content
    return wanted


def _write_if_changed(path: Path, content: bytes) -> bool:
    if path.is_file() and path.read_bytes() == content:
        return False
    path.parent.mkdir(parents=True, exist_ok=True)
    draft = path.with_name(f".{path.name}.draft")
    draft.write_bytes(content)
    os.replace(draft, path)
    return True


def _drop_leftovers(folder: Path, wanted: set[str]) -> None:
    # A host's own files may lie in the folder too, so only what a bake has put there goes.
    ours = [path for path in folder.iterdir() if path.is_dir() and _OURS.fullmatch(path.name)]
    for path in sorted((path for each in ours for path in (each, *each.rglob("*"))), reverse=True):
        if path.is_dir():
            if not any(path.iterdir()):
                path.rmdir()
        elif path.relative_to(folder).as_posix() not in wanted:
            path.unlink()
