import { example } from "./printed.js";
import { openStorage } from "./keeping/persistence.js";
import { fillAgainWith, openJob, state, subscribe } from "./keeping/store.js";
import { part, scriptsHaveCome, setText, showToast, stylesHaveCome } from "./lib/dom.js";
import { page, putTogether, showJobSheet } from "./steps/job-sheet.js";

const LATER = [
  () => import("./sheet/refill.js").then((module) => ({ join: () => fillAgainWith(module) })),
  () => import("./lib/moments.js").then((module) => ({ join: () => tellTimeBy(module) })),
  () => import("./steps/findings.js"),
  () => import("./steps/faces.js"),
  () => import("./steps/cups.js"),
  () => import("./steps/tint.js"),
  () => import("./steps/schedule.js"),
  () => import("./steps/folds.js"),
  () => import("./steps/next-step.js"),
  () => import("./steps/calm.js"),
  () => import("./steps/resin-card.js"),
  () => import("./steps/record.js"),
  () => import("./steps/paper.js"),
  () => import("./menu/menu.js"),
  () => import("./menu/readiness.js"),
  () => import("./bench/bench.js"),
];
const BROKEN = {
  kind: "broken",
  says: "Something went wrong here. What you typed is kept; save the job to a file to be sure.",
};
const NOT_HERE = "This part is not on the phone yet. Go online once, and it stays.";
// In milliseconds: how long the worker is waited for; how soon what did not come is asked for again, at first and
// at last; how long after a tap its screen may still open.
const WORKER_MAY_TAKE = 3000;
const FIRST_PAUSE = 1000;
const LONGEST_PAUSE = 15_000;
const STILL_WANTED = 6000;

let isWhole = false;
let isJoining = true;
let isUnproven = false;
let wanted = null;
let timeOfDay = null;
let shown = null;

scriptsHaveCome();
// What handles an error loads nothing, as that might fail in its turn.
globalThis.addEventListener("error", ({ error }) => error && failed(error));
globalThis.addEventListener("unhandledrejection", ({ reason }) => failed(reason));
document.addEventListener("click", clicked);

// The phone looks up what it keeps while the page is still read and put together.
const opening = openStorage(tell);
await pageIsRead();
putTogether(part("page"));
const storage = await opening;
const first = (await recovered()) ?? anExample();
// What was typed is on its way to the disk before it is painted.
subscribe((change) => change.kind !== "open" && storage.save(state.job, change));
subscribe((change) => {
  isUnproven ||= change.kind === "open";
});
showJobSheet(part("page"));
open(first);
showWhetherKept();
part("sheet").hidden = false;
part("next").hidden = !state.job.example;
part("job-name").disabled = false;
load();

/** Wait until the browser has read the whole page, as this module does not wait for it; a torn one stays as it is. */
async function pageIsRead() {
  if (document.readyState === "loading") {
    await new Promise((resolve) => document.addEventListener("DOMContentLoaded", resolve));
  }
  if (!part("end")) await new Promise(() => {});
}

async function recovered() {
  if (!storage.problem) return storage.job;
  const { showRecovery } = await untilItComes(() => import("./menu/recovery.js"));
  return showRecovery(part("page"), storage);
}

function anExample() {
  return JSON.parse(JSON.stringify(example));
}

/** Open a job and paint it from the top. */
function open(job) {
  try {
    openJob(job);
    page.startOver();
  } catch (error) {
    failed(error);
  }
}

/** Load what the first screen does without, once it is painted: a little at a time, so that no tap waits for it. */
async function load() {
  await new Promise((resolve) => requestAnimationFrame(resolve));
  await nextTurn();
  const served = import("./keeping/offline.js").then((offline) => offline.served()).catch(() => {});
  await Promise.race([served, pause(WORKER_MAY_TAKE)]);
  const { takeInLaterPage } = await untilItComes(() => import("./lib/later-page.js"));
  await untilItComes(takeInLaterPage);
  await joinAll([...LATER]);
  page.acts.book = openBook;
  page.after.push(() => {
    isUnproven = false;
  });
  isWhole = true;
  doWhatIsWanted();
  dropNotice();
  page.requestRender();
  const { watchWindows } = await untilItComes(() => import("./keeping/windows.js"));
  await watchWindows(storage);
}

/** Take away what says that the page is not whole, once its styles are here too. */
async function dropNotice() {
  while (!stylesHaveCome()) await pause(FIRST_PAUSE);
  part("late").remove();
}

/** Join all screens; those that do not come are asked for again, each time later. */
async function joinAll(missing) {
  const joining = [];
  for (let wait = FIRST_PAUSE; missing.length; wait = Math.min(2 * wait, LONGEST_PAUSE)) {
    const before = missing.length;
    isJoining = true;
    await page.whileJoining(() => joinWhatComes(missing, joining));
    isJoining = false;
    doWhatIsWanted();
    if (missing.length < before) wait = FIRST_PAUSE;
    if (missing.length) await pause(wait);
  }
  await Promise.all(joining);
}

