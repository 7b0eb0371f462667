// A job of an older version becomes one of this version: the twin of webapp/job/lifts.py, which prints the steps.
import { file as rules } from "../printed.js";
import { cupKinds } from "../sentences.js";

/** A job of an older version as one of this version; nothing that was in it is lost. */
export function lift(job) {
  let lifted = job;
  for (let version = job.version ?? 1; version < rules.version; version += 1) {
    lifted = { ...withStages(lifted, rules.lifts[version].walk), version: version + 1 };
  }
  return lifted;
}

function withStages(job, walk) {
  const ofEach = (rows, change) => (Array.isArray(rows) ? rows.map((row) => (isGroup(row) ? change(row) : row)) : rows);
  const withWalks = (colour) => (
    Array.isArray(colour.cups) ? { ...colour, cups: ofEach(colour.cups, (cup) => walked(cup, walk)) } : colour
  );
  return Array.isArray(job.colours) ? { ...job, colours: ofEach(job.colours, withWalks) } : job;
}

function walked(cup, walk) {
  const { plan } = cup;
  const lifted = isGroup(plan) && plan.version in rules.lifts ? { ...cup, plan: lift(plan) } : cup;
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
