import { inputs, levels, startingCups } from "../printed.js";
import { unitBehind } from "../sheet/quantities.js";
import { calculate, findRow } from "../sheet/sheet.js";

const SWATCHES = ["#8f2d1b", "#08545c", "#1f4b8f", "#c58a00", "#3d3d3d", "#5b2a6e", "#2f6b3a", "#b8b2a3"];

const listeners = new Set();
const removed = [];
let job = null;
let sheet = null;
let filling = null;

/** The one state: the job as typed, and its sheet, calculated when first asked for after a change. */
export const state = {
  get job() {
    return job;
  },
  get sheet() {
    sheet = sheet || calculate(job);
    return sheet;
  },
};

/**
 * Take what fills a sheet again after an edit (sheet/refill.js), which comes after the first screen; until then the
 * whole job is calculated.
 */
export function fillAgainWith(module) {
  filling = module;
}

/** Fill what an edit has left to be filled. */
export function settle() {
  if (sheet) filling?.settle(sheet);
}

/**
 * Call a listener after every change with {kind, row, name}; kind is "open", "edit", "rows", "units" or "bench".
 * @param {(change: {kind: string, row?: string, name?: string}) => void} listener
 * @returns {() => void} takes the listener away again
 */
export function subscribe(listener) {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Take a job as the one that is worked on. */
export function openJob(opened) {
  job = opened;
  removed.length = 0;
  announce({ kind: "open" });
}

/** Keep what was typed, verbatim, in a row's input, or as the name of a row ("name"), card ("card_name") or swatch. */
export function edit(rowId, name, text) {
  const row = rowId === "job" ? holder(name) : rowOf(rowId)?.row;
  if (!row) return;
  row[name === "card_name" ? "name" : name] = text;
  const isFirst = job.example;
  touched();
  const edited = !isFirst && sheet && afterEdit(rowId, name, text);
  announce({ kind: "edit", row: rowId, name }, edited);
}

/** Choose the unit in which a kind (length, volume, temperature) is read; what was typed stays the same amount. */
export function setUnit(kind, unit) {
  const cup = kind === "temperature" ? null : startingCupFor(kind, unit);
  const next = { ...job.units, [kind]: unit, ...cup?.units };
  const rows = [...rowsBelow(job, "job")].map(({ row }) => row);
  const groups = [...levels.job.sections.map((key) => job[key] || {}), ...rows];
  for (const group of groups) Object.assign(group, spelledOut(group, next));
  Object.assign(job.bench ?? {}, cup?.bench);
  job.units = next;
  announce({ kind: "units" });
}

/** The starting cup in other units, while the job still has the one that it started with; null once it has its own. */
function startingCupFor(kind, unit) {
  const isStarting = Object.values(startingCups).some((cup) => (
    Object.entries(cup).every(([name, text]) => job.bench?.[name] === text)
  ));
  const volume = { in: "fl oz", mm: "mL", cm: "mL" }[unit] ?? unit;
  return isStarting ? { units: { volume }, bench: startingCups[volume] } : null;
}

/**
 * A row's or card's values with the unit of this job behind each bare number, so that they mean the same elsewhere.
 * @param {object} row
 * @param {object | null} units the job's units elsewhere: what they read alike stays as it was typed
 */
export function spelledOut(row, units = null) {
  const spelled = Object.entries(row).map(([name, text]) => {
    if (typeof text !== "string" || !text.trim()) return [name, text];
    const unit = unitBehind(name, text, job.units);
    const isAlike = unit === "" || (units && unit === unitBehind(name, text, units));
    return [name, isAlike ? text : `${text.trimEnd()} ${unit}`];
  });
  return Object.fromEntries(spelled);
}

/** Put a resin card's figures in place of those there are; undo brings the old ones back. */
export function takeCard(card) {
  const before = job.card;
  job.card = { ...card };
  touched();
  remember(`Card ${before?.name || "without a name"} put away`, () => {
    job.card = before;
  });
  announce({ kind: "rows" });
}

/** Add a row of a level below a parent ("job", a colour's or a face's id) and return its id. */
export function addRow(level, parentId, values = {}) {
  const { first_name: stem, rows: key, marks, held, records } = levels[level];
  const { row: parent } = rowOf(parentId);
  const rows = (parent[key] = parent[key] || []);
  const row = { id: newId(level), name: freeName(stem, rows, rows.length + 1) };
  if (marks.includes("swatch")) row.swatch = freeSwatch(rows);
  for (const list of [...held.map((below) => levels[below].rows), ...records]) row[list] = [];
  rows.push(Object.assign(row, values));
  touched();
  announce({ kind: "rows", row: row.id });
  return row.id;
}

/** Copy a row with all below it to the place after it, and return the copy's id; cups are not copied. */
export function copyRow(rowId) {
  const { row, level, rows } = rowOf(rowId);
  const copy = withNewIds(JSON.parse(JSON.stringify(row)), level);
  copy.name = freeName((row.name || levels[level].first_name).replace(/ \d+$/, ""), rows, 2);
  for (const list of levels[level].records) copy[list] = [];
  rows.splice(rows.indexOf(row) + 1, 0, copy);
  touched();
  announce({ kind: "rows", row: copy.id });
  return copy.id;
}

/** Take a row away; undo puts it back where it was. */
export function removeRow(rowId) {
  const { row, level, rows, parent } = rowOf(rowId);
  const place = rows.indexOf(row);
  rows.splice(place, 1);
  touched();
  remember(`${row.name || "Row"} deleted`, () => rows.splice(place, 0, row), rowId);
  announce({ kind: "rows", removed: { row, level, place, parent: parent === job ? "job" : parent.id } });
}

/** Say what undo would bring back, or "" where there is nothing. */
export function undoable() {
  return removed.length ? removed[removed.length - 1].says : "";
}

/** Bring back what was taken away last. */
export function undo() {
  const last = removed.pop();
  last?.back();
  announce({ kind: "rows", back: last?.rowId });
}

/** Keep a cup of a colour, in place of the one with its id or as a new one; every tap on the bench comes here. */
export function keepCup(colourId, cup) {
  const { row } = rowOf(colourId);
  const cups = (row.cups = row.cups || []);
  const place = cups.findIndex((each) => each.id === cup.id);
  // The plan inside stays as it was when the cup began, whatever is typed in the job later on.
  const own = JSON.parse(JSON.stringify(cup));
  cups.splice(place < 0 ? cups.length : place, place < 0 ? 0 : 1, own);
  announce({ kind: "bench", row: colourId });
}

/** Find a row of the job by id: {row, level, rows (it stands among), parent}. */
export function rowOf(rowId) {
  if (rowId === "job") return { row: job, level: "job", rows: [], parent: null };
  for (const found of rowsBelow(job, "job")) if (found.row.id === rowId) return found;
  return null;
}

/** What a person typed in a row of the sheet, as text. */
export function typedIn(row, name) {
  if (name === "name") return row.name;
  if (name === "card_name") return job.card?.name ?? "";
  return String(row.typed[name] ?? row.marks[name] ?? "");
}

/** Make an id that no other row has, its first letter that of the level. */
export function newId(level) {
  const random = crypto.getRandomValues(new Uint32Array(2));
  return level[0] + random[0].toString(36) + random[1].toString(36);
}

/** Walk the rows of the job below a row, each as {row, level, rows (it stands among), parent}. */
function* rowsBelow(parent, parentLevel) {
  for (const level of levels[parentLevel].held) {
    const rows = parent[levels[level].rows] ?? [];
    for (const row of rows) {
      yield { row, level, rows, parent };
      yield* rowsBelow(row, level);
    }
  }
}

function holder(name) {
  if (name === "name") return job;
  const section = name === "card_name" ? "card" : inputs[name].section;
  if (!levels.job.sections.includes(section)) return null;
  return (job[section] = job[section] || {});
}

function withNewIds(row, level) {
  row.id = newId(level);
  for (const below of levels[level].held) for (const each of row[levels[below].rows] ?? []) withNewIds(each, below);
  return row;
}

function freeName(stem, rows, first) {
  const taken = new Set(rows.map((row) => row.name));
  let number = first;
  while (taken.has(`${stem} ${number}`)) number += 1;
  return `${stem} ${number}`;
}

function freeSwatch(rows) {
  const taken = new Set(rows.map((row) => row.swatch));
  return SWATCHES.find((each) => !taken.has(each)) || SWATCHES[0];
}

function remember(says, back, rowId) {
  removed.push({ says, back, rowId });
}

/** The first edit makes the example a job of its own, which is saved beside others. */
function touched() {
  if (!job.example) return;
  delete job.example;
  job.id = newId("job");
  job.name = (job.name ?? "").replace(/^Example: (.)/, (_, first) => first.toUpperCase());
}

/** The sheet after an edit, or null where it has to be calculated anew; a name or a colour changes no figure. */
function afterEdit(rowId, name, text) {
  if (inputs[name]) {
    filling?.refill(sheet, job, rowId, name, text);
    return filling && sheet;
  }
  const row = findRow(sheet, rowId);
  if (name === "name") row.name = text;
  if (levels[row.level].marks.includes(name)) row.marks[name] = text;
  return sheet;
}

function announce(change, known = null) {
  sheet = known;
  for (const listener of listeners) listener(change);
}
