"""Breaks each formula in turn and counts how many breaks the fast tests of the formulas notice.

`python -m tests.mutation` makes every break; with names of formulas behind it, those of these only; with
`--tenth WORD`, a tenth of them, which the word decides: a commit's hash, where a commit is checked. A break
is one sign, factor, exponent, comparison or function in the syntax tree of one function; only the tests that
call that function run against it, in this process, until the first that fails.
"""

import argparse
import ast
import inspect
import signal
import sys
import textwrap
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from copy import deepcopy
from dataclasses import dataclass
from itertools import chain
from pathlib import Path
from types import CodeType, FrameType, FunctionType
from typing import Any

import pytest
from _pytest.runner import runtestprotocol

from tests.tenth import tenth_of
from webapp.formulas.book import load_book
from webapp.printer.syntax import RULES

HERE = Path(__file__).parent
FAST_TESTS = (
    "test_book.py",
    "test_ranges.py",
    "test_laws.py",
    "test_laws_of_the_film.py",
    "test_unit_proof.py",
    "against_the_outside",
)
NEEDS_A_BROWSER = {"phone", "page", "browser"}
SLOWEST = 1.5
GIVE_UP_AFTER = 10
WANTED = 0.95

OTHER_OPERATOR: dict[type, ast.operator] = {
    ast.Add: ast.Sub(),
    ast.Sub: ast.Add(),
    ast.Mult: ast.Div(),
    ast.Div: ast.Mult(),
}
OTHER_COMPARISON: dict[type, ast.cmpop] = {
    ast.Lt: ast.GtE(),
    ast.GtE: ast.Lt(),
    ast.Gt: ast.LtE(),
    ast.LtE: ast.Gt(),
    ast.Eq: ast.NotEq(),
    ast.NotEq: ast.Eq(),
}
OTHER_FUNCTION = {
    "sin": "cos",
    "cos": "sin",
    "tan": "sin",
    "asin": "acos",
    "acos": "asin",
    "exp": "log",
    "log": "exp",
    "min": "max",
    "max": "min",
    "whole_up": "whole_down",
    "whole_down": "whole_up",
}


@dataclass(frozen=True)
class Mutant:
    """One break of one function: what kind it is, what was broken, and the code that stands in for it."""

    function: FunctionType
    kind: str
    change: str
    code: CodeType

    @property
    def place(self) -> str:
        """Where the function stands."""
        return f"{self.function.__module__}.{self.function.__name__}"


def functions() -> list[FunctionType]:
    """Return every formula, range, check and shared rule."""
    book = [row.function for row in load_book().everything().values()]
    return [*RULES.values(), *book]


def mutants(function: FunctionType) -> Iterator[Mutant]:
    """Break a function in every way that the tables know, one at a time."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(function))).body[0]
    assert isinstance(tree, ast.FunctionDef)
    tree.decorator_list = []
    for number, node in enumerate(ast.walk(tree)):
        for kind, breaking in _breaks(node):
            broken = deepcopy(tree)
            target = list(ast.walk(broken))[number]
            before = ast.unparse(target)
            breaking(target)
            yield Mutant(function, kind, f"{before}  ->  {ast.unparse(target)}", _code(broken, function))


def _breaks(node: ast.AST) -> Iterator[tuple[str, Callable[[Any], None]]]:
    if isinstance(node, ast.BinOp):
        if isinstance(node.op, ast.Pow):
            yield "exponent", lambda it: setattr(it, "right", ast.BinOp(it.right, ast.Add(), ast.Constant(1)))
        else:
            other = OTHER_OPERATOR[type(node.op)]
            kind = "sign" if isinstance(node.op, ast.Add | ast.Sub) else "factor"
            yield kind, lambda it: setattr(it, "op", other)
    if isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        yield "factor", lambda it: setattr(it, "value", it.value * 2 if it.value else 1)
    if isinstance(node, ast.UnaryOp):
        yield "sign", lambda it: setattr(it, "op", ast.UAdd())
    if isinstance(node, ast.Compare):
        yield "comparison", lambda it: setattr(it, "ops", [OTHER_COMPARISON[type(it.ops[0])]])
    if isinstance(node, ast.Return) and not isinstance(node.value, ast.Compare):
        yield "sign", lambda it: setattr(it, "value", ast.UnaryOp(ast.USub(), it.value))
        yield "factor", lambda it: setattr(it, "value", ast.BinOp(it.value, ast.Mult(), ast.Constant(1.02)))
    if isinstance(node, ast.Attribute) and node.attr in OTHER_FUNCTION:
        yield "function", lambda it: setattr(it, "attr", OTHER_FUNCTION[it.attr])
    if isinstance(node, ast.Name) and node.id in OTHER_FUNCTION:
        yield "function", lambda it: setattr(it, "id", OTHER_FUNCTION[it.id])


def _code(tree: ast.FunctionDef, function: FunctionType) -> CodeType:
    module = ast.Module([tree], [])
    names = dict(function.__globals__)
    exec(compile(ast.fix_missing_locations(module), f"<broken {function.__name__}>", "exec"), names)
    return names[function.__name__].__code__


@contextmanager
def broken(mutant: Mutant) -> Iterator[None]:
    """Put a break in place of the function's code, for everyone who holds the function."""
    sound = mutant.function.__code__
    mutant.function.__code__ = mutant.code
    try:
        yield
    finally:
        mutant.function.__code__ = sound


