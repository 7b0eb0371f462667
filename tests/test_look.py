"""The look: contrasts measured from the tokens, light and dark, by WCAG 2.2's relative luminance."""

import re
from itertools import product
from pathlib import Path

import pytest

TOKENS = (Path(__file__).parent.parent / "static/styles/tokens.css").read_text()

TEXT, FIGURE, EDGE = 7.0, 15.0, 3.0
PAIRS = {
    TEXT: [
        *product(("ink", "quiet", "resin", "stop", "good"), ("ground", "card")),
        ("ink", "resin-wash"),
        ("quiet", "resin-wash"),
        ("on-resin", "resin"),
        ("ground", "ink"),
        ("part-a", "part-a-wash"),
        ("part-b", "part-b-wash"),
        ("part-a", "card"),
        ("part-b", "card"),
        ("ink", "part-a-wash"),
        ("ink", "part-b-wash"),
        ("ink", "caution-ground"),
        ("stop", "stop-ground"),
        ("good", "good-ground"),
    ],
    FIGURE: [*product(("figure",), ("ground", "card", "part-a-wash", "part-b-wash"))],
    EDGE: [
        *product(("edge", "focus", "resin", "stop"), ("ground", "card")),
        ("focus", "resin-wash"),
        ("caution-edge", "card"),
    ],
}


def declarations(selector):
    """Return the custom properties of the rule with exactly this selector, the last one winning."""
    rules = re.findall(rf"^\s*{re.escape(selector)} \{{([^}}]*)\}}", TOKENS, re.MULTILINE)
    found = {}
    for rule in rules:
        found |= dict(re.findall(r"--([a-z0-9-]+): ([^;]+);", rule))
    return found


LIGHT = declarations(":root")
CHOSEN_DARK = declarations(':root[data-theme="dark"]')
PHONES_DARK = declarations(':root:not([data-theme="light"])')
THEMES = {"light": LIGHT, "dark": {**LIGHT, **CHOSEN_DARK}}


def colour(theme, name):
    """Return a token's colour as three shares of light, following what it refers to."""
    value = THEMES[theme][name]
    reference = re.fullmatch(r"var\(--([a-z0-9-]+)\)", value)
    if reference:
        return colour(theme, reference[1])
    return [int(value[place : place + 2], 16) / 255 for place in (1, 3, 5)]


def luminance(shares):
    red, green, blue = (
        share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4 for share in shares
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_measure_itself():
    # WCAG 2.2, definition of contrast ratio: black on white is 21; #767676 is the lightest grey at 4.5.
    assert contrast([0, 0, 0], [1, 1, 1]) == pytest.approx(21)
    assert contrast([0x76 / 255] * 3, [1, 1, 1]) == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("theme", THEMES)
@pytest.mark.parametrize(
    ("least", "pair"),
    [(least, pair) for least, pairs in PAIRS.items() for pair in pairs],
    ids=lambda each: " on ".join(each) if isinstance(each, tuple) else f"{each:g}",
)
def test_what_is_read_in_the_sun_stands_out(theme, least, pair):
    assert contrast(*(colour(theme, name) for name in pair)) >= least


def test_the_dark_theme_is_the_same_by_choice_and_by_the_phone():
    assert CHOSEN_DARK == PHONES_DARK


def test_a_theme_changes_raw_hues_only():
    assert all(name.startswith("raw-") for name in CHOSEN_DARK)
    raw = {name for name in LIGHT if name.startswith("raw-")}
    assert set(CHOSEN_DARK) == raw


def test_other_styles_name_meanings_and_no_hues():
    folder = Path(__file__).parent.parent / "static/styles"
    others = {path.name: path.read_text() for path in folder.glob("*.css") if path.stem != "tokens"}
    screen = {name: text for name, text in others.items() if not name.startswith("print")}
    assert [name for name, text in screen.items() if "--raw-" in text] == []
