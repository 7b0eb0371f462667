"""What nobody uses goes: names, exports, templates, macros, drawn marks, styles, tokens and icons."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
STATIC = ROOT / "static"


def texts(folder, pattern):
    return {path.relative_to(ROOT).as_posix(): path.read_text() for path in sorted(folder.rglob(pattern))}


PYTHON = texts(ROOT / "webapp", "*.py")
SCRIPTS = texts(STATIC, "*.js")
STYLES = {
    name: re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    for name, text in texts(STATIC / "styles", "*.css").items()
}
TEMPLATES = texts(ROOT / "webapp/templates", "*.html")
TESTS = "\n".join([*texts(ROOT / "tests", "*.py").values(), *texts(ROOT / "e2e", "*.py").values()])
PAGE = "\n".join([*SCRIPTS.values(), *TEMPLATES.values()])
MADE = "\n".join([PAGE, *PYTHON.values()])

# A formula is called by its name in the sheet, a page of the server by its address.
CALLED_BY_NAME = {"formula", "valid_range", "check", "route"}
# What the unit proof asks of a unit stands with the unit.
FOR_THE_PROOF = {"registry", "foreign"}
# What whitenoise asks a file of for its answer.
FOR_LIBRARIES = {"get_response"}


def named(word, text):
    return re.search(rf"(?<![\w-]){re.escape(word)}(?![\w-])", text) is not None


def definitions(tree):
    """What a module defines at its top, and the methods and fields of its own plain classes."""
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not called_by_others(node):
            yield node.name
        if isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            yield from (each.id for each in targets if isinstance(each, ast.Name))
        if isinstance(node, ast.ClassDef) and not node.bases:
            for each in node.body:
                if isinstance(each, ast.FunctionDef) and not each.name.startswith("__"):
                    yield each.name
                if isinstance(each, ast.AnnAssign) and isinstance(each.target, ast.Name):
                    yield each.target.id


def called_by_others(node):
    calls = [each.func if isinstance(each, ast.Call) else each for each in node.decorator_list]
    return bool({getattr(each, "id", getattr(each, "attr", "")) for each in calls} & CALLED_BY_NAME)


def uses(tree):
    """The names that a module reads: variables, attributes, and what it imports from elsewhere."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
            yield node.id
        if isinstance(node, ast.Attribute):
            yield node.attr
        if isinstance(node, ast.ImportFrom):
            yield from (each.name for each in node.names)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value.isidentifier():
            yield node.value


USED = {name for text in PYTHON.values() for name in uses(ast.parse(text))}


@pytest.mark.parametrize("path", PYTHON)
def test_every_name_in_python_is_used_by_the_program_itself(path):
    defined = set(definitions(ast.parse(PYTHON[path])))
    on_the_page = {name for name in defined if named(name, PAGE)}
    assert defined - USED - on_the_page - FOR_THE_PROOF - FOR_LIBRARIES == set()


@pytest.mark.parametrize("path", SCRIPTS)
def test_every_export_is_used_by_another_module(path):
    text = SCRIPTS[path]
    others = "\n".join(other for name, other in SCRIPTS.items() if name != path)
    exported = re.findall(r"^export (?:async )?(?:function\*?|const|class) (\w+)", text, re.MULTILINE)
    inside_and_tested = {
        name for name in exported if len(re.findall(rf"\b{name}\b", text)) > 1 and named(name, TESTS)
    }
    assert [name for name in exported if not named(name, others) and name not in inside_and_tested] == []


def test_every_template_is_cloned():
    places = re.compile(r'<template id="([^"{]+)')
    ids = [name for text in TEMPLATES.values() for name in places.findall(text)]
    asked = re.sub(r'\bid="[^"]*"|aria-\w+="[^"]*"', "", PAGE)
    assert ids
    assert [name for name in ids if not re.search(rf"[\"'`]{re.escape(name)}(?:[\"'`]|\{{\{{)", asked)] == []


def test_every_macro_is_called():
    macros = {name for text in TEMPLATES.values() for name in re.findall(r"{%-?\s*macro (\w+)", text)}
    calls = "\n".join(re.sub(r"macro \w+\(", "", text) for text in TEMPLATES.values())
    assert [name for name in sorted(macros) if not re.search(rf"\b{name}\(", calls)] == []


def test_every_named_part_of_a_page_is_asked_for():
    parts = {name for text in TEMPLATES.values() for name in re.findall(r'data-part="([^"{]+)"', text)}
    quoted = "\n".join(SCRIPTS.values())
    assert [name for name in sorted(parts) if not re.search(rf"[\"`]{name}[\"`]", quoted)] == []


def test_every_drawn_mark_is_shown():
    drawn = re.findall(r'<symbol id="mark-([\w-]+)"', TEMPLATES["webapp/templates/marks.html"])
    shown = PAGE.replace('symbol id="mark-', "")
    assert [name for name in drawn if not re.search(rf"#mark-{name}\b|[\"']{name}[\"']", shown)] == []


def test_every_icon_is_named_by_the_manifest_a_page_or_the_readme():
    texts_with_icons = [(STATIC / "manifest.webmanifest").read_text(), (ROOT / "README.md").read_text(), PAGE]
    icons = [path.name for path in sorted((STATIC / "icons").iterdir())]
    assert [name for name in icons if not any(name in text for text in texts_with_icons)] == []


def is_built(name):
    """Say whether a class is put together: `block--` before a word that stands quoted somewhere."""
    block, _, end = name.partition("--")
    return bool(
        end
        and (f"{block}--${{" in PAGE or f"{block}--' ~" in PAGE or f'{block}--" +' in PAGE)
        and re.search(rf"[\"'`]{re.escape(end)}[\"'`]", MADE)
    )


@pytest.mark.parametrize("path", STYLES)
def test_every_class_in_a_style_is_worn(path):
    classes = set(re.findall(r"\.([a-z][\w-]*)", STYLES[path]))
    assert [name for name in sorted(classes) if not named(name, MADE) and not is_built(name)] == []


@pytest.mark.parametrize("path", TEMPLATES)
def test_every_class_in_a_template_is_styled_or_looked_for(path):
    plain = re.sub(r"{[{%].*?[%}]}", " ", TEMPLATES[path], flags=re.DOTALL)
    worn = {name for text in re.findall(r'class="([^"]*)"', plain) for name in text.split()}
    seekers = "\n".join([*STYLES.values(), *SCRIPTS.values(), TESTS])
    unknown = [name for name in sorted(worn) if not re.search(rf"\.{re.escape(name)}(?![\w-])", seekers)]
    assert [name for name in unknown if not name.endswith("--")] == []


def test_every_token_of_the_styles_is_read_and_every_one_read_is_given():
    every = "\n".join(STYLES.values())
    given = set(re.findall(r"(?<![\w-])(--[a-z][\w-]*)\s*:", every))
    read = set(re.findall(r"var\(\s*(--[\w-]+)", every))
    assert given - read == set()
    with_fallback = set(re.findall(r"var\(\s*(--[\w-]+)\s*,", every))
    set_by_scripts = {name for name in read if named(name, "\n".join(SCRIPTS.values()))}
    assert read - given - with_fallback - set_by_scripts == set()
