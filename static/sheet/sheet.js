// The rows of a job and their cells: the generic runner that webapp/sheet/runner.py is the twin of.
// A blank argument leaves a cell blank; every blank cell knows why. Nothing here knows a formula by name.
import { checks, formulas, inputs, levels, nodes, constants } from "../printed.js";
import { readChoice, readInput } from "./quantities.js";

const isBlank = (typed) => typed === undefined || typed === null || (typeof typed === "string" && !typed.trim());
const ofEach = (give) => Object.fromEntries(Object.keys(levels).map((level) => [level, give(level)]));
const inputsOf = ofEach((level) => Object.keys(inputs).filter((name) => inputs[name].levels.includes(level)));
const checksOf = ofEach(() => ({}));
nodes.forEach(({ kind, level, name }, place) => {
  if (kind === "check") checksOf[level][name] = place;
});

/** A row of the sheet. Who reads its cells or checks finds none that an edit left behind: those are filled first. */
class Row {
  constructor(level, source, position, parent) {
    const { sections, marks } = levels[level];
    const groups = sections.length ? sections.map((key) => source[key] ?? {}) : [source];
    Object.assign(this, { level, id: source.id ?? "", name: source.name ?? "", position, parent });
    /** A copy of what stands in the job: the texts of its inputs, and what else it carries. */
    this.typed = Object.assign({}, ...groups.map((group) => picked(group, inputsOf[level])));
    this.marks = picked(source, marks);
    /** The rows below it, by level. */
    this.rows = {};
    /** The job's row. */
    this.top = parent?.top ?? this;
    /** What is filled by now: the cells by name, the checks in order. */
    this.filled = {};
    this.made = [];
    /** In the job's row alone: what waits to be filled again, and how many edits there were. */
    this.due = null;
    this.edits = 0;
  }

  get cells() {
    this.top.due?.bring(this);
    return this.filled;
  }

  get checks() {
    this.top.due?.bring(this);
    return this.made;
  }
}

/** Return the job's rows with every cell filled or blank with its reason. */
export function calculate(job) {
  const root = rowsOf(job);
  root.units = job.units;
  const byLevel = Object.fromEntries(Object.keys(levels).map((level) => [level, []]));
  for (const row of everyRow(root)) byLevel[row.level].push(row);
  for (const node of nodes) for (const row of byLevel[node.level]) fill(node, row, job.units);
  return root;
}

/** Fill a row's cell or check, or take away what its choice does without; say whether the cell differs from before. */
export function fill(node, row, jobUnits) {
  const isAsked = !node.when || above(row, node.when[0]).filled[node.when[1]].value === node.when[2];
  if (node.kind === "check") {
    keepCheck(row, node.name, isAsked && checkOf(node, row));
    return false;
  }
  const before = row.filled[node.name];
  if (!isAsked) return Boolean(before) && delete row.filled[node.name];
  const cell = cellOf(node, row, jobUnits);
  const isSame = before && cell.value === before.value && cell.blank === before.blank && cell.winner === before.winner;
  const saysSame = isSame && ["origin", "typed", "note"].every((part) => cell[part] === before[part]);
  if (!saysSame) row.filled[node.name] = cell;
  return !isSame;
}

/** Keep a check in the order in which checks are made; without one, what was kept by that name goes. */
function keepCheck({ level, made }, name, check) {
  const order = checksOf[level];
  let place = made.length;
  while (place > 0 && order[made[place - 1].name] >= order[name]) place -= 1;
  made.splice(place, made[place]?.name === name ? 1 : 0, ...(check ? [check] : []));
}

/** The rows of a level that can ask for a row's cells: itself, the one above it, or those below. */
export function rowsThatSee(row, level) {
  if (row.level === level) return [row];
  for (let found = row.parent; found; found = found.parent) if (found.level === level) return [found];
  return Object.values(row.rows).flat().flatMap((below) => rowsThatSee(below, level));
}

/** The level so many steps above a level. */
export function levelAbove(level, steps) {
  return steps ? levelAbove(levels[level].parent, steps - 1) : level;
}

/** Walk a row and all rows below it. */
export function* everyRow(row) {
  yield row;
  for (const rows of Object.values(row.rows)) for (const below of rows) yield* everyRow(below);
}

/** Find a row of the sheet by its id, or null; the job's own is "job". */
export function findRow(root, id) {
  for (const row of everyRow(root)) if (row.id === id) return row;
  return null;
}

/** The row of a level as seen from a row: itself, one above it, or the one that is worked out for such a row. */
export function rowAt(row, level) {
  if (!level) return row;
  for (let found = row; found; found = found.parent) if (found.level === level) return found;
  return rowAt(row, levels[level].parent).rows[level][0];
}

/** Checks that are wrong, and of those that cannot be made, but for quiet ones, one for each thing that is missing. */
export function shownChecks(row, cells) {
  const isAll = cells[0] === "*";
  const missing = new Set();
  return row.checks.filter(({ name, state: at, beside, severity, blank }) => {
    if (at === "right" || !(isAll || cells.includes(beside))) return false;
    if (at === "wrong") return true;
    if (checks[name].quiet) return false;
    const reason = `${blank.row.id} ${blank.name}`;
    const isNews = !isAll && severity !== "note" && !missing.has(reason);
    missing.add(reason);
    return isNews;
  });
}

function rowsOf(job) {
  return newRow("job", { ...job, id: "job" }, 1, null);
}

function newRow(level, source, position, parent) {
  const row = new Row(level, source, position, parent);
  for (const below of levels[level].below) {
    const key = levels[below].rows;
    const sources = key ? source[key] ?? [] : [{ id: `${row.id}-${below}` }];
    row.rows[below] = sources.map((each, index) => newRow(below, each, index + 1, row));
  }
  row.touched = isTouched(row);
  return row;
}

