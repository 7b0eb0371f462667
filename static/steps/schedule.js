import { redraw } from "../lib/dom.js";
import { dayAndTime, timeOfDay } from "../lib/moments.js";
import { drawDay } from "../pictures/timeline.js";

const MINUTE = 60_000;
const LATER = { "tack-free": "tack_free_due", cured: "cured_due", "top coat": "top_coat_due" };

/** Bring the day to life: the schedule on today's clock if A touches B now, anew with each minute. */
export function join(page) {
  page.clock = (seconds) => ({ figure: dayAndTime(minute() + seconds * 1000, minute()), unit: "" });
  page.say.now = () => timeOfDay(minute());
  page.draw.day = (node, row) => {
    const day = dayOf(row);
    node.hidden = !day;
    if (day) redraw(node, day, drawDay);
  };
  page.requestRender();
  eachMinute(page.requestRender);
}

function minute() {
  return Math.floor(Date.now() / MINUTE) * MINUTE;
}

function eachMinute(tell) {
  let timer = 0;
  const wait = () => {
    clearTimeout(timer);
    if (document.visibilityState === "hidden") return;
    timer = setTimeout(() => {
      tell();
      wait();
    }, MINUTE - (Date.now() % MINUTE) + 50);
  };
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") tell();
    wait();
  });
  wait();
}

function dayOf(row) {
  const at = (name) => row.cells[name]?.value ?? null;
  const minutes = {
    by: at("pour_by"),
    poured: at("pour_end"),
    mists: [at("first_mist_due"), at("second_mist_due")],
  };
  const later = Object.entries(LATER).map(([name, cell]) => ({ name, at: at(cell) }));
  const [opens, closes] = [at("recoat_opens_due"), at("recoat_closes_due")];
  const recoat = opens === null || closes === null || opens >= closes ? null : [opens, closes];
  if (minutes.poured === null && later.every((each) => each.at === null)) return null;
  const title = "The day from the moment A touches B; its times stand below";
  return { start: minute(), minutes, later, recoat, title };
}
