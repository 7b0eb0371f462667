"""The guide stays true: what DEVELOPERS.md and README.md name is there, and each folder stands in the map."""

import re
from importlib.util import find_spec
from pathlib import Path

import pytest

from webapp.baker.assets import STYLES, WORKER
from webapp.baker.stamp import STAMP
from webapp.baker.writer import INDEX, PACK
from webapp.cli import COMMANDS
from webapp.names.pages import MARKS

ROOT = Path(__file__).parent.parent
GUIDE = (ROOT / "DEVELOPERS.md").read_text()
README = (ROOT / "README.md").read_text()
BOTH = {"DEVELOPERS.md": GUIDE, "README.md": README}
MAPPED = ("webapp", "static", "tests", "e2e")
BAKED = {
    "printed.js",
    "sentences.js",
    "job-shape.js",
    "workings.js",
    "later.html",
    "v-HASH",
    INDEX,
    PACK,
    STAMP,
    STYLES,
    WORKER,
}
# What stands in capitals for a name of one's own, or is a word of the commands.
PLACEHOLDERS = {"NAME", "LEVEL", "FOLDER", "FILE", "HASH", "JOB", "MISSED"}
MOST_LINES = 210
BRITISH = (
    r"\w*(?:colour|levelling|grey|licence|labour|mould|favour|centre|metre|"
    r"analyse|sensitise|organise|recognise)"
)

QUOTED = re.findall(r"`([^`\n]+)`", GUIDE)
SOURCES = "\n".join(
    path.read_text()
    for folder, pattern in (("webapp", "*.py"), ("static", "*.js"), ("webapp/templates", "*.html"))
    for path in sorted((ROOT / folder).rglob(pattern))
)


def folders_in_map():
    """The folders that the map names, from the top, by their indents."""
    block = GUIDE.partition("## The map")[2].partition("Imports point")[0]
    found, parent = [], ""
    for indent, name in re.findall(r"^( {4,6})([\w.-]+)/ +\S", block, re.MULTILINE):
        parent = name if len(indent) == 4 else parent
        found.append(name if len(indent) == 4 else f"{parent}/{name}")
    return found


def folders_there_are():
    below = [path for top in MAPPED for path in sorted((ROOT / top).iterdir()) if path.is_dir()]
    kept = [path for path in below if any(each.is_file() for each in path.iterdir())]
    return {*MAPPED, *(path.relative_to(ROOT).as_posix() for path in kept if path.name != "__pycache__")}


def test_each_folder_stands_in_the_map_once_and_no_other():
    assert sorted(folders_in_map()) == sorted(folders_there_are())


@pytest.mark.parametrize("document", BOTH)
def test_each_path_that_is_named_is_there(document):
    text = BOTH[document]
    linked = [each for pair in re.findall(r"\]\(([^)\s]+)\)|src=\"([^\"]+)\"", text) for each in pair]
    quoted = re.findall(r"`([^`\s]+)`", text) + linked
    paths = {
        each for each in quoted if re.fullmatch(r"[\w.-]+/[\w./-]*|[\w.-]+\.(py|js|css|html|md|toml)", each)
    }
    assert paths
    missing = [each for each in sorted(paths - BAKED) if "NAME" not in each and not is_there(each)]
    assert missing == []


def is_there(path):
    return (ROOT / path).exists() or any(
        (ROOT / folder / path).exists() for folder in ("static", "static/styles")
    )


@pytest.mark.parametrize("document", BOTH)
def test_each_command_that_is_named_runs_a_module_that_is_there(document):
    commands = re.findall(r"python -m ([\w.]+)(?: ([a-z]+)\b)?", BOTH[document])
    assert commands
    for module, command in commands:
        assert find_spec(module), f"python -m {module}"
        if module == "webapp" and command:
            assert command in COMMANDS


def test_the_readme_lists_every_command_of_the_app():
    rows = re.findall(r"^\| `(\w+)[^`]*` \|", README, re.MULTILINE)
    assert rows == list(COMMANDS)


def test_each_file_of_tests_that_a_command_names_is_there():
    named = re.findall(r"pytest ((?:[\w./-]+ ?)+)`", GUIDE)
    assert [path for each in named for path in each.split() if not (ROOT / path).exists()] == []


def tables():
    """Each table that the guide names, with the file that it says the table is in."""
    names = r"`([A-Z][A-Z_]{2,})`"
    found = {table: [] for table in re.findall(names, GUIDE)}
    for match in re.finditer(rf"{names}(?:,? (?:and|or) {names})? (?:in|of)\s+`([\w/.-]+)`", GUIDE):
        for table in filter(None, match.groups()[:2]):
            found.setdefault(table, []).append(match[3])
    for match in re.finditer(rf"{names} there\b", GUIDE):
        file = re.findall(r"`([\w/.-]+\.(?:py|js))`", GUIDE[: match.start()])[-1]
        found.setdefault(match[1], []).append(file)
    return {table: files for table, files in found.items() if table not in PLACEHOLDERS}


@pytest.mark.parametrize("table", tables())
def test_each_table_that_is_named_is_in_the_file_it_is_said_to_be_in(table):
    files = tables()[table]
    assert files, f"the guide does not say where {table} is"
    for file in files:
        text = (ROOT / file).read_text()
        assert re.search(rf"^(?:export )?(?:const )?{table}\b(?::[^=]+)? = ", text, re.MULTILINE), file


def test_each_mark_that_is_named_is_in_the_table_of_marks():
    named = {each for each in re.findall(r"`(data-[a-z-]+)`", GUIDE) if each != "data-"}
    assert named
    assert named <= set(MARKS)


def test_each_call_that_is_named_is_defined():
    calls = {name for each in QUOTED for name in re.findall(r"([A-Za-z_]\w*)\(", each)}
    undefined = [
        name
        for name in sorted(calls - {"import"})
        if not re.search(
            rf"\b(?:def|class|function|macro) {name}\b|\b{name} = |\.globals\[?.?{name}", SOURCES
        )
    ]
    assert undefined == []


def test_each_macro_that_is_named_is_there():
    macros = re.findall(r"macro (\w+)", (ROOT / "webapp/templates/macros.html").read_text())
    assert set(re.findall(r"part\.(\w+)", " ".join(QUOTED))) <= set(macros)


def test_each_recipe_has_five_steps():
    recipes = re.findall(r"^## .+ in five steps\n((?:.+\n)+)", GUIDE, re.MULTILINE)
    assert len(recipes) == 7
    for recipe in recipes:
        assert re.findall(r"^(\d)\. ", recipe, re.MULTILINE) == list("12345")


def test_the_guide_is_read_in_one_sitting():
    assert len(GUIDE.splitlines()) <= MOST_LINES


def test_the_readme_is_in_american_english():
    assert re.findall(BRITISH, re.sub(r"`[^`]*`", "", README), re.IGNORECASE) == []
