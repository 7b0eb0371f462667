"""Prints the modules that the phone runs: `printed.js` (the sheet), and what comes later."""

import json
from collections.abc import Callable
from dataclasses import asdict
from functools import partial
from typing import Any

from webapp.bench.stages import STAGES
from webapp.bench.walk import MOMENTS, ONLY, OTHER_TAPS, stages_table
from webapp.conversions import Conversion, conversions
from webapp.formulas.book import Check
from webapp.inputs.entry import Input
from webapp.job import lifts, shape
from webapp.job.demo import DEMO_CARDS, EXAMPLE_JOB, STARTING_CUPS
from webapp.kinds import JOB_UNITS, KINDS
from webapp.printer.javascript import HELPERS, print_body, print_function
from webapp.printer.steps import steps_in_order
from webapp.printer.syntax import RULES, read_body
from webapp.printer.working import print_rule, print_working, rules_to_show
from webapp.quantities import (
    REPLACEMENTS,
    bound_text,
    bounds,
    default_text,
    read_input,
    units_of_input,
)
from webapp.sheet.heat import LEFT_STANDING, LIMITS
from webapp.sheet.labels import GRAINS, WORDS, called, from_name
from webapp.sheet.levels import levels_table
from webapp.sheet.wiring import PICKS, Node, Sheet
from webapp.showing import ATTACHED, HALVED, OTHER_MARKS, WHOLE
from webapp.units import canonical_units


def print_sheet(sheet: Sheet) -> str:
    """Print the whole sheet as one JavaScript module: formulas, nodes, inputs, units and cards."""
    functions = [each.function for each in sheet.book.everything().values()]
    printed = ",\n".join(print_body(read_body(function)) for function in functions)
    shared = "\n".join(print_function(rule) for rule in RULES.values())
    tables = {
        "levels": levels_table(),
        "nodes": [_node(node) for node in sheet.nodes],
        "checks": {name: _check(each) for name, each in sheet.book.checks.items()},
        "constants": {name: {"value": each.canonical} for name, each in sheet.constants.items()},
        "inputs": {name: _input(each) for name, each in sheet.inputs.items()},
        "units": {kind: _units(kind) for kind in canonical_units() if kind != "truth"},
        "labels": labels(sheet),
        "grammar": {
            "replacements": REPLACEMENTS,
            "attached": ATTACHED,
            "halved": HALVED,
            "whole": WHOLE,
            "otherMarks": OTHER_MARKS,
            "jobUnits": JOB_UNITS,
            "words": WORDS,
        },
        "cards": DEMO_CARDS,
        "example": EXAMPLE_JOB,
        "startingCups": STARTING_CUPS,
        "leftStanding": LEFT_STANDING,
        "limits": LIMITS,
        "file": {"format": shape.FORMAT, "version": lifts.VERSION},
    }
    return f"{HELPERS}{shared}\nexport const formulas = {{\n{printed}\n}};\n{_exports(tables)}"


def print_job_shape() -> str:
    """Print as one JavaScript module what a job file may hold, what is said of others, and the lifts."""
    rules = {
        "format": shape.FORMAT,
        "version": lifts.VERSION,
        "lifts": lifts.LIFTS,
        "largest": shape.LARGEST,
        "deepest": shape.DEEPEST,
        "most_amount": shape.MOST_AMOUNT,
        "says": shape.SAYS,
        "full": shape.FULL,
    }
    return _exports({"rules": rules, "shape": shape.shape()})


def print_sentences(sheet: Sheet) -> str:
    """Print as one JavaScript module what checks, ranges and stages say: the first screen does without."""
    return _exports(
        {
            "names": own_names(sheet),
            "checkSentences": {name: _sentences(each) for name, each in sheet.book.checks.items()},
            "rangeSentences": {each.of: each.says for each in sheet.book.ranges.values()},
            "stages": stages_table(),
            "cupKinds": {name: asdict(each) for name, each in ONLY.items()},
            "moments": MOMENTS,
            "tapNames": {stage.name: stage.called for stage in STAGES} | OTHER_TAPS,
        }
    )


