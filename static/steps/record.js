import { element, part, redraw } from "../lib/dom.js";
import { state } from "../keeping/store.js";
import { isSetAside, stageOf } from "../clocks/cup-record.js";
import { allCups } from "../clocks/turns.js";
import { timeOfDay } from "../lib/moments.js";

/** Bring the record to life: the cups of this job, and its file. */
export function join(page, { takeJob, say }) {
  page.say.record = () => {
    const count = cupsOf().length;
    return count ? `${count} ${count === 1 ? "cup" : "cups"} begun` : "No cup begun yet";
  };
  page.after.push(() => redraw(part("record"), cupsOf(), (cups) => cups.map(lineOf)));
  Object.assign(page.acts, {
    "save-file": async () => {
      const { saveJobFile } = await import("../keeping/transfer.js");
      const how = await saveJobFile(state.job);
      if (how !== "cancelled") say("The job is saved to a file.");
    },
    "open-file": async () => {
      const loading = [import("../keeping/transfer.js"), import("../lib/files.js")];
      const [{ readJobFile }, { chooseFile }] = await Promise.all(loading);
      const file = await chooseFile(".json,application/json");
      if (!file) return;
      const { job, error } = await readJobFile(file);
      if (error) say(`${file.name}: ${error}`);
      else await takeJob(job);
    },
  });
  page.requestRender();
}

function cupsOf() {
  return allCups(state.job).map(({ cup, colour }) => ({
    colour: colour.id,
    cup: cup.id,
    swatch: colour.swatch,
    title: `${colour.name}, cup ${cup.number}${cup.coat > 1 ? `, coat ${cup.coat}` : ""}`,
    at: isSetAside(cup) ? "set aside" : stageOf(cup)?.title ?? "done",
    begun: timeOfDay(Date.parse(cup.begun)),
  }));
}

function lineOf({ colour, cup, swatch, title, at, begun }) {
  const dot = element("span", { class: "dot" });
  dot.style.setProperty("--swatch", swatch || "");
  return element("li", {}, element(
    "button",
    { type: "button", class: "record__line", "data-act": "bench", "data-colour": colour, "data-cup": cup },
    dot,
    element("span", { class: "record__what" }, title),
    element("span", { class: "quiet small" }, `${at} · begun ${begun}`),
  ));
}
