// The small grammar of typed quantities, and how a quantity is shown; webapp/quantities.py is the twin.
import { grammar, inputs, labels, units } from "../printed.js";

const NUMBER = /^(?:(?:(\d+)(?: +|-))?(\d+)\/(\d+)|(\d+(?:[.,]\d+)*|[.,]\d+))/;
const THOUSANDS = /^[1-9]\d{0,2}(?:,\d{3})+$/;
const LONGEST = 40;
// Past these, a figure is not read but passed over: nobody measures it.
const MOST_SHOWN = 1e15;
const MOST_DAYS = 10000;
const HALF_UP = 1 + 1e-12;

/** A sentence about what was typed; it is caught in this module and stands beside the field. */
class Refusal extends Error {}

const suchAs = (kind) => `such as ${units[kind]?.example ?? "2"}`;
const named = (name, kind) => units[kind].shown.find((unit) => unit.name === name);

/** Convert a value in a shown unit to the canonical unit of its kind. */
function toCanonical(value, name, kind) {
  const unit = named(name, kind);
  return value * unit.factor + unit.offset;
}

/** Convert a value in the canonical unit of its kind to a shown unit. */
export function fromCanonical(value, name, kind) {
  const unit = named(name, kind);
  return (value - unit.offset) / unit.factor;
}

function plain(text) {
  let left = text;
  for (const [found, instead] of grammar.replacements) left = left.split(found).join(instead);
  return left.trim();
}

function readNumber(left, text, kind) {
  const match = NUMBER.exec(left);
  if (!match) throw new Refusal(`"${text.trim()}" does not start with a number. Type one, ${suchAs(kind)}.`);
  const rest = left.slice(match[0].length).replace(/^ +/, "");
  const [, whole, over, under, digits] = match;
  if (digits === undefined) {
    if (Number(under) === 0) throw new Refusal("A fraction over 0 has no value. Type it again, such as 3/16.");
    return [Number(whole ?? 0) + Number(over) / Number(under), rest];
  }
  if (THOUSANDS.test(digits)) {
    const without = digits.split(",").join("");
    const either = digits.split(",").length === 2 ? `${without} or ${digits.replace(",", ".")}` : without;
    throw new Refusal(`"${digits}" can be read two ways. Type ${either}.`);
  }
  if ((digits.match(/[.,]/g) ?? []).length > 1) {
    throw new Refusal(`"${digits}" is no number. Type one, ${suchAs(kind)}.`);
  }
  return [Number(digits.replace(",", ".")), rest];
}

const spellings = new Map();

/** Every spelling of a kind's units in lower case with the unit's name, the longest first. */
function spellingsOf(kind) {
  if (!spellings.has(kind)) {
    const rows = new Map();
    for (const unit of units[kind].shown) {
      for (const spelling of [unit.name, ...unit.spellings]) if (spelling) rows.set(spelling.toLowerCase(), unit.name);
    }
    spellings.set(kind, [...rows].sort((one, other) => other[0].length - one[0].length));
  }
  return spellings.get(kind);
}

function readUnit(left, kind) {
  const lower = left.toLowerCase();
  for (const [spelling, name] of spellingsOf(kind)) {
    if (lower.startsWith(spelling) && !/^[a-z/^]/.test(lower.slice(spelling.length))) {
      return [named(name, kind), left.slice(spelling.length).replace(/^ +/, ""), spelling];
    }
  }
  return [null, left, ""];
}

function noSuchUnit(left, kind, unit) {
  const { shown, inches = [] } = units[kind];
  const typed = (each) => (/^[ -~]*$/.test(each.shown) ? each.shown : each.name);
  const offered = shown.filter(({ name }) => (inches.includes(unit) ? inches.includes(name) : name));
  const names = offered.map(typed);
  if (!names.length) return `"${left}" does not belong here. Type a bare number, such as 2.`;
  return `"${left}" is no unit of ${kind} here. Use ${names.join(", ")}.`;
}

const twoNumbers = (text, kind) => `"${text.trim()}" holds two numbers. Type one quantity, ${suchAs(kind)}.`;

