// The person's own cup with the fill line of the part that goes in now.
import { setHidden } from "../lib/dom.js";
import { drawCup } from "../pictures/cup.js";
import { filledCup } from "../sheet/filled-cup.js";
import { amountOf } from "./figure.js";

/** Draw a cup's measuring cup up to the part of a stage, where the cup and its readings are known. */
export function showCup(place, context, stage) {
  const [capacity, graduation, a, total] = ["cup_capacity", "cup_graduation", "reading_a", "reading_total"]
    .map((cell) => amountOf(context, cell));
  if ([capacity, graduation, a, total].includes(null)) return;
  place.append(drawCup(filledCup({ capacity, graduation, a, total }, context.cup.plan.units, stage.fills_with)));
  setHidden(place, false);
}
