"""Finds by which way a person meets each formula, input, constant and check: `python -m tests.met_by`.

A figure is met where it can be read: on the page, in print, at the bench, in the text of `plan`, in a picture
or a sentence that the phone's own modules make, in a working that a figure opens, or in a check that weighs
it. That a field asks for it is not enough, nor that the list of all formulas names it. With `--all` each
name is printed with its ways.
"""

import re
import sys
from collections.abc import Callable

from tests.whole_app import App, the_app
from webapp.formulas.book import marks_in
from webapp.sheet import report
from webapp.sheet.levels import ancestors, children
from webapp.sheet.wiring import Key

PAPER = {"paper"}

_CELL_WORD = re.compile(r"\b[a-z]+(?:_[a-z0-9]+)+\b|(?<=cells\.)[a-z]+\b")


def figures(app: App) -> set[Key]:
    """The figures of the page: each opens its working."""
    below = {(row, cell) for _, cell, level in app.places("data-of") for row in children(level)}
    return (_shown(app, on_paper=False) | below) & set(app.nodes)


def printed(app: App) -> set[Key]:
    """The figures of the sheet on paper."""
    return _shown(app, on_paper=True) & set(app.nodes)


def _shown(app: App, *, on_paper: bool) -> set[Key]:
    return {
        (level, cell)
        for mark, cell, level in app.places("data-cell")
        if app.is_within(mark, PAPER) == on_paper
    }


def at_the_bench(app: App) -> set[Key]:
    """The figures, clocks and lines of the bench, from whichever row of the cup has them."""
    names = set()
    for stage in app.stages:
        names |= {*stage.duration, *stage.figures, *(cell for each in stage.beside for cell in each.cells)}
        names |= {cell for line in stage.lines for cell in line.cells}
    return {(level, name) for level, name in app.nodes if name in names and level in ancestors("cup")}


def in_pictures(app: App) -> set[Key]:
    """What the phone's own modules name for a picture or a sentence."""
    words = _cell_words(app)
    return {(level, name) for level, name in app.nodes if name in words}


def _cell_words(app: App) -> set[str]:
    # In scripts nothing but the sheet's names is written_like_this.
    return set(_CELL_WORD.findall(app.own_modules))


def in_plan(app: App) -> set[Key]:
    """The lines of the text of `plan`."""
    return {(level, name) for level, names in report.LINES.items() for name in names} & set(app.nodes)


def in_workings(app: App) -> set[Key]:
    """What a person comes to from a figure of the page or the bench, from working to working."""
    start = figures(app) | at_the_bench(app)
    return _behind(app, start) - start


def in_checks(app: App) -> set[Key]:
    """What a check that can be met weighs or says what would do with, and what that is worked out from."""
    met = {key for key in app.nodes if key[1] in checks_met(app)}
    said = {each for level, name in met for each in _said_by(app, level, name)}
    return (_behind(app, met) - met) | _behind(app, said)


def _said_by(app: App, level: str, name: str) -> set[Key]:
    """The cells that a check's sentences read, on its own row or the nearest above that has them."""
    check = app.sheet.book.checks[name]
    cells = [
        each for text in (check.says, *check.would_do) for kind, each in marks_in(text) if kind == "cell"
    ]
    return {next((at, each) for at in ancestors(level) if (at, each) in app.nodes) for each in cells}


def behind_pictures(app: App) -> set[Key]:
    """What the figures of a picture or a sentence are worked out from."""
    start = in_pictures(app)
    return _behind(app, start) - start


WAYS: dict[str, Callable[[App], set[Key]]] = {
    "page": figures,
    "print": printed,
    "bench": at_the_bench,
    "plan": in_plan,
    "working": in_workings,
    "picture": in_pictures,
    "behind a picture": behind_pictures,
    "check": in_checks,
}


def _behind(app: App, keys: set[Key]) -> set[Key]:
    found: set[Key] = set()
    waiting = list(keys)
    while waiting:
        key = waiting.pop()
        if key in found:
            continue
        found.add(key)
        node = app.nodes[key]
        steps = ancestors(node.level)
        waiting += [(node.below if up < 0 else steps[up], name) for up, name in node.asks]
    return found


def checks_met(app: App) -> dict[str, list[str]]:
    """Return each check that can be met with the places where it is said: the page, a fold, the bench."""
    beside = {(level, cell) for _, cell, level in app.places("data-checks")}
    # A fold weighs the checks of its own row, or of the rows below.
    folds = {
        (row, check)
        for _, check, level in app.places("data-fold-checks")
        for row in (level, *children(level))
    }
    lines = {check for stage in app.stages for line in stage.lines for check in line.checks}
    met: dict[str, list[str]] = {}
    for name, check in app.sheet.book.checks.items():
        [level] = check.formula.levels
        ways = {
            "page": (level, check.beside) in beside or (level, "*") in beside,
            "fold": (level, name) in folds,
            "bench": name in lines,
        }
        if any(ways.values()):
            met[name] = [way for way, is_met in ways.items() if is_met]
    return met


def drawn_by_curves(app: App) -> set[str]:
    """The formulas on no level that the phone's integrators and pictures call."""
    words = _cell_words(app)
    return {name for name, each in app.sheet.book.formulas.items() if not each.levels and name in words}


def met_by(app: App) -> dict[str, list[str]]:
    """Return every formula, input, constant and check of the sheet with the ways by which it is met."""
    keys = {way: find(app) for way, find in WAYS.items()}
    sheet = app.sheet
    found = {
        name: [way for way, met in keys.items() if any(name == each for _, each in met)]
        for name in (*sheet.book.formulas, *sheet.inputs, *sheet.constants)
    }
    for name in drawn_by_curves(app):
        found[name] = ["drawn curve"]
    said = checks_met(app)
    return found | {name: said.get(name, []) for name in sheet.book.checks}


def totals(app: App) -> list[str]:
    """Return a line for each way with how many formulas, inputs, constants and checks are met by it."""
    found = met_by(app)
    sheet = app.sheet
    groups = {
        "formulas": sheet.book.formulas,
        "inputs": sheet.inputs,
        "constants": sheet.constants,
        "checks": sheet.book.checks,
    }
    lines = [f"{'':<18}" + "".join(f"{name:>11}" for name in groups)]
    for way in [*WAYS, "drawn curve", "fold", ""]:
        is_met = {name: way in ways if way else not ways for name, ways in found.items()}
        counts = [sum(is_met[name] for name in group) for group in groups.values()]
        lines.append(f"{way or 'by nobody':<18}" + "".join(f"{count:>11}" for count in counts))
    counts = [len(group) for group in groups.values()]
    return [*lines, f"{'in all':<18}" + "".join(f"{count:>11}" for count in counts)]


if __name__ == "__main__":
    whole = the_app()
    print("\n".join(totals(whole)))
    if "--all" in sys.argv:
        for each, by in met_by(whole).items():
            print(f"{each:<32}{', '.join(by) or 'nobody'}")
