import { inputs, labels, nodes, units } from "../printed.js";
import { called, capital, hintFor, inSentence, rounded } from "../sheet/quantities.js";
import { because, rowTitle } from "../sheet/reasons.js";
import { above, calculate, findRow } from "../sheet/sheet.js";
import { state } from "../keeping/store.js";
import { helps, origins, workings } from "../workings.js";
import { buttonOf, element, icon, part, setText } from "../lib/dom.js";
import { mathOf } from "../lib/math.js";
import { rulesOf, stepOf } from "./formula-steps.js";

const FROM = {
  total: "The sum over the rows below.",
  most: "The greatest among the rows below.",
  least: "The least among the rows below.",
  greatest_of: "The greatest of these; blank ones are passed over.",
  least_of: "The least of these; blank ones are passed over.",
  first_of: "The first of these that is not blank.",
};

let trail = [];
let root = null;
let page = null;
let isFrozen = false;

/**
 * Open the working of a figure over the page.
 * @param {object} sheetPage the job sheet's page
 * @param {{row: string, cell: string, plan?: string}} figure `plan` is the id of the cup whose plan it belongs to
 */
export function openWorking(sheetPage, { row, cell, plan }) {
  page = sheetPage;
  Object.assign(page.acts, { "working-back": goBack, "working-close": closeWorking });
  isFrozen = Boolean(plan);
  root = isFrozen ? calculate(planOf(plan)) : state.sheet;
  const found = findRow(root, row);
  if (!found) return;
  trail = [{ row: found, name: cell }];
  showLast();
  const dialog = part("working");
  if (!dialog.open) dialog.showModal();
}

function goBack() {
  trail.pop();
  showLast();
}

function closeWorking() {
  part("working").close();
}

function planOf(cupId) {
  const cups = state.job.colours.flatMap((colour) => colour.cups || []);
  return cups.find((cup) => cup.id === cupId).plan;
}

function showLast() {
  const { row, name } = trail[trail.length - 1];
  const dialog = part("working");
  setText(dialog.querySelector(".sheet__title"), called(name));
  buttonOf("working-back", dialog).hidden = trail.length < 2;
  const body = part("working-body");
  body.replaceChildren(...workingOf(row, name));
  body.scrollTop = 0;
}

function workingOf(row, name) {
  const node = nodeOf(row, name);
  const cell = row.cells[name];
  const working = workings[name];
  const { summary, source, example, steps } = working || {};
  return [
    element("p", { class: "quiet small" }, capital(rowTitle(row))),
    element("p", { class: "working__answer" }, textOf(row, name)),
    cell.blank && element("p", { class: "working__blank" }, because(cell.blank)),
    cell.blank && !isFrozen && cell.origin !== "typed" && jumpButton(cell.blank.row.id, cell.blank.name, "Go there"),
    element("p", {}, summary || helpOf(name) || FROM[node.kind] || ""),
    ...originOf(row, name, cell, node),
    ...(steps || []).map((step) => stepWith(step, row, node, working)),
    ...inputsOf(row, node, cell),
    ...(steps ? [mathOf(steps), ...rulesOf(working.rules)] : []),
    source && element("p", { class: "working__source" }, `Source: ${source}`),
    example && element("p", { class: "working__source" }, `Example: ${example}`),
    (working || origins[name]) && bookButton(name),
  ].filter(Boolean);
}

function bookButton(name) {
  const attributes = { type: "button", class: "button button--quiet", "data-act": "book", "data-formula": name };
  return element("button", attributes, "In the whole list");
}

function nodeOf(row, name) {
  return nodes.find((node) => node.level === row.level && node.name === name);
}

/** What stands in a cell, as the person reads it: what was typed verbatim, a constant as its source prints it. */
function textOf(row, name) {
  const cell = row.cells[name];
  const input = inputs[name];
  if (!cell) return "—";
  if (cell.origin === "typed" && input && input.kind !== "choice" && cell.typed) {
    return asPrinted(`${cell.typed.trim()} ${page.unitBehind(name, cell.typed)}`.trim(), input.kind);
  }
  if (cell.blank) return "—";
  if (cell.origin === "constant") return origins[name].shown;
  if (input?.kind === "choice") return input.options.find(([value]) => value === cell.value)[1];
  const { figure, unit } = page.readingOf(cell, name);
  return `${figure} ${unit}`.trim();
}

