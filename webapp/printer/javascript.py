"""Prints formulas as JavaScript: always brackets, and helpers where a result may not exist."""

import ast
from collections.abc import Callable
from typing import Any

from webapp.printer.syntax import RULES, Body, ExpressionVisitor, read_body

HELPERS = """\
const signal = { says: "not computable" };
const finite = (value) => { if (!Number.isFinite(value)) throw signal; return value; };
const divide = (over, under) => finite(over / under);
const power = (base, exponent) => finite(base ** exponent);
const exp = (value) => finite(Math.exp(value));
const log = (value) => finite(Math.log(value));
const asin = (value) => finite(Math.asin(value));
const acos = (value) => finite(Math.acos(value));
"""

OPERATORS: dict[type, str] = {ast.Add: "+", ast.Sub: "-", ast.Mult: "*"}
COMPARISONS: dict[type, str] = {
    ast.Lt: "<",
    ast.LtE: "<=",
    ast.Gt: ">",
    ast.GtE: ">=",
    ast.Eq: "===",
    ast.NotEq: "!==",
}
SIGNS: dict[type, str] = {ast.USub: "-"}
CALLS = {
    "min": "Math.min",
    "max": "Math.max",
    "abs": "Math.abs",
    **{f"math.{name}": name for name in ("exp", "log", "asin", "acos")},
    **{f"math.{name}": f"Math.{name}" for name in ("sin", "cos", "tan", "atan", "ceil", "floor")},
    **{name: name for name in RULES},
}


class JavaScriptVisitor(ExpressionVisitor):
    """Turns an expression of the printable subset into JavaScript."""

    def visit_Constant(self, node: ast.Constant) -> str:
        """Print a number."""
        return repr(self.number(node))

    def visit_Name(self, node: ast.Name) -> str:
        """Print a parameter's or an assigned name."""
        return self.name(node)

    def visit_Attribute(self, node: ast.Attribute) -> str:
        """Print math.pi; no other constant is known."""
        if self.attribute(node) != "pi":
            self.refuse(node, f"math.{node.attr} is refused: only math.pi is a number")
        return "Math.PI"

    def visit_UnaryOp(self, node: ast.UnaryOp) -> str:
        """Print a minus sign."""
        return f"({self.operator(node, SIGNS)}{self.visit(node.operand)})"

    def visit_BinOp(self, node: ast.BinOp) -> str:
        """Print arithmetic, division and powers through helpers that signal what has no value."""
        if isinstance(node.op, ast.Pow):
            return f"power({self.visit(node.left)}, {self.exponent(node)!r})"
        if isinstance(node.op, ast.Div):
            return f"divide({self.visit(node.left)}, {self.visit(node.right)})"
        operator = self.operator(node, OPERATORS)
        return f"({self.visit(node.left)} {operator} {self.visit(node.right)})"

    def visit_Compare(self, node: ast.Compare) -> str:
        """Print one comparison."""
        operator = self.operator(node, COMPARISONS)
        return f"({self.visit(node.left)} {operator} {self.visit(node.comparators[0])})"

    def visit_IfExp(self, node: ast.IfExp) -> str:
        """Print a conditional expression."""
        return f"({self.visit(node.test)} ? {self.visit(node.body)} : {self.visit(node.orelse)})"

    def visit_Call(self, node: ast.Call) -> str:
        """Print a call from the table."""
        return f"{CALLS[self.called(node)]}({', '.join(self.visit(each) for each in node.args)})"


def print_body(body: Body) -> str:
    """Print a body as a JavaScript function without the word `function`."""
    visitor = JavaScriptVisitor(body)
    lines = [f"  const {name} = {visitor.visit(value)};" for name, value in body.assignments]
    lines.append(f"  return {visitor.visit(body.result)};")
    return f"{body.name}({', '.join(body.parameters)}) {{\n" + "\n".join(lines) + "\n}"


def print_function(function: Callable[..., Any]) -> str:
    """Print a function of the printable subset as JavaScript."""
    return f"function {print_body(read_body(function))}"
