"""Prints expressions as MathML, nested arrays of [element, child, ...] that the phone builds nodes from."""

import ast
from itertools import pairwise

from webapp.printer.syntax import ExpressionVisitor
from webapp.printer.words import OPERATORS, POWERS, SIGNS, fraction, plain
from webapp.sheet.labels import in_sentence

COMPARISON_SIGNS: dict[type, str] = {
    ast.Lt: "<",
    ast.LtE: "≤",
    ast.Gt: ">",
    ast.GtE: "≥",
    ast.Eq: "=",
    ast.NotEq: "≠",
}
FENCES = {"whole_up": ("⌈", "⌉"), "whole_down": ("⌊", "⌋"), "abs": ("|", "|")}
FUNCTIONS = {"math.log": "ln", "math.asin": "arcsin", "math.acos": "arccos", "math.atan": "arctan"}


class MathVisitor(ExpressionVisitor):
    """Turns an expression of the printable subset into MathML."""

    def visit_Constant(self, node: ast.Constant) -> list:
        """Draw a number."""
        return ["mn", plain(self.number(node))]

    def visit_Name(self, node: ast.Name) -> list:
        """Draw a quantity's name."""
        name = self.name(node)
        return ["mi", in_sentence(name) if name in self.body.parameters else name.replace("_", " ")]

    def visit_Attribute(self, node: ast.Attribute) -> list:
        """Draw pi."""
        return ["mi", "π"]

    def visit_UnaryOp(self, node: ast.UnaryOp) -> list:
        """Draw a minus sign."""
        return ["mrow", ["mo", self.operator(node, SIGNS)], self.visit(node.operand)]

    def visit_BinOp(self, node: ast.BinOp) -> list:
        """Draw fractions, roots, powers and rows."""
        if isinstance(node.op, ast.Div):
            return self._quotient(node)
        if isinstance(node.op, ast.Pow):
            return self._power(node)
        operator = self.operator(node, OPERATORS).strip()
        left, right = self.visit(node.left), self.visit(node.right)
        if operator == "×":
            left, right = self._bracketed(node.left, left), self._bracketed(node.right, right)
        elif operator == "−":
            right = self._bracketed(node.right, right)
        return ["mrow", left, ["mo", operator], right]

    def _quotient(self, node: ast.BinOp) -> list:
        """Draw a quotient; what is divided by twice has both under one line."""
        over, under = node.left, [node.right]
        while isinstance(over, ast.BinOp) and isinstance(over.op, ast.Div) and not _is_quotient(node.right):
            under.insert(0, over.right)
            over = over.left
        drawn = [self._bracketed(each, self.visit(each)) if under[1:] else self.visit(each) for each in under]
        row = drawn[0]
        for _, right in pairwise(drawn):
            row = ["mrow", row, ["mo", "×"], right]
        return ["mfrac", self.visit(over), row]

    def _power(self, node: ast.BinOp) -> list:
        exponent = self.exponent(node)
        base = self.visit(node.left)
        if exponent == 0.5:
            return ["msqrt", base]
        if isinstance(node.left, ast.BinOp | ast.UnaryOp | ast.IfExp):
            base = ["mrow", ["mo", "("], base, ["mo", ")"]]
        shown = f"{exponent:g}" if exponent in POWERS else fraction(exponent)
        return ["msup", base, ["mn", shown]]

    def visit_Compare(self, node: ast.Compare) -> list:
        """Draw one comparison."""
        sign = self.operator(node, COMPARISON_SIGNS)
        return ["mrow", self.visit(node.left), ["mo", sign], self.visit(node.comparators[0])]

    def visit_IfExp(self, node: ast.IfExp) -> list:
        """Draw a conditional expression as cases behind a brace."""
        test, then, otherwise = (self.visit(each) for each in (node.test, node.body, node.orelse))
        cases = [
            ["mtr", ["mtd", then], ["mtd", ["mrow", ["mtext", "if\u00a0"], test]]],
            ["mtr", ["mtd", otherwise], ["mtd", ["mtext", "otherwise"]]],
        ]
        return ["mrow", ["mo", "{"], ["mtable", *cases]]

    def visit_Call(self, node: ast.Call) -> list:
        """Draw a function and its arguments."""
        name = self.called(node)
        arguments = [self.visit(each) for each in node.args]
        if name in FENCES:
            opens, closes = FENCES[name]
            return ["mrow", ["mo", opens], arguments[0], ["mo", closes]]
        if name == "math.exp":
            return ["msup", ["mi", "e"], arguments[0]]
        commas = [each for argument in arguments for each in (["mo", ","], argument)][1:]
        shown = FUNCTIONS.get(name, name.removeprefix("math.").replace("_", " "))
        return ["mrow", ["mi", shown], ["mo", "("], *commas, ["mo", ")"]]

    def _bracketed(self, node: ast.expr, drawn: list) -> list:
        loose = isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub)
        if loose or isinstance(node, ast.UnaryOp | ast.IfExp):
            return ["mrow", ["mo", "("], drawn, ["mo", ")"]]
        return drawn


def _is_quotient(node: ast.expr) -> bool:
    return isinstance(node, ast.BinOp) and isinstance(node.op, ast.Div)
