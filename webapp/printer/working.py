"""Prints formulas as a working: a sentence with places for the values, and MathML as nested arrays.

A place for a value is a list of one name, `["depth"]`; the phone fills it with the value as the person
reads it, or with the quantity's name.
"""

import ast
from dataclasses import dataclass
from typing import Any

from webapp.formulas.book import Formula
from webapp.printer.syntax import Body, ExpressionVisitor, read_body

Words = list[Any]

OPERATORS: dict[type, str] = {ast.Add: " + ", ast.Sub: " − ", ast.Mult: " × ", ast.Div: " ÷ "}
BINDING = {" + ": 1, " − ": 1, " × ": 2, " ÷ ": 2}
COMPARISONS: dict[type, str] = {
    ast.Lt: " is less than ",
    ast.LtE: " is at most ",
    ast.Gt: " is more than ",
    ast.GtE: " is at least ",
    ast.Eq: " is ",
    ast.NotEq: " is not ",
}
COMPARISON_SIGNS: dict[type, str] = {
    ast.Lt: "<",
    ast.LtE: "≤",
    ast.Gt: ">",
    ast.GtE: "≥",
    ast.Eq: "=",
    ast.NotEq: "≠",
}
SIGNS: dict[type, str] = {ast.USub: "−"}
POWERS = {2: "²", 3: "³"}
CALLS = {
    "min": "the least of ",
    "max": "the greatest of ",
    "abs": "the size of ",
    "whole_up": "rounded up to a whole number: ",
    "whole_down": "rounded down to a whole number: ",
    "math.exp": "e to the power of ",
    "math.log": "the natural logarithm of ",
    "math.sin": "the sine of ",
    "math.cos": "the cosine of ",
    "math.tan": "the tangent of ",
    "math.asin": "the angle whose sine is ",
    "math.acos": "the angle whose cosine is ",
    "math.atan": "the angle whose tangent is ",
}
STRONGEST = 9


@dataclass(frozen=True)
class Said:
    """Words and how tightly they bind: a sum inside a product needs brackets."""

    words: Words
    binding: int = STRONGEST

    def inside(self, binding: int) -> Words:
        """The words, in brackets where they bind more loosely than what surrounds them."""
        return self.words if self.binding >= binding else ["(", *self.words, ")"]


class WordsVisitor(ExpressionVisitor):
    """Turns an expression of the printable subset into words."""

    def visit_Constant(self, node: ast.Constant) -> Said:
        """Say a number."""
        return Said([f"{self.number(node):g}"])

    def visit_Name(self, node: ast.Name) -> Said:
        """Say a quantity: a place that the phone fills."""
        return Said([[self.name(node)]])

    def visit_Attribute(self, node: ast.Attribute) -> Said:
        """Say pi."""
        return Said(["π"])

    def visit_UnaryOp(self, node: ast.UnaryOp) -> Said:
        """Say a minus sign."""
        return Said([self.operator(node, SIGNS), *self.visit(node.operand).inside(2)], 1)

    def visit_BinOp(self, node: ast.BinOp) -> Said:
        """Say arithmetic with as few brackets as keep the meaning."""
        left, right = self.visit(node.left), None
        if isinstance(node.op, ast.Pow):
            exponent = self.exponent(node)
            if exponent == 0.5:
                return Said(["the square root of ", *left.inside(STRONGEST)], 3)
            sign = POWERS.get(exponent, f" to the power of {exponent:.4g}")
            return Said([*left.inside(STRONGEST), sign], 4)
        operator = self.operator(node, OPERATORS)
        binding = BINDING[operator]
        right = self.visit(node.right)
        return Said(
            [*left.inside(binding), operator, *right.inside(binding + (operator in " − ÷ "))], binding
        )

    def visit_Compare(self, node: ast.Compare) -> Said:
        """Say one comparison."""
        operator = self.operator(node, COMPARISONS)
        return Said([*self.visit(node.left).words, operator, *self.visit(node.comparators[0]).words], 0)

    def visit_IfExp(self, node: ast.IfExp) -> Said:
        """Say a conditional expression."""
        test, then, otherwise = (self.visit(each).words for each in (node.test, node.body, node.orelse))
        return Said([*then, " if ", *test, ", otherwise ", *otherwise], 0)

    def visit_Call(self, node: ast.Call) -> Said:
        """Say what is called and of what."""
        name = self.called(node)
        said = [self.visit(each) for each in node.args]
        if name in CALLS and len(said) == 1:
            return Said([CALLS[name], *said[0].inside(3)], 3)
        start = CALLS.get(name, f"{name.replace('_', ' ')} of ")
        words: Words = [start]
        for index, each in enumerate(said):
            words += [", " if 0 < index < len(said) - 1 else " and "] if index else []
            words += each.inside(1)
        return Said(words, 0)


