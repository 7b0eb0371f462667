"""The printable subset: reads a formula's source into assignments and a result, and refuses all else."""

import ast
import inspect
import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NoReturn

from webapp.errors import PrintError
from webapp.formulas import calibration_rules, heat_rules, march_rules, planning_rules, rules, warmth_rules

RULE_FILES = (rules, heat_rules, march_rules, warmth_rules, calibration_rules, planning_rules)
RULES = {
    name: value
    for file in RULE_FILES
    for name, value in vars(file).items()
    if inspect.isfunction(value) and value.__module__ == file.__name__
}
MATHEMATICS = ("exp", "log", "sin", "cos", "tan", "asin", "acos", "atan")
WHOLE = ("ceil", "floor")
REASONS = {
    "Mod": "% is refused: write it with whole_down",
    "FloorDiv": "// is refused: write it with whole_down",
    "BoolOp": "and/or is refused: write two checks",
    "For": "loops are refused: write fixed steps",
    "While": "loops are refused: write fixed steps",
    "If": "an if block is refused: write a conditional expression",
}


@dataclass(frozen=True)
class Body:
    """A printable function: its name, parameters, assignments in order, and the expression it returns."""

    name: str
    parameters: tuple[str, ...]
    assignments: tuple[tuple[str, ast.expr], ...]
    result: ast.expr
    file: str
    first_line: int
    is_rule: bool

    def refuse(self, node: ast.AST, reason: str) -> NoReturn:
        """Raise the PrintError that names file, line, function and reason."""
        line = self.first_line + getattr(node, "lineno", 1) - 1
        raise PrintError(f"{self.file}:{line}: {self.name}: {reason}")


def read_body(function: Callable[..., Any]) -> Body:
    """Read a function of the printable subset; a PrintError names file, line and what is refused."""
    source, first_line = inspect.getsourcelines(function)
    tree = ast.parse(textwrap.dedent("".join(source))).body[0]
    file = Path(inspect.getsourcefile(function) or "").name
    blank = Body(function.__name__, (), (), ast.Constant(0), file, first_line, False)
    if not isinstance(tree, ast.FunctionDef):
        blank.refuse(tree, "only plain functions are printed")
    return _body(tree, blank, RULES.get(function.__name__) is function)


def _body(tree: ast.FunctionDef, blank: Body, is_rule: bool) -> Body:
    arguments = tree.args
    if (
        arguments.defaults
        or arguments.kw_defaults
        or arguments.vararg
        or arguments.kwarg
        or arguments.kwonlyargs
    ):
        blank.refuse(tree, "defaults, *args and **kwargs are refused: every parameter is a named quantity")
    parameters = tuple(each.arg for each in arguments.posonlyargs + arguments.args)
    statements = list(tree.body)
    if isinstance(statements[0], ast.Expr) and isinstance(statements[0].value, ast.Constant):
        statements.pop(0)
    assignments: list[tuple[str, ast.expr]] = []
    known = set(parameters)
    for statement in statements[:-1]:
        name, value = _assignment(statement, blank, known)
        known.add(name)
        assignments.append((name, value))
    last = statements[-1] if statements else tree
    if not isinstance(last, ast.Return) or last.value is None:
        blank.refuse(last, "the last line returns the result")
    return Body(blank.name, parameters, tuple(assignments), last.value, blank.file, blank.first_line, is_rule)


def _assignment(statement: ast.stmt, blank: Body, known: set[str]) -> tuple[str, ast.expr]:
    kind = type(statement).__name__
    if isinstance(statement, ast.Return):
        blank.refuse(statement, "one return, on the last line")
    if not isinstance(statement, ast.Assign) or len(statement.targets) != 1:
        blank.refuse(statement, REASONS.get(kind, f"{kind} is refused: only assignments, then one return"))
    target = statement.targets[0]
    if not isinstance(target, ast.Name):
        blank.refuse(statement, "only a plain name is assigned")
    if target.id in known:
        blank.refuse(statement, f"{target.id} is assigned twice: give the second a name of its own")
    return target.id, statement.value


