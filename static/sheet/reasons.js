// Sentences for why a cell is blank and what a check found; webapp/sheet/reasons.py is the twin.
import { inputs, labels, levels } from "../printed.js";
import { checkSentences, names, rangeSentences } from "../sentences.js";
import { called, capital, inSentence, learnNames, showCell, uncapitalized } from "./quantities.js";

learnNames(names);

const SECTIONS = { room: " in the room", card: " on the resin card", bench: " on the bench" };
const MARK = /\{(label|cell):(\w+)\}/g;

/** Name a row as a person would: "face Ground", "color 2", "cut-out 1 of face Ground". */
export function rowTitle(row) {
  if (row.level === "job") return "the job";
  if (row.level === "cup") return `the cups of ${rowTitle(row.parent)}`;
  const word = levels[row.level].word;
  const isSaid = row.name.toLowerCase().startsWith(word);
  const title = isSaid ? row.name : `${word} ${row.name || row.position}`;
  return row.level === "opening" ? `${title} of ${rowTitle(row.parent)}` : title;
}

/** The sentence that says why a cell is blank. */
export function because({ kind, name, row, says }) {
  if (kind === "refused") return says;
  if (kind === "range") return sentence(rangeSentences[name], row);
  if (kind === "empty") return `${capital(rowTitle(row))} has ${levels[name].empty}.`;
  const place = row.level === "job" ? SECTIONS[inputs[name]?.section] ?? "" : `, ${rowTitle(row)}`;
  if (kind === "missing") return `${called(name)} is missing${place}.`;
  return `${called(name)} cannot be worked out from these figures${place}.`;
}

/** Why a check cannot be made, or what it says is wrong. */
export function saysOf({ name, state, row, blank }) {
  return state === "wrong" ? sentence(checkSentences[name].says, row) : `Not checked: ${uncapitalized(because(blank))}`;
}

/** What would do against a check that is wrong, without the ways that speak of a blank cell. */
export function waysOut({ name, state, row }) {
  const ways = state === "wrong" ? checkSentences[name].would_do ?? [] : [];
  const cellsOf = (way) => [...way.matchAll(MARK)].filter(([, kind]) => kind === "cell");
  const isKnown = (way) => cellsOf(way).every(([, , cell]) => hasValue(seenFrom(row, cell)));
  return ways.filter(isKnown).map((way) => sentence(way, row));
}

/**
 * Fill a sentence's marks: what a name is called, and what its cell reads from a row in the job's units. Without a row,
 * or where a cell is blank, its name in brackets stands for it.
 */
export function sentence(text, row = null) {
  return text.replace(MARK, (mark, kind, name, place) => {
    if (kind === "label") return /(^|[.?!] )$/.test(text.slice(0, place)) ? called(name) : inSentence(name);
    const cell = seenFrom(row, name);
    return hasValue(cell) ? read(name, cell, row) : `[${inSentence(name)}]`;
  });
}

const hasValue = (cell) => cell !== undefined && cell.value !== null;

/** The cell of this name on the row or the nearest above it. */
function seenFrom(row, name) {
  for (let found = row; found; found = found.parent) if (name in found.cells) return found.cells[name];
  return undefined;
}

function read(name, { value }, row) {
  const { kind } = labels[name];
  if (kind === "choice") return uncapitalized(inputs[name].options.find(([option]) => option === value)[1]);
  return showCell(name, value, row.top.units);
}
