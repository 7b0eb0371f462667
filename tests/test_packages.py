"""What the code imports is declared, what is declared is used, and DEVELOPERS.md says what for."""

import ast
import re
import sys
import tomllib
from importlib.metadata import packages_distributions
from pathlib import Path

from webapp.baker.stamp import LIBRARIES

ROOT = Path(__file__).parent.parent
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text())
PROJECT = SETTINGS["project"]
OUR_OWN = {"webapp", "tests", "e2e"}
# What Debian's own Python has, for the window of its WebKit.
DEBIANS = {"gi"}
# Run by their names, not imported.
TOOLS = {"mypy", "oxlint", "pytest-xdist", "ruff"}


def normal(name):
    return re.sub(r"[-_.]+", "-", name).lower()


def declared(requirements):
    return {normal(re.match(r"[\w.-]+", each)[0]) for each in requirements}


NEEDED = declared(PROJECT["dependencies"])
FOR_TESTS = declared(PROJECT["optional-dependencies"]["test"])


def imported(*folders):
    """The packages that the Python files of some folders import, by the names they are installed under."""
    modules = set()
    for path in (path for folder in folders for path in (ROOT / folder).rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Import):
                modules |= {each.name.split(".")[0] for each in node.names}
            elif isinstance(node, ast.ImportFrom) and node.module:
                modules.add(node.module.split(".")[0])
    found = packages_distributions()
    outside = modules - set(sys.stdlib_module_names) - OUR_OWN - DEBIANS
    return {normal(name) for module in outside for name in found[module]}


def test_a_wheel_carries_every_package():
    folders = [path.parent.relative_to(ROOT) for path in (ROOT / "webapp").rglob("__init__.py")]
    packages = {".".join(folder.parts) for folder in folders}
    assert set(SETTINGS["tool"]["setuptools"]["packages"]) == packages | {"webapp.static"}


def test_the_program_needs_what_it_imports_and_what_its_stamp_names():
    assert imported("webapp") | {normal(each) for each in LIBRARIES} == NEEDED


def test_the_tests_need_what_they_import_and_the_tools_they_run():
    assert (imported("tests", "e2e") | TOOLS) - NEEDED == FOR_TESTS


def test_a_tool_is_run_by_the_check_or_the_settings():
    settings = (ROOT / ".ci/run").read_text() + (ROOT / "DEVELOPERS.md").read_text()
    assert [tool for tool in TOOLS if tool not in settings] == []


def test_the_guide_says_of_each_package_what_it_is_for():
    rows = re.findall(r"^\| (.+?) \| .+ \|$", (ROOT / "DEVELOPERS.md").read_text(), re.MULTILINE)
    packages = [row for row in rows if not re.match(r"library|---", row)]
    for_tests = {normal(name) for row in packages if "(test)" in row for name in split(row)}
    needed = {normal(name) for row in packages if "(test)" not in row for name in split(row)}
    assert needed == NEEDED
    assert for_tests == FOR_TESTS


def split(row):
    return row.replace("(test)", "").replace(" ", "").split(",")
