"""The phone's files: all reached, none newer than the oldest phone, no way in for markup or scripts."""

import json
import posixpath
import re
import struct
from pathlib import Path

import pytest

from webapp.baker.assets import ENTRY, STYLE_ORDER, imports_of, read_modules
from webapp.security import POLICY

ROOT = Path(__file__).parent.parent
STATIC = ROOT / "static"
WIDEST_LINE = 120
PRINTED = {"printed.js", "sentences.js", "job-shape.js", "workings.js"}
MODULES = {name: content.decode() for name, content in read_modules(STATIC).items()}
SCRIPTS = {**MODULES, "service-worker.js": (STATIC / "service-worker.js").read_text()}
STYLES = {path.name: path.read_text() for path in sorted((STATIC / "styles").glob("*.css"))}
TEMPLATES = {path.name: path.read_text() for path in sorted((ROOT / "webapp/templates").glob("*.html"))}

# Each came after Safari 15.4 or Chrome 100 (compatibility data of the browsers' documentation).
TOO_NEW_SCRIPT = {
    "arrays that copy": r"\.(toSorted|toReversed|toSpliced)\(",
    "grouping": r"\b(Object|Map)\.groupBy\(",
    "set operations": r"\.(union|intersection|symmetricDifference|isSubsetOf|isSupersetOf)\(",
    "iterator helpers": r"\bIterator\.(from|prototype)\b|\.values\(\)\.(map|filter|take)\(",
    "Promise.withResolvers and try": r"\bPromise\.(withResolvers|try)\(",
    "Array.fromAsync": r"\bArray\.fromAsync\(",
    "structuredClone": r"\bstructuredClone\(",
    "abort signals with a time": r"\bAbortSignal\.(any|timeout)\(",
    "URL.canParse": r"\bURL\.(canParse|parse)\(",
    "lookbehind": r"\(\?<[=!]",
    "a class's static block": r"\bstatic\s*\{",
    "popover": r"\b(showPopover|togglePopover|hidePopover|popover)\b",
    "view transitions": r"\bstartViewTransition\b",
    "scheduler": r"\bscheduler\.(postTask|yield)\b",
    "idle callbacks": r"\brequestIdleCallback\b",
    "constructed style sheets": r"\badoptedStyleSheets\b",
    "checkVisibility": r"\bcheckVisibility\(",
    "the navigation interface": r"\bnavigation\.(navigate|addEventListener|currentEntry)\b",
    "compression streams": r"\b(De)?[Cc]ompressionStream\b",
    "durations": r"\bIntl\.DurationFormat\b",
    "import attributes": r'from\s*"[^"]+"\s*(with|assert)\s*\{',
    "inert": r"\binert\b",
}
TOO_NEW_STYLE = {
    "nesting": r"^\s*&|\{[^}]*\{[^}]*&",
    ":has": r":has\(",
    "container queries": r"@container\b|\bcontainer-(type|name)\s*:",
    "colour functions": r"\b(color-mix|oklch|oklab|lab|lch|light-dark)\(",
    "subgrid": r"\bsubgrid\b",
    "scope": r"@scope\b",
    "starting style": r"@starting-style\b",
    "registered properties": r"@property\b",
    "popover": r":popover-open\b",
    "anchors": r"\b(anchor-name|position-anchor|position-area)\b",
    "ranges in media queries": r"@media[^{]*[<>]=?",
    "transforms apart": r"^\s*(translate|rotate|scale)\s*:",
    "rounding": r"\b(round|mod|rem)\(",
    # Before Safari 26.2 the whole line is dropped; its parts, each by its own name, are not.
    "an underline's style in one line with it": r"\btext-decoration\s*:\s*[\w-]+\s+\S",
}
MARKUP_OR_CODE_FROM_TEXT = (
    r"\b(innerHTML|outerHTML|insertAdjacentHTML|setHTMLUnsafe|setHTML|createContextualFragment)\b"
    r"|\bdocument\.write|\beval\(|\bnew Function\b|\bsetTimeout\(\s*[\"'`]|javascript:"
)


def without_comments(text):
    return re.sub(r"/\*.*?\*/|(?<![:\"'])//[^\n]*", "", text, flags=re.DOTALL)


def reached_from(entry):
    found, waiting = set(), [entry]
    while waiting:
        module = waiting.pop()
        if module not in found and module not in PRINTED:
            found.add(module)
            now, later = imports_of(MODULES[module])
            waiting += [
                posixpath.normpath(posixpath.join(posixpath.dirname(module), each)) for each in (*now, *later)
            ]
    return found


def test_every_module_is_reached_from_the_entry():
    assert set(MODULES) - reached_from(ENTRY) == set()


