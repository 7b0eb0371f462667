// A cup on the bench is its frozen amounts and its entries; all else about it is read from those. Pure.
import { rules } from "../job-shape.js";
import { moments, stages } from "../sentences.js";
import { standing } from "../keeping/entries.js";
import { isOfKind } from "../keeping/lift.js";
import { findRow, rowAt } from "../sheet/sheet.js";

const ALSO_FROZEN = [
  "cups", "coats_to_pour", "vessels_per_cup", "cup_capacity", "cup_graduation", "tint_limit_drops", "starting_drops",
  "cup_total", "gel_time", "earliest_gel_time", "latest_gel_time",
];
const FIRST_MOMENT = Date.UTC(2000, 0);
const LAST_MOMENT = Date.UTC(2200, 0) - 1;
const FROZEN = [...new Set([
  ...stages.flatMap(({ duration, figures }) => [...duration, ...figures]),
  ...stages.flatMap(({ beside }) => beside.flatMap(({ cells }) => cells)),
  ...ALSO_FROZEN,
])].filter(Boolean);

/** A colour's cups, without those of a damaged or foreign file that nothing could be read from. */
export function cupsOf(colour) {
  return (colour.cups ?? []).filter(isWhole);
}

function isWhole(cup) {
  const isMoment = (text) => Number.isFinite(Date.parse(text));
  return typeof cup?.id === "string" && isMoment(cup.begun)
    && Array.isArray(cup.entries) && cup.entries.every((entry) => typeof entry?.id === "string" && isMoment(entry.at))
    && cup.plan?.colours?.length === 1 && Array.isArray(cup.stages)
    && Object.values(cup.amounts ?? { none: null }).every(Number.isFinite);
}

/** The taps of a cup that stand, in their order; those that a step back took away are not among them. */
export const tapsOf = (cup) => standing(cup.entries).taps;

/** The last tap of a cup that stands, or undefined. */
export const lastTap = (cup) => tapsOf(cup).slice(-1)[0];

/** The moment (milliseconds) at which a cup was first tapped with a name, or null. */
export function tapped(cup, name) {
  const taps = tapsOf(cup).filter((each) => each.stage === name);
  return taps.length ? Math.min(...taps.map((tap) => momentOf(cup, tap))) : null;
}

/** The moment of a tap. Of the contact it is the earliest ever given, taken back or not: nothing moves it later. */
export function momentOf(cup, { stage, at }) {
  if (stage !== moments.contact) return Date.parse(at);
  const ever = cup.entries.filter((each) => each.kind === "tap" && each.stage === stage);
  return Math.min(...ever.map((each) => Date.parse(each.at)));
}

/** The moment at which A touched B, or null. */
export const contactOf = (cup) => tapped(cup, moments.contact);

/** The moment at which the pour ended, or null. */
export const endOfPour = (cup) => tapped(cup, moments.end_of_pour);

const byName = new Map(stages.map((stage) => [stage.name, stage]));

/** The stages that a cup walks through, in their order: those that it was begun with, whatever the table says now. */
export function walkOf(cup) {
  return cup.stages.map((name) => byName.get(name)).filter(Boolean);
}

/** The moment from which a stage's clock counts, or null while that has not come. */
export function startOf(cup, stage) {
  if (stage.counts_from in moments) return tapped(cup, moments[stage.counts_from]);
  const walk = walkOf(cup);
  const before = walk[walk.findIndex((each) => each.name === stage.name) - 1];
  return before ? tapped(cup, before.name) : null;
}

/** The name of the amount that a stage's clock takes: the first that was frozen, as older cups have older names. */
export function durationOf(cup, stage) {
  return stage.duration.find((name) => name in cup.amounts) ?? stage.duration[0];
}

/** The moment at which a stage's clock ends: its start and the frozen amount; null without either. */
export function endOf(cup, stage) {
  const start = startOf(cup, stage);
  const seconds = cup.amounts[durationOf(cup, stage)];
  return start === null || seconds === undefined || seconds === null ? null : start + seconds * 1000;
}

/** The stage a cup stands at, or null when it is done with. Curing stages come in the order of their clocks. */
export function stageOf(cup) {
  if (isOver(cup)) return null;
  const open = walkOf(cup).filter((stage) => tapped(cup, stage.name) === null);
  const hand = open.find((stage) => stage.by_hand);
  if (hand) return hand;
  const end = (stage) => endOf(cup, stage) ?? Infinity;
  return open.reduce((first, stage) => (first === null || end(stage) < end(first) ? stage : first), null);
}

/** Whether a cup was given up before its pour. */
export const isSetAside = (cup) => tapped(cup, "set_aside") !== null;

/** Whether a cup was given up, or a person has done with it. */
export const isOver = (cup) => isSetAside(cup) || tapped(cup, "finished") !== null;

/** Whether somebody stands by this cup: opened, and neither covered nor given up. */
export function isLive(cup) {
  const stage = stageOf(cup);
  return stage !== null && stage.by_hand;
}

/** Whether a cup is covered and still has a stage before it. */
export function isCuring(cup) {
  const stage = stageOf(cup);
  return stage !== null && !stage.by_hand;
}

/** Whether a later coat lies on this cup's coat, so that its own curing no longer matters. */
export function isRecoated(cup, colour) {
  return cupsOf(colour).some((each) => each.coat > cup.coat && endOfPour(each) !== null);
}

