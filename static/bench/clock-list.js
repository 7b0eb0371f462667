// What else runs while one cup is in hand: its other clocks, the other cups, what was missed, what comes next.
import { clone, element as made, part, setFigure, setHidden, setText } from "../lib/dom.js";
import { dayAndTime, shortly, timeOfDay } from "../lib/moments.js";
import { durationOf, isCuring, stageOf } from "../clocks/cup-record.js";
import { allCups } from "../clocks/turns.js";
import { clockTitle, cupTitle, lateSentence, missedClocks, runningClocks } from "../clocks/clocks.js";
import { called } from "../sheet/quantities.js";
import { clockFigure } from "./figure.js";
import { notice } from "./notices.js";

const shownRows = new WeakMap();
const KINDS = { earliest: "good", due: "caution", latest: "stop" };

/** A big line to tap: a cup with what it waits for. */
export function choice({ what, detail = "", swatch = "", kind = "" }, chosen) {
  const item = clone("bench-choice");
  const button = item.querySelector("button");
  if (kind) button.classList.add(`bench__choice--${kind}`);
  part("what", item).textContent = what;
  part("detail", item).textContent = detail;
  if (swatch) item.querySelector(".dot").style.setProperty("--swatch", swatch);
  else item.querySelector(".dot").remove();
  button.addEventListener("click", chosen);
  return item;
}

/**
 * What the rows are made from.
 * @typedef {{job: object, context: object | null, shows: string, show: (cupId: string) => void, now: number}} Facts
 * `shows` names the stage whose clock is the big figure of the cup in `context`
 */

/** The clocks still to come that keep a person by a face, this cup's and the others'. @param {Facts} facts */
export function clockRows({ job, context, shows, show, now }) {
  const clocks = runningClocks(job).filter((clock) => clock.at > now && clock.stage.by_hand);
  const rowOf = (clock, isOwn) => (isOwn ? ownRow(clock, context) : otherRow(clock, show));
  return together(clocks, { context, shows }, rowOf);
}

function ownRow(clock, context) {
  const element = clone("bench-clock");
  part("name", element).textContent = clock.stage.clock;
  const cell = durationOf(clock.cup, clock.stage);
  const button = clockFigure(context, cell, "row");
  const time = made("span", { class: "clock__time" });
  part("when", element).append(button, time);
  return {
    element,
    tick(now) {
      setFigure(button, { figure: shortly(clock.at - now), unit: "" }, called(cell));
      setText(time, timeOfDay(clock.at));
    },
  };
}

function otherRow(clock, show) {
  const { colour, cup } = clock;
  const element = choice({ what: clockTitle(clock), swatch: colour.swatch }, () => show(cup.id));
  const detail = part("detail", element);
  return {
    element,
    tick(now) {
      setText(detail, `${shortly(clock.at - now)} · ${timeOfDay(clock.at)}`);
    },
  };
}

/** Every missed stage but the one shown, named with how long ago it was due. @param {Facts} facts */
export function missedRows({ job, context, shows, show, now }) {
  const clocks = missedClocks(job, now).filter((clock) => clock.stage.bound !== "earliest");
  return together(clocks, { context, shows }, (clock, isOwn) => (isOwn ? ownMissed(clock) : otherMissed(clock, show)));
}

/** What may be done by now: tack-free, open to recoat, cured. @param {Facts} facts */
export function readyRows({ job, context, shows, show, now }) {
  const clocks = missedClocks(job, now).filter((clock) => clock.stage.bound === "earliest");
  return together(clocks, { context, shows }, (clock, isOwn) => (isOwn ? ownMissed(clock) : otherMissed(clock, show)));
}

function ownMissed(clock) {
  const { bound, past } = clock.stage;
  const line = notice(KINDS[bound], "");
  const words = line.querySelector(".check__says");
  return { element: made("li", {}, line), tick: (now) => setText(words, `${lateSentence(clock, now)} ${past}`) };
}

function otherMissed(clock, show) {
  const { cup, colour } = clock;
  const kind = clock.stage.bound === "earliest" ? "good" : "missed";
  const element = choice({ what: cupTitle(cup, colour), swatch: colour.swatch, kind }, () => show(cup.id));
  return { element, tick: (now) => setText(part("detail", element), lateSentence(clock, now)) };
}

function together(clocks, { context, shows }, rowOf) {
  const shown = context?.cup.id;
  const rest = clocks.filter((clock) => !(clock.cup.id === shown && clock.stage.name === shows));
  const rows = rest.map((clock) => rowOf(clock, clock.cup.id === shown));
  return {
    key: [shown, ...rest.map((clock) => `${clock.id} ${clock.at}`)].join(),
    elements: rows.map((row) => row.element),
    tick: (now) => rows.forEach((row) => row.tick(now)),
  };
}

/** The cups that only cure, each folded to one line with its next moment. */
export function curingRows({ job, context, show, now }) {
  return allCups(job).filter(({ cup }) => isCuring(cup) && cup.id !== context?.cup.id).map(({ cup, colour }) => choice(
    { what: cupTitle(cup, colour), detail: curingDetail(job, cup, now), swatch: colour.swatch },
    () => show(cup.id),
  ));
}

function curingDetail(job, cup, now) {
  const next = runningClocks(job).find((clock) => clock.cup.id === cup.id && clock.at > now);
  return next ? `${next.stage.clock} ${dayAndTime(next.at, now)}` : stageOf(cup).title;
}

/** Fill a list only when what it lists has changed, so that a tap is never lost to a redrawn line. */
export function showRows(list, rows, now) {
  if (shownRows.get(list)?.key !== rows.key) {
    shownRows.set(list, rows);
    list.replaceChildren(...rows.elements);
  }
  setHidden(list, !rows.elements.length);
  shownRows.get(list).tick(now);
}
