// Fills a sheet again after an edit: first what somebody reads, the rest when it is settled.
// An input that was typed waits; so does each cell that asks for one that has changed. Who reads a row brings up to
// date what waits behind its cells, however deep, and nothing else. So a figure that is read is never an old one.
import { nodes } from "../printed.js";
import { above, fill, findRow, isTouched, levelAbove, rowsThatSee } from "./sheet.js";

const placeOf = new Map(nodes.map(({ level, name }, place) => [`${level} ${name}`, place]));
const asksOf = nodes.map(({ asks, when, level, below }) => [...asks, ...(when ? [when] : [])].map(([steps, name]) => (
  { steps, place: placeOf.get(`${steps < 0 ? below : levelAbove(level, steps)} ${name}`) }
)));
const askersOf = nodes.map(() => []);
asksOf.forEach((asks, asker) => {
  for (const { place } of asks) if (!askersOf[place].includes(asker)) askersOf[place].push(asker);
});
const reached = new Map();

/** Take a text that was typed in the job, in an input of a row: what rests on it is filled again when it is read. */
export function refill(root, job, rowId, name, text) {
  const row = findRow(root, rowId);
  row.typed[name] = text;
  root.edits += 1;
  root.due ??= new Due(job);
  root.due.add(row, placeOf.get(`${row.level} ${name}`));
  noteTouched(root.due, row);
}

/** Fill all that still waits, in the order in which cells ask for one another. */
export function settle(root) {
  root.due?.settle();
  root.due = null;
}

/** An untouched row is left out where rows are gathered: once it is touched, what is gathered waits. */
function noteTouched(due, row) {
  for (let at = row; at && isTouched(at) !== at.touched; at = at.parent) {
    at.touched = !at.touched;
    nodes.forEach(({ level, below }, place) => {
      if (at.parent?.level === level && below === at.level) due.add(at.parent, place);
    });
  }
}

/** What waits to be filled again in a job's rows. */
class Due {
  #job;
  #waiting = [];
  /** The nodes that something which waits may yet reach; no other can be old. */
  #reached = new Set();
  /** Since the last edit: the rows that were read, and for each node the rows in which it is up to date. */
  #read = new Set();
  #brought = [];

  constructor(job) {
    this.#job = job;
  }

  add(row, place) {
    this.#wait(row, place);
    for (const each of reachedFrom(place)) this.#reached.add(each);
    this.#read.clear();
    this.#brought.length = 0;
  }

  /** Bring a row's cells and checks up to date. */
  bring(row) {
    if (this.#read.has(row)) return;
    this.#read.add(row);
    for (const place of this.#reached) if (nodes[place].level === row.level) this.#bring(row, place);
  }

  settle() {
    for (let place = 0; place < nodes.length; place += 1) {
      for (const row of this.#waiting[place] ?? []) this.#fill(row, place);
    }
  }

  #bring(row, place) {
    if (!this.#reached.has(place)) return;
    const brought = (this.#brought[place] ??= new Set());
    if (brought.has(row)) return;
    brought.add(row);
    for (const { steps, place: asked } of asksOf[place]) {
      const rows = steps < 0 ? row.rows[nodes[place].below] : [above(row, steps)];
      for (const each of rows) this.#bring(each, asked);
    }
    if (this.#waiting[place]?.delete(row)) this.#fill(row, place);
  }

  #fill(row, place) {
    if (!fill(nodes[place], row, this.#job.units)) return;
    for (const asker of askersOf[place]) {
      for (const each of rowsThatSee(row, nodes[asker].level)) this.#wait(each, asker);
    }
  }

  #wait(row, place) {
    (this.#waiting[place] ??= new Set()).add(row);
  }
}

/** The nodes that a change of one may reach, itself among them. */
function reachedFrom(place) {
  if (!reached.has(place)) {
    const found = new Set([place]);
    for (const each of found) for (const asker of askersOf[each]) found.add(asker);
    reached.set(place, found);
  }
  return reached.get(place);
}