/** Join one screen after the other until one does not come; the others then go before it. */
async function joinWhatComes(missing, joining) {
  while (missing.length) {
    const bring = missing.shift();
    const screen = await bring().catch(() => null);
    if (!screen) {
      missing.push(bring);
      return;
    }
    await nextTurn();
    joining.push(join(screen).catch(failed));
  }
}

/** Let a screen join the page; where the open job made it throw, that is set aside and the screen joins again. */
async function join(screen) {
  const given = { storage, say, takeJob };
  let joining = null;
  try {
    joining = screen.join(page, given);
  } catch (error) {
    failed(error);
    joining = screen.join(page, given);
  }
  await joining;
}

/** Bring what the page needs, however often it does not come. */
async function untilItComes(bring) {
  for (let wait = FIRST_PAUSE; ; wait = Math.min(2 * wait, LONGEST_PAUSE)) {
    try {
      return await bring();
    } catch {
      await pause(wait);
    }
  }
}

/** Wait so long, or until the phone says that there is signal again. */
function pause(milliseconds) {
  return new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
    globalThis.addEventListener("online", resolve, { once: true });
  });
}

function nextTurn() {
  return new Promise((resolve) => setTimeout(resolve));
}

function clicked({ target }) {
  const button = target.closest(".figure") ?? target.closest("[data-act]");
  const does = button && whatDoes(button);
  if (does) does(button);
  else if (button && !isWhole) {
    // The page says at once that this has not come; of all such taps the last is done, if that comes within a moment.
    wanted = { button, until: Date.now() + STILL_WANTED };
    part("late").toggleAttribute("data-asked", true);
  }
}

function whatDoes(button) {
  if (button.matches(".figure")) return isWhole && openWorking;
  // While screens are joining, one that is here may still ask another that is not; a fold asks none.
  const isAlone = button.dataset.act === "fold";
  return (isAlone || !isJoining) && page.acts[button.dataset.act];
}

function doWhatIsWanted() {
  const does = wanted && whatDoes(wanted.button);
  if (!does) return;
  if (Date.now() < wanted.until) does(wanted.button);
  wanted = null;
  part("late").removeAttribute("data-asked");
}

async function openWorking(figure) {
  const working = await beside(() => import("./working/working.js"));
  working?.openWorking(page, figure.dataset);
}

async function openBook(button) {
  const book = await beside(() => import("./working/book.js"));
  book?.openBook(page, button.dataset.formula);
}

/** Load what the phone keeps beside the core, and may not have yet. */
async function beside(bring) {
  try {
    return await bring();
  } catch {
    say(NOT_HERE);
    return null;
  }
}

/** Take a job from a file as the one that is worked on. */
async function takeJob(job) {
  const { adoptJob } = await import("./keeping/jobs.js");
  open(await adoptJob(storage, job));
  part("menu").close();
}

/** Say what went wrong, and whether it was the open job: one that was never shown whole, and is set aside now. */
function failed(error) {
  if (isMissing(error)) say(NOT_HERE);
  else if (isUnproven && !state.job.example) setAside(state.job);
  else tell(BROKEN);
}

/** Whether an error says that a module did not come; each browser has its own words for that. */
function isMissing(error) {
  return /\bmodule\b/.test(error?.message);
}

/** Open another job than the one that cannot be shown, and offer its file. */
async function setAside(job) {
  part("menu")?.close();
  open(anExample());
  const { putAside } = await untilItComes(() => import("./menu/aside.js"));
  const { next, save } = await putAside(storage, job);
  page.acts["save-aside"] = save;
  say(`“${job.name}” cannot be shown here and is set aside. Save its file.`, "Save", "save-aside");
  if (next) open(next);
  showWhetherKept();
}

function tell(news) {
  if (["saved", "saving", "not saved"].includes(news.kind)) showState(news);
  if (news.kind === "changed elsewhere") takeOver(news.job);
  else if (news.says) say(news.says, "Save", "save-file");
}

/** Say of a job just opened whether it is kept. */
function showWhetherKept() {
  if (storage.isMemory && !state.job.example) setText(part("state"), "not saved");
  else if (!shown) setText(part("state"), state.job.example ? "not saved yet" : "saved");
}

/** Say whether it is saved, with the time of day once what writes that is here: it would hold up a start. */
async function showState(news) {
  shown = news;
  await pageIsRead();
  // What came meanwhile is truer.
  if (shown === news) setText(part("state"), news.at && timeOfDay ? `saved ${timeOfDay(news.at)}` : news.kind);
}

function tellTimeBy(moments) {
  ({ timeOfDay } = moments);
  if (shown) showState(shown);
}

/** Show what another window has typed, in the field that has the caret too. */
function takeOver(job) {
  if (!state.job?.example && job.id !== state.job?.id) return;
  document.activeElement?.blur();
  openJob(job);
}

async function say(words, label = "Good", act = "close-toast") {
  await pageIsRead();
  showToast(words, label, act);
}
