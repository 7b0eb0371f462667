// The coat that a colour has come to, kept with the job: faces that need no more coats want no more mix.
import { coatOf, nextCup } from "../clocks/turns.js";
import { whyRecordFull } from "../keeping/most-rows.js";
import { edit, keepCup, state } from "../keeping/store.js";
import { findRow } from "../sheet/sheet.js";

/** A colour of the job as it is now. */
export const colourNow = (id) => state.job.colours.find((colour) => colour.id === id);

/** Keep a cup, and with its colour the coat that it has come to thereby. */
export function keepCupAndCoat(colourId, cup) {
  const before = coatOf(colourNow(colourId));
  keepCup(colourId, cup);
  const coat = coatOf(colourNow(colourId));
  if (coat !== before) keepCoat(colourId, coat);
}

/**
 * The next cup of a colour, planned for its own coat; null where there is none, or no room for it in the record. A job
 * of an older version does not say yet which coat that is.
 */
export function planNextCup(colourId) {
  if (whyRecordFull(state.job)) return null;
  const next = nextCup(colourNow(colourId), state.sheet);
  if (!next || next.coat === findRow(state.sheet, colourId).cells.coat_number.value) return next;
  keepCoat(colourId, next.coat);
  return nextCup(colourNow(colourId), state.sheet);
}

function keepCoat(colourId, coat) {
  edit(colourId, "coat_number", String(coat));
}
