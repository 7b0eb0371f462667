// Whose turn it is on the bench: which cup is in hand, which comes next, which to come back to. Pure.
import { contactOf, cupsOf, endOf, endOfPour, isLive, isSetAside, stageOf } from "./cup-record.js";
import { whyRecordFull } from "../keeping/most-rows.js";
import { findRow } from "../sheet/sheet.js";

/** Every cup that a job has on the bench, with its colour. */
export function allCups(job) {
  return job.colours.flatMap((colour) => cupsOf(colour).map((cup) => ({ cup, colour })));
}

/** Whether a cup is being made ready, mixed or poured, so that hands are on it. */
export function isInHand(cup) {
  return isLive(cup) && endOfPour(cup) === null;
}

/** Whether a cup is between contact and cover, so that nothing may disturb the page. */
export function isBusy(job) {
  return allCups(job).some(({ cup }) => isLive(cup) && contactOf(cup) !== null);
}

/** The coat and number of a colour's next cup, with how many there are; null when all are poured. */
export function nextCup(colour, root) {
  const { cups, coats_to_pour: coats, coat_number: coatNumber } = findRow(root, colour.id).cells;
  const counted = cupsOf(colour).filter((cup) => !isSetAside(cup));
  const coat = Math.max(coatNumber?.value ?? 1, ...counted.map((cup) => cup.coat));
  const number = counted.filter((cup) => cup.coat === coat).length + 1;
  const next = { colour, coat, number, cups: cups.value, coats: coats.value };
  if (cups.value === null || number <= cups.value) return next;
  return coats.value !== null && coat < coats.value ? { ...next, coat: coat + 1, number: 1 } : null;
}

/** The coat that a colour's cups have come to: the next one once every cup of a coat is poured. */
export function coatOf(colour) {
  const counted = cupsOf(colour).filter((cup) => !isSetAside(cup));
  const coat = Math.max(1, ...counted.map((cup) => cup.coat));
  const own = counted.filter((cup) => cup.coat === coat);
  const { cups = Infinity, coats_to_pour: coats = 1 } = own[own.length - 1]?.amounts ?? {};
  const isOn = own.filter((cup) => endOfPour(cup) !== null).length >= cups;
  return isOn && coat < coats ? coat + 1 : coat;
}

/** The next cup of every colour that has one to come and none in hand; none while the record has no room for it. */
export function nextCups(job, root) {
  if (job.example || whyRecordFull(job)) return [];
  return job.colours.flatMap((colour) => (cupsOf(colour).some(isInHand) ? [] : nextCup(colour, root) ?? []));
}

/** What the next cup of a colour is called: "Teal, cup 2 of 3, coat 1". */
export function nextTitle({ colour, coat, number, cups, coats }) {
  const which = `${colour.name || "Color"}, cup ${number}${cups ? ` of ${cups}` : ""}`;
  return coats > 1 ? `${which}, coat ${coat}` : which;
}

/** The cup to come back to after the page was closed: the live one that was tapped last, or null. */
export function cupToResume(job) {
  const live = allCups(job).map(({ cup }) => cup).filter(isLive);
  const latest = (cup) => cup.entries[cup.entries.length - 1]?.at ?? cup.begun;
  return live.reduce((first, cup) => (first === null || latest(cup) > latest(first) ? cup : first), null);
}

/** The cup to show after a tap on one: that one while it wants hands, else the one that wants them most, or null. */
export function cupAfterTap(job, cup, now) {
  const stage = isLive(cup) ? stageOf(cup) : null;
  const waits = stage !== null && endOfPour(cup) !== null && (endOf(cup, stage) ?? 0) > now;
  if (stage && !waits) return cup;
  const others = allCups(job).map((each) => each.cup).filter((each) => each.id !== cup.id && isLive(each));
  const inHand = others.find(isInHand);
  if (inHand || stage) return inHand ?? cup;
  const end = (each) => endOf(each, stageOf(each)) ?? 0;
  return others.sort((one, other) => end(one) - end(other))[0] ?? null;
}
