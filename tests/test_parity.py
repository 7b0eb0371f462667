"""Python and JavaScript fill the same cells with the same figures, the same blanks and the same reasons."""

import copy
import functools
import math
from collections import Counter
from random import Random

import pytest

from tests.random_jobs import random_job, random_text
from tests.running import drawn
from webapp.inputs.table import INPUTS
from webapp.job.demo import EXAMPLE_JOB
from webapp.printer.syntax import RULES
from webapp.printer.working import MARCHED
from webapp.sheet.reasons import because, sentence, ways_out
from webapp.sheet.runner import calculate
from webapp.sheet.wiring import load_sheet

JOBS = drawn(2000)
BATCH = 100
# Among a tenth of the jobs a rare formula is met by luck.
AT_LEAST = 50 if JOBS == 2000 else 1
EDITED = drawn(150)

IN_JAVASCRIPT = """async (jobs) => {
  const { calculate, everyRow } = await import(new URL("sheet/sheet.js", window.modules));
  const { because, saysOf, waysOut } = await import(new URL("sheet/reasons.js", window.modules));
  const why = (blank) => [blank.kind, blank.name, blank.row.id, because(blank)].join("|");
  const said = (check) => {
    if (check.blank) return [why(check.blank)];
    return check.state === "wrong" ? [saysOf(check), ...waysOut(check)] : [];
  };
  return jobs.map((job) => [...everyRow(calculate(job))].map((row) => ({
    row: `${row.level} ${row.id}`,
    names: Object.keys(row.cells).join(" "),
    values: Object.values(row.cells).map((cell) => (cell.blank ? null : cell.value)),
    blanks: Object.values(row.cells).filter((cell) => cell.blank).map((cell) => why(cell.blank)),
    winners: Object.values(row.cells).map((cell) => cell.winner).join(" "),
    checks: row.checks.map((check) => [check.name, check.state, ...said(check)].join(" ")),
  })));
}"""


AFTER_EDITS = """async ([cases, reads]) => {
  const { calculate, everyRow } = await import(new URL("sheet/sheet.js", window.modules));
  const { because } = await import(new URL("sheet/reasons.js", window.modules));
  const { openJob, rowOf } = await import(new URL("keeping/store.js", window.modules));
  const { refill, settle } = await import(new URL("sheet/refill.js", window.modules));
  const { inputs } = await import(new URL("printed.js", window.modules));
  const why = (blank) => blank && [blank.kind, blank.name, blank.row.id, because(blank)];
  const plain = (row, cells, checks) => JSON.stringify([
    row.id,
    row.touched,
    Object.keys(cells).sort().map((name) => [name, { ...cells[name], blank: why(cells[name].blank) }]),
    checks.map((check) => [check.name, check.state, why(check.blank)]),
  ]);
  const read = (row) => plain(row, row.cells, row.checks);
  const filled = (row) => plain(row, row.filled, row.made);
  const differing = (root, job, rowsOf, from) => {
    const fresh = new Map([...everyRow(calculate(job))].map((row) => [row.id, read(row)]));
    return rowsOf(root).filter((row) => from(row) !== fresh.get(row.id)).map((row) => row.id);
  };
  // Rows are read in another order each time, and not all of them.
  const some = (start) => (root) => {
    const rows = [...everyRow(root)];
    return [...rows.slice(start % rows.length), ...rows].filter((_, place) => place % 3 === 0);
  };
  const all = (root) => [...everyRow(root)];
  return cases.flatMap(([job, edits], number) => {
    const root = calculate(job);
    openJob(job);
    return edits.flatMap(([rowId, name, text], count) => {
      const at = rowId === "job" ? (job[inputs[name].section] ??= {}) : rowOf(rowId).row;
      at[name] = text;
      refill(root, job, rowId, name, text);
      const found = reads ? differing(root, job, some(number + count), read) : [];
      // Now and then all waits on for the next edit.
      if (reads && count % 3) return found;
      settle(root);
      return [...found, ...differing(root, job, all, filled)];
    });
  });
}"""


