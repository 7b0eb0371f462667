// The marks of the job sheet's templates: what each `data-` attribute holds, and how its node is painted.
// How a mark is called is told in lib/binder.js. `data-level` beside a mark names a row above, or a colour's cup.
import { inputs, labels } from "../printed.js";
import { called, hintFor, rounded, showParts, unitBehind, unitShown } from "../sheet/quantities.js";
import { rowAt } from "../sheet/sheet.js";
import { state, typedIn } from "../keeping/store.js";
import * as dom from "../lib/dom.js";

/** How a time of day reads until the day has come to life. */
export const BLANK = { figure: "—", unit: "" };

const OTHER_UNITS = { mL: "fl oz", "fl oz": "mL" };

/**
 * Each mark by its name, in the order in which those of one node are painted.
 * @type {Record<string, import("../lib/binder.js").Mark>}
 */
export const marks = {
  late, asked, cell, because: whyBlank, checks, field, choice, say, draw, when, above, whenExample, rows, swatch, input,
  editor,
};

/** What a cell reads, as figure and unit: in the job's units, or as a time of day, a count, a share. */
export function readingOf(page, filled, name, { as = "", unit = "" } = {}) {
  if (!filled || filled.blank || filled.value === null) return BLANK;
  const { value } = filled;
  if (as === "clock") return page.clock(value);
  if (as === "percent") return { figure: `${rounded(value * 100)}%`, unit: "" };
  if (as === "cups" || as === "drops") return { figure: rounded(value, 0), unit: value === 1 ? as.slice(0, -1) : as };
  const { kind, grain } = labels[name];
  const shown = unitShown(kind, state.job.units);
  if (unit === "other") return showParts(value, kind, OTHER_UNITS[shown]);
  return showParts(value, kind, unit || shown, grain);
}

/** late="TEMPLATE": what the template holds comes in when its fold is first opened. */
function late(node, id, binder) {
  const { page } = binder;
  let block = null;
  return (row) => {
    const isOpen = node.parentElement.open ?? !isFoldedAway(node);
    const contents = !block && (isOpen || page.isWhole) && dom.contents(node.dataset.late);
    if (contents) {
      node.removeAttribute("data-late");
      node.append(contents);
      block = binder.mount(node, id);
    }
    if (block) binder.paint(block, row);
  };
}

/** asked="CHOICE OPTION ...", template="TEMPLATE": what the template holds stands here while one of these is chosen. */
function asked(node, id, binder) {
  const [name, ...options] = node.dataset.asked.split(" ");
  let block = null;
  return (row) => {
    const isAsked = options.includes(row.cells[name]?.value);
    const contents = !block && isAsked && dom.contents(node.dataset.template);
    if (contents) {
      block = binder.mount(contents.firstElementChild, id);
      node.replaceWith(block.node);
    }
    if (!block) return;
    dom.setHidden(block.node, !isAsked);
    if (isAsked) binder.paint(block, row);
  };
}

/** cell="CELL": a figure; unit="UNIT" or "other" shows it in another unit, as="clock" and the like in another way. */
function cell(node, id, { page }) {
  const { cell: name, level, as } = node.dataset;
  let painted = null;
  let said = "";
  return (row) => {
    const at = rowAt(row, level);
    const label = called(name);
    // A cell that was not filled again reads as it did; a time of day moves on by itself.
    if (painted === at.cells[name] && said === label && as !== "clock") return;
    painted = at.cells[name];
    said = label;
    dom.setAttribute(node, "data-row", at.id);
    dom.setFigure(node, readingOf(page, at.cells[name], name, node.dataset), label);
  };
}

/** because="CELL": a button that says why the cell is blank, while it is. */
function whyBlank(node, id, { page }) {
  return (row) => page.findings?.whyBlank(node, rowAt(row, node.dataset.level));
}

/** checks="CELL ..." or "*", but="CELL ...": what is wrong beside these cells, or all but beside those of the row. */
function checks(node, id, { page }) {
  const blocks = new Map();
  return (row) => page.findings?.checks(node, rowAt(row, node.dataset.level), blocks);
}

