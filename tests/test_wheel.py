"""A built wheel serves the same site as a checkout."""

import json
import shutil
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from webapp.baker.site import bake

ROOT = Path(__file__).parent.parent
BAKE = """
import json, sys
from pathlib import Path
sys.path.insert(0, sys.argv[1])
from webapp.baker.assets import static_folder
from webapp.baker.site import bake
site = bake(Path(sys.argv[2]))
print(json.dumps([site.version, str(static_folder())]))
"""


@pytest.fixture(scope="session")
def unpacked(tmp_path_factory):
    """The wheel of this checkout, built from a copy and unpacked."""
    folder = tmp_path_factory.mktemp("wheel")
    copy = folder / "checkout"
    for name in ("webapp", "static"):
        shutil.copytree(ROOT / name, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", copy)
    (copy / "README.md").touch()
    command = [sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "-w", str(folder), str(copy)]
    subprocess.run(command, check=True)
    with zipfile.ZipFile(next(folder.glob("*.whl"))) as wheel:
        wheel.extractall(folder / "unpacked")
    return folder / "unpacked"


def test_a_wheel_bakes_the_same_bytes_as_the_checkout(unpacked, tmp_path):
    command = [sys.executable, "-I", "-c", BAKE, str(unpacked), str(tmp_path / "of-wheel")]
    answer = subprocess.run(command, check=True, capture_output=True, text=True, cwd=tmp_path)
    version, static = json.loads(answer.stdout)
    assert Path(static) == unpacked / "webapp" / "static"
    assert bake(tmp_path / "of-checkout").version == version
    files = [path for path in (tmp_path / "of-checkout").rglob("*") if path.is_file()]
    assert files
    for path in files:
        twin = tmp_path / "of-wheel" / path.relative_to(tmp_path / "of-checkout")
        assert twin.read_bytes() == path.read_bytes(), path.name


def test_a_wheel_carries_the_pages_of_the_server(unpacked):
    names = {path.name for path in (unpacked / "webapp" / "templates").iterdir()}
    assert {"index.html", "plan.html", "error.html"} <= names
