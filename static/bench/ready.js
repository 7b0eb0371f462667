// Make ready: a line to tap for each thing that must be so, and a reason where a stop check is not right.
import { clone, part, setAttribute, setHidden } from "../lib/dom.js";
import { dayAndTime } from "../lib/moments.js";
import { saysOf } from "../sheet/reasons.js";
import { everyRow } from "../sheet/sheet.js";
import { cupsOf, reasonOf, tapped } from "../clocks/cup-record.js";
import { allCups } from "../clocks/turns.js";
import { allStages, clocksOf, cupTitle } from "../clocks/clocks.js";
import { amountOf, blankBecause, cellFigure } from "./figure.js";
import { cautions, notice } from "./notices.js";

/** For so long after a cup was made ready, the next one may take its lines as they were. */
const STILL_SO = 4 * 60 * 60 * 1000;

/**
 * Draw the make-ready stage of a cup.
 * @param {import("./figure.js").Context} context
 * @param {object} stage
 * @param {{line: (name: string) => void, reason: (stage: string, says: string) => void}} heard
 */
export function readyView(context, stage, heard) {
  const element = clone("bench-ready");
  part("instruction", element).textContent = stage.instruction;
  part("cautions", element).append(...cautions(stage.cautions));
  const lines = stage.lines.map((line) => readyLine(context, line, heard.line));
  part("lines", element).replaceChildren(...lines.map((line) => line.element));
  const reason = part("reason-text", element);
  reason.value = reasonOf(context.cup);
  reason.addEventListener("input", () => heard.reason(stage.name, reason.value));
  const view = {
    element,
    button: stage.button,
    tick() {},
    refresh(fresh) {
      for (const line of lines) line.refresh(fresh);
      const lacks = lacksAmounts(fresh);
      const holds = lacks ? [{ kind: "stop", says: lacks }] : holdsOf(fresh);
      part("notices", element).replaceChildren(...holds.map(({ kind, says }) => notice(kind, says)));
      setHidden(part("reason", element), !holds.length || lacks !== "");
      const open = stage.lines.filter((line) => tapped(fresh.cup, line.name) === null);
      const isStillSo = open.length === stage.lines.length && wasReady(fresh);
      view.button = lacks ? "Back to the job sheet" : isStillSo ? "All still so, begin" : stage.button;
      view.missing = lacks ? { says: lacks } : missing(fresh, isStillSo ? [] : open, holds, element);
    },
  };
  view.refresh(context);
  return view;
}

function readyLine(context, line, heard) {
  const element = clone("bench-ready-line");
  const button = element.querySelector(".ready__line");
  const figures = element.querySelector(".ready__figures");
  element.querySelector(".ready__says").textContent = line.says;
  element.querySelector(".ready__help").textContent = line.help;
  button.addEventListener("click", () => {
    heard(line.name);
    nextOpen(element)?.scrollIntoView({ block: "nearest" });
  });
  setHidden(figures, !line.cells.length);
  return {
    element,
    refresh(fresh) {
      setAttribute(button, "aria-pressed", String(tapped(fresh.cup, line.name) !== null));
      if (!line.cells.length) return;
      const verdict = verdictOf(fresh, line);
      element.dataset.verdict = verdict.state;
      figures.replaceChildren(...verdict.nodes);
    },
  };
}

/** A gloved finger should not have to scroll: the next open line comes up by itself. */
function nextOpen(element) {
  const isTapped = element.querySelector('[aria-pressed="true"]');
  return isTapped && element.parentElement.querySelector('[aria-pressed="false"]')?.parentElement;
}

const GO = { right: "Go: ", caution: "With care: ", stop: "No go: ", unchecked: "Not checked: " };

/** Go or no-go of a line by its checks, the worst first, with its figures. */
function verdictOf(context, line) {
  const found = checksOf(context.root).filter((check) => line.checks.includes(check.name));
  const wrong = found.filter((check) => check.state === "wrong");
  const state = found.some((check) => check.state === "unchecked") ? "unchecked"
    : wrong.some((check) => check.severity === "stop") ? "stop"
      : wrong.length ? "caution" : "right";
  const [margin, point] = line.cells.map((cell) => cellFigure(context, cell, "row"));
  if (!margin || !point) return { state, nodes: [GO.unchecked, blankBecause(context, line.cells[0])] };
  return { state, nodes: [GO[state], margin, " over the dew point of ", point] };
}

function checksOf(root) {
  return [...everyRow(root)].flatMap((row) => row.checks);
}

/** What holds the start until a reason is typed: stop checks that are wrong or unchecked, and the coat below. */
function holdsOf(context) {
  const stops = checksOf(context.root).filter((check) => check.severity === "stop" && check.state !== "right");
  const said = stops.map((check) => ({
    kind: check.state === "wrong" ? "stop" : "caution",
    says: saysOf(check),
  }));
  const once = said.filter((hold, index) => said.findIndex((each) => each.says === hold.says) === index);
  return [...once, ...coatBelow(context)];
}

function coatBelow({ cup, colour, now }) {
  const below = cupsOf(colour).filter((each) => each.coat === cup.coat - 1);
  return below.flatMap((each) => clocksOf(each, colour).filter((clock) => !clock.done)).flatMap((clock) => {
    const { name, past } = clock.stage;
    const title = `Coat ${clock.cup.coat}, ${cupTitle(clock.cup, colour)}`;
    const moment = dayAndTime(clock.at, now);
    if (name === "recoat_opens" && clock.at > now) return [{ kind: "stop", says: `${title}: recoat opens ${moment}.` }];
    if (name === "recoat_closes" && clock.at <= now) {
      return [{ kind: "stop", says: `${title}: recoat closed ${moment}. ${past}` }];
    }
    return [];
  });
}

/** Whether another cup of the job was made ready a short while ago. */
function wasReady({ cup, job, now }) {
  const others = allCups(job).filter((each) => each.cup.id !== cup.id);
  return others.some((each) => tapped(each.cup, "make_ready") > now - STILL_SO);
}

/** Why a cup cannot begin at all: what is to go into it is not known. */
function lacksAmounts(context) {
  const fills = allStages.filter((stage) => stage.fills_with);
  const lacking = fills.find(({ figures }) => figures.every((cell) => amountOf(context, cell) === null));
  return lacking ? `This cup has no amounts yet. ${blankBecause(context, lacking.figures[0])}` : "";
}

/** What still keeps the cup from beginning: a sentence and the place to go to, or null. */
function missing(context, open, holds, element) {
  if (open.length) {
    return { says: `Tap first: ${open[0].says}.`, at: element.querySelector('[aria-pressed="false"]') };
  }
  if (holds.length && !reasonOf(context.cup).trim()) {
    return { says: "Type why you begin all the same.", at: part("reason-text", element) };
  }
  return null;
}