function read(text, kind, unit) {
  let left = plain(text);
  if (left.length > LONGEST) throw new Refusal(`That is too long to read. Type one quantity, ${suchAs(kind)}.`);
  const negative = left.startsWith("-");
  if (/^[-+]/.test(left)) left = left.replace(/^[-+]+/, "").trimStart();
  let total = 0;
  let last = null;
  let note = "";
  while (left) {
    let number, found, spelling;
    [number, left] = readNumber(left, text, kind);
    [found, left, spelling] = readUnit(left, kind);
    if (!found && last?.name === "ft" && kind === "length") found = named("in", kind);
    if (last && (!found || !units[kind].isCompound || !(found.factor < last.factor))) {
      throw new Refusal(twoNumbers(text, kind));
    }
    if (!found && left) throw new Refusal(NUMBER.test(left) ? twoNumbers(text, kind) : noSuchUnit(left, kind, unit));
    const taken = found?.takenAs?.[spelling];
    if (taken) note = `${spelling} taken as ${taken}`;
    last = found ?? named(unit, kind);
    total += toCanonical(negative && !total ? -number : number, last.name, kind);
    if (negative && left) throw new Refusal(`"${text.trim()}" cannot be read. Type one quantity, ${suchAs(kind)}.`);
  }
  if (!last) throw new Refusal(`Type a number, ${suchAs(kind)}.`);
  return { value: total, unit: last.name, note };
}

function refusalAsError(reading) {
  try {
    return reading();
  } catch (refusal) {
    if (refusal instanceof Refusal) return { error: refusal.message };
    throw refusal;
  }
}

/** Read a typed quantity of a kind, a bare number in `unit`: {value, unit, note} or {error}. */
export function readQuantity(text, kind, unit) {
  return refusalAsError(() => read(text, kind, unit));
}

/** The unit in which a person who chose these job units reads a kind of quantity. */
export function unitShown(kind, jobUnits) {
  const own = grammar.jobUnits[kind];
  if (own) return own.includes(jobUnits?.[kind]) ? jobUnits[kind] : own[0];
  const other = units[kind].shownWith;
  return other ? other[1][unitShown(other[0], jobUnits)] : units[kind].shown[0].name;
}

/** The unit that a bare number in an input's field takes. */
function unitOfInput(name, jobUnits) {
  return inputs[name].unit ?? unitShown(inputs[name].kind, jobUnits);
}

/** A bound or a default as a job whose bare numbers are in a unit reads it. */
const textIn = ({ text, own }, unit) => own?.[unit] ?? text;

function echo(typed, reading, kind) {
  const text = typeof typed === "string" ? typed.trim() : rounded(fromCanonical(typed, reading.unit, kind));
  return /^[-+\d.,/ ]+$/.test(text) ? withUnit(text, named(reading.unit, kind).shown) : text;
}

function readBounded(name, typed, jobUnits) {
  const input = inputs[name];
  if (typeof typed !== "string" && typeof typed !== "number") {
    throw new Refusal(`Type a quantity, ${suchAs(input.kind)}.`);
  }
  const unit = unitOfInput(name, jobUnits);
  const reading = typeof typed === "string" ? read(typed, input.kind, unit) : { value: typed, unit, note: "" };
  const { least, most } = input;
  const check = "Check the number and the unit.";
  if (least && least.value >= 0 && reading.value < 0) {
    throw new Refusal(`${called(name)} cannot be negative. Type it without the minus sign.`);
  }
  if (least && reading.value < least.value * (1 - 1e-9)) {
    if (reading.value === 0) {
      throw new Refusal(`${called(name)} cannot be 0. Type at least ${textIn(least, unit)}, or leave it blank.`);
    }
    throw new Refusal(`${echo(typed, reading, input.kind)} is less than ${textIn(least, unit)}. ${check}`);
  }
  if (most && !(reading.value <= most.value * (1 + 1e-9))) {
    throw new Refusal(`${echo(typed, reading, input.kind)} is more than ${textIn(most, unit)}. ${check}`);
  }
  if (input.kind === "count" && !Number.isInteger(reading.value)) {
    throw new Refusal(`${called(name)} is a whole number. Type one, such as 2.`);
  }
  return reading;
}