@contextmanager
def called(codes: set[CodeType], found: set[CodeType]) -> Iterator[None]:
    """Note which of some functions are called meanwhile."""

    def note(frame: FrameType, event: str, _: Any) -> None:
        if event == "call" and frame.f_code in codes:
            found.add(frame.f_code)

    sys.setprofile(note)
    try:
        yield
    finally:
        sys.setprofile(None)


def passes(item: pytest.Item) -> bool:
    """Run one test; one that takes too long has failed."""

    def give_up(*_: Any) -> None:
        raise TimeoutError("the broken formula keeps the test from ending")

    signal.signal(signal.SIGALRM, give_up)
    signal.alarm(GIVE_UP_AFTER)
    try:
        return not any(report.failed for report in runtestprotocol(item, nextitem=None, log=False))
    finally:
        signal.alarm(0)


class MutationRun:
    """Runs the collected tests once unbroken, to see which function each calls, then against every break."""

    def __init__(self, only: set[str], word: str | None = None) -> None:
        self.only = only
        self.word = word
        self.caught: Counter[str] = Counter()
        self.all: Counter[str] = Counter()
        self.survivors: list[Mutant] = []

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Leave out what needs a browser."""
        items[:] = [each for each in items if not NEEDS_A_BROWSER & set(getattr(each, "fixturenames", ()))]

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Take the place of pytest's own loop."""
        callers = self._callers(session)
        for mutant in self._breaks():
            self.all[mutant.kind] += 1
            tests = callers[mutant.function.__code__]
            with broken(mutant):
                noticed = not all(passes(item) for item in tests)
            if noticed:
                self.caught[mutant.kind] += 1
            else:
                self.survivors.append(mutant)
        return True

    def _breaks(self) -> list[Mutant]:
        wanted = [each for each in functions() if not self.only or each.__name__ in self.only]
        breaks = {f"{each.place} {number}": each for number, each in enumerate(chain(*map(mutants, wanted)))}
        return [breaks[name] for name in (breaks if self.word is None else tenth_of(list(breaks), self.word))]

    def _callers(self, session: pytest.Session) -> dict[CodeType, list[pytest.Item]]:
        codes = {each.__code__ for each in functions()}
        timed: dict[CodeType, list[tuple[float, int, pytest.Item]]] = {code: [] for code in codes}
        for number, item in enumerate(session.items):
            found: set[CodeType] = set()
            start = time.perf_counter()
            with called(codes, found):
                sound = passes(item)
            taken = time.perf_counter() - start
            if not sound:
                print(f"left out, it fails or takes too long unbroken: {item.nodeid}")
            elif taken < SLOWEST:
                for code in found:
                    timed[code].append((taken, number, item))
        return {
            code: [item for *_, item in sorted(rows, key=lambda row: row[:2])] for code, rows in timed.items()
        }

    def report(self) -> float:
        """Print what was caught and what survived; return the share caught."""
        for mutant in self.survivors:
            print(f"survived: {mutant.place}: {mutant.kind}: {mutant.change}")
        for kind, count in sorted(self.all.items()):
            print(f"{kind:>12} {self.caught[kind]}/{count}")
        caught, count = self.caught.total(), self.all.total()
        share = caught / count if count else 1.0
        print(f"{'caught':>12} {caught}/{count}, {share:.1%}")
        return share


def main() -> int:
    """Break the book; return 0 where enough breaks are noticed."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutation", description=__doc__)
    parser.add_argument("names", nargs="*", help="formulas to break; without any, all of them")
    parser.add_argument("--tenth", metavar="WORD", help="make a tenth of the breaks, which the word decides")
    options = parser.parse_args()
    run = MutationRun(set(options.names), options.tenth)
    paths = [str(HERE / name) for name in FAST_TESTS]
    pytest.main(["-n0", "-p", "no:cacheprovider", "-p", "no:terminal", *paths], plugins=[run])
    return 0 if run.report() >= WANTED else 1


if __name__ == "__main__":
    sys.exit(main())
