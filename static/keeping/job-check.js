// Holds a job against the printed table of what a job file may hold: the twin of webapp/job/check.py.
// Keys that are not known come first, the others in the table's order, so that both languages name the same one.
import { rules, shape } from "../job-shape.js";
import { inputs } from "../printed.js";
import { lift } from "./lift.js";

const MOST_VERSIONS = 1_000_000;
const ID = /^[A-Za-z0-9_]{1,60}$/;
const ENTRY_ID = /^[A-Za-z0-9_-]{1,60}$/;
const SWATCH = /^#[0-9A-Fa-f]{6}$/;
const AMOUNT = /^[a-z][a-z0-9_]{0,59}$/;
const MOMENT = /^2[01]\d\d-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
const LONGEST_QUOTED = 40;
// A conversion leaves so much at a bound.
const HAIR = 1e-9;

/** What is wrong with a job file; its message says what to do. */
class JobFileError extends Error {}

/**
 * Check what was read from a job's file, or from what the phone keeps, and lift it to this version.
 * @param {unknown} read what JSON.parse gave
 * @param {{isOwn?: boolean}} [from] isOwn for a job of this phone: it may have more rows than there may be now
 * @returns {{job: object} | {error: string}} the error is a sentence that says what to do
 */
export function checkJob(read, { isOwn = false } = {}) {
  try {
    checkDepth(read, rules.deepest);
    checkVersion(read);
    const job = lift(read);
    checkGroup(job, "job", "the job", newCount(isOwn));
    return { job };
  } catch (error) {
    if (!(error instanceof JobFileError)) throw error;
    return { error: error.message };
  }
}

/** One of the table's sentences with its marks filled in. */
export function says(what, words = {}) {
  const { where = "" } = words;
  const all = { ...words, Where: where.slice(0, 1).toUpperCase() + where.slice(1) };
  return rules.says[what].replace(/\{(\w+)\}/g, (_, mark) => String(all[mark]));
}

function refuse(what, words) {
  throw new JobFileError(says(what, words));
}

function checkDepth(value, left) {
  if (typeof value !== "object" || value === null) return;
  if (left === 0) refuse("deep", { deepest: rules.deepest });
  for (const each of Object.values(value)) checkDepth(each, left - 1);
}

function checkVersion(job) {
  if (!isGroup(job) || job.format !== rules.format) refuse("format", { format: rules.format });
  const { version } = job;
  if (!Number.isInteger(version) || version < 1 || version > MOST_VERSIONS) refuse("no_version");
  if (version > rules.version) refuse("too_new", { version, newest: rules.version });
}

/** What is counted through a whole job: the ids that are taken, and how many rows of each word there are. */
function newCount(isOwn) {
  return { ids: new Set(["job"]), rows: new Map(), isOwn };
}

function checkGroup(group, name, where, count) {
  const { keys, must } = shape[name];
  checkKnown(group, (key) => Object.hasOwn(keys, key), where);
  for (const [key, kind] of Object.entries(keys)) {
    if (Object.hasOwn(group, key)) KINDS[kind.is](group[key], { ...kind, key, where, count });
    else if (must.includes(key)) refuse(key === "id" ? "no_id" : "missing", { key, where });
  }
}

function checkKnown(group, isKnown, where) {
  const strange = Object.keys(group).filter((key) => !isKnown(key)).sort();
  if (strange.length) refuse("unknown", { key: quoted(strange[0]), where });
}