const readings = new Map();
const MOST_READINGS = 5000;

/** Read what was typed for an input, within its bounds: {value, unit, note} or {error}. */
export function readInput(name, typed, jobUnits) {
  // With a hundred faces on the sheet, a key changes one text and leaves four hundred as they were.
  const key = `${name}|${unitOfInput(name, jobUnits)}|${typeof typed}|${typed}`;
  if (readings.size > MOST_READINGS) readings.clear();
  if (!readings.has(key)) readings.set(key, refusalAsError(() => readBounded(name, typed, jobUnits)));
  return readings.get(key);
}

const HAS_UNIT = /[a-z"'′″°%]/i;

/** The unit that a bare number typed for an input is in, as it is shown; "" where the text names one. */
export function unitBehind(name, text, jobUnits) {
  const kind = inputs[name]?.kind;
  if (!units[kind] || HAS_UNIT.test(text)) return "";
  return named(unitOfInput(name, jobUnits), kind).shown;
}

/** What a blank field stands for, read in the units of the job; "" where it stands for no figure. */
export function hintFor(name, jobUnits) {
  const fallback = inputs[name]?.fallback;
  return fallback?.own ? textIn(fallback, unitOfInput(name, jobUnits)) : fallback?.text ?? "";
}

/** Read a choice: {value} or {error}. */
export function readChoice(name, typed) {
  const { options } = inputs[name];
  if (options.some(([value]) => value === typed)) return { value: typed, unit: "", note: "" };
  return { error: `Choose one of: ${options.map(([, label]) => label).join(", ")}.` };
}

const names = {};

/** Learn what cells are called whose name in words does not say so: the first screen does without. */
export function learnNames(more) {
  Object.assign(names, more);
  // What was refused before calls things otherwise.
  readings.clear();
}

/** What a name is called on the screen: its own label, or its name in words. */
export function called(name) {
  return names[name] ?? capital(name.split("_").map((word) => grammar.words[word] ?? word).join(" "));
}

/** What a name is called inside a sentence: a part's letter and an abbreviation keep their capitals. */
export function inSentence(name) {
  return uncapitalized(called(name));
}

/** Words as they stand inside a sentence. */
export function uncapitalized(words) {
  return /^.\p{Ll}/u.test(words) ? words[0].toLowerCase() + words.slice(1) : words;
}

/** Words as they stand at the start of a sentence. */
export function capital(words) {
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** Round half away from nought to three figures that matter, or to places; no zeros at the end. */
export function rounded(value, places) {
  const size = Math.abs(value);
  if (size >= MOST_SHOWN) return `${value < 0 ? "under -" : "over "}${MOST_SHOWN}`;
  const floors = [100, 10, 1, 0.1, 0.01, 0.001];
  const found = floors.findIndex((floor) => size >= floor);
  const text = (value * HALF_UP).toFixed(places ?? (found < 0 ? 6 : found));
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  return short === "-0" ? "0" : short;
}

/**
 * A canonical value as figure and unit apart, in the unit given, as people measure; of grain "mark" is what is measured
 * out, of "either" what may be a round figure too, of "guess" a time that is known to two figures at best.
 */
export function showParts(value, kind, unit, grain = "") {
  if (kind === "time") {
    const [, figure, rest] = /^(\S+)\s?(.*)$/.exec(showDuration(value, grain));
    return { figure, unit: rest };
  }
  const marked = ["mark", "either"].includes(grain) && unitOfMarks(value, kind, unit);
  if (marked || grain === "mark") return markParts(value, kind, marked || unit);
  const [finer, limit] = named(unit, kind).finer ?? [unit, 0];
  const size = Math.abs(fromCanonical(value, unit, kind));
  const shownIn = size > 0 && size < limit ? finer : unit;
  const figure = asMeasured(fromCanonical(value, shownIn, kind), kind, shownIn);
  const { shown } = named(shownIn, kind);
  return grammar.attached.includes(shown) ? { figure: figure + shown, unit: "" } : { figure, unit: shown };
}

function asMeasured(value, kind, unit) {
  const size = Math.abs(value);
  if (size >= MOST_SHOWN) return rounded(value);
  if (grammar.halved.includes(unit)) {
    if (isOn(size, 32)) return fraction(value, 32);
    return size >= 0.5 ? fraction(value, 16) : rounded(value, 3);
  }
  if (grammar.whole.includes(unit) && size >= 1) return rounded(value, 0);
  if (unit === "g" && size >= 1) return rounded(value, size >= 20 ? 0 : 1);
  const places = unit.startsWith("thou") && size >= 1 ? 1 : undefined;
  return rounded(value, units[kind].places ?? places);
}

/** The unit of which a value is a round figure: the one asked for, or the other of a cup. */
export function unitOfMarks(value, kind, unit) {
  const choices = [unit, grammar.otherMarks[unit]].filter(Boolean);
  return choices.find((each) => isRound(fromCanonical(value, each, kind), each));
}

/** What is measured out, as it was computed. */
function markParts(value, kind, unit) {
  const figure = fromCanonical(value, unit, kind);
  const isHalved = unit === "fl oz" && isOn(figure, 32);
  return { figure: isHalved ? fraction(figure, 32) : rounded(figure, 4), unit: named(unit, kind).shown };
}

const isRound = (figure, unit) => isOn(figure, unit === "fl oz" ? 32 : 10000) || isOn(figure, 1000);

/** Whether a figure stands on so many parts of one, but for what a conversion leaves. */
function isOn(figure, parts) {
  return Math.abs(figure) < MOST_SHOWN && Math.abs(figure * parts - Math.round(figure * parts)) < 1e-6;
}

/** A figure as whole and fraction, to the nearest of so many parts: 12 3/8. */
function fraction(value, parts) {
  const count = Math.floor(Math.abs(value) * parts * HALF_UP + 0.5);
  const [whole, over] = [Math.floor(count / parts), count % parts];
  let [shared, rest] = [parts, over];
  while (rest) [shared, rest] = [rest, shared % rest];
  const texts = whole || !over ? [String(whole)] : [];
  if (over) texts.push(`${over / shared}/${parts / shared}`);
  return (value < 0 && count ? "-" : "") + texts.join(" ");
}

/** A canonical value shown in a unit with the figures that matter. */
export function show(value, kind, unit, grain = "") {
  const parts = showParts(value, kind, unit, grain);
  return withUnit(parts.figure, parts.unit);
}

const withUnit = (figure, shown) => (grammar.attached.includes(shown) ? figure + shown : `${figure} ${shown}`.trim());

/** What a cell of this name reads in a job's units. */
export function showCell(name, value, jobUnits) {
  const { kind, grain } = labels[name];
  return show(value, kind, unitShown(kind, jobUnits), grain);
}

function two(amount, base, large, small) {
  const parts = [[Math.floor(amount / base), large], [amount % base, small]].filter(([count]) => count);
  return parts.map(([count, name]) => `${count} ${name}`).join(" ") || `0 ${small}`;
}

/** A time as a person says it: "40 s", "27 min", "1 hr 10 min"; a guess under ten minutes no finer than it is worth. */
function showDuration(seconds, grain) {
  const sign = seconds < 0 ? "-" : "";
  let size = Math.abs(seconds);
  if (size > 0 && size < 1) return sign ? "0 s" : "under 1 s";
  if (grain === "guess" && size >= 10 && size < 600) {
    const step = size >= 60 ? 30 : 5;
    size = Math.floor((size / step) * HALF_UP) * step;
  }
  if (size < 599.5) return sign + two(Math.floor(size + 0.5), 60, "min", "s");
  if (size >= MOST_DAYS * 86400) return `${seconds < 0 ? "under -" : "over "}${MOST_DAYS} d`;
  const minutes = Math.floor(size / 60 + 0.5);
  if (minutes < 48 * 60) return sign + two(minutes, 60, "hr", "min");
  return sign + two(Math.floor(size / 3600 + 0.5), 24, "d", "hr");
}
