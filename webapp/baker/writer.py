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
from webapp.baker.groups import Group, check_groups, group_of
from webapp.errors import BakeError
from webapp.security import ONE_YEAR, content_policy

INDEX = "index.html"
PACK = "later.txt"
VERSION_LENGTH = 12
# As in static/service-worker.js: enough to tell a torn file, too little to weigh.
SUM_LENGTH = 12
# Of a versioned file the address changes with its content; the few others are asked for anew each time.
KEPT_FOR_GOOD = f"public, max-age={ONE_YEAR}, immutable"
ASKED_ANEW = "no-cache"
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

    @property
    def healer(self) -> str:
        """The address of the module that the page runs by itself."""
        return f"{self.folder}/{assets.HEALER}"


@dataclass(frozen=True)
class Sources:
    """What a site is baked from: static files, printed modules, pages, the index's renderer, groups."""

    static: Path
    printed: Mapping[str, str]
    pages: Mapping[str, str]
    index: Callable[[Page], str]
    groups: tuple[Group, ...] = ()


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
    check_groups(modules, sources.groups)
    first = assets.first_screen(modules)
    pages = {name: text.encode() for name, text in sources.pages.items()}
    styles = {
        assets.STYLES: assets.join_styles(sources.static),
        assets.LATER_STYLES: assets.join_styles(sources.static, later=True),
    }
    versioned = {**modules, **pages, **styles}
    fixed = {
        assets.MANIFEST: (sources.static / assets.MANIFEST).read_bytes(),
        **assets.read_icons(sources.static),
    }
    worker = (sources.static / assets.WORKER).read_text()

    draft = sources.index(_page(UNKNOWN, first))
    version = _version({**versioned, **fixed, INDEX: draft.encode(), assets.WORKER: worker.encode()})
    page = _page(version, first)
    files = {f"{page.folder}/{name}": content for name, content in versioned.items()} | fixed
    packs = _packs(page.folder, files, {*first, assets.STYLES}, sources.groups)
    index = draft.replace(_page(UNKNOWN, first).folder, page.folder).encode()
    packed = {f"{page.folder}/{name}": _pack(held, files) for name, held in packs.items()}
    sums = {name: _sum(content) for name, content in sorted({**files, **packed, INDEX: index}.items())}
    last = {
        INDEX: index,
        assets.WORKER: _worker(version, files, packs, sources.groups, sums, worker).encode(),
    }
    files |= packed
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


def _packs(
    folder: str, files: Mapping[str, bytes], first: set[str], groups: tuple[Group, ...]
) -> dict[str, list[str]]:
    """Return which files each pack holds: of the core what no first screen needs, of a group all."""
    packs: dict[str, list[str]] = {PACK: [], **{group.pack: [] for group in groups}}
    for name in sorted(files):
        file = name.removeprefix(f"{folder}/")
        group = group_of(file, groups)
        if group or (file not in first and not name.endswith(".png")):
            packs[group.pack if group else PACK].append(name)
    return packs


def _pack(held: list[str], files: Mapping[str, bytes]) -> bytes:
    # Without quotes to escape it packs smaller than JSON would; the mark at the end tells a torn one.
    return b"".join(name.encode() + b"\n" + files[name] + b"\0" for name in held)


def _sum(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:SUM_LENGTH]


def _worker(
    version: str,
    files: Mapping[str, bytes],
    packs: Mapping[str, list[str]],
    groups: tuple[Group, ...],
    sums: Mapping[str, str],
    source: str,
) -> str:
    apart = {name for group in groups for name in packs[group.pack]}
    # A home screen fetches its pictures as it is set up, and never again.
    kept = [name for name in sorted({*files} - apart) if not name.endswith(".png")]
    folder = f"v-{version}"
    constants = {
        "VERSION": version,
        "FILES": kept,
        "PACK": f"{folder}/{PACK}",
        "GROUPS": [
            {
                "name": group.name,
                "says": group.says,
                "pack": f"{folder}/{group.pack}",
                "files": packs[group.pack],
            }
            for group in groups
        ],
        "SUMS": {name: sum for name, sum in sums.items() if not name.endswith(".png")},
    }
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