/** How each kind of value is checked: value, and what the table says of it with key, where and count. */
const KINDS = {
  group(value, { of, key, where, count }) {
    if (!isGroup(value)) refuse("group", { key, where });
    if (of === "plan") checkGroup(value, of, `the plan of ${where}`, newCount(count.isOwn));
    else checkGroup(value, of, `"${key}" of ${where}`, count);
  },
  rows(value, { of, word, least, most, all, key, where, count }) {
    if (!Array.isArray(value)) refuse("list", { key, where });
    if (value.length < least) refuse("few", { key, where });
    const sum = (count.rows.get(word) ?? 0) + value.length;
    count.rows.set(word, sum);
    if (!count.isOwn || most < 2) {
      if (value.length > most) refuse("many", { where, count: value.length, words: `${word}s`, most });
      if (sum > all) refuse("many_in_all", { words: `${word}s`, most: all });
    }
    value.forEach((row, place) => {
      const title = `${word} ${place + 1} of ${where}`;
      if (!isGroup(row)) refuse("row", { where: title });
      checkGroup(row, of, title, count);
    });
  },
  entries(value, { kinds, most, key, where }) {
    if (!Array.isArray(value)) refuse("list", { key, where });
    if (value.length > most) refuse("many", { where, count: value.length, words: key, most });
    const own = newCount();
    value.forEach((entry, place) => {
      const title = `entry ${place + 1} of ${where}`;
      if (!isGroup(entry)) refuse("row", { where: title });
      if (!Object.hasOwn(entry, "kind")) refuse("missing", { key: "kind", where: title });
      KINDS.word(entry.kind, { options: kinds, key: "kind", where: title });
      checkGroup(entry, `entry ${entry.kind}`, title, own);
    });
  },
  text(value, { most, key, where }) {
    if (value === null) return;
    if (typeof value !== "string") refuse("text", { key, where });
    if (value.length > most && [...value].length > most) refuse("long", { key, where, most });
  },
  said(value, about) {
    if (value === null) refuse("text", about);
    KINDS.text(value, about);
  },
  typed(value, about) {
    if (value === null || typeof value === "string") KINDS.text(value, about);
    else if (typeof value !== "number") refuse("typed", about);
    else if (!Number.isFinite(value)) refuse("endless", about);
  },
  choice(value, about) {
    if (value !== null && value !== "") KINDS.word(value, about);
  },
  word(value, { options, key, where }) {
    if (typeof value !== "string") refuse("text", { key, where });
    if (!options.includes(value)) refuse("option", { key, where, value: quoted(value), options: options.join(", ") });
  },
  words(value, about) {
    const { options, key, where } = about;
    if (!Array.isArray(value)) refuse("list", { key, where });
    if (value.length > options.length) {
      refuse("many", { where, count: value.length, words: key, most: options.length });
    }
    for (const each of value) KINDS.word(each, about);
  },
  flag(value, { key, where }) {
    if (value !== null && typeof value !== "boolean") refuse("flag", { key, where });
  },
  id(value, about) {
    checkId(value, ID, about);
  },
  entry_id(value, about) {
    checkId(value, ENTRY_ID, about);
  },
  own_id(value, { key, where }) {
    if (value === null || value === "") return;
    if (typeof value !== "string") refuse("text", { key, where });
    if (!ID.test(value)) refuse("id", { where, value: quoted(value) });
  },
  swatch(value, { key, where }) {
    if (value === null || value === "") return;
    if (typeof value !== "string" || !SWATCH.test(value)) refuse("swatch", { key, where });
  },
  moment(value, { key, where }) {
    if (typeof value !== "string" || !isMoment(value)) refuse("moment", { key, where });
  },
  whole(value, { least, most, key, where }) {
    if (!Number.isInteger(value) || value < least || value > most) refuse("whole", { key, where, least, most });
  },
  amounts(value, { most, key, where }) {
    if (!isGroup(value)) refuse("group", { key, where });
    const title = `"${key}" of ${where}`;
    checkKnown(value, (name) => AMOUNT.test(name), title);
    for (const [name, amount] of Object.entries(value)) {
      const [low, high] = boundsOf(name, most);
      const isAmount = typeof amount === "number" && amount >= low && amount <= high;
      if (!isAmount) refuse("amount", { key: name, where: title });
    }
  },
};

function checkId(value, signs, { where, count }) {
  if (typeof value !== "string" || !value) refuse("no_id", { where });
  if (!signs.test(value)) refuse("id", { where, value: quoted(value) });
  if (count.ids.has(value)) refuse("one_id", { value });
  count.ids.add(value);
}

function isMoment(text) {
  if (!MOMENT.test(text)) return false;
  const moment = new Date(text);
  // A day that its month does not have is read as one of the next.
  return !Number.isNaN(moment.getTime()) && moment.toISOString() === text;
}

/** What an amount may be: what may be typed for it, if it was typed once. */
function boundsOf(name, mostAmount) {
  const { least, most } = (Object.hasOwn(inputs, name) && inputs[name]) || {};
  return [
    least ? least.value - HAIR * Math.abs(least.value) : -mostAmount,
    most ? most.value + HAIR * Math.abs(most.value) : mostAmount,
  ];
}

/** A file's own words as a sentence quotes them: the beginning alone of what is long. */
function quoted(text) {
  const letters = [...text.slice(0, 2 * LONGEST_QUOTED + 2)];
  return letters.length > LONGEST_QUOTED ? `${letters.slice(0, LONGEST_QUOTED).join("")}…` : text;
}

function isGroup(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