function picked(group, names) {
  return Object.fromEntries(names.filter((name) => name in group).map((name) => [name, group[name]]));
}

/** Whether something is typed in a row or below it; a choice alone is not. */
export function isTouched(row) {
  return Object.entries(row.typed).some(([name, typed]) => inputs[name].kind !== "choice" && !isBlank(typed))
    || Object.values(row.rows).some((rows) => rows.some((below) => below.touched));
}

/** The row so many steps above a row. */
export function above(row, steps) {
  let found = row;
  for (let step = 0; step < steps; step += 1) found = found.parent;
  return found;
}

function full(value, origin, winner = "") {
  return { value, blank: null, origin, winner, typed: "", note: "" };
}

function empty(blank, origin) {
  return { value: null, blank, origin, winner: "", typed: "", note: "" };
}

function cellOf(node, row, jobUnits) {
  switch (node.kind) {
    case "input": return inputOf(node, row, jobUnits);
    case "constant": return full(constants[node.name].value, "constant");
    case "formula": return formulaOf(node, row);
    case "choice": return choiceOf(node, row);
    case "greatest_of":
    case "least_of":
    case "first_of": return pickOf(node, row);
    default: return gatherOf(node, row);
  }
}

function inputOf(node, row, jobUnits) {
  const { name } = node;
  const input = inputs[name];
  const typed = row.typed[name];
  if (!isBlank(typed)) {
    const reading = input.kind === "choice" ? readChoice(name, typed) : readInput(name, typed, jobUnits);
    const cell = reading.error
      ? empty({ kind: "refused", name, row, says: reading.error }, "typed")
      : full(reading.value, "typed");
    cell.typed = typeof typed === "string" ? typed : "";
    cell.note = reading.note ?? "";
    return cell;
  }
  if (node.asks.length) {
    const taken = above(row, node.asks[0][0]).filled[node.asks[0][1]];
    return { ...taken, origin: "fallback", winner: node.asks[0][1], typed: "", note: "" };
  }
  if (input.fallback === null) return empty({ kind: "missing", name, row, says: "" }, "typed");
  return full(input.fallback.value, "default");
}

const signalled = Symbol("not computable");

/** Call a printed function; the signal of one that cannot be computed comes back as a value. */
function computed(printed, values) {
  try {
    const value = printed(...values);
    return typeof value === "boolean" || Number.isFinite(value) ? value : signalled;
  } catch (signal) {
    if (signal instanceof Error) throw signal;
    return signalled;
  }
}

function asked(node, row) {
  return node.asks.map(([steps, name]) => above(row, steps).filled[name]);
}

function formulaOf(node, row) {
  const cells = asked(node, row);
  const blank = cells.find((cell) => cell.blank)?.blank;
  if (blank) return empty(blank, "formula");
  const values = cells.map((cell) => cell.value);
  if (node.range) {
    const inside = computed(formulas[`${node.name}_range`], node.range.map((each) => values[each]));
    if (inside === false) return empty({ kind: "range", name: node.name, row, says: "" }, "formula");
    if (inside === signalled) return empty({ kind: "arithmetic", name: node.name, row, says: "" }, "formula");
  }
  const value = computed(formulas[node.name], values);
  if (value === signalled) return empty({ kind: "arithmetic", name: node.name, row, says: "" }, "formula");
  return full(value, "formula");
}

function checkOf(node, row) {
  const { severity, beside } = checks[node.name];
  const cells = asked(node, row);
  let blank = cells.find((cell) => cell.blank)?.blank ?? null;
  let state = "unchecked";
  if (!blank) {
    const wrong = computed(formulas[node.name], cells.map((cell) => cell.value));
    if (wrong === signalled) blank = { kind: "arithmetic", name: node.name, row, says: "" };
    else state = wrong ? "wrong" : "right";
  }
  return { name: node.name, state, row, blank, severity, beside };
}

function choiceOf(node, row) {
  const [by, ...options] = node.asks;
  const chosen = above(row, by[0]).filled[by[1]];
  if (chosen.blank) return empty(chosen.blank, "choice");
  const winner = node.cells[chosen.value];
  const [steps] = options.find(([, name]) => name === winner);
  const cell = above(row, steps).filled[winner];
  return { value: cell.value, blank: cell.blank, origin: "choice", winner, typed: "", note: "" };
}

const WINS = {
  greatest_of: (value, best) => value > best,
  least_of: (value, best) => value < best,
  first_of: () => false,
};

function pickOf(node, row) {
  let best = null;
  let first = null;
  for (const [steps, name] of node.asks) {
    const cell = above(row, steps).filled[name];
    if (cell.blank) {
      first ??= cell.blank;
      if (node.needed.includes(name) || cell.blank.kind === "refused") return empty(cell.blank, node.kind);
    } else if (!best || WINS[node.kind](cell.value, best.value)) {
      best = full(cell.value, node.kind, name);
    }
  }
  return best ?? empty(first, node.kind);
}

function gatherOf(node, row) {
  const name = node.asks[0][1];
  const rows = row.rows[node.below].filter((below) => below.touched || !levels[node.below].rows);
  if (!rows.length && (node.kind !== "total" || levels[node.below].empty)) {
    return empty({ kind: "empty", name: node.below, row, says: "" }, node.kind);
  }
  const cells = rows.map((below) => below.filled[name]);
  const blank = cells.find((cell) => cell.blank)?.blank;
  if (blank) return empty(blank, node.kind);
  const values = cells.map((cell) => cell.value);
  if (node.kind === "total") return full(values.reduce((sum, value) => sum + value, 0), "total");
  return full(node.kind === "most" ? Math.max(...values) : Math.min(...values), node.kind);
}
