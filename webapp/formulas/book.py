"""What a formula is: the decorators that mark one, the record each becomes, and the loader of the book."""

import importlib
import inspect
import pkgutil
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Any, TypeVar, get_args, get_origin, get_type_hints

import webapp.formulas
from webapp.errors import FormulaError
from webapp.units import Unit

Function = TypeVar("Function", bound=Callable[..., Any])

SEVERITIES = ("note", "caution", "stop")
# What a sentence may hold: what a name is called, and what its cell reads.
MARK = re.compile(r"\{(label|cell):(\w+)\}")
NOT_FORMULAS = re.compile(r"book|constants?|\w+_constants|(\w+_)?rules")


@dataclass(frozen=True)
class Formula:
    """One formula of the book: where it stands, what it asks for, and what its docstring says."""

    name: str
    levels: tuple[str, ...]
    function: Callable[..., Any]
    parameters: dict[str, Unit]
    unit: Unit
    summary: str
    source: str
    example: str
    step: str
    file: str
    line: int


@dataclass(frozen=True)
class Check:
    """A formula that is true when something is wrong, with the sentence that says so, and ways out."""

    formula: Formula
    severity: str
    says: str
    beside: str
    would_do: tuple[str, ...] = ()
    quiet: bool = False


@dataclass(frozen=True)
class Range:
    """A formula that is true inside the range of another, with the reason given outside of it."""

    formula: Formula
    of: str
    says: str


def formula(*, level: str | tuple[str, ...]) -> Callable[[Function], Function]:
    """Mark a function as the formula of the quantity it is named after, at one level or several."""
    return _mark("formula", level=level)


def check(
    *,
    level: str,
    severity: str,
    says: str,
    beside: str,
    would_do: Sequence[str] = (),
    quiet: bool = False,
) -> Callable[[Function], Function]:
    """Mark a function as a check: true when something is wrong with the figure it stands beside.

    Its sentence, and each of the ways out in `would_do`, may hold {label:NAME} and {cell:NAME}. A way out is
    passed over where one of its cells is blank. A `quiet` one says nothing where it cannot be made.
    """
    if severity not in SEVERITIES:
        raise FormulaError(f"a check's severity is one of {', '.join(SEVERITIES)}, not {severity!r}")
    details = {"severity": severity, "says": says, "beside": beside, "would_do": tuple(would_do)}
    return _mark("check", level=level, **details, quiet=quiet)


def valid_range(*, says: str) -> Callable[[Function], Function]:
    """Mark a function NAME_range as the range of the formula NAME: true inside, the reason outside."""
    return _mark("range", level=(), says=says)


def _mark(mark: str, *, level: str | tuple[str, ...], **details: Any) -> Callable[[Function], Function]:
    levels = (level,) if isinstance(level, str) else tuple(level)

    def marked(function: Function) -> Function:
        function.__book__ = (mark, levels, details)  # type: ignore[attr-defined]
        return function

    return marked


@dataclass(frozen=True)
class Book:
    """Every formula, check and range, in the order of their files' names and of their lines."""

    formulas: dict[str, Formula]
    checks: dict[str, Check]
    ranges: dict[str, Range]

    def everything(self) -> dict[str, Formula]:
        """Return every function of the book by name: formulas, then ranges, then checks."""
        ranges = {name: row.formula for name, row in self.ranges.items()}
        checks = {name: row.formula for name, row in self.checks.items()}
        return {**self.formulas, **ranges, **checks}


def unit_of(annotation: Any, where: str) -> Unit:
    """Return the unit that an annotation from `units` carries; anything else is an error that says where."""
    if get_origin(annotation) is Annotated:
        for extra in get_args(annotation)[1:]:
            if isinstance(extra, Unit):
                return extra
    raise FormulaError(f"{where}: annotate it with a unit from webapp/units.py, found {annotation!r}")