/** How many drops of tint are in the cup. */
export function dropsIn(cup) {
  const taps = tapsOf(cup);
  const first = taps.find((tap) => tap.stage === "starting_drops");
  return (first?.count ?? 0) + taps.filter((tap) => tap.stage === "drop").length;
}

/** The drops to start with: those that hid in the colour's last cup of the same size, else the sheet's. */
export function firstDrops(cup, colour) {
  const cups = cupsOf(colour);
  const earlier = cups.slice(0, cups.findIndex((each) => each.id === cup.id)).reverse();
  const last = earlier.find((each) => tapped(each, "tint") !== null && !isSetAside(each));
  const alike = last && last.amounts.cup_volume === cup.amounts.cup_volume;
  const count = alike ? dropsIn(last) : cup.amounts.starting_drops;
  return { count: Math.min(count ?? 0, cup.amounts.tint_limit_drops ?? Infinity), from: alike ? last : null };
}

/** Why a cup was begun all the same, as it was typed last, or "". */
export function reasonOf(cup) {
  return cup.entries.reduce((says, entry) => (entry.kind === "reason" ? entry.says : says), "");
}

/** How often a cup's times were given to the calendar. */
export function timesGivenOut(cup) {
  return cup.entries.filter(({ kind }) => kind === "calendar").length;
}

/**
 * What every new entry has: an id of its own and its moment in milliseconds.
 * @typedef {{id: string, moment: number}} Mark
 */

/** A moment as it is kept; that of a phone whose clock was never set is the first or last that a file may have. */
function asKept(moment) {
  return new Date(Math.min(Math.max(moment, FIRST_MOMENT), LAST_MOMENT)).toISOString();
}

function withEntry(cup, { id, moment }, facts) {
  return { ...cup, entries: [...cup.entries, { id, at: asKept(moment), ...facts }] };
}

/** The cup with one more tap; `count` only for the starting drops. @param {Mark} mark */
export function withTap(cup, mark, stage, count) {
  return withEntry(cup, mark, { kind: "tap", stage, ...(count === undefined ? {} : { count }) });
}

/** The cup with its last tap taken back; what was given to the calendar stays given. @param {Mark} mark */
export function withStepBack(cup, mark) {
  return withEntry(cup, mark, { kind: "back", of: lastTap(cup).id });
}

const DROPS = ["starting_drops", "drop"];

/** What a cup was stepped back from last, as {back, tap}; null where nothing was, or where something came after it. */
export function stepForwardOf(cup) {
  const { taps, backs } = standing(cup.entries);
  const from = cup.entries.indexOf(taps[taps.length - 1]);
  const [back] = backs.filter((each) => cup.entries.indexOf(each) > from).slice(-1);
  const tap = back && cup.entries.find(({ kind, id }) => kind === "tap" && id === back.of);
  return tap && (byName.has(tap.stage) || DROPS.includes(tap.stage)) ? { back, tap } : null;
}

/** The cup with its last step back taken back: the tap stands again at its own moment. @param {Mark} mark */
export function withStepForward(cup, mark) {
  return withEntry(cup, mark, { kind: "back", of: stepForwardOf(cup).back.id });
}

/** The cup with every tap of a name taken back. @param {() => Mark} mark */
export function withoutTap(cup, mark, stage) {
  const taps = tapsOf(cup).filter((tap) => tap.stage === stage);
  return taps.reduce((changed, { id }) => withEntry(changed, mark(), { kind: "back", of: id }), cup);
}

/** The cup taken up again after it was given up or done with. @param {Mark} mark */
export function withTakenUp(cup, mark) {
  const end = tapsOf(cup).find(({ stage }) => stage === "set_aside" || stage === "finished");
  return withEntry(cup, mark, { kind: "back", of: end.id });
}

/** The cup with its times given to the calendar once more. @param {Mark} mark */
export function withCalendar(cup, mark) {
  return withEntry(cup, mark, { kind: "calendar" });
}

/** The cup with the reason of a stage as it reads now: one entry while it is typed. @param {Mark} mark */
export function withReason(cup, mark, stage, says) {
  const before = cup.entries.find((entry) => entry.kind === "reason" && entry.stage === stage);
  if (!before) return withEntry(cup, mark, { kind: "reason", stage, says });
  const now = { ...before, at: asKept(mark.moment), says };
  return { ...cup, entries: cup.entries.map((entry) => (entry === before ? now : entry)) };
}

/** Whether a step back has anything to undo. */
export function canStepBack(cup) {
  return tapsOf(cup).length > 0;
}

/** What is frozen of a job for a cup of a colour: amounts, the plan that their working is taken from, its stages. */
export function freeze(job, root, colourId, coat) {
  const plan = { ...job, colours: [{ ...job.colours.find((colour) => colour.id === colourId), cups: [] }] };
  delete plan.example;
  const amounts = {};
  const ofColour = findRow(root, colourId);
  for (const row of [root, ofColour, rowAt(ofColour, "cup")]) {
    for (const name of FROZEN) {
      const value = row.cells[name]?.value;
      // Past this nobody measures, and no file would take it.
      if (typeof value === "number" && Math.abs(value) <= rules.most_amount) amounts[name] = value;
    }
  }
  const has = (stage) => !stage.retired && isOfKind({ coat, amounts, plan }, stage.only);
  return { amounts, plan, stages: stages.filter(has).map((stage) => stage.name) };
}

/** A new cup of a colour, opened at a moment and not yet tapped. */
export function newCup({ id, coat, number, moment, job, root, colourId }) {
  return { id, coat, number, begun: asKept(moment), ...freeze(job, root, colourId, coat), entries: [] };
}