/** field="INPUT": a text field with its label, help and note. */
function field(node, id) {
  const name = node.dataset.field;
  const tied = dom.tieField(node, `${id}-${name}`);
  return (row) => {
    const value = typedIn(row, name);
    const filled = row.cells[name];
    const isRefused = filled?.blank?.kind === "refused" && filled.origin === "typed";
    const { units } = state.job;
    const hint = hintFor(name, units);
    if (hint) dom.setAttribute(tied.input, "placeholder", hint);
    const suffix = unitBehind(name, value || tied.input.placeholder, units);
    dom.showField(tied, { value, error: isRefused ? filled.blank.says : "", says: filled?.note, suffix });
  };
}

/** choice="INPUT": one of some options. */
function choice(node, id) {
  const name = node.dataset.choice;
  const radios = [...node.querySelectorAll("input")];
  for (const radio of radios) radio.name = `${id}-${name}`;
  return (row) => {
    const value = row.cells[name]?.value ?? "";
    dom.choose(radios, value);
    if (name === "shape") dom.showChosen(node, value, inputs.shape.options);
  };
}

/** say="WORDS": words that the page knows by this name. */
function say(node, id, { page }) {
  let said = null;
  return (row) => {
    const words = page.say[node.dataset.say]?.(row) ?? "";
    if (words !== said) dom.setText(node, words);
    said = words;
  };
}

/** draw="PICTURE": a picture that the page knows by this name. */
function draw(node, id, { page }) {
  return (row) => page.draw[node.dataset.draw]?.(node, rowAt(row, node.dataset.level));
}

/** when="CHOICE OPTION ...": shown while one of these is chosen. */
function when(node) {
  const [name, ...options] = node.dataset.when.split(" ");
  const { level } = node.dataset;
  return (row) => dom.setHidden(node, !options.includes(rowAt(row, level).cells[name]?.value));
}

/** above="CELL FIGURE": shown while the cell is greater. */
function above(node) {
  const [name, least] = node.dataset.above.split(" ");
  const { level } = node.dataset;
  return (row) => dom.setHidden(node, !(rowAt(row, level).cells[name]?.value > Number(least)));
}

/** when-example: shown while the job is the example. */
function whenExample(node) {
  return () => dom.setHidden(node, !state.job.example);
}

/** rows="LEVEL", template="TEMPLATE": one copy of the template for each row of this level. */
function rows(node, id, binder) {
  const made = new Map();
  const { rows: level, template } = node.dataset;
  const make = (rowId) => {
    const copy = dom.clone(template);
    copy.dataset.id = rowId;
    return binder.mount(copy, rowId);
  };
  return (row) => {
    if (isFoldedAway(node)) return;
    const below = row.rows[level];
    if (binder.hasNewRows() || made.size === 0) dom.keepInStep(node, below.map((each) => each.id), made, make);
    // What is typed in a colour changes no other colour, and in a face no other face: those are not painted.
    for (const each of below) if (binder.isTouched(each.id)) binder.paint(made.get(each.id), each);
  };
}

/** swatch: tinted in the colour's own. */
function swatch(node) {
  return (row) => node.style.setProperty("--swatch", row.marks.swatch || "");
}

/** input="INPUT": where something is typed; within a field, that shows it. */
function input(node) {
  return (row) => node.closest("[data-field]") || dom.setValue(node, typedIn(row, node.dataset.input));
}

/** editor="TEMPLATE": what the template holds stands here while the row is the one that is edited. */
function editor(node, id, binder) {
  let block = null;
  return (row) => {
    const isOpen = binder.page.editing === id;
    node.parentElement.classList.toggle("face--open", isOpen);
    dom.setAttribute(node.parentElement.querySelector("[aria-expanded]"), "aria-expanded", String(isOpen));
    if (isOpen && !block) {
      block = binder.mount(dom.clone(node.dataset.editor), id);
      node.append(block.node);
    } else if (!isOpen && block) {
      block.node.remove();
      block = null;
    }
    if (block) binder.paint(block, row);
  };
}

/** Only one of a step's two faces is painted, the answer or the body. */
function isFoldedAway(node) {
  const step = node.closest(".step");
  return Boolean(step) && step.hasAttribute("data-folded") === Boolean(node.closest(".step__body"));
}