@pytest.mark.parametrize("reads", [True, False], ids=["read before it is settled", "settled at once"])
def test_after_any_edits_the_phone_knows_the_same_as_after_a_fresh_calculation(phone, reads):
    draw = Random(5)
    cases = [(random_job(seed), edits_of(random_job(seed), draw)) for seed in range(0, 4 * EDITED, 4)]
    assert phone.evaluate(AFTER_EDITS, [cases, reads]) == []


ONE_READER = """async ([job, read]) => {
  const { calculate, findRow } = await import(new URL("sheet/sheet.js", window.modules));
  const { refill } = await import(new URL("sheet/refill.js", window.modules));
  const root = calculate(job);
  const before = new Map(job.colours.map(({ id }) => [id, { ...findRow(root, `${id}-cup`).filled }]));
  job.bench.cup_capacity = "50 mL";
  refill(root, job, "job", "cup_capacity");
  for (const id of read) findRow(root, `${id}-cup`).cells;
  return job.colours.map(({ id }) => {
    const cup = findRow(root, `${id}-cup`);
    return Object.keys(cup.filled).filter((name) => cup.filled[name] !== before.get(id)[name]).length;
  });
}"""


def test_an_edit_fills_again_what_is_read_and_leaves_the_rest(phone):
    job = copy.deepcopy(EXAMPLE_JOB)
    [colour] = job["colours"]
    job["colours"] = [{**copy.deepcopy(colour), "id": each} for each in ("c1", "c2", "c3")]
    [none, *others] = phone.evaluate(ONE_READER, [job, []])
    assert (none, others) == (0, [0, 0])
    [first, second, third] = phone.evaluate(ONE_READER, [job, ["c2"]])
    assert (first, third) == (0, 0)
    assert second > 10


def edits_of(job, draw, count=12):
    """Return edits that a person could make: any input of any row of a job, as in another random job."""
    rows = {"job": ["job"], "colour": [], "face": [], "opening": []}
    for colour in job["colours"]:
        rows["colour"].append(colour["id"])
        for face in colour["faces"]:
            rows["face"].append(face["id"])
            rows["opening"] += [opening["id"] for opening in face["openings"]]
    places = [(row, each) for each in INPUTS.values() for level in each.levels for row in rows[level]]
    chosen = draw.choices(places, k=count)
    return [[row, each.name, random_text(each, draw)] for row, each in chosen]


def in_python(job):
    return [_row(row) for row in calculate(job).everything()]


def _row(row):
    cells = row.cells
    return {
        "row": f"{row.level} {row.id}",
        "names": " ".join(cells),
        "values": [None if cell.blank else cell.value for cell in cells.values()],
        "blanks": [_why(cell.blank) for cell in cells.values() if cell.blank],
        "winners": " ".join(cell.winner for cell in cells.values()),
        "checks": [" ".join((check.name, check.state, *_said(check, row))) for check in row.checks],
    }


def _said(check, row):
    if check.blank:
        return [_why(check.blank)]
    if check.state == "right":
        return []
    record = load_sheet().book.checks[check.name]
    return [sentence(record.says, row), *ways_out(record, row)]


def _why(blank):
    return "|".join((blank.kind, blank.name, blank.row.id, because(blank)))


def same(one, other, within=1e-12):
    if isinstance(one, int | float) and isinstance(other, int | float):
        return one == other or math.isclose(one, other, rel_tol=within)
    return one == other


@functools.cache
def marched():
    """The names that a march through the cure stands behind: a secant divides by small differences there."""
    rules = {name for name, rule in RULES.items() if rule.__module__ in MARCHED}
    found = set()
    for node in load_sheet().nodes:
        formula = load_sheet().book.formulas.get(node.name)
        calls = set(formula.function.__code__.co_names) if formula else set()
        if calls & rules or {name for _, name in node.asks} & found:
            found.add(node.name)
    return found


