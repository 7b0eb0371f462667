import { inputs, labels } from "../printed.js";
import { called, rounded, showParts, unitBehind, unitShown } from "../sheet/quantities.js";
import { because, rowAt, shownChecks } from "../sheet/sheet.js";
import { edit, rowOf, state, subscribe, typedIn } from "../keeping/store.js";
import * as dom from "../lib/dom.js";

const BLANK = { figure: "—", unit: "" };
const OTHER_UNITS = { mL: "fl oz", "fl oz": "mL" };
const MARKS = "late asked cell because checks field choice say draw when above when-example rows swatch input editor".split(" ");
const BOUND = MARKS.map((mark) => `[data-${mark}]`).join(",");

/**
 * The page, for what joins it after its first screen: `say` holds words by name, `draw` pictures, `acts` what a
 * button does, `after` what follows each paint, `clock` the time of day so many seconds from now. `editing` is the
 * id of the face that is open, `isPrinting` paints what is folded too, `isWhole` brings in what has not been opened.
 */
export const page = {
  say: {
    card: () => state.job.card?.name || "No resin card yet",
    face: (row) => row.name || `Face ${row.position}`,
    colour: (row) => row.name || `Colour ${row.position}`,
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
  after: [],
  editing: null,
  isPrinting: false,
  isWhole: false,
  render,
  requestRender: () => {
    owe([ALL, ROWS]);
    requestPaint();
  },
  readingOf,
  rowIdOf,
  setFolded,
  startOver,
  unitBehind: (name, text) => unitBehind(name, text, state.job.units),
};

// What a change touches beside rows by id: the cells of every row, and which rows there are.
const ALL = "all";
const ROWS = "rows";

// Long enough after a frame that what it shows is on the screen, in milliseconds.
const REST_AFTER = 20;
// What a first screen shows, until it is known what stands near it.
const FIRST_STEPS = ["resin", "faces"];

/** The head and the steps, each a block that owes the rows changed since it was painted. */
let blocks = [];
let isAsked = false;
let isOwing = false;
let changed = new Set();

/** Put the page together from its templates, before there is a job to paint. */
export function putTogether(node) {
  node.dataset.id = "job";
  blocks = [...node.querySelectorAll(".head, .step")].map((each) => (
    { ...mount(each, "job"), owed: new Set(), isNear: !each.dataset.step || FIRST_STEPS.includes(each.dataset.step) }
  ));
}

/** Paint the job, and paint it again after every change. */
export function showJobSheet(node) {
  node.addEventListener("input", (event) => keep(event.target, event.target.dataset.input));
  node.addEventListener("change", (event) => keep(event.target.closest("[data-choice]"), null, event.target));
  node.addEventListener("toggle", page.requestRender, true);
  subscribe((change) => {
    owe(change.kind === "edit" ? rowsTouchedIn(change.row) : [ALL, ROWS]);
    // A key is painted in its own turn, not a frame later.
    if (change.kind === "edit") paintNear();
    else requestPaint();
  });
  startOver();
  watchWhatIsNear();
}

/** Paint another job from the top: folded to its answers, the example with its face open. */
function startOver() {
  page.editing = state.job.example ? state.job.colours[0].faces[0].id : null;
  const opened = page.editing ? ["faces", "cups"] : ["cups"];
  for (const { node } of blocks) if (node.dataset.step) setFolded(node, !opened.includes(node.dataset.step));
  owe([ALL, ROWS]);
  paintNear();
}

/** Fold a step to its answer, or open it. */
function setFolded(step, isFolded) {
  step.toggleAttribute("data-folded", isFolded);
  dom.setAttribute(step.querySelector(".step__toggle"), "aria-expanded", String(!isFolded));
}

/** Paint at the next frame, once however often it is asked for. */
function requestPaint() {
  if (isAsked) return;
  isAsked = true;
  requestAnimationFrame(paintNear);
}

/** Paint now, all of it. */
function render() {
  owe([ALL, ROWS]);
  paintOwed(blocks);
  for (const each of page.after) each();
}

/** Paint what a person may be looking at now, and the rest once that is on the screen. */
function paintNear() {
  isAsked = false;
  paintOwed(blocks.filter((block) => block.isNear));
  if (isOwing) return;
  isOwing = true;
  requestAnimationFrame(() => setTimeout(paintRest, REST_AFTER));
}

function paintRest() {
  isOwing = false;
  paintOwed(blocks);
  for (const each of page.after) each();
}

function owe(ids) {
  for (const { owed } of blocks) for (const id of ids) owed.add(id);
}

function paintOwed(some) {
  for (const block of some.filter(({ owed }) => owed.size > 0)) {
    changed = block.owed;
    block.owed = new Set();
    paint(block, state.sheet);
  }
}

function watchWhatIsNear() {
  const watcher = new IntersectionObserver((entries) => {
    for (const { target, isIntersecting } of entries) {
      blocks.find(({ node }) => node === target).isNear = isIntersecting;
      target.toggleAttribute("data-far", !isIntersecting);
    }
  }, { rootMargin: "25%" });
  for (const { node } of blocks) if (node.dataset.step) watcher.observe(node);
}

/** What is typed in a colour changes no other colour, and in a face no other face: those are not painted. */
function isUntouched(id) {
  return !changed.has(ALL) && !changed.has(id);
}

function rowsTouchedIn(rowId) {
  const { row, level, parent } = rowOf(rowId);
  if (level === "job") return [ALL];
  if (level === "colour") return [rowId, ...row.faces.map((face) => face.id)];
  return level === "face" ? [rowId, parent.id] : [rowId, parent.id, rowOf(parent.id).parent.id];
}

/** The id of the row that a node belongs to. */
function rowIdOf(node) {
  return node.closest("[data-id]").dataset.id;
}

/** What a cell reads, as figure and unit: in the job's units, or as a time of day, a count, a share. */
function readingOf(cell, name, { as = "", unit = "" } = {}) {
  if (!cell || cell.blank || cell.value === null) return BLANK;
  const { value } = cell;
  if (as === "clock") return page.clock(value);
  if (as === "percent") return { figure: rounded(value * 100), unit: "%" };
  if (as === "cups" || as === "drops") return { figure: rounded(value), unit: value === 1 ? as.slice(0, -1) : as };
  const { kind } = labels[name];
  const shown = unitShown(kind, state.job.units);
  return showParts(value, kind, unit === "other" ? OTHER_UNITS[shown] : unit || shown);
}

/** Tie a node's marked parts to a row, once; what stands in nested rows is tied when those are made. */
function mount(node, id) {
  const binds = [];
  for (const each of [node, ...node.querySelectorAll(BOUND)]) {
    for (const [mark, bind] of Object.entries(BINDS)) if (mark in each.dataset) binds.push(bind(each, id));
  }
  return { node, binds };
}

function paint(block, row) {
  for (const bind of block.binds) bind(row);
}

const BINDS = {
  late: (node, id) => {
    let block = null;
    return (row) => {
      const isOpen = node.parentElement.open ?? !isFoldedAway(node);
      const contents = !block && (isOpen || page.isPrinting || page.isWhole) && dom.contents(node.dataset.late);
      if (contents) {
        node.removeAttribute("data-late");
        node.append(contents);
        block = mount(node, id);
      }
      if (block) paint(block, row);
    };
  },
  asked: (node, id) => {
    const [name, ...options] = node.dataset.asked.split(" ");
    let block = null;
    return (row) => {
      const isAsked = options.includes(row.cells[name]?.value);
      const contents = !block && isAsked && dom.contents(node.dataset.template);
      if (contents) {
        block = mount(contents.firstElementChild, id);
        node.replaceWith(block.node);
      }
      if (!block) return;
      dom.setHidden(block.node, !isAsked);
      if (isAsked) paint(block, row);
    };
  },
  cell: (node) => {
    const { cell: name, level, as } = node.dataset;
    let painted = null;
    return (row) => {
      const at = rowAt(row, level);
      // A cell that was not filled again reads as it did; a time of day moves on by itself.
      if (painted === at.cells[name] && as !== "clock") return;
      painted = at.cells[name];
      dom.setAttribute(node, "data-row", at.id);
      dom.setFigure(node, readingOf(at.cells[name], name, node.dataset), called(name));
    };
  },
  because: (node) => (row) => {
    const blank = rowAt(row, node.dataset.level).cells[node.dataset.because]?.blank;
    dom.setHidden(node, !blank);
    if (blank) tieToBlank(node, blank, because(blank));
  },
  checks: (node) => {
    const blocks = new Map();
    const cells = node.dataset.checks.split(" ");
    return (row) => {
      const shown = shownChecks(rowAt(row, node.dataset.level), cells);
      dom.keepInStep(node, shown.map(({ name, state: at }) => `${at}-${name}`), blocks, (key) => ({
        node: dom.clone(key.startsWith("wrong") ? "check" : "unchecked"),
      }));
      shown.forEach((check, place) => paintCheck(node.children[place], check));
    };
  },
  field: (node, id) => {
    const name = node.dataset.field;
    const field = dom.tieField(node, `${id}-${name}`);
    return (row) => {
      const value = typedIn(row, name);
      const cell = row.cells[name];
      const isRefused = cell?.blank?.kind === "refused" && cell.origin === "typed";
      const suffix = page.unitBehind(name, value || field.input.placeholder);
      dom.showField(field, { value, error: isRefused ? cell.blank.says : "", says: cell?.note, suffix });
    };
  },
  choice: (node, id) => {
    const name = node.dataset.choice;
    const radios = [...node.querySelectorAll("input")];
    for (const radio of radios) radio.name = `${id}-${name}`;
    return (row) => {
      const value = row.cells[name]?.value ?? "";
      dom.choose(radios, value);
      if (name === "shape") dom.showChosen(node, value, inputs.shape.options);
    };
  },
  say: (node) => {
    let said = null;
    return (row) => {
      const words = page.say[node.dataset.say]?.(row) ?? "";
      if (words !== said) dom.setText(node, words);
      said = words;
    };
  },
  draw: (node) => (row) => page.draw[node.dataset.draw]?.(node, rowAt(row, node.dataset.level)),
  when: (node) => {
    const [name, ...options] = node.dataset.when.split(" ");
    return (row) => dom.setHidden(node, !options.includes(row.cells[name]?.value));
  },
  above: (node) => {
    const [name, least] = node.dataset.above.split(" ");
    return (row) => dom.setHidden(node, !(row.cells[name]?.value > Number(least)));
  },
  whenExample: (node) => () => dom.setHidden(node, !state.job.example),
  rows: (node) => {
    const made = new Map();
    const { rows: level, template } = node.dataset;
    const make = (id) => {
      const copy = dom.clone(template);
      copy.dataset.id = id;
      return mount(copy, id);
    };
    return (row) => {
      if (isFoldedAway(node)) return;
      const rows = row.rows[level];
      if (changed.has(ROWS) || made.size === 0) dom.keepInStep(node, rows.map((each) => each.id), made, make);
      for (const each of rows) if (!isUntouched(each.id)) paint(made.get(each.id), each);
    };
  },
  swatch: (node) => (row) => node.style.setProperty("--swatch", row.typed.swatch || ""),
  input: (node) => (row) => node.closest("[data-field]") || dom.setValue(node, typedIn(row, node.dataset.input)),
  editor: (node, id) => {
    let editor = null;
    return (row) => {
      const isOpen = page.editing === id;
      node.parentElement.classList.toggle("face--open", isOpen);
      dom.setAttribute(node.parentElement.querySelector("[aria-expanded]"), "aria-expanded", String(isOpen));
      if (isOpen && !editor) {
        editor = mount(dom.clone(node.dataset.editor), id);
        node.append(editor.node);
      } else if (!isOpen && editor) {
        editor.node.remove();
        editor = null;
      }
      if (editor) paint(editor, row);
    };
  },
};

function keep(node, name, radio) {
  if (!(radio ? node : name)) return;
  edit(rowIdOf(node), name ?? node.dataset.choice, (radio ?? node).value);
}

function paintCheck(node, { state: at, severity, says, blank }) {
  if (at === "wrong") return dom.showCheck(node, severity, says);
  const reason = because(blank);
  return tieToBlank(node.querySelector("button"), blank, `Not checked: ${reason[0].toLowerCase()}${reason.slice(1)}`);
}

/** A button that says why a figure is blank leads to what is missing. */
function tieToBlank(button, { row, name }, says) {
  dom.setText(button.lastElementChild, says);
  dom.setAttribute(button, "data-row", row.id);
  dom.setAttribute(button, "data-name", name);
}

/** Only one of a step's two faces is painted, the answer or the body; in print both are. */
function isFoldedAway(node) {
  const step = node.closest(".step");
  return Boolean(step) && !page.isPrinting
    && step.hasAttribute("data-folded") === Boolean(node.closest(".step__body"));
}
