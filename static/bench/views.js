// Which view a cup has on the bench: its stage, what became of it, or none in hand.
import { clone, part } from "../lib/dom.js";
import { timeOfDay } from "../lib/moments.js";
import { lastTap } from "../clocks/cup-record.js";
import { whyRecordFull } from "../keeping/most-rows.js";
import { nextTitle } from "../clocks/turns.js";
import { readyView } from "./ready.js";
import { stageView } from "./stage.js";
import { tintView } from "./tint.js";

/**
 * The view of a cup at a stage, or of one that is over; null without a cup.
 * @param {import("./figure.js").Context | null} context
 * @param {object | null} stage
 * @param {{line: Function, reason: Function, drop: Function, prompt: Function}} heard what the view tells the bench
 */
export function viewOf(context, stage, heard) {
  if (!context) return null;
  if (!stage) return overView(context.cup);
  if (stage.lines.length) return readyView(context, stage, heard);
  if (stage.name === "tint") return tintView(context, stage, heard);
  return stageView(context, stage, heard.prompt);
}

/** A cup that is done with; a step back takes it up again. */
function overView(cup) {
  const { stage, at } = lastTap(cup);
  const when = timeOfDay(Date.parse(at));
  return plainView(stage === "set_aside" ? `Set aside at ${when}, not poured.` : `Done with since ${when}.`, "Go on");
}

/** No cup is in hand: what comes next, that all is poured, or that the record is full. */
export function idleView(job, next) {
  const isExample = "This is the example. Type your own sizes first; then a cup can begin.";
  const full = whyRecordFull(job);
  const says = job.example ? isExample : full || (next ? "No cup is in your hands." : "Every cup is poured.");
  return plainView(says, next ? `Next: ${nextTitle(next)}` : "Back to the job sheet");
}

function plainView(says, button) {
  const element = clone("bench-stage");
  part("instruction", element).textContent = says;
  return { element, tick() {}, button };
}
