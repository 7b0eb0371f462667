// The cups of a colour as they stand on paper: those that were begun with their own amounts, then those to come.
import { contactOf, cupsOf, endOfPour, isSetAside } from "../clocks/cup-record.js";
import { rowOf, state } from "../keeping/store.js";
import { timeOfDay } from "../lib/moments.js";
import { calculate } from "../sheet/sheet.js";

const MOST_LINES = 60;

/**
 * The lines of a colour's cups: the row that the figures are read from, what the cup is called, and its moments.
 * @returns {{row: object, title: string, touched: string, poured: string}[]}
 */
export function cupsOnPaper(row) {
  const begun = cupsOf(rowOf(row.id).row);
  const lines = begun.map((cup) => begunLine(cup, row));
  for (const line of plannedLines(row, begun)) {
    if (lines.length === MOST_LINES) return [...lines, { ...line, title: "and so on" }];
    lines.push(line);
  }
  return lines;
}

/** A cup that was begun reads from the plan that was frozen with it. */
function begunLine(cup, { cells }) {
  const [colour] = calculate(cup.plan).rows.colour;
  const [each] = colour.rows.cup;
  for (const [name, value] of Object.entries(cup.amounts)) {
    if (name in each.filled) each.filled[name] = { value, blank: null };
  }
  const poured = endOfPour(cup);
  return {
    row: colour,
    title: titleOf(cup.coat, cup.number, cup.amounts.cups ?? cells.cups?.value, cup.amounts.coats_to_pour),
    touched: momentOf(contactOf(cup)),
    poured: isSetAside(cup) ? "set aside" : momentOf(poured),
  };
}

function momentOf(moment) {
  return moment === null ? "" : timeOfDay(moment);
}

/** The cups to come, coat by coat: a face that has had all of its coats takes nothing of a later one. */
function* plannedLines(row, begun) {
  const { coats_to_pour: coats, coat_number: now } = row.cells;
  const isBegun = (coat, number) => begun.some((cup) => (
    cup.coat === coat && cup.number === number && !isSetAside(cup)
  ));
  const first = now?.value ?? 1;
  for (let coat = first; coat <= Math.max(first, coats?.value ?? 1); coat += 1) {
    const ofCoat = coat === first ? row : inCoat(row, coat);
    const cups = ofCoat.cells.cups?.value ?? 1;
    for (let number = 1; number <= cups; number += 1) {
      const title = titleOf(coat, number, cups, coats?.value);
      if (!isBegun(coat, number)) yield { row: ofCoat, title, touched: "", poured: "" };
    }
  }
}

function inCoat(row, coat) {
  const colour = { ...rowOf(row.id).row, coat_number: String(coat) };
  return calculate({ ...state.job, colours: [colour] }).rows.colour[0];
}

function titleOf(coat, number, cups, coats) {
  const cup = cups > 1 ? `Cup ${number} of ${cups}` : `Cup ${number}`;
  return coats > 1 ? `Coat ${coat}, ${cup.toLowerCase()}` : cup;
}