/** What was typed, with the names of its units as they are printed: "25 °C" for "25 degC". */
function asPrinted(typed, kind) {
  const shown = (units[kind]?.shown ?? []).filter((unit) => unit.name && unit.name !== unit.shown);
  return shown.reduce((text, unit) => text.replace(unit.name, unit.shown), typed);
}

function helpOf(name) {
  return helps[name] ?? "";
}

/** Where the figure of an input or constant comes from, with the way to its field. */
function originOf(row, name, cell, node) {
  if (node.kind === "constant") {
    return [element("p", { class: "working__source" }, `Source: ${origins[name].source}`)];
  }
  if (node.kind === "choice") {
    const [steps, choice] = node.asks[0];
    return [element("p", {}, `As chosen: ${textOf(above(row, steps), choice).toLowerCase()}.`)];
  }
  if (node.kind !== "input") return [];
  const before = isFrozen ? ", before this cup began" : "";
  const says = {
    typed: cell.typed || !cell.blank ? `You typed ${textOf(row, name)}${before}.` : "",
    default: `Our default, ${hintFor(name, state.job.units)}. You can change it.`,
    fallback: `Not typed here, so it is taken from ${inSentence(cell.winner)}.`,
  }[cell.origin];
  const isTyped = cell.origin === "typed" && cell.typed;
  return [
    says && element("p", { class: "working__typed" }, says),
    cell.note && element("p", {}, capital(cell.note), "."),
    !isFrozen && jumpButton(row.id, name, isTyped ? "Change what you typed" : "Type it"),
  ];
}

/** A step with the figures put in; where the formula counts from absolute zero or in radians, so does it. */
function stepWith(step, row, node, working) {
  const places = new Map(node.asks.map(([steps, asked]) => [asked, above(row, steps)]));
  const valueOf = (asked) => (places.has(asked) ? countedAs(working, places.get(asked), asked) : null);
  const isLast = !step.name && !row.cells[node.name].blank;
  const results = [countedAs(working, row, node.name), textOf(row, node.name)];
  return stepOf(step, valueOf, isLast ? [...new Set(results)] : []);
}

function countedAs({ kelvins, radians }, row, name) {
  const { value } = row.cells[name];
  const { kind } = labels[name];
  if (value === null) return "—";
  if (kelvins && kind === "temperature") return `${rounded(value, 2)} K`;
  if (radians && kind === "angle") return rounded(value, 4);
  return textOf(row, name);
}

/** The figures that went in, each a way further down; of picked ones the winner is marked. */
function inputsOf(row, node, cell) {
  const asked = askedBy(row, node, cell);
  if (!asked.length) return [];
  const lines = asked.map(({ at, name, isWinner }) => {
    const button = element(
      "button",
      { type: "button", class: "working__row" },
      element("span", { class: "working__name" },
        called(name),
        at === row ? null : element("span", { class: "working__where" }, rowTitle(at)),
        isWinner ? element("span", { class: "working__winner" }, "this one decides") : null),
      element("span", { class: "working__value" }, textOf(at, name)),
      icon("go"),
    );
    button.addEventListener("click", () => {
      trail.push({ row: at, name });
      showLast();
    });
    return element("li", {}, button);
  });
  return [element("ul", { class: "working__inputs" }, lines)];
}

function askedBy(row, node, cell) {
  if (node.below) {
    const rows = row.rows[node.below].filter((each) => each.touched);
    const [[, name]] = node.asks;
    const isWinner = (at) => node.kind !== "total" && at.cells[name].value === cell.value;
    return rows.map((at) => ({ at, name, isWinner: isWinner(at) }));
  }
  const isPick = ["greatest_of", "least_of", "first_of"].includes(node.kind);
  if (node.kind === "input" && cell.origin !== "fallback") return [];
  const isAsked = (name) => node.kind !== "choice" || name === cell.winner || name === node.asks[0][1];
  return node.asks
    .map(([steps, name]) => ({ at: above(row, steps), name, isWinner: isPick && name === cell.winner }))
    .filter(({ at, name }) => at.cells[name] && isAsked(name));
}

function jumpButton(rowId, name, says) {
  const button = element("button", { type: "button", class: "button" }, icon("go"), says);
  button.addEventListener("click", () => {
    closeWorking();
    page.jumpTo(rowId, name);
  });
  return button;
}
