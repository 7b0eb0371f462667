// One stage of a cup on the screen: one instruction, one big figure or clock, and what to beware of.
import { clone, part, setFigure, setHidden, setText } from "../lib/dom.js";
import { clockFace, dayAndTime } from "../lib/moments.js";
import { durationOf, endOf, endOfPour, startOf } from "../clocks/cup-record.js";
import { allStages, lateSentence, promptAt } from "../clocks/clocks.js";
import { fillMixClock, mixClock } from "../pictures/mix-clock.js";
import { called } from "../sheet/quantities.js";
import { blankBecause, clockFigure, firstFigure, plainFigure } from "./figure.js";
import { showCup } from "./cup.js";
import { showHeat } from "./heat.js";
import { cautions, notice } from "./notices.js";

const GRACE = 60 * 1000;
/** A countdown shows the second that is running out: 0:00 only when it has. */
const ALMOST_A_SECOND = 999;

/**
 * Draw a stage. `tick` moves its clock on; `prompted` hears each new prompt.
 * @param {import("./figure.js").Context} context
 * @param {object} stage
 * @param {(says: string) => void} prompted
 */
export function stageView(context, stage, prompted) {
  const element = clone("bench-stage");
  part("instruction", element).textContent = stage.instruction;
  part("cautions", element).append(...cautions(stage.cautions));
  showFigures(element, context, stage);
  if (stage.fills_with) {
    part("figure", element).classList.add(`stage__figure--${stage.fills_with}`);
    showCup(part("picture", element), context, stage);
  }
  const clock = clockOf(context, stage);
  const tick = clock ? clockView(element, context, stage, clock, prompted) : () => {};
  if (!clock?.at && stage.without) part("notices", element).append(notice("caution", stage.without));
  showHeat(element, context, stage);
  tick(context.now);
  return { element, tick, button: stage.button, shows: clock?.stage.name };
}

/** The clock a stage shows: its own, a count upwards, or the pour-by where it has none and the pour is to come. */
function clockOf({ cup }, stage) {
  if (stage.duration.length) {
    const from = startOf(cup, stage);
    return from === null ? null : { stage, cell: durationOf(cup, stage), from, at: endOf(cup, stage) };
  }
  const pour = allStages.find((each) => each.name === "pour");
  const at = endOf(cup, pour);
  if (stage.figures.length || at === null || endOfPour(cup) !== null) return null;
  return { stage: pour, cell: durationOf(cup, pour), from: startOf(cup, pour), at };
}

function showFigures(element, context, stage) {
  if (!stage.figures.length) return;
  const big = part("figure", element);
  big.hidden = false;
  part("before", element).textContent = stage.figure_before;
  const found = firstFigure(context, stage.figures, "bench");
  if (found) big.append(found);
  else part("notices", element).append(notice("stop", blankBecause(context, stage.figures[0])));
  const besides = stage.beside
    .map(({ cells, says }) => [firstFigure(context, cells, "row"), says])
    .filter(([each]) => each);
  const under = part("under", element);
  under.hidden = !besides.length;
  besides.forEach(([each, says], index) => under.append(index ? " · " : "", each, ` ${says}`));
}

function clockView(element, context, stage, clock, prompted) {
  if (clock.at === null && !stage.prompts.length) return () => {};
  const big = part("figure", element);
  const under = part("under", element);
  const button = clock.at === null ? plainFigure() : clockFigure(context, clock.cell, "bench");
  const label = called(clock.cell);
  big.append(button);
  setHidden(big, false);
  setHidden(under, false);
  const bar = showBar(element, stage, clock);
  let said = null;
  return (now) => {
    const shown = clockText(clock, now);
    setFigure(button, shown.big, label);
    big.classList.toggle("stage__figure--late", shown.isLate);
    big.classList.toggle("stage__figure--long", shown.big.figure.length > 5);
    setText(under, shown.under);
    setText(part("before", element), now < clock.at ? wordBefore(clock.stage) : "");
    showPast(element, clock, now);
    if (bar) fillMixClock(bar, (now - clock.from) / (clock.at - clock.from));
    const says = instructionAt(stage, clock, now);
    setText(part("instruction", element), says);
    if (said !== null && says !== said) prompted(says);
    said = says;
  };
}

function showBar(element, stage, clock) {
  if (!stage.prompts.length || clock.at === null) return null;
  const bar = mixClock({ marks: stage.prompts.map(({ share, mark }) => ({ share, words: mark })) });
  const picture = part("picture", element);
  picture.hidden = false;
  picture.replaceChildren(bar);
  return bar;
}

function instructionAt(stage, clock, now) {
  if (clock.stage !== stage || clock.at === null) return stage.instruction;
  if (now >= clock.at && stage.bound === "earliest" && stage.past) return stage.past;
  return stage.prompts.length ? promptAt(stage, clock.from, clock.at, now).says : stage.instruction;
}

/** What a span means that has not run out: the wait before the work, or the time that there is for it. */
function wordBefore({ bound, prompts }) {
  if (prompts.length) return "";
  return { due: "in", latest: "within" }[bound] ?? "";
}

/** The big figure of a clock and the line under it, at a moment. */
function clockText({ stage, from, at }, now) {
  if (at === null) return { big: bigClock(now - from), under: "counting up", isLate: false };
  const joined = stage.clock.endsWith(" by") ? stage.clock : `${stage.clock} at`;
  const moment = `${joined} ${dayAndTime(at, now)}`;
  if (now < at) {
    const whole = stage.prompts.length ? `left of ${clockFace(at - from).join(" ")}` : "left";
    return { big: bigClock(at - now + ALMOST_A_SECOND), under: `${whole} · ${moment}`, isLate: false };
  }
  if (stage.bound === "due" && now - at < GRACE) {
    return { big: { figure: "now", unit: "" }, under: moment, isLate: false };
  }
  return { big: bigClock(now - at), under: lateSentence({ stage, at }, now), isLate: stage.bound !== "earliest" };
}

function bigClock(span) {
  const face = clockFace(span);
  return face.length === 1 ? { figure: face[0], unit: "" } : { figure: face.slice(0, 3).join(" "), unit: face[3] };
}

/** Once a clock's end has passed, say what to do; a pour-by that has passed is a stop. */
function showPast(element, { stage, at }, now) {
  if (at === null || !stage.past || stage.bound === "earliest") return;
  const notices = part("notices", element);
  const isPast = now >= at + (stage.bound === "due" ? GRACE : 0);
  if (isPast === (notices.childElementCount > 0)) return;
  notices.replaceChildren(...(isPast ? [notice(stage.bound === "latest" ? "stop" : "caution", stage.past)] : []));
}
