// The clocks of the cups on the bench: moments, never counted seconds. A closed page loses none of them.
import { stages } from "../sentences.js";
import { cupsOf, endOf, isOver, isRecoated, startOf, tapped, walkOf } from "./cup-record.js";
import { dayAndTime, inWords, timeOfDay } from "../lib/moments.js";

const AGAIN = 20 * 1000;
const RING_FOR = 3 * 60 * 1000;

/**
 * A clock of a cup: `from` and `at` are moments in milliseconds, `done` once tapped or no longer of matter.
 * @typedef {{id: string, stage: object, cup: object, colour: object, from: number, at: number, done: boolean}} Clock
 */

/** Every clock that a cup has so far, in the order of the stages. @returns {Clock[]} */
export function clocksOf(cup, colour) {
  const over = isOver(cup) || isRecoated(cup, colour);
  return walkOf(cup).filter((stage) => stage.duration.length && endOf(cup, stage) !== null).map((stage) => ({
    id: `${cup.id}-${stage.name}`,
    stage,
    cup,
    colour,
    from: startOf(cup, stage),
    at: endOf(cup, stage),
    done: over || tapped(cup, stage.name) !== null,
  }));
}

/** Every clock of a job that still matters, the soonest first. @returns {Clock[]} */
export function runningClocks(job) {
  const clocks = job.colours.flatMap((colour) => cupsOf(colour).flatMap((cup) => clocksOf(cup, colour)));
  return clocks.filter((clock) => !clock.done).sort((one, other) => one.at - other.at);
}

/** Whether any clock of a job runs. */
export function anyRunning(job) {
  return runningClocks(job).length > 0;
}

/** The clocks that ended before now and whose stage nobody tapped. @returns {Clock[]} */
export function missedClocks(job, now) {
  return runningClocks(job).filter((clock) => clock.at <= now);
}

/** What a missed clock says: "Second mist was due at 14:32, 12 minutes ago." */
export function lateSentence(clock, now) {
  return `${clock.stage.late} ${dayAndTime(clock.at, now)}, ${inWords(now - clock.at)} ago.`;
}

/** What a clock is called where several cups run: "Teal, cup 1: second mist". */
export function clockTitle(clock) {
  return `${cupTitle(clock.cup, clock.colour)}: ${clock.stage.clock.toLowerCase()}`;
}

/** What a cup is called: "Teal, cup 1". */
export function cupTitle(cup, colour) {
  return `${colour.name || "Color"}, cup ${cup.number}`;
}

/** What rings between two looks at the clocks: a warning ahead, the end, and the end again while it is unheard. */
export function ringing(clocks, since, now) {
  const between = (moment) => moment > since && moment <= now;
  return clocks.filter((clock) => clock.stage.rings).flatMap((clock) => {
    const { warning, bound } = clock.stage;
    if (between(clock.at)) return [{ clock, kind: "end" }];
    if (warning && between(clock.at - warning * 1000)) return [{ clock, kind: "warning" }];
    const late = now - clock.at;
    const again = Math.floor(late / AGAIN) > Math.floor((since - clock.at) / AGAIN);
    return late > 0 && late < RING_FOR && again && bound !== "earliest" ? [{ clock, kind: "again" }] : [];
  });
}

/** What a ring says aloud and on the screen. */
export function ringSentence({ clock, kind }, now) {
  if (kind === "warning") return `${clockTitle(clock)} at ${timeOfDay(clock.at)}, in ${inWords(clock.at - now)}.`;
  return `${clockTitle(clock)}, now.`;
}

/** The prompt of a stage with prompts at a moment: the last whose share of the time has passed. */
export function promptAt(stage, from, at, now) {
  const share = (now - from) / (at - from);
  return stage.prompts.reduce((current, prompt) => (share >= prompt.share ? prompt : current), stage.prompts[0]);
}


/** The stages in their order, as the bench walks them. */
export const allStages = stages;

/**
 * The one source of ticks: wakes its listeners at most once a second, on the second, and only while the page is
 * visible and someone listens. A listener is given the moment; nothing is counted.
 */
export function createTicking({ page = document, now = () => Date.now() } = {}) {
  const listeners = new Set();
  let timer = null;
  const plan = () => {
    if (timer === null && listeners.size && page.visibilityState === "visible") {
      timer = setTimeout(tick, 1000 - (now() % 1000));
    }
  };
  const tick = () => {
    timer = null;
    const moment = now();
    for (const listener of [...listeners]) listener(moment);
    plan();
  };
  page.addEventListener("visibilitychange", () => {
    clearTimeout(timer);
    timer = null;
    if (page.visibilityState === "visible" && listeners.size) tick();
  });
  return {
    now,
    /** Call a listener once a second from now on; what comes back stops it. */
    subscribe(listener) {
      listeners.add(listener);
      plan();
      return () => {
        listeners.delete(listener);
        if (!listeners.size) {
          clearTimeout(timer);
          timer = null;
        }
      };
    },
  };
}
