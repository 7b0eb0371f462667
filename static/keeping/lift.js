// A job of an older version becomes one of this version: the twin of webapp/job/lifts.py, which prints the steps.
import { file as rules } from "../printed.js";
import { cupKinds } from "../sentences.js";
import { readQuantity, rounded, unitShown } from "../sheet/quantities.js";

/** A job of an older version as one of this version; nothing that can be read in it is lost. */
export function lift(job) {
  let lifted = job;
  for (let version = job.version ?? 1; version < rules.version; version += 1) {
    const step = rules.lifts[version];
    lifted = { ...withCups(withSections(lifted, step), step.walk), version: version + 1 };
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

function withCups(job, walk) {
  const ofEach = (rows, change) => (Array.isArray(rows) ? rows.map((row) => (isGroup(row) ? change(row) : row)) : rows);
  const withPlans = (colour) => (
    Array.isArray(colour.cups) ? { ...colour, cups: ofEach(colour.cups, (cup) => withPlan(cup, walk)) } : colour
  );
  return Array.isArray(job.colours) ? { ...job, colours: ofEach(job.colours, withPlans) } : job;
}

function withPlan(cup, walk) {
  const { plan } = cup;
  const lifted = isGroup(plan) && plan.version in rules.lifts ? { ...cup, plan: lift(plan) } : cup;
  if (!walk) return lifted;
  return { ...lifted, stages: walk.filter(([, only]) => isOfKind(cup, only)).map(([name]) => name) };
}

/** Whether a cup is of the kind that some stages are only for; what the cup does not say tells nothing apart. */
export function isOfKind(cup, only) {
  if (!only) return true;
  const { path, is_not: isNot, under } = cupKinds[only];
  const at = (steps) => steps.reduce((group, step) => group?.[step], cup);
  if (!under.length) return at(path) !== isNot;
  return typeof at(path) === "number" && typeof at(under) === "number" && at(path) < at(under);
}

function isGroup(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
