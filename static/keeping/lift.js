// A job of an older version becomes one of this version: the twin of webapp/job/lifts.py, which prints the steps.
import { rules } from "../job-shape.js";
import { cupKinds } from "../sentences.js";
import { readQuantity, rounded, unitShown } from "../sheet/quantities.js";

const ROWS_WITH_IDS = ["colours", "faces", "openings", "cups"];

/**
 * A job of an older version as one of this version; nothing that can be read in it is lost. It is checked only then:
 * whatever else stands in it is left as it is.
 */
export function lift(job) {
  let lifted = job;
  for (let { version } = job; isOlder(version); version += 1) {
    const step = rules.lifts[version];
    if (step.ids) lifted = withPlainIds(lifted, new RegExp(step.ids, "gu"));
    lifted = { ...withCups(withSections(lifted, step), step), version: version + 1 };
  }
  return lifted;
}

/** A resin card that was kept by any version as one of this version. */
export function liftCard(card) {
  return Object.values(rules.lifts).reduce((job, step) => withSections(job, step), { card }).card;
}

function withSections(job, { renamed = [], paces = [], bare = [] }) {
  const changes = [
    ...renamed.map(([section, old, name]) => [section, old, name, (value) => value]),
    ...paces.map(([section, old, name, ...pace]) => [section, old, name, (rate) => timeFor(rate, ...pace)]),
    ...bare.map(([section, name, ...unit]) => [section, name, name, (typed) => spelledOut(typed, ...unit, job.units)]),
  ];
  return changes.reduce((lifted, change) => changed(lifted, ...change), job);
}

function changed(job, section, old, name, change) {
  if (!(section in job)) return job;
  const group = job[section];
  const inEach = (row) => changedIn(row, old, name, change);
  return { ...job, [section]: Array.isArray(group) ? group.map(inEach) : inEach(group) };
}

function changedIn(group, old, name, change) {
  if (!isGroup(group) || !(old in group)) return group;
  const { [old]: before, ...kept } = group;
  const value = change(before) ?? null;
  return value === null ? kept : { ...kept, [name]: value };
}

/** The minutes that an area takes at a rate, as text; null where the rate cannot be read. */
function timeFor(rate, kind, unit, area) {
  const eachSecond = typeof rate === "string" ? readQuantity(rate, kind, unit).value : rate;
  return typeof eachSecond === "number" && eachSecond > 0 ? `${rounded(area / eachSecond / 60)} min` : null;
}

/** A bare number with the unit that it was meant in, unless the job reads it in that one anyhow. */
function spelledOut(typed, kind, unit, units) {
  if (typeof typed !== "string" || (isGroup(units) && unitShown(kind, units) === unit)) return typed;
  const spelled = `${typed.trimEnd()} ${unit}`;
  const meant = readQuantity(typed, kind, unit).value;
  // "5 ft 3" takes a unit too, and would then be another amount.
  return meant !== undefined && readQuantity(spelled, kind, unit).value === meant ? spelled : typed;
}

/** A row with an id that a page can ask for, and so its rows and cups. */
function withPlainIds(row, foreign) {
  if (!isGroup(row)) return row;
  const plain = { ...row };
  if (typeof row.id === "string") {
    plain.id = row.id.replace(foreign, (sign) => `_${sign.codePointAt(0).toString(16)}`);
  }
  const lists = ROWS_WITH_IDS.filter((key) => Array.isArray(row[key]));
  for (const key of lists) plain[key] = row[key].map((each) => withPlainIds(each, foreign));
  return plain;
}

function withCups(job, step) {
  const ofEach = (rows, change) => (Array.isArray(rows) ? rows.map((row) => (isGroup(row) ? change(row) : row)) : rows);
  const withLifted = (colour) => (
    Array.isArray(colour.cups) ? { ...colour, cups: ofEach(colour.cups, (cup) => cupBy(cup, step)) } : colour
  );
  return Array.isArray(job.colours) ? { ...job, colours: ofEach(job.colours, withLifted) } : job;
}

function cupBy(cup, { walk, entries }) {
  const { plan } = cup;
  let lifted = isGroup(plan) && isOlder(plan.version) ? { ...cup, plan: lift(plan) } : cup;
  if (walk) lifted = { ...lifted, stages: walk.filter(([, only]) => isOfKind(cup, only)).map(([name]) => name) };
  return entries ? withEntries(lifted, entries) : lifted;
}

/** A cup with its taps and its reason as entries; two copies of a cup get the same ids. */
function withEntries(cup, { reason_of: stage, no_taps: noTaps }) {
  const { taps: given, reason, ...kept } = cup;
  const taps = given ?? [];
  if (!Array.isArray(taps)) return cup;
  const ids = new Map();
  const entries = taps.map((tap) => (isGroup(tap) ? entryOf(tap, noTaps, ids) : tap));
  if (typeof reason === "string" && reason) {
    const tap = entries.find((each) => isGroup(each) && each.stage === stage && "at" in each) ?? { at: cup.begun };
    entries.push({ id: entryId("reason", tap.at, ids), at: tap.at, kind: "reason", stage, says: reason });
  } else if (reason !== undefined && reason !== null && reason !== "") {
    kept.reason = reason;
  }
  return { ...kept, entries };
}

function entryOf({ stage, ...rest }, noTaps, ids) {
  const kind = noTaps.includes(stage) ? { kind: stage } : { kind: "tap", stage };
  return { ...rest, ...kind, id: entryId(stage, rest.at, ids) };
}

/** An id made of a name and the digits of a moment, which no entry before it has. */
function entryId(name, at, ids) {
  const digits = typeof at === "string" ? at.replace(/[^0-9]/g, "") : "";
  const stem = typeof name === "string" ? `${name}-${digits}` : digits;
  const count = (ids.get(stem) ?? 0) + 1;
  ids.set(stem, count);
  return count === 1 ? stem : `${stem}-${count}`;
}

/** Whether a cup is of the kind that some stages are only for; what the cup does not say tells nothing apart. */
export function isOfKind(cup, only) {
  if (!only) return true;
  const { path, is_not: isNot, under } = cupKinds[only];
  const at = (steps) => steps.reduce((group, step) => group?.[step], cup);
  if (!under.length) return at(path) !== isNot;
  return typeof at(path) === "number" && typeof at(under) === "number" && at(path) < at(under);
}

function isOlder(version) {
  return typeof version === "number" && Object.hasOwn(rules.lifts, version);
}

function isGroup(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
