// A cup as the bench looks at it: with its colour, and with the sheet of its plan.
import { state } from "../keeping/store.js";
import { freeze, isSetAside, tapped } from "../clocks/cup-record.js";
import { allCups } from "../clocks/turns.js";
import { cupTitle } from "../clocks/clocks.js";
import { calculate } from "../sheet/sheet.js";
import { colourNow } from "./coats.js";

const SHEETS = new WeakMap();

/** The cup of an id with its colour, as it is kept; undefined where none is. */
export function keptCup(id) {
  return allCups(state.job).find(({ cup }) => cup.id === id);
}

/** The cup of an id with its colour: a kept one, or a draft that nobody has begun elsewhere meanwhile; or null. */
export function findCup(id, draft) {
  return keptCup(id) ?? (draft?.cup.id === id ? begunElsewhere(draft) ?? draft : null);
}

/** The cup that another window has begun in place of one that is not kept here. */
function begunElsewhere({ cup, colour }) {
  return allCups(state.job).find((each) => (
    each.colour.id === colour.id && each.cup.coat === cup.coat && each.cup.number === cup.number
      && !isSetAside(each.cup)
  ));
}

/**
 * Look at a cup of a colour; until it begins its plan is frozen anew. Null where the colour is gone.
 * @param {{cup: object, colour: object} | null} found
 * @param {number} now
 * @returns {import("./figure.js").Context | null}
 */
export function lookAt(found, now) {
  const colour = found && colourNow(found.colour.id);
  if (!colour) return null;
  const isBegun = tapped(found.cup, "make_ready") !== null;
  const cup = isBegun ? found.cup : { ...found.cup, ...freeze(state.job, state.sheet, colour.id, found.cup.coat) };
  return { cup, colour: { cups: [], ...colour }, root: sheetOf(cup.plan), job: state.job, isLive: !isBegun, now };
}

function sheetOf(plan) {
  if (!SHEETS.has(plan)) SHEETS.set(plan, calculate(plan));
  return SHEETS.get(plan);
}

/** What stands at the head of the bench: "Teal, cup 1 of 3 · coat 1 of 2". */
export function headOf({ cup, colour }) {
  const { cups, coats_to_pour: coats } = cup.amounts;
  const which = cups ? `${cupTitle(cup, colour)} of ${cups}` : cupTitle(cup, colour);
  return coats > 1 ? `${which} · coat ${cup.coat} of ${coats}` : which;
}
