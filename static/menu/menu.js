import { example, file as jobFile, grammar, units } from "../printed.js";
import { openJob, newId, setUnit, state, undoable } from "../keeping/store.js";
import { clone, choose, element, part, setHidden, setText } from "../lib/dom.js";
import { listJobs, openJobOf, readJob, removeJob } from "../keeping/jobs.js";
import { lastDeleted, takeBack } from "../keeping/trash.js";
import { dayAndTime } from "../lib/moments.js";
import { cupsAtWork } from "../clocks/at-work.js";
import { askBelow } from "../lib/ask.js";

const KINDS = { length: "Lengths", volume: "Volumes", temperature: "Temperatures" };
const THEMES = { auto: "As the phone", light: "Light, for the sun", dark: "Dark" };
const THEME_KEY = "sixteenth theme";
const TAKE_BACK = { type: "button", class: "button", "data-act": "take-back" };
const DELETE = { keep: "Keep the job", sure: "Delete the job" };

/** Bring the menu to life: the jobs on this phone, units, light and dark. */
export function join(page, { storage, say }) {
  const menu = part("menu");
  document.documentElement.dataset.theme = themeNow();
  let deleted = null;
  Object.assign(page.acts, {
    menu: () => {
      show();
      menu.showModal();
    },
    "menu-close": () => menu.close(),
    "new-job": () => {
      openJob(blankJob());
      menu.close();
      page.startOver();
    },
    "pick-job": async (button) => {
      const { job, from } = await openJobOf(storage, button.dataset.job);
      if (job) go(job);
      else menu.close();
      if (from) say(`This job was damaged. It is back as it was ${dayAndTime(from.getTime(), Date.now())}.`);
      else if (!job) say("This job is damaged. Open its file instead.");
    },
    "delete-job": async (button) => {
      const id = button.dataset.job;
      const says = cupsAtWork((await readJob(storage, id))?.colours ?? []);
      if (says) askBelow(button.closest("li"), says, DELETE, () => remove(id));
      else await remove(id);
    },
    "take-back": async (button) => {
      button.remove();
      const { job, error } = await takeBack(storage, deleted, state.job);
      if (job?.id === state.job.id) openJob(job);
      else if (job) go(job);
      else if (error) say(error);
      show();
    },
  });
  for (const [kind, label] of Object.entries(KINDS)) {
    const now = () => state.job.units?.[kind] ?? grammar.jobUnits[kind][0];
    part("units").append(choiceOf(label, unitOptions(kind), (unit) => setUnit(kind, unit), now));
  }
  part("themes").append(choiceOf("", Object.entries(THEMES), setTheme, themeNow));
  menu.addEventListener("click", (event) => event.target === menu && menu.close());

  async function show() {
    const undo = part("menu-undo");
    const jobs = await listJobs(storage);
    deleted = await lastDeleted(storage);
    const gone = deleted && `${deleted.name || "Row"} deleted`;
    setHidden(undo, !undoable());
    setText(undo, `Undo: ${undoable()}`);
    const lines = jobs.map(lineOf);
    // What lies in the trash can be taken back even after a relaunch.
    if (gone && gone !== undoable()) lines.push(element("li", {}, element("button", TAKE_BACK, `Undo: ${gone}`)));
    part("jobs").replaceChildren(...lines);
    for (const each of menu.querySelectorAll("[data-mark]")) each.mark();
  }

  function go(job) {
    openJob(job);
    menu.close();
    page.startOver();
  }

  async function remove(id) {
    await removeJob(storage, id);
    if (id === state.job.id) openAnother();
    say("Job deleted.");
    show();
  }

  function openAnother() {
    openJob(JSON.parse(JSON.stringify(example)));
    page.startOver();
  }
}

function themeNow() {
  try {
    return localStorage.getItem(THEME_KEY) || "auto";
  } catch {
    return "auto";
  }
}

function setTheme(theme) {
  try {
    localStorage.setItem(THEME_KEY, theme);
  } catch {
    // Where nothing is kept, the theme lasts as long as the page.
  }
  document.documentElement.dataset.theme = theme;
}

/** A job with the units, room, card and bench of the one before, and nothing to pour yet. */
function blankJob() {
  const { units: chosen, room, card, bench } = JSON.parse(JSON.stringify(state.job));
  const face = { id: newId("face"), name: "Face 1", shape: "rectangle" };
  const colour = { id: newId("colour"), name: "Color 1", swatch: "#08545c", faces: [face], cups: [] };
  const day = new Date().toLocaleDateString(undefined, { day: "numeric", month: "short" });
  return {
    format: jobFile.format,
    version: jobFile.version,
    id: newId("job"),
    name: `Job of ${day}`,
    units: chosen,
    room,
    card,
    bench,
    colours: [colour],
  };
}

function unitOptions(kind) {
  return grammar.jobUnits[kind].map((name) => [name, units[kind].shown.find((unit) => unit.name === name).shown]);
}

function choiceOf(label, options, chosen, now) {
  const legend = element("legend", { class: "choice__legend" }, label);
  const group = element("fieldset", { class: "choice", "data-mark": true }, legend);
  const row = group.appendChild(element("div", { class: "choice__options" }));
  for (const [value, words] of options) {
    const option = clone("option");
    const radio = option.querySelector("input");
    radio.value = value;
    radio.name = `menu-${label}`;
    setText(option.querySelector(".choice__label"), words);
    option.querySelector(".choice__detail").remove();
    row.append(option);
  }
  group.mark = () => choose(row.querySelectorAll("input"), now());
  row.addEventListener("change", (event) => {
    chosen(event.target.value);
    group.mark();
  });
  return group;
}

function lineOf({ id, name, at }) {
  const line = clone("job-line");
  setText(line.querySelector(".job__name"), name || "Job without a name");
  const isOpen = id === state.job.id ? "open now · " : "";
  setText(line.querySelector(".job__when"), `${isOpen}${dayAndTime(at.getTime(), Date.now())}`);
  line.querySelector(".job__open").dataset.job = id;
  const remove = line.querySelector(".job__delete");
  remove.dataset.job = id;
  setText(remove.querySelector(".visually-hidden"), `Delete ${name}`);
  return line;
}
