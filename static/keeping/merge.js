// Two windows have changed what both began from: their changes are joined, so that nothing typed or tapped is lost.
// Rows are joined by their ids and groups by their fields; of one field that both changed the later one stands. Pure.
import { joined, standing } from "./entries.js";

/**
 * Join two states of a job.
 * @param {object | undefined} base the state that both began from
 * @param {object} earlier
 * @param {object} later the one that stands where both changed the same field
 */
export function merged(base, earlier, later) {
  if (isSame(earlier, later) || isSame(base, earlier)) return later;
  if (isSame(base, later)) return earlier;
  if (isRows(earlier) && isRows(later)) return mergedRows(isRows(base) ? base : [], earlier, later);
  if (isGroup(earlier) && isGroup(later)) return mergedGroups(isGroup(base) ? base : {}, earlier, later);
  // What one took away and the other changed stays.
  return later === undefined ? earlier : later;
}

function mergedGroups(base, earlier, later) {
  const both = {};
  for (const key of Object.keys({ ...earlier, ...later })) {
    const [began, first, last] = [base, earlier, later].map((side) => side[key]);
    const areEntries = key === "entries" && isRows(first) && isRows(last);
    const value = areEntries ? joined(first, last) : merged(began, first, last);
    if (value !== undefined) both[key] = key === "cups" ? begunOnce(value, began, first) : value;
  }
  return both;
}

function mergedRows(base, earlier, later) {
  const [began, first, last] = [base, earlier, later].map(byKey);
  const rows = keysInOrder(began, first, last)
    .map((key) => merged(began.get(key), first.get(key), last.get(key)))
    .filter((row) => row !== undefined);
  const haveAdded = [first, last].every((side) => [...side.keys()].some((key) => !began.has(key)));
  // Cups stand in the order in which they were begun.
  return haveAdded && rows.every((row) => row.begun) ? rows.sort(byBeginning) : rows;
}

/** The order of a list: the one that was changed, and what the other side added behind what it stands behind there. */
function keysInOrder(began, first, last) {
  const kept = (side) => [...side.keys()].filter((key) => began.has(key));
  const wasMoved = String(kept(last)) !== String([...began.keys()].filter((key) => last.has(key)));
  const [lead, other] = wasMoved ? [last, first] : [first, last];
  const keys = [...lead.keys()];
  let before = -1;
  for (const key of other.keys()) {
    const place = keys.indexOf(key);
    if (place >= 0) {
      before = place;
      continue;
    }
    before += 1;
    while (before < keys.length && !began.has(keys[before]) && !other.has(keys[before])) before += 1;
    keys.splice(before, 0, key);
  }
  return keys;
}

/** A cup that both windows began is one cup, the first one's, with the taps of both. */
function begunOnce(cups, base, earlier) {
  if (!isRows(cups)) return cups;
  const has = (side, cup) => isRows(side) && side.some((each) => each.id === cup.id);
  const added = cups.filter((cup) => !has(base, cup) && !isGivenUp(cup));
  const once = [...cups];
  for (const second of added.filter((cup) => !has(earlier, cup))) {
    const place = once.findIndex((cup) => added.includes(cup) && has(earlier, cup) && isSameCup(cup, second));
    if (place < 0) continue;
    once[place] = withMarksOf(once[place], second);
    once.splice(once.indexOf(second), 1);
  }
  return once;
}

/** Nothing that was tapped is left out: of two contacts the earlier counts, and only both tell which that is. */
function withMarksOf(cup, second) {
  return { ...second, ...cup, entries: joined(entriesOf(cup), entriesOf(second)) };
}

function isSameCup(one, other) {
  return one.number !== undefined && ["colour", "coat", "number"].every((key) => one[key] === other[key]);
}

function isGivenUp(cup) {
  return standing(entriesOf(cup)).taps.some((tap) => tap.stage === "set_aside");
}

const entriesOf = ({ entries }) => (isRows(entries) ? entries : []);

function byBeginning(one, other) {
  const [before, after] = [one, other].map(({ begun, id }) => `${begun} ${id}`);
  return before < after ? -1 : Number(before > after);
}

/** Rows by their ids; what has none is known by all that it holds. */
function byKey(rows) {
  const keyed = new Map();
  for (const row of rows) {
    const name = row.id ?? JSON.stringify(row);
    let key = name;
    for (let count = 2; keyed.has(key); count += 1) key = `${name} ${count}`;
    keyed.set(key, row);
  }
  return keyed;
}

function isSame(one, other) {
  if (one === other) return true;
  if (!isObject(one) || !isObject(other) || Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length && keys.every((key) => key in other && isSame(one[key], other[key]));
}

const isObject = (value) => typeof value === "object" && value !== null;

const isGroup = (value) => isObject(value) && !Array.isArray(value);

const isRows = (value) => Array.isArray(value) && value.every(isGroup);
