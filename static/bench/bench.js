// The bench: the whole screen for live work, opened by a tap or at once when a cup was in hand as the page closed.
import { cupToResume } from "../clocks/turns.js";
import { anyRunning, clockTitle, createTicking, lateSentence, missedClocks } from "../clocks/clocks.js";
import { guardTaps } from "../lib/bounce.js";
import { clone, part } from "../lib/dom.js";
import { watchClocks } from "../clocks/clock-watch.js";
import { showRunningClocks } from "./running-clocks.js";
import { createReminders } from "../clocks/reminders.js";
import { keepMoments } from "../clocks/moments-kept.js";
import { state, subscribe } from "../keeping/store.js";

/** What a bounce would do again: for so many milliseconds after one of these was tapped, none of them is taken. */
const WAITS = [
  [".ready__line, .bench__choice--drop", 250],
  [".bench .figure", 0],
  [".bench button, .running__clock, [data-act=bench], [data-act=remove-row], [data-act=delete-job]", 600],
];
/** So long a tap waits for the disk to have it before the screen goes on all the same. */
const PATIENCE = 5000;

/** Give the page its `bench` act, watch all clocks, and come back to a cup that is still in hand. */
export function join(page, { storage }) {
  const ticking = createTicking();
  const now = ticking.now();
  const missed = missedClocks(state.job, now).map((clock) => `${clockTitle(clock)}. ${lateSentence(clock, now)}`);
  const toResume = cupToResume(state.job);
  const reminders = createReminders();
  const guard = guardTaps(document, WAITS);
  const kept = () => Promise.race([storage.settled(), new Promise((resolve) => setTimeout(resolve, PATIENCE))]);
  const parts = { ticking, reminders, guard, kept };
  let opening = null;
  let bench = null;
  const closed = () => {
    opening = bench = null;
  };
  const open = async (colourId, cupId) => {
    opening ??= openBench({ parts, colourId, cupId, closed });
    try {
      bench = await opening;
    } catch (error) {
      opening = null;
      throw error;
    }
  };
  page.leaveBench = () => bench?.close();
  page.acts.bench = (button) => {
    reminders.unlock();
    open(button.dataset.colour, button.dataset.cup);
  };
  document.addEventListener("click", () => anyRunning(state.job) && reminders.unlock());
  const jobNow = () => state.job;
  keepMoments({ jobNow, subscribe, storage });
  watchClocks({ jobNow, subscribe, ticking, reminders });
  const running = clone("running");
  part("next").prepend(running);
  showRunningClocks(running, { ticking, jobNow, subscribe, open: (cupId) => open("", cupId) });
  if (missed.length) reminders.announce(missed.join(" "));
  return toResume ? open() : undefined;
}

/**
 * Open the bench over the whole screen; what it takes is loaded when it is first opened.
 * @param {object} options
 * @param {object} options.parts what BenchWalk works with
 * @param {string} [options.colourId] the colour whose cup to go on with or to begin
 * @param {string} [options.cupId] the cup to show
 * @param {() => void} [options.closed] called once the job sheet is back
 * @returns {Promise<{close: () => void}>}
 */
async function openBench({ parts, colourId = "", cupId = "", closed = () => {} }) {
  const { BenchWalk } = await import("./walk.js");
  const scrolled = globalThis.scrollY;
  const root = document.body.appendChild(clone("bench"));
  document.body.dataset.view = "bench";
  const walk = new BenchWalk(root, parts, () => {
    root.remove();
    delete document.body.dataset.view;
    globalThis.scrollTo(0, scrolled);
    closed();
  });
  try {
    walk.begin(cupId, colourId);
  } catch (error) {
    walk.close();
    throw error;
  }
  return { close: () => walk.close() };
}
