import { unitBehind } from "../sheet/quantities.js";
import { everyRow, findRow } from "../sheet/sheet.js";
import { edit, settle, state, subscribe } from "../keeping/store.js";
import { ALL, Binder, ROWS } from "../lib/binder.js";
import { setAttribute } from "../lib/dom.js";
import { BLANK, marks, readingOf } from "./marks.js";

// What a first screen shows, until it is known what stands near it.
const FIRST_STEPS = ["resin", "faces"];

/**
 * The page, for what joins it after its first screen: `say` holds words by name, `draw` pictures, `acts` what a
 * button does, `after` what follows each paint, `clock` the time of day so many seconds from now, `findings` what
 * there is to say beside figures. `editing` is the id of the face that is open, `isWhole` brings in what has not
 * been opened.
 */
export const page = {
  say: {
    card: () => state.job.card?.name || "No resin card yet",
    face: (row) => row.name || `Face ${row.position}`,
    colour: (row) => row.name || `Color ${row.position}`,
  },
  draw: {},
  acts: {
    fold: (button) => {
      const step = button.closest(".step");
      setFolded(step, !step.hasAttribute("data-folded"));
      render();
    },
  },
  clock: () => BLANK,
  findings: null,
  after: [settle],
  top: () => state.sheet,
  editing: null,
  isWhole: false,
  render,
  requestRender: () => {
    binder.owe([ALL, ROWS]);
    if (!isJoining) binder.request();
  },
  whileJoining,
  readingOf: (cell, name) => readingOf(page, cell, name),
  rowIdOf,
  setFolded,
  startOver,
  unitBehind: (name, text) => unitBehind(name, text, state.job.units),
};

const binder = new Binder(marks, page);
let steps = [];
let isJoining = false;

/** Paint what joins the page once all of it has, and not once for each. */
async function whileJoining(join) {
  isJoining = true;
  await join();
  isJoining = false;
  binder.request();
}

/** Put the page together from its templates, before there is a job to paint. */
export function putTogether(node) {
  node.dataset.id = "job";
  binder.add(node.querySelector(".head"), "job", true);
  steps = [...node.querySelectorAll(".step")];
  for (const step of steps) binder.add(step, "job", FIRST_STEPS.includes(step.dataset.step));
}

/** Keep what is typed, and paint the job again after every change. */
export function showJobSheet(node) {
  node.addEventListener("input", ({ target }) => keep(target, target.dataset.input));
  node.addEventListener("change", ({ target }) => keep(target, target.closest("[data-choice]")?.dataset.choice));
  node.addEventListener("toggle", page.requestRender, true);
  subscribe((change) => {
    const isEdit = change.kind === "edit";
    binder.owe(isEdit ? rowsTouchedIn(change.row) : [ALL, ROWS]);
    // A key is painted in its own turn, not a frame later.
    if (isEdit) binder.paintNear();
    else binder.request();
  });
  binder.watch(steps);
}

/** Paint another job from the top: folded to its answers, the example with its face open. */
function startOver() {
  page.editing = (state.job.example && state.job.colours[0]?.faces?.[0]?.id) ?? null;
  const opened = page.editing ? ["faces", "cups"] : ["cups"];
  for (const step of steps) setFolded(step, !opened.includes(step.dataset.step));
  binder.owe([ALL, ROWS]);
  binder.paintNear();
}

/** Paint now, all of it. */
function render() {
  binder.owe([ALL, ROWS]);
  binder.paintAll();
}

/** Fold a step to its answer, or open it. */
function setFolded(step, isFolded) {
  step.toggleAttribute("data-folded", isFolded);
  setAttribute(step.querySelector(".step__toggle"), "aria-expanded", String(!isFolded));
}

/** The id of the row that a node belongs to. */
function rowIdOf(node) {
  return node.closest("[data-id]").dataset.id;
}

function keep(node, name) {
  if (name) edit(rowIdOf(node), name, node.value);
}

/** What is typed in a row is read in that row, in those above it and in those below. */
function rowsTouchedIn(rowId) {
  const row = findRow(state.sheet, rowId);
  if (!row.parent) return [ALL];
  const touched = [...everyRow(row)].map((each) => each.id);
  for (let above = row.parent; above.parent; above = above.parent) touched.push(above.id);
  return touched;
}
