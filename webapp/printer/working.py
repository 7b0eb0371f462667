"""Prints formulas and shared rules as a working: what a formula is for, its steps in words and as MathML."""

import ast
import inspect
import re
from collections.abc import Callable
from typing import Any

from webapp.formulas.book import Formula
from webapp.formulas.constants import CONSTANTS
from webapp.printer.mathml import MathVisitor
from webapp.printer.syntax import RULES, Body, read_body
from webapp.printer.words import ROUNDED, WordsVisitor
from webapp.sheet.labels import AMERICAN
from webapp.sheet.levels import LEVELS
from webapp.units import Unit

MARCHED = (
    "webapp.formulas.heat_rules",
    "webapp.formulas.march_rules",
    "webapp.formulas.warmth_rules",
    "webapp.formulas.calibration_rules",
    "webapp.formulas.planning_rules",
)
SUPERSCRIPTS = {"2": "²", "3": "³"}
HALF_TURN = "180°"


def print_working(formula: Formula) -> dict[str, Any]:
    """Print what the phone shows of a formula: purpose, level, unit, inputs, steps, example, source.

    `kelvins` says that the steps need temperatures counted from absolute zero, `radians` that they need
    angles as plain numbers; `rules` names the shared rules that the steps call.
    """
    body = read_body(formula.function)
    in_radians = _needs_radians(formula, body)
    angles = {"angle"} & {formula.unit.kind, *(each.kind for each in formula.parameters.values())}
    return {
        "summary": pretty(formula.summary),
        "source": pretty(formula.source),
        "example": pretty(formula.example),
        "step": formula.step,
        "levels": [LEVELS[each].word for each in formula.levels],
        "unit": unit_in_words(formula.unit),
        "inputs": {name: unit_in_words(unit) for name, unit in formula.parameters.items()},
        "kelvins": _needs_kelvins(formula, body),
        "radians": in_radians,
        "rules": _rules_called(body),
        "steps": _steps(body, HALF_TURN if angles and not in_radians else "π"),
    }


def print_rule(name: str) -> dict[str, Any]:
    """Print what the phone shows of a shared rule: what it returns, its steps, the rules that it calls."""
    function = RULES[name]
    if function.__module__ in MARCHED:
        return {"summary": _first_sentence(function), "rules": [], "steps": []}
    body = read_body(function)
    return {"summary": _first_sentence(function), "rules": _rules_called(body), "steps": _steps(body, "π")}


def rules_to_show() -> list[str]:
    """Return the shared rules that a working explains; rounding explains itself."""
    return [name for name in RULES if name not in ROUNDED]


def unit_in_words(unit: Unit) -> str:
    """Return a canonical unit as a person reads it; a bare number says its kind."""
    return unit.kind if unit.symbol in ("1", "truth") else pretty(unit.symbol)


def pretty(text: str) -> str:
    """Write powers of units and degrees as they are printed, and words as Americans spell them.

    >>> pretty("1.10 g/cm3 at 25 degC on 137 cm2")
    '1.10 g/cm³ at 25 °C on 137 cm²'
    """
    raised = re.sub(r"\b([cm]?m|in|ft|K|s)([23])\b", lambda found: found[1] + SUPERSCRIPTS[found[2]], text)
    spelled = re.sub(r"\b[a-z]+", lambda found: AMERICAN.get(found[0], found[0]), raised)
    return re.sub(r"\bdeg([CF])\b", r"°\1", spelled)


def _steps(body: Body, half_turn: str) -> list[dict[str, Any]]:
    lines = (*body.assignments, ("", body.result))
    return [_step(name, value, body, half_turn) for name, value in lines]


def _step(name: str, value: ast.expr, body: Body, half_turn: str) -> dict[str, Any]:
    return {
        "name": name.replace("_", " "),
        "words": WordsVisitor(body, half_turn).visit(value).words,
        "math": MathVisitor(body).visit(value),
    }


def _expressions(body: Body) -> list[ast.expr]:
    return [*(value for _, value in body.assignments), body.result]


def _rules_called(body: Body) -> list[str]:
    calls = [
        node.func.id
        for each in _expressions(body)
        for node in ast.walk(each)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    ]
    return [name for name in dict.fromkeys(calls) if name in rules_to_show()]


def _needs_kelvins(formula: Formula, body: Body) -> bool:
    """Whether a temperature is multiplied, divided, handed to a rule, or set against a constant one."""
    temperatures = {name for name, unit in formula.parameters.items() if unit.kind == "temperature"}
    if temperatures & {each.name for each in CONSTANTS}:
        return True
    return any(
        isinstance(inner, ast.Name) and inner.id in temperatures
        for each in _expressions(body)
        for node in ast.walk(each)
        if _counts_from_zero(node)
        for inner in ast.walk(node)
    )


def _needs_radians(formula: Formula, body: Body) -> bool:
    """Whether an angle stands in arithmetic of its own, outside of a sine and its like."""
    angles = {name for name, unit in formula.parameters.items() if unit.kind == "angle"}
    return formula.unit.kind != "angle" and any(_bare(each, angles) for each in _expressions(body))


def _bare(node: ast.AST, names: set[str]) -> bool:
    if isinstance(node, ast.Call):
        return False
    if isinstance(node, ast.Name):
        return node.id in names
    return any(_bare(each, names) for each in ast.iter_child_nodes(node))


def _counts_from_zero(node: ast.AST) -> bool:
    if isinstance(node, ast.BinOp):
        return isinstance(node.op, ast.Mult | ast.Div | ast.Pow)
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in RULES


def _first_sentence(function: Callable[..., Any]) -> str:
    text = (inspect.getdoc(function) or "").split("\n\n")[0].replace("\n", " ")
    said = text.removeprefix("Return ")
    return pretty(said[:1].upper() + said[1:])
