import { element, part, redraw } from "../lib/dom.js";
import { state } from "../keeping/store.js";
import { isSetAside, stageOf } from "../clocks/cup-record.js";
import { allCups } from "../clocks/turns.js";
import { timeOfDay } from "../lib/moments.js";

const MOST_LINES = 60;
const BLANKS = 5;

/** Bring the record to life: the cups of this job, its file, and the page in print. */
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
    print: () => globalThis.print(),
  });
  globalThis.addEventListener("beforeprint", () => openForPrint(page, true));
  globalThis.addEventListener("afterprint", () => openForPrint(page, false));
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

/** In print every step shows all that it holds, and blanks to write in for each cup. */
function openForPrint(page, isPrinting) {
  page.isPrinting = isPrinting;
  page.render();
  const cups = isPrinting ? cupsToWriteOn() : [];
  part("blanks").replaceChildren(...cups.map(blankLine));
}

function blankLine(title) {
  const cells = Array.from({ length: BLANKS }, () => element("td"));
  return element("tr", {}, element("th", { scope: "row" }, title), cells);
}

function cupsToWriteOn() {
  const titles = state.sheet.rows.colour.flatMap((colour) => {
    const count = (name) => colour.cells[name]?.value ?? 1;
    const each = (number, say) => Array.from({ length: Math.min(number, MOST_LINES) }, (_, place) => say(place + 1));
    return each(count("coats_to_pour"), (coat) => each(count("cups"), (cup) => (
      `${colour.name}, ${count("coats_to_pour") > 1 ? `coat ${coat}, ` : ""}cup ${cup}`
    ))).flat();
  });
  return titles.slice(0, MOST_LINES);
}
