"""Imports point one way, in both languages; a new module has to find its place in the order first."""

import ast
import posixpath
from pathlib import Path

import pytest

from webapp.baker.assets import imports_of, read_modules

ROOT = Path(__file__).parent.parent

# From the lowest to the highest: a module imports from what stands before it, never from what stands after.
PYTHON = (
    "errors",
    "units",
    "formulas",
    "kinds",
    "conversions",
    "showing",
    "inputs",
    "quantities",
    "bench",
    "sheet",
    "job",
    "printer",
    "templates",
    "forms",
    "names",
    "security",
    "terminal",
    "baker",
    "server",
    "app",
    "cli",
    "__main__",
)
JAVASCRIPT = (
    "lib",
    "printed.js",
    "sentences.js",
    "job-shape.js",
    "workings.js",
    "sheet",
    "keeping",
    "clocks",
    "pictures",
    "rooms",
    "app.js",
)
ROOMS = ("bench", "steps", "working", "menu")
# Files of shared rules, each of which may ask those before it.
RULES = ("rules", "heat_rules", "march_rules", "warmth_rules", "calibration_rules", "planning_rules")
FORMULAS_MAY_ASK = {
    "webapp.formulas.book",
    *(f"webapp.formulas.{each}" for each in RULES),
    "webapp.formulas.constant",
    "webapp.formulas.constants",
    "webapp.units",
}
MODULES = read_modules(ROOT / "static")
PYTHON_FILES = sorted((ROOT / "webapp").rglob("*.py"))


def imported(path):
    """The project's modules that a Python file imports, wherever in it."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.ImportFrom) and node.module == "webapp":
            found |= {f"webapp.{each.name}" for each in node.names}
        elif isinstance(node, ast.ImportFrom) and (node.module or "").startswith("webapp."):
            found.add(node.module)
        elif isinstance(node, ast.Import):
            found |= {each.name for each in node.names if each.name.startswith("webapp.")}
    return found


def place(order, name, file):
    assert name in order, f"{file} has no place yet in the order of tests/test_layers.py"
    return order.index(name)


@pytest.mark.parametrize("path", PYTHON_FILES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_python_imports_point_downward(path):
    parts = path.relative_to(ROOT / "webapp").with_suffix("").parts
    if parts == ("__init__",):
        return
    own = place(PYTHON, parts[0], path)
    for name in imported(path):
        other = place(PYTHON, name.split(".")[1], name)
        is_inside = other == own and len(parts) > 1
        assert other < own or is_inside, f"{'.'.join(parts)} imports {name}"


@pytest.mark.parametrize("path", PYTHON_FILES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_a_package_holds_its_docstring_only(path):
    if path.name == "__init__.py":
        [statement] = ast.parse(path.read_text()).body
        assert isinstance(statement.value.value, str)


def test_formula_files_never_import_each_other():
    for path in (ROOT / "webapp" / "formulas").glob("*.py"):
        if path.stem in RULES:
            before = RULES[: RULES.index(path.stem)]
            asked = {each for each in imported(path) if each.startswith("webapp.formulas.")}
            assert asked <= {f"webapp.formulas.{each}" for each in before}, path.name
        elif path.stem not in ("book", "constants", "__init__"):
            assert imported(path) <= FORMULAS_MAY_ASK, path.name


def test_python_inside_a_package_has_no_circle():
    graph = {}
    for path in PYTHON_FILES:
        name = ".".join(("webapp", *path.relative_to(ROOT / "webapp").with_suffix("").parts))
        graph[name.removesuffix(".__init__")] = imported(path)
    assert_no_circle(graph)


@pytest.mark.parametrize("module", sorted(MODULES))
def test_javascript_imports_point_downward(module):
    own = layer(module)
    for other in reached(module):
        is_inside = "/" in module and module.split("/")[0] == other.split("/")[0]
        assert layer(other) < own or is_inside, f"static/{module} imports {other}"


def layer(module):
    folder = module.split("/")[0]
    return place(JAVASCRIPT, "rooms" if folder in ROOMS else folder, module)


def test_javascript_inside_a_folder_has_no_circle():
    assert_no_circle({module: set(reached(module)) for module in MODULES})


@pytest.mark.parametrize("module", [name for name in sorted(MODULES) if name.startswith("pictures/")])
def test_a_picture_is_drawn_from_its_arguments_alone(module):
    assert all(other.startswith(("lib/", "pictures/")) for other in reached(module))


def reached(module):
    now, later = imports_of(MODULES[module].decode())
    return [
        posixpath.normpath(posixpath.join(posixpath.dirname(module), address)) for address in (*now, *later)
    ]


def assert_no_circle(graph):
    done = set()

    def visit(name, path):
        assert name not in path, " imports ".join([*path, name])
        if name not in done:
            for other in sorted(graph.get(name, ())):
                visit(other, [*path, name])
            done.add(name)

    for name in sorted(graph):
        visit(name, [])