class MathVisitor(ExpressionVisitor):
    """Turns an expression of the printable subset into MathML as nested arrays: [element, child, ...]."""

    def visit_Constant(self, node: ast.Constant) -> list:
        """Draw a number."""
        return ["mn", f"{self.number(node):g}"]

    def visit_Name(self, node: ast.Name) -> list:
        """Draw a quantity's name."""
        return ["mi", self.name(node).replace("_", " ")]

    def visit_Attribute(self, node: ast.Attribute) -> list:
        """Draw pi."""
        return ["mi", "π"]

    def visit_UnaryOp(self, node: ast.UnaryOp) -> list:
        """Draw a minus sign."""
        return ["mrow", ["mo", self.operator(node, SIGNS)], self.visit(node.operand)]

    def visit_BinOp(self, node: ast.BinOp) -> list:
        """Draw fractions, roots, powers and rows."""
        if isinstance(node.op, ast.Div):
            return ["mfrac", self.visit(node.left), self.visit(node.right)]
        if isinstance(node.op, ast.Pow):
            exponent = self.exponent(node)
            base = self.visit(node.left)
            if exponent == 0.5:
                return ["msqrt", base]
            return ["msup", self._bracketed(node.left, base), ["mn", f"{exponent:.4g}"]]
        operator = self.operator(node, OPERATORS).strip()
        left, right = self.visit(node.left), self.visit(node.right)
        if operator == "×":
            left, right = self._bracketed(node.left, left), self._bracketed(node.right, right)
        elif operator == "−":
            right = self._bracketed(node.right, right)
        return ["mrow", left, ["mo", operator], right]

    def visit_Compare(self, node: ast.Compare) -> list:
        """Draw one comparison."""
        sign = self.operator(node, COMPARISON_SIGNS)
        return ["mrow", self.visit(node.left), ["mo", sign], self.visit(node.comparators[0])]

    def visit_IfExp(self, node: ast.IfExp) -> list:
        """Draw a conditional expression as a row of words."""
        test, then, otherwise = (self.visit(each) for each in (node.test, node.body, node.orelse))
        return ["mrow", then, ["mtext", " if "], test, ["mtext", ", otherwise "], otherwise]

    def visit_Call(self, node: ast.Call) -> list:
        """Draw a function and its arguments."""
        name = self.called(node)
        arguments = [self.visit(each) for each in node.args]
        fences = {"whole_up": ("⌈", "⌉"), "whole_down": ("⌊", "⌋"), "abs": ("|", "|")}.get(name)
        if fences:
            return ["mrow", ["mo", fences[0]], arguments[0], ["mo", fences[1]]]
        if name == "math.exp":
            return ["msup", ["mi", "e"], arguments[0]]
        commas = [each for argument in arguments for each in (["mo", ","], argument)][1:]
        shown = name.removeprefix("math.").replace("_", " ")
        return ["mrow", ["mi", shown], ["mo", "("], *commas, ["mo", ")"]]

    def _bracketed(self, node: ast.expr, drawn: list) -> list:
        loose = isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub)
        if loose or isinstance(node, ast.UnaryOp | ast.IfExp):
            return ["mrow", ["mo", "("], drawn, ["mo", ")"]]
        return drawn


def print_working(formula: Formula) -> dict[str, Any]:
    """Print a formula's working: summary, source, example, and its steps in words and in MathML."""
    body = read_body(formula.function)
    return {
        "summary": formula.summary,
        "source": formula.source,
        "example": formula.example,
        "step": formula.step.replace("_", " "),
        "steps": [_step(name, value, body) for name, value in (*body.assignments, ("", body.result))],
    }


def _step(name: str, value: ast.expr, body: Body) -> dict[str, Any]:
    return {
        "name": name.replace("_", " "),
        "words": WordsVisitor(body).visit(value).words,
        "math": MathVisitor(body).visit(value),
    }
