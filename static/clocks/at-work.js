// The cups that somebody stands by or that still cure: what deletes them asks first.
import { cupsOf, isCuring, isLive, isRecoated } from "./cup-record.js";
import { cupTitle } from "./clocks.js";

/** What a person has to know before some colours go with their cups, or "" where none is at work. */
export function cupsAtWork(colours) {
  const cups = colours.flatMap((colour) => cupsOf(colour)
    .filter((cup) => isLive(cup) || (isCuring(cup) && !isRecoated(cup, colour)))
    .map((cup) => ({ cup, colour })));
  if (cups.length === 0) return "";
  if (cups.length > 1) return `${cups.length} cups are in hand or curing, and their clocks go too.`;
  const [{ cup, colour }] = cups;
  return `${cupTitle(cup, colour)} is ${isLive(cup) ? "in hand" : "curing"}, and its clocks go too.`;
}