def print_workings(sheet: Sheet) -> str:
    """Print as one JavaScript module what only a working shows: steps, origins of constants, helps."""
    checks = {name: each.formula for name, each in sheet.book.checks.items()}
    workings = {name: print_working(each) for name, each in {**sheet.book.formulas, **checks}.items()}
    tables = {
        "workings": workings,
        "origins": {
            name: {"shown": each.shown, "source": each.source} for name, each in sheet.constants.items()
        },
        "helps": {name: each.help for name, each in sheet.inputs.items() if each.help},
        "rules": {name: print_rule(name) for name in rules_to_show()},
        "steps": steps_in_order(each["step"] for each in workings.values()),
    }
    return _exports(tables)


def labels(sheet: Sheet) -> dict[str, dict[str, str]]:
    """Return every cell's kind of quantity, and how finely it is shown where its kind does not say so."""
    kinds = {name: each.kind for name, each in sheet.constants.items()}
    kinds |= {name: each.kind for name, each in sheet.inputs.items()}
    kinds |= {name: each.unit.kind for name, each in sheet.book.everything().items()}
    for node in sheet.nodes:
        if node.name not in kinds:
            asked = node.asks[1] if node.kind == "choice" else node.asks[0]
            kinds[node.name] = kinds[asked[1]]
    return {name: {"kind": kind} | _grain(name) for name, kind in kinds.items()}


def _grain(name: str) -> dict[str, str]:
    return {"grain": GRAINS[name]} if name in GRAINS else {}


def own_names(sheet: Sheet) -> dict[str, str]:
    """Return what cells are called whose name in words does not say it."""
    names = {name: called(name) for name in labels(sheet)}
    return {name: label for name, label in names.items() if label != from_name(name)}


def _check(check: Check) -> dict[str, Any]:
    row = {"severity": check.severity, "beside": check.beside}
    return row | ({"quiet": True} if check.quiet else {})


def _sentences(check: Check) -> dict[str, Any]:
    return {"says": check.says} | ({"would_do": check.would_do} if check.would_do else {})


def _node(node: Node) -> dict[str, Any]:
    row: dict[str, Any] = {"level": node.level, "name": node.name, "kind": node.kind, "asks": node.asks}
    optional = {"cells": node.cells, "when": node.when, "below": node.below, "range": node.range}
    row |= {key: value for key, value in optional.items() if value}
    return row | ({"needed": node.needed} if node.kind in PICKS else {})


def _input(each: Input) -> dict[str, Any]:
    row: dict[str, Any] = {
        "section": each.section,
        "levels": each.levels,
        "kind": each.kind,
        "unit": each.unit,
        "options": each.options,
        "fallback": _fallback(each),
        "least": None,
        "most": None,
    }
    if each.kind not in ("choice", "text"):
        least, most = bounds(each)
        row["least"] = (
            None if least is None else {"value": least} | _texts(each, partial(bound_text, each, "least"))
        )
        row["most"] = (
            None if most is None else {"value": most} | _texts(each, partial(bound_text, each, "most"))
        )
    return row


def _texts(each: Input, text_in: Callable[[str], str]) -> dict[str, Any]:
    """Return how a bound or a default reads, and how else in the units of some jobs."""
    units = units_of_input(each)
    text = text_in(units[-1])
    own = {unit: text_in(unit) for unit in units if text_in(unit) != text}
    return {"text": text} | ({"own": own} if own else {})


def _fallback(each: Input) -> dict[str, Any] | None:
    if each.default is None:
        return None
    if each.kind in ("choice", "text"):
        return {"text": each.default, "value": each.default}
    return {"value": read_input(each.default, each, {}).value} | _texts(each, partial(default_text, each))


def _units(name: str) -> dict[str, Any]:
    kind = KINDS[name]
    optional = {
        "isCompound": kind.is_compound,
        "shownWith": kind.shown_with,
        "places": kind.places,
        "inches": kind.inches,
    }
    shown = [_shown(row) for row in conversions(name).values()]
    row = {"canonical": canonical_units()[name].symbol, "shown": shown, "example": kind.example}
    return row | {key: value for key, value in optional.items() if value}


def _shown(row: Conversion) -> dict[str, Any]:
    unit = row.unit
    plain = {"name": unit.name, "shown": unit.shown, "factor": row.factor, "offset": row.offset}
    optional = {"takenAs": unit.taken_as, "finer": unit.finer}
    return plain | {"spellings": unit.spellings} | {key: value for key, value in optional.items() if value}


def _exports(tables: dict[str, Any]) -> str:
    return "".join(f"export const {name} = {_json(table)};\n" for name, table in tables.items())


def _json(table: Any) -> str:
    return json.dumps(table, ensure_ascii=False, separators=(",", ":"))
