// One entry of the formula book: a formula, a check or a constant, with all that is known of it.
import { checks, inputs } from "../printed.js";
import { checkSentences, rangeSentences } from "../sentences.js";
import { called } from "../sheet/quantities.js";
import { sentence } from "../sheet/reasons.js";
import { origins, workings } from "../workings.js";
import { element } from "../lib/dom.js";
import { mathOf } from "../lib/math.js";
import { rulesOf, stepOf } from "./formula-steps.js";

const SECTIONS = {
  room: "the room",
  card: "the resin card",
  bench: "the bench",
  colour: "a color",
  face: "a face",
  shape: "a shape",
};
const ONE_MOMENT = "one moment of a cup’s heat, or one point of a bead";

/** All words of an entry that a search looks through, in lower case. */
export function entryWords(name) {
  const { summary = "", source, unit = "", example = "", inputs: asked = {} } = workings[name] || origins[name];
  const says = checks[name] ? sentence([checkSentences[name].says, ...waysOf(name)].join(" ")) : "";
  const words = [called(name), ...Object.keys(asked).map(called), summary, says, source, unit, example];
  return words.join(" ").toLowerCase();
}

/**
 * Make what an entry shows once it is open.
 * @param {string} name
 * @param {Map<string, object>} entries those there are, for the ways from one to another
 */
export function entryBody(name, entries) {
  const body = workings[name] ? formulaBody(name, entries) : constantBody(name);
  return element("div", { class: "entry__body" }, ...body);
}

function constantBody(name) {
  return [sourceLine("Source", origins[name].source)];
}

function formulaBody(name, entries) {
  const { summary, source, example, levels, unit, inputs: asked, steps, rules } = workings[name];
  const check = checks[name];
  const forWhat = levels.map(levelInWords).join(" and ") || ONE_MOMENT;
  return [
    check && element("p", {}, summary),
    check && line("Stands beside", called(check.beside)),
    ...waysOf(name).map((way) => line("Ways to fix", sentence(way))),
    element("p", { class: "entry__line" }, `For ${forWhat}${check ? "" : `, in ${unit}`}.`),
    ...steps.map((step) => stepOf(step, () => null)),
    mathOf(steps),
    ...rulesOf(rules),
    inputList(asked, entries),
    rangeSentences[name] && line("Blank outside its range", sentence(rangeSentences[name])),
    example && sourceLine("Example", example),
    source && sourceLine("Source", source),
  ].filter(Boolean);
}

const waysOf = (name) => checkSentences[name]?.would_do ?? [];

function levelInWords(word) {
  if (word === "job") return "the job";
  return word === "cup" ? "each cup" : `each ${word}`;
}

function line(label, says) {
  return element("p", { class: "entry__line" }, element("b", {}, `${label}: `), says);
}

function sourceLine(label, says) {
  return element("p", { class: "working__source" }, `${label}: ${says}`);
}

function inputList(asked, entries) {
  const names = Object.keys(asked);
  if (!names.length) return null;
  const lines = names.map((name) => element("li", {}, inputOf(name, asked[name], entries)));
  return element("ul", { class: "entry__inputs", "aria-label": "Inputs" }, lines);
}

/** An input with its unit: a way to its own entry, or where a person enters it. */
function inputOf(name, unit, entries) {
  const goal = entries.has(name) ? name : entries.has(gathered(name)) ? gathered(name) : null;
  const words = [
    element("span", { class: "entry__input" }, called(name)),
    element("span", { class: "entry__from" }, [unit, whereFrom(name, goal)].filter(Boolean).join(", ")),
  ];
  if (!goal) return element("span", { class: "entry__plain" }, words);
  return element("button", {
    type: "button",
    class: "entry__go",
    "data-act": "book-turn",
    "data-formula": goal,
    "aria-label": `${called(name)}, in ${unit}: turn to it`,
  }, words);
}

/** Where the figure of an input comes from, if it has no entry of its own to say so. */
function whereFrom(name, goal) {
  if (origins[name]) return origins[name].shown;
  if (inputs[name]) return `entered for ${SECTIONS[inputs[name].section]}`;
  return goal ? "" : "chosen or picked";
}

/** What a total, greatest or least over rows gathers. */
function gathered(name) {
  return name.replace(/^(total|most|least)_/, "");
}
