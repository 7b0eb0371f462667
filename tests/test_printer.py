"""The printer prints the subset with brackets and helpers, and refuses the rest with file and line."""

import math

import pytest

from webapp.errors import PrintError
from webapp.formulas.rules import whole_up
from webapp.printer.javascript import print_function
from webapp.printer.syntax import read_body
from webapp.printer.working import MathVisitor, WordsVisitor


def arch(width, rise):
    """Documentation is not printed."""
    radius = (width**2 / 4 + rise**2) / (2 * rise)
    angle = math.asin(width / (2 * radius))
    return radius**2 * (angle - math.sin(angle) * math.cos(angle))


def test_a_whole_function_is_printed_with_brackets_and_helpers():
    assert print_function(arch) == (
        "function arch(width, rise) {\n"
        "  const radius = divide((divide(power(width, 2), 4) + power(rise, 2)), (2 * rise));\n"
        "  const angle = asin(divide(width, (2 * radius)));\n"
        "  return (power(radius, 2) * (angle - (Math.sin(angle) * Math.cos(angle))));\n"
        "}"
    )


def the_rest(a, b):
    return (max(1, whole_up(a / b)) if a > b else abs(-a)) + min(a, b) * math.pi + math.exp(a) ** 0.5


def test_calls_comparisons_and_conditions_are_printed():
    assert print_function(the_rest) == (
        "function the_rest(a, b) {\n"
        "  return ((((a > b) ? Math.max(1, whole_up(divide(a, b))) : Math.abs((-a))) "
        "+ (Math.min(a, b) * Math.PI)) + power(exp(a), 0.5));\n"
        "}"
    )


def remainder(a, b):
    return a % b


def floor_division(a, b):
    return a // b


def rounding(a):
    return round(a)


def bare_ceiling(a):
    return math.ceil(a)


def square_root(a):
    return math.sqrt(a)


def chained(a, b):
    return 1 if 0 < a < b else 2


def both(a, b):
    return a if a > 1 and b > 1 else b


def loop(a):
    for _ in range(3):
        a = a + 1
    return a


def default(a, b=2):
    return a + b


def unknown(a):
    return a + depth  # noqa: F821


def stranger(a):
    return print(a)


def power_of_a_name(a, b):
    return a**b


def assigned_twice(a):
    b = a
    b = b + 1
    return b


def two_returns(a):
    return a
    return a


def words(a):
    return "a"


def truth(a):
    return True


def attribute(a):
    return a.real


def keyword(a, b):
    return max(a, b, key=abs)


def listed(a):
    return [a]


def no_return(a):
    b = a  # noqa: F841


def unpacked(a):
    b, c = a
    return b + c


def block(a):
    if a > 1:
        return a
    return 1


REFUSALS = [
    (remainder, 1, "% is refused: write it with whole_down"),
    (floor_division, 1, "// is refused: write it with whole_down"),
    (rounding, 1, "calling round is refused: call whole_up or whole_down"),
    (bare_ceiling, 1, "math.ceil is refused: call whole_up"),
    (square_root, 1, "math.sqrt is refused: write ** 0.5"),
    (chained, 1, "a chained comparison is refused: one comparison at a time"),
    (both, 1, "and/or is refused: write two checks"),
    (loop, 1, "loops are refused: write fixed steps"),
    (default, 0, "defaults, *args and **kwargs are refused: every parameter is a named quantity"),
    (unknown, 1, "depth is neither a parameter nor assigned above"),
    (stranger, 1, "calling print is refused"),
    (power_of_a_name, 1, "an exponent is a plain number"),
    (assigned_twice, 2, "b is assigned twice: give the second a name of its own"),
    (two_returns, 1, "one return, on the last line"),
    (words, 1, "'a' is refused: only numbers stand in a formula"),
    (truth, 1, "True is refused: only numbers stand in a formula"),
    (attribute, 1, "a.real is refused: only math has attributes"),
    (keyword, 1, "a call takes plain arguments in their order"),
    (listed, 1, "List is refused"),
    (no_return, 1, "the last line returns the result"),
    (unpacked, 1, "only a plain name is assigned"),
    (block, 1, "an if block is refused: write a conditional expression"),
]


@pytest.mark.parametrize(
    ("function", "line", "reason"), REFUSALS, ids=lambda each: getattr(each, "__name__", "")
)
def test_what_is_not_in_the_subset_is_refused_with_file_line_and_reason(function, line, reason):
    with pytest.raises(PrintError) as refused:
        print_function(function)
    at = function.__code__.co_firstlineno + line
    assert str(refused.value) == f"test_printer.py:{at}: {function.__name__}: {reason}"


def spoken(function):
    body = read_body(function)
    said = WordsVisitor(body).visit(body.result).words
    return "".join(each if isinstance(each, str) else each[0].replace("_", " ") for each in said)


def film_volume(face_area, depth, texture_depth):
    return face_area * (depth + texture_depth)


def difference(a, b, c):
    return a - (b - c) / (a * b)


def rounded_up(a, b):
    return max(1, whole_up(a / b))


def chosen(a, b):
    return a if a > b else b**2


@pytest.mark.parametrize(
    ("function", "said"),
    [
        (film_volume, "face area × (depth + texture depth)"),
        (difference, "a − (b − c) ÷ (a × b)"),
        (rounded_up, "the greater of 1 and (a ÷ b, rounded up)"),
        (chosen, "a if a is more than b, otherwise b²"),
    ],
)
def test_a_working_is_said_in_words_with_as_few_brackets_as_keep_the_meaning(function, said):
    assert spoken(function) == said


def test_a_working_is_drawn_as_nested_arrays():
    body = read_body(film_volume)
    assert MathVisitor(body).visit(body.result) == [
        "mrow",
        ["mi", "face area"],
        ["mo", "×"],
        ["mrow", ["mo", "("], ["mrow", ["mi", "depth"], ["mo", "+"], ["mi", "texture depth"]], ["mo", ")"]],
    ]