@pytest.mark.parametrize("path", [*STATIC.rglob("*.js"), *STATIC.rglob("*.css")], ids=lambda path: path.name)
def test_lines_end_at_120_columns(path):
    lines = enumerate(path.read_text().splitlines(), 1)
    assert [(number, len(line)) for number, line in lines if len(line) > WIDEST_LINE] == []


def test_every_style_has_its_place_in_the_cascade():
    assert {re.split(r"[-.]", name)[0] for name in STYLES} <= set(STYLE_ORDER)


@pytest.mark.parametrize("what", TOO_NEW_SCRIPT)
def test_no_script_needs_a_newer_phone(what):
    found = [
        name for name, text in SCRIPTS.items() if re.search(TOO_NEW_SCRIPT[what], without_comments(text))
    ]
    assert found == []


@pytest.mark.parametrize("what", TOO_NEW_STYLE)
def test_no_style_needs_a_newer_phone(what):
    pattern = re.compile(TOO_NEW_STYLE[what], re.MULTILINE)
    assert [name for name, text in STYLES.items() if pattern.search(without_comments(text))] == []


@pytest.mark.parametrize("name", sorted(SCRIPTS))
def test_no_script_makes_markup_or_code_from_text(name):
    assert re.findall(MARKUP_OR_CODE_FROM_TEXT, without_comments(SCRIPTS[name])) == []


@pytest.mark.parametrize("name", sorted(SCRIPTS))
def test_no_script_names_an_address_elsewhere(name):
    strange = [each for each in re.findall(r"https?://[^\s\"'`]+", SCRIPTS[name]) if "www.w3.org" not in each]
    assert strange == []


@pytest.mark.parametrize("name", sorted(SCRIPTS))
def test_no_script_talks_to_the_console(name):
    assert "console." not in without_comments(SCRIPTS[name])


def test_trusted_types_policies_are_those_that_the_headers_allow():
    made = {name for text in SCRIPTS.values() for name in re.findall(r'createPolicy\(\s*"([^"]+)"', text)}
    assert made == set(POLICY["trusted-types"].split())


@pytest.mark.parametrize("name", sorted(TEMPLATES))
def test_no_template_holds_a_script_or_a_style(name):
    text = TEMPLATES[name]
    assert not re.search(r"<style|\sstyle=|\son[a-z]+=|<script(?![^>]*\bsrc=)", text)
    assert "|safe" not in text.replace(" ", "")


@pytest.mark.parametrize("name", sorted(STYLES))
def test_no_style_shouts_or_picks_by_id(name):
    text = without_comments(STYLES[name])
    assert "!important" not in text
    selectors = re.findall(r"([^{};]+)\{", text)
    assert [each.strip() for each in selectors if re.search(r"#[a-z]", each)] == []
    assert "url(" not in text


@pytest.mark.parametrize("name", sorted(MODULES))
def test_every_export_says_what_it_is(name):
    lines = MODULES[name].splitlines()
    exported = [
        place for place, line in enumerate(lines) if re.match(r"export (async )?(function|const|class)", line)
    ]
    bare = [lines[place] for place in exported if not lines[place - 1].rstrip().endswith("*/")]
    assert bare == []


@pytest.mark.parametrize("name", sorted(name for name in MODULES if name != ENTRY))
def test_modules_export_by_name(name):
    assert "export default" not in MODULES[name]
    assert re.fullmatch(r"[a-z0-9/-]+\.js", name)


def test_the_manifest_has_what_a_home_screen_asks_for():
    manifest = json.loads((STATIC / "manifest.webmanifest").read_text())
    wanted = {"name", "short_name", "id", "start_url", "scope", "display", "background_color", "theme_color"}
    assert wanted | {"description", "icons"} <= set(manifest)
    assert len(manifest["short_name"]) <= 12
    assert manifest["start_url"] == manifest["scope"] == "./"
    sizes = {(icon["sizes"], icon.get("purpose", "any")) for icon in manifest["icons"]}
    assert {("192x192", "any"), ("512x512", "any"), ("512x512", "maskable")} <= sizes


def test_every_icon_is_there_and_as_large_as_it_says():
    manifest = json.loads((STATIC / "manifest.webmanifest").read_text())
    pictures = [
        *manifest["icons"],
        *manifest.get("screenshots", []),
        {"src": "icons/mark-180.png", "sizes": "180x180"},
    ]
    for picture in pictures:
        content = (STATIC / picture["src"]).read_bytes()
        if picture["src"].endswith(".png"):
            width, height = struct.unpack(">II", content[16:24])
            assert f"{width}x{height}" == picture["sizes"], picture["src"]
