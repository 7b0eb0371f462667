"""The stamp of a bake: what a folder was baked from and what lies there, so that nothing is baked twice."""

import hashlib
import json
import sys
from collections.abc import Iterator
from importlib.metadata import version
from pathlib import Path

from webapp.baker.writer import Site

STAMP = ".baked.json"
LIBRARIES = ("brotli", "jinja2", "markupsafe", "pint", "wtforms")


def fingerprint_of(package: Path, static: Path) -> str:
    """Return a hash of all that decides a bake: package, static files, libraries, Python."""
    total = hashlib.sha256(sys.version.encode())
    for name in LIBRARIES:
        total.update(f"{name} {version(name)}\n".encode())
    # An installed package holds the static files too; they count once, wherever they lie.
    for folder, apart in ((package, static), (static, None)):
        for path in _files(folder):
            if apart not in path.parents:
                total.update(f"{path.relative_to(folder).as_posix()} {_hash(path)}\n".encode())
    return total.hexdigest()


def standing_site(folder: Path, sources: str) -> Site | None:
    """Return the site in a folder if it was baked from these sources and every file of it is still whole."""
    try:
        stamp = json.loads((folder / STAMP).read_text())
        is_whole = stamp["sources"] == sources and all(
            _hash(folder / name) == was for name, was in stamp["files"].items()
        )
        is_alone = [path.name for path in folder.glob("v-*")] == [f"v-{stamp['version']}"]
        site = Site(folder, stamp["version"], stamp["styles"], tuple(stamp["files"]), ())
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None
    return site if is_whole and is_alone else None


def leave_stamp(site: Site, sources: str) -> None:
    """Note in a site's folder what it was baked from and what lies there."""
    files = {name: _hash(site.folder / name) for name in site.files}
    stamp = {"sources": sources, "version": site.version, "styles": site.styles, "files": files}
    (site.folder / STAMP).write_text(json.dumps(stamp, indent=1))


def _files(folder: Path) -> Iterator[Path]:
    return (path for path in sorted(folder.rglob("*")) if path.is_file() and path.suffix != ".pyc")


def _hash(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()