class ExpressionVisitor:
    """Walks an expression of the subset; a printer says what each construct becomes, the rest is refused."""

    def __init__(self, body: Body) -> None:
        self.body = body
        self.names = {*body.parameters, *(name for name, _ in body.assignments)}

    def visit(self, node: ast.expr) -> Any:
        """Return what an expression becomes; whatever has no method of its own is refused."""
        method = getattr(self, f"visit_{type(node).__name__}", None)
        if method is None:
            self.refuse(node, REASONS.get(type(node).__name__, f"{type(node).__name__} is refused"))
        return method(node)

    def refuse(self, node: ast.AST, reason: str) -> NoReturn:
        """Refuse a node with a reason."""
        self.body.refuse(node, reason)

    def number(self, node: ast.Constant) -> int | float:
        """Return a plain number; text, truth values and complex numbers are refused."""
        if isinstance(node.value, bool) or not isinstance(node.value, int | float):
            self.refuse(node, f"{node.value!r} is refused: only numbers stand in a formula")
        return node.value

    def name(self, node: ast.Name) -> str:
        """Return a parameter's or an assigned name."""
        if node.id not in self.names:
            self.refuse(node, f"{node.id} is neither a parameter nor assigned above")
        return node.id

    def operator(self, node: ast.BinOp | ast.Compare | ast.UnaryOp, table: dict[type, str]) -> str:
        """Return the printed operator from a table, or refuse it."""
        if isinstance(node, ast.Compare):
            if len(node.ops) != 1:
                self.refuse(node, "a chained comparison is refused: one comparison at a time")
            found: ast.AST = node.ops[0]
        else:
            found = node.op
        if type(found) not in table:
            kind = type(found).__name__
            self.refuse(node, REASONS.get(kind, f"the operator {kind} is refused"))
        return table[type(found)]

    def exponent(self, node: ast.BinOp) -> int | float:
        """Return the constant exponent of a power."""
        sign, value = 1, node.right
        if isinstance(value, ast.UnaryOp) and isinstance(value.op, ast.USub):
            sign, value = -1, value.operand
        if isinstance(value, ast.BinOp) and isinstance(value.op, ast.Div):
            parts = (value.left, value.right)
            if all(isinstance(each, ast.Constant) for each in parts):
                over, under = (self.number(each) for each in parts if isinstance(each, ast.Constant))
                return sign * over / under
        if not isinstance(value, ast.Constant):
            self.refuse(node, "an exponent is a plain number")
        return sign * self.number(value)

    def called(self, node: ast.Call) -> str:
        """Return the name of what is called: min, max, abs, a shared rule, or math.NAME; refuse all else."""
        if node.keywords or any(isinstance(each, ast.Starred) for each in node.args):
            self.refuse(node, "a call takes plain arguments in their order")
        if isinstance(node.func, ast.Name) and node.func.id in ("min", "max", "abs", *RULES):
            return node.func.id
        if isinstance(node.func, ast.Attribute):
            name = self.attribute(node.func)
            if name in MATHEMATICS or (self.body.is_rule and name in WHOLE):
                return f"math.{name}"
            wanted = {"sqrt": "write ** 0.5", "ceil": "call whole_up", "floor": "call whole_down"}.get(name)
            self.refuse(node, f"math.{name} is refused" + (f": {wanted}" if wanted else ""))
        name = ast.unparse(node.func)
        wanted = {"round": ": call whole_up or whole_down", "ceil": ": call whole_up"}.get(name, "")
        self.refuse(node, f"calling {name} is refused{wanted}")

    def attribute(self, node: ast.Attribute) -> str:
        """Return NAME of math.NAME; any other attribute is refused."""
        if not isinstance(node.value, ast.Name) or node.value.id != "math":
            self.refuse(node, f"{ast.unparse(node)} is refused: only math has attributes")
        return node.attr