@pytest.fixture(scope="module")
def visits(phone):
    """How often each formula and check was met, non-blank and blank, while both languages agreed."""
    met: dict[str, Counter] = {"full": Counter(), "blank": Counter()}
    for start in range(0, JOBS, BATCH):
        jobs = [random_job(seed) for seed in range(start, start + BATCH)]
        for job, theirs in zip(jobs, phone.evaluate(IN_JAVASCRIPT, jobs), strict=True):
            for python, javascript in zip(in_python(job), theirs, strict=True):
                _compare(job, python, javascript)
                _count(python, met)
    return met


def _compare(job, python, javascript):
    where = f"{job['name']}, {python['row']}"
    for part in ("row", "names", "blanks", "winners", "checks"):
        assert python[part] == javascript[part], f"{where}: {part}"
    for name, one, other in zip(python["names"].split(), python["values"], javascript["values"], strict=True):
        within = 1e-9 if name in marched() else 1e-12
        assert same(one, other, within), f"{where}: {name} is {one!r} in Python, {other!r} in JavaScript"


def _count(row, met):
    for name, value in zip(row["names"].split(), row["values"], strict=True):
        met["blank" if value is None else "full"][name] += 1
    for check in row["checks"]:
        name, state, *_ = check.split(" ")
        met["blank" if state == "unchecked" else "full"][name] += 1


def test_both_languages_agree_on_random_jobs_and_meet_every_formula_blank_and_not(visits):
    book = load_sheet().book
    names = [name for name, each in book.formulas.items() if each.levels] + list(book.checks)
    needs_no_input = {name for name in names if not _asks_for_anything(name)}
    rows = [(visits["full"][name], visits["blank"][name], name) for name in names]
    least = sorted(rows, key=lambda row: min(row[0], row[1] if row[2] not in needs_no_input else row[0]))[:8]
    print("least visited (non-blank, blank):", *(f"{name} {full}/{blank}" for full, blank, name in least))
    assert [row for row in rows if row[0] < AT_LEAST] == []
    assert [row for row in rows if row[1] < AT_LEAST and row[2] not in needs_no_input] == []


def _asks_for_anything(name):
    """Say whether a formula asks for more than constants: one that does not can never be blank."""
    sheet = load_sheet()
    asked = {each for row in sheet.book.everything().values() if row.name == name for each in row.parameters}
    return bool(asked - set(sheet.constants))


def test_formulas_that_only_the_integrators_call_agree_on_random_figures(phone):
    sheet = load_sheet()
    draw = Random(16)
    apart = [
        each
        for each in sheet.book.everything().values()
        if not each.levels and each.name in sheet.book.formulas
    ]
    calls = [
        (each.name, [_figure(name, unit.kind, sheet, draw) for name, unit in each.parameters.items()])
        for each in apart
        for _ in range(200)
    ]
    theirs = phone.evaluate(
        """async (calls) => {
          const { formulas } = await import(new URL("printed.js", window.modules));
          return calls.map(([name, figures]) => {
            try { return formulas[name](...figures); } catch (signal) { return null; }
          });
        }""",
        calls,
    )
    for (name, figures), javascript in zip(calls, theirs, strict=True):
        python = _called(sheet.book.formulas[name].function, figures)
        assert same(python, javascript), (
            f"{name}({figures}) is {python!r} in Python, {javascript!r} in JavaScript"
        )


def _figure(name, kind, sheet, draw):
    if name in sheet.constants:
        return sheet.constants[name].canonical
    least, most = {"temperature": (260.0, 480.0), "share": (0.0, 1.0)}.get(kind, (1e-4, 1e3))
    return draw.uniform(least, most)


def _called(function, figures):
    try:
        value = function(*figures)
    except (ArithmeticError, ValueError, TypeError):
        return None
    return value if not isinstance(value, complex) and math.isfinite(value) else None
