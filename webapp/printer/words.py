"""Prints expressions as words, with places for the values.

A place for a value is a list of one name, `["depth"]`; the phone fills it with the value as the person
reads it, or with the quantity's name.
"""

import ast
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any

from webapp.printer.syntax import Body, ExpressionVisitor

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
SIGNS: dict[type, str] = {ast.USub: "−"}
POWERS: dict[float, str] = {2: "²", 3: "³", 4: "⁴"}
CALLS = {
    "min": "the smaller of ",
    "max": "the greater of ",
    "abs": "the size of ",
    "math.exp": "e to the power of ",
    "math.log": "the natural logarithm of ",
    "math.sin": "the sine of ",
    "math.cos": "the cosine of ",
    "math.tan": "the tangent of ",
    "math.asin": "the angle whose sine is ",
    "math.acos": "the angle whose cosine is ",
    "math.atan": "the angle whose tangent is ",
}
ROUNDED = {"whole_up": ", rounded up", "whole_down": ", rounded down"}
STRONGEST = 9


@dataclass(frozen=True)
class Said:
    """Words and how tightly they bind: a sum inside a product needs brackets.

    `is_open` says that they end in what a function is of: what follows would seem to belong to it.
    """

    words: Words
    binding: int = STRONGEST
    is_open: bool = False

    def inside(self, binding: int) -> Words:
        """The words, in brackets where they bind more loosely than what surrounds them."""
        return self.words if self.binding >= binding else ["(", *self.words, ")"]


def plain(number: float) -> str:
    """Say a number in plain digits.

    >>> plain(0.5), plain(2.0), plain(1e-06)
    ('0.5', '2', '0.000001')
    """
    short = f"{number:g}"
    return f"{Decimal(short):f}" if "e" in short else short


def fraction(number: float) -> str:
    """Say an exponent: a plain number, or over and under of a simple fraction.

    >>> fraction(2 / 3), fraction(5), fraction(0.25)
    ('2/3', '5', '1/4')
    """
    return str(Fraction(number).limit_denominator(12))


class WordsVisitor(ExpressionVisitor):
    """Turns an expression of the printable subset into words; `half_turn` is what π is called."""

    def __init__(self, body: Body, half_turn: str = "π") -> None:
        super().__init__(body)
        self.half_turn = half_turn

    def visit_Constant(self, node: ast.Constant) -> Said:
        """Say a number."""
        return Said([plain(self.number(node))])

    def visit_Name(self, node: ast.Name) -> Said:
        """Say a quantity: a place that the phone fills."""
        return Said([[self.name(node)]])

    def visit_Attribute(self, node: ast.Attribute) -> Said:
        """Say pi, in degrees among angles."""
        return Said([self.half_turn])

    def visit_UnaryOp(self, node: ast.UnaryOp) -> Said:
        """Say a minus sign."""
        if isinstance(node.operand, ast.Constant):
            return Said([self.operator(node, SIGNS) + plain(self.number(node.operand))], 3)
        return Said([self.operator(node, SIGNS), *self.visit(node.operand).inside(2)], 1)

    def visit_BinOp(self, node: ast.BinOp) -> Said:
        """Say arithmetic with as few brackets as keep the meaning."""
        left, right = self.visit(node.left), None
        if isinstance(node.op, ast.Pow):
            exponent = self.exponent(node)
            if exponent == 0.5:
                return _function("the square root of ", left, STRONGEST)
            sign = POWERS.get(exponent, f" to the power of {fraction(exponent)}")
            return Said([*left.inside(STRONGEST), sign], 4)
        operator = self.operator(node, OPERATORS)
        binding = BINDING[operator]
        right = self.visit(node.right)
        needed = binding + (operator in " − ÷ ")
        words = [*left.inside(STRONGEST if left.is_open else binding), operator, *right.inside(needed)]
        return Said(words, binding, right.is_open and right.binding >= needed)

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
        if name in ROUNDED:
            return Said([*said[0].words, ROUNDED[name]], 0)
        if name in CALLS and len(said) == 1:
            return _function(CALLS[name], said[0], 3)
        start = CALLS.get(name, f"the {name.replace('_', ' ')} of ")
        words: Words = [start]
        for index, each in enumerate(said):
            words += [", " if 0 < index < len(said) - 1 else " and "] if index else []
            words += each.inside(1)
        return Said(words, 0)


def _function(name: str, of: Said, binding: int) -> Said:
    return Said([name, *of.inside(binding)], 3, of.binding >= binding)