def record(function: Callable[..., Any], levels: tuple[str, ...]) -> Formula:
    """Read a marked function into a Formula; a missing unit, sentence or source is an error."""
    name = function.__name__
    step = function.__module__.rpartition(".")[2]
    where = f"{step}.py: {name}"
    hints = get_type_hints(function, include_extras=True)
    wanted = [*inspect.signature(function).parameters, "return"]
    units = {each: unit_of(hints.get(each), f"{where}, {each}") for each in wanted}
    result = units.pop("return")
    text = inspect.getdoc(function) or ""
    if not text:
        raise FormulaError(f"{where}: has no docstring")
    return Formula(
        name=name,
        levels=levels,
        function=function,
        parameters=units,
        unit=result,
        summary=text.split("\n\n")[0].replace("\n", " "),
        source=_said("Source", text),
        example=_said("Example", text),
        step=step,
        file=inspect.getsourcefile(function) or step,
        line=function.__code__.co_firstlineno,
    )


def _said(word: str, text: str) -> str:
    found = re.search(rf"^{word}: (.+?)(?=\n\n|\n *>>>|\Z)", text, re.MULTILINE | re.DOTALL)
    return " ".join(found[1].split()) if found else ""


def book_of(functions: list[Callable[..., Any]]) -> Book:
    """Put marked functions into a book; two of one name, or a range of nothing, is an error."""
    formulas: dict[str, Formula] = {}
    checks: dict[str, Check] = {}
    ranges: dict[str, Range] = {}
    for function in functions:
        mark, levels, details = function.__book__  # type: ignore[attr-defined]
        row = record(function, levels)
        twin = {**formulas, **{name: each.formula for name, each in checks.items()}}.get(row.name)
        if twin or row.name in ranges:
            raise FormulaError(f"{row.step}.py: {row.name} is written twice, also in {(twin or row).step}.py")
        if mark == "check":
            checks[row.name] = Check(row, **details)
            _refuse_odd_sentences(row, row, details["says"], *details["would_do"])
        elif mark == "range":
            ranges[row.name] = Range(row, row.name.removesuffix("_range"), **details)
        else:
            formulas[row.name] = row
    for each in ranges.values():
        asker = formulas.get(each.of)
        if asker is None:
            raise FormulaError(f"{each.formula.name}: there is no formula {each.of} for this range")
        strange = sorted(set(each.formula.parameters) - set(asker.parameters))
        if strange:
            raise FormulaError(f"{each.formula.name}: {each.of} has no parameter {', '.join(strange)}")
        _refuse_odd_sentences(each.formula, asker, each.says)
    for row in formulas.values():
        if not row.source:
            raise FormulaError(f"{row.step}.py: {row.name} names no source")
    return Book(formulas, checks, ranges)


def marks_in(text: str) -> list[tuple[str, str]]:
    """Return the marks of a sentence, each a kind and a name.

    >>> marks_in("{label:cup_limit} is {cell:cup_limit}.")
    [('label', 'cup_limit'), ('cell', 'cup_limit')]
    """
    return [(found[1], found[2]) for found in MARK.finditer(text)]


def _refuse_odd_sentences(row: Formula, asker: Formula, says: str, *ways: str) -> None:
    """Refuse a mark that cannot be read, and a sentence that shows a cell which may be blank."""
    where = f"{row.step}.py: {row.name}"
    for text in (says, *ways):
        if re.search("[{}]", MARK.sub("", text)):
            raise FormulaError(f"{where}: a mark is {{label:NAME}} or {{cell:NAME}}, found {text!r}")
    for kind, name in marks_in(says):
        if kind == "cell" and name not in asker.parameters:
            raise FormulaError(f"{where}: says what {name} reads, but {asker.name} does not ask for {name}")


@cache
def load_book() -> Book:
    """Read the formula files beside this one into the book, files by name, functions by line."""
    functions: list[Callable[..., Any]] = []
    for module in sorted(each.name for each in pkgutil.iter_modules(webapp.formulas.__path__)):
        if NOT_FORMULAS.fullmatch(module):
            continue
        found = vars(importlib.import_module(f"webapp.formulas.{module}")).values()
        marked = [
            each for each in found if hasattr(each, "__book__") and each.__module__.endswith(f".{module}")
        ]
        functions += sorted(marked, key=lambda each: each.__code__.co_firstlineno)
    return book_of(functions)
