// What stands under the stage on the bench: other clocks, next cups, the calendar, the cups that cure.
import { buttonOf, part, setHidden, setText } from "../lib/dom.js";
import { isCuring, stageOf } from "../clocks/cup-record.js";
import { isInHand, nextCups, nextTitle } from "../clocks/turns.js";
import { calendarWords } from "./to-calendar.js";
import { choice, clockRows, curingRows, missedRows, readyRows, showRows } from "./clock-list.js";

/** Move the rows of clocks on; a row is made anew only when another clock begins or ends. */
export function moveRest(root, facts) {
  showRows(part("missed", root), missedRows(facts), facts.now);
  showRows(part("clocks", root), clockRows(facts), facts.now);
  showRows(part("ready", root), readyRows(facts), facts.now);
  showCalendar(root, facts);
  showOffer(root, facts);
}

function showOffer(root, { offered }) {
  setHidden(buttonOf("bench-forward", root), !offered);
  setText(buttonOf("bench-forward", root), offered?.words ?? "");
}

function showCalendar(root, { context, now }) {
  const words = context ? calendarWords(context.cup, context.colour, now) : "";
  setHidden(buttonOf("bench-calendar", root), !words);
  setText(part("calendar-words", root), words);
}

/**
 * Show what can be done beside the stage.
 * @param {Element} root
 * @param {import("./clock-list.js").Facts & {sheet: object, prepare: (colour: object) => void,
 *   offered: {words: string} | null}} facts
 */
export function showRest(root, facts) {
  const { job, sheet, context, prepare } = facts;
  const isHandled = context !== null && isInHand(context.cup);
  const next = isHandled ? [] : nextCups(job, sheet).slice(context ? 0 : 1);
  part("next-cups", root).replaceChildren(...next.map((each) => choice(
    { what: `Next: ${nextTitle(each)}`, swatch: each.colour.swatch },
    () => prepare(each.colour),
  )));
  const curing = curingRows(facts);
  setHidden(part("curing", root), !curing.length);
  part("curing-cups", root).replaceChildren(...curing);
  const finish = buttonOf("bench-finish", root);
  const isBegun = isHandled && !stageOf(context.cup).lines.length;
  setHidden(finish, !(isBegun || (context && isCuring(context.cup))));
  setText(finish, isHandled ? "Set this cup aside, not poured" : "Done with this cup");
}
