import { example } from "./printed.js";
import { openStorage } from "./keeping/persistence.js";
import { fillAgainWith, openJob, state, subscribe } from "./keeping/store.js";
import { part, setText } from "./lib/dom.js";
import { page, putTogether, showJobSheet } from "./steps/job-sheet.js";

const LATER = [
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
  () => import("./menu/menu.js"),
  () => import("./bench/bench.js"),
  () => import("./menu/readiness.js"),
];

globalThis.addEventListener("error", () => tell(BROKEN));
globalThis.addEventListener("unhandledrejection", () => tell(BROKEN));
const BROKEN = {
  kind: "broken",
  says: "Something went wrong here. What you typed is kept; save the job to a file to be sure.",
};

let shown = null;

// The phone looks up what it keeps while the page is still read and put together.
const opening = openStorage(tell);
await pageIsRead();
putTogether(part("page"));
const storage = await opening;
openJob((await recovered()) ?? JSON.parse(JSON.stringify(example)));
if (!state.job.example) setText(part("state"), storage.isMemory ? "not saved" : "saved");
part("sheet").hidden = false;
part("next").hidden = !state.job.example;
// What was typed is on its way to the disk before it is painted.
subscribe((change) => change.kind !== "open" && storage.save(state.job, change));
showJobSheet(part("page"));
part("job-name").disabled = false;
document.addEventListener("click", clicked);
const whole = load();

/** Wait until the browser has read the whole page, as this module does not wait for it. */
async function pageIsRead() {
  if (document.readyState !== "loading") return;
  await new Promise((resolve) => document.addEventListener("DOMContentLoaded", resolve));
}

async function recovered() {
  if (!storage.problem) return storage.job;
  const { showRecovery } = await import("./menu/recovery.js");
  return showRecovery(part("page"), storage);
}

/** Load what the first screen does without, once it is painted: a little at a time, so that no tap waits for it. */
async function load() {
  await new Promise((resolve) => requestAnimationFrame(resolve));
  await nextTurn();
  const { served } = await import("./keeping/offline.js");
  await served();
  fillAgainWith(await import("./sheet/refill.js"));
  const { takeInLaterPage } = await import("./lib/later-page.js");
  await takeInLaterPage();
  await page.whileJoining(async () => {
    for (const bring of LATER) {
      const screen = await bring();
      await nextTurn();
      screen.join(page, { storage, say, takeJob });
    }
  });
  page.acts.book = openBook;
  const { watchWindows } = await import("./keeping/windows.js");
  await watchWindows(storage);
}

function nextTurn() {
  return new Promise((resolve) => setTimeout(resolve));
}

async function clicked(event) {
  const figure = event.target.closest(".figure");
  const button = event.target.closest("[data-act]");
  if (figure) {
    const working = await beside(() => import("./working/working.js"));
    working?.openWorking(page, figure.dataset);
  } else if (button) {
    await whole;
    page.acts[button.dataset.act]?.(button);
  }
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
    say("This part is not on the phone yet. Go online once, and it stays.");
    return null;
  }
}

/** Take a job from a file as the one that is worked on. */
async function takeJob(job) {
  const { adoptJob } = await import("./keeping/jobs.js");
  openJob(await adoptJob(storage, job));
  part("menu").close();
  page.startOver();
}

function tell(news) {
  if (["saved", "saving", "not saved"].includes(news.kind)) showState(news);
  if (news.kind === "changed elsewhere") takeOver(news.job);
  else if (news.says) say(news.says, "Save", "save-file");
}

/** Say whether it is saved; what writes a time of day comes when it is first needed, as it would hold up a start. */
async function showState(news) {
  shown = news;
  await pageIsRead();
  const time = news.at && (await import("./lib/moments.js")).timeOfDay(news.at);
  // What came meanwhile is truer.
  if (shown === news) setText(part("state"), time ? `saved ${time}` : news.kind);
}

/** Show what another window has typed, in the field that has the caret too. */
function takeOver(job) {
  if (!state.job?.example && job.id !== state.job?.id) return;
  document.activeElement?.blur();
  openJob(job);
}

async function say(words, label, act) {
  await pageIsRead();
  const { showNotice } = await import("./steps/toast.js");
  showNotice(words, label, act);
}
