// The person's own cup with the fill line of the part that goes in now.
import { setHidden } from "../lib/dom.js";
import { drawCup } from "../pictures/cup.js";
import { fromCanonical, show, unitShown } from "../sheet/quantities.js";
import { amountOf } from "./figure.js";

/** Draw a cup's measuring cup up to the part of a stage, where the cup and its readings are known. */
export function showCup(place, context, stage) {
  const [capacity, graduation, a, total] = ["cup_capacity", "cup_graduation", "reading_a", "reading_total"]
    .map((cell) => amountOf(context, cell));
  if ([capacity, graduation, a, total].includes(null)) return;
  const unit = unitShown("volume", context.cup.plan.units);
  const inUnit = (value) => fromCanonical(value, unit, "volume");
  const also = (value) => `to ${show(value, "volume", unit, "mark")}`;
  const line = (part, value, says) => ({ part, to: inUnit(value), says, also: also(value) });
  const fills = [line("a", a, "Part A"), line("b", total, "then B")].slice(0, stage.fills_with === "a" ? 1 : 2);
  const title = `Your cup: ${fills.map((fill) => `${fill.says} ${fill.also}`).join(", ")}`;
  place.append(drawCup({ capacity: inUnit(capacity), graduation: inUnit(graduation), fills, title }));
  setHidden(place, false);
}
