"""The formula book: every entry is complete, its example runs, and what is written wrongly is refused."""

import doctest
import importlib
import re

import pytest

from webapp.errors import FormulaError
from webapp.formulas import rules
from webapp.formulas.book import book_of, check, formula, load_book, valid_range
from webapp.units import Centimetres, Seconds, SquareCentimetres, Truth

BOOK = load_book()


def examples(module: object) -> list[doctest.DocTest]:
    return [each for each in doctest.DocTestFinder().find(module) if each.examples]


MODULES = [
    rules,
    *(
        importlib.import_module(f"webapp.formulas.{step}")
        for step in sorted({row.step for row in BOOK.everything().values()})
    ),
]
DOCTESTS = [each for module in MODULES for each in examples(module)]


@pytest.mark.parametrize("each", DOCTESTS, ids=lambda each: each.name.removeprefix("webapp.formulas."))
def test_the_example_in_the_docstring_holds(each: doctest.DocTest) -> None:
    said: list[str] = []
    result = doctest.DocTestRunner(verbose=False).run(each, out=said.append)
    assert result.failed == 0, "".join(said)


@pytest.mark.parametrize("name", BOOK.formulas)
def test_every_formula_has_a_sentence_an_example_that_runs_and_a_source(name: str) -> None:
    row = BOOK.formulas[name]
    assert row.summary.endswith(".")
    assert row.source
    assert row.example
    assert f"webapp.formulas.{row.step}.{name}" in {each.name for each in DOCTESTS}


@pytest.mark.parametrize("name", BOOK.checks)
def test_every_check_says_what_is_wrong_and_has_an_example(name: str) -> None:
    row = BOOK.checks[name]
    assert row.says.endswith(".")
    assert f"webapp.formulas.{row.formula.step}.{name}" in {each.name for each in DOCTESTS}


@pytest.mark.parametrize("name", BOOK.everything())
def test_names_are_words_in_full_and_docstrings_say_no_code(name: str) -> None:
    assert re.fullmatch(r"[a-z]+(_[a-z0-9]+)*", name)
    assert "`" not in BOOK.everything()[name].summary


def test_a_formula_without_a_source_is_refused() -> None:
    @formula(level="face")
    def tilt(depth: Centimetres) -> Centimetres:
        """How far one end stands higher."""
        return depth

    with pytest.raises(FormulaError, match="tilt names no source"):
        book_of([tilt])


def test_a_formula_without_a_unit_is_refused() -> None:
    @formula(level="face")
    def tilt(depth: float) -> Centimetres:
        """How far one end stands higher.

        Source: geometry.
        """
        return depth

    with pytest.raises(FormulaError, match="tilt, depth: annotate it with a unit"):
        book_of([tilt])


def test_a_formula_without_a_docstring_is_refused() -> None:
    @formula(level="face")
    def tilt(depth: Centimetres) -> Centimetres:
        return depth

    with pytest.raises(FormulaError, match="tilt: has no docstring"):
        book_of([tilt])


def test_two_formulas_of_one_name_are_refused() -> None:
    @formula(level="face")
    def tilt(depth: Centimetres) -> Centimetres:
        """How far one end stands higher.

        Source: geometry.
        """
        return depth

    with pytest.raises(FormulaError, match="tilt is written twice"):
        book_of([tilt, tilt])


def test_a_range_of_nothing_is_refused() -> None:
    @valid_range(says="It is too deep.")
    def tilt_range(depth: Centimetres) -> Truth:
        """No deeper than a coat."""
        return depth < 1

    with pytest.raises(FormulaError, match="there is no formula tilt for this range"):
        book_of([tilt_range])


def test_a_range_that_looks_at_more_than_its_formula_is_refused() -> None:
    @formula(level="face")
    def tilt(depth: Centimetres) -> Centimetres:
        """How far one end stands higher.

        Source: geometry.
        """
        return depth

    @valid_range(says="It takes too long.")
    def tilt_range(pot_life: Seconds) -> Truth:
        """No longer than the pot life."""
        return pot_life < 1

    with pytest.raises(FormulaError, match="tilt has no parameter pot_life"):
        book_of([tilt, tilt_range])


def test_a_severity_of_its_own_is_refused() -> None:
    with pytest.raises(FormulaError, match="note, caution, stop"):
        check(level="face", severity="alarm", says="Stop.", beside="depth")


def test_the_book_keeps_files_by_name_and_functions_by_line() -> None:
    steps = [row.step for row in BOOK.formulas.values()]
    assert steps == sorted(steps)
    areas = [row.line for row in BOOK.formulas.values() if row.step == "areas"]
    assert areas == sorted(areas)
    assert BOOK.formulas["rectangle_area"].levels == ("face", "opening")
    assert BOOK.formulas["rectangle_area"].parameters.keys() == {"width", "height"}
    assert BOOK.formulas["rectangle_area"].unit == SquareCentimetres.__metadata__[0]
