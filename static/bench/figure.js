// Figures on the bench: each is a button whose working is taken from the plan that was frozen with the cup.
import { element, figureButton } from "../lib/dom.js";
import { labels } from "../printed.js";
import { called, showParts, unitShown } from "../sheet/quantities.js";
import { because } from "../sheet/reasons.js";
import { rowAt } from "../sheet/sheet.js";

/**
 * A cup on the screen: the cup, its colour, the sheet of its frozen plan, and whether that plan is the job as it is.
 * @typedef {{cup: object, colour: object, root: object, isLive: boolean, now: number}} Context
 */

/** The row of a cup's frozen sheet that has a cell: the job's, the colour's or the cup's own. */
function rowWith(root, cell) {
  const colour = root.rows.colour[0];
  return [root, colour, rowAt(colour, "cup")].find((row) => cell in row.cells) ?? root;
}

/** What a cell of a cup stands at: its frozen amount, else the frozen sheet's value; null when blank. */
export function amountOf({ cup, root }, cell) {
  return cup.amounts[cell] ?? rowWith(root, cell).cells[cell]?.value ?? null;
}

/** Why a cell of a cup is blank, as a sentence. */
export function blankBecause({ root }, cell) {
  const blank = rowWith(root, cell).cells[cell]?.blank;
  return blank ? because(blank) : "";
}

/** A figure button with parts {figure, unit} that walks to the working of a cell. @param {Context} context */
export function figure(context, cell, parts, kind = "") {
  const button = figureButton(rowWith(context.root, cell).id, cell, parts, called(cell), kind);
  if (!context.isLive) button.dataset.plan = context.cup.id;
  return button;
}

/** What a clock runs in: a figure that walks to the working of its span, where the cup's plan has one. */
export function clockFigure(context, cell, kind) {
  const isInPlan = cell in rowWith(context.root, cell).cells;
  return isInPlan ? figure(context, cell, { figure: "", unit: "" }, kind) : plainFigure();
}

/** A figure that rests on no cell, so that there is no working to open. */
export function plainFigure() {
  return element("strong", { class: "stage__count" }, element("span"), element("span"));
}

/** A figure button of a cell with its own amount, in the units of the cup's plan; null when the cell is blank. */
export function cellFigure(context, cell, kind) {
  const value = amountOf(context, cell);
  if (value === null) return null;
  const { kind: quantity, grain } = labels[cell];
  const parts = showParts(value, quantity, unitShown(quantity, context.cup.plan.units), grain);
  return figure(context, cell, parts, kind);
}

/** A figure button of the first cell that is not blank, or null. */
export function firstFigure(context, cells, kind) {
  const cell = cells.find((each) => amountOf(context, each) !== null);
  return cell ? cellFigure(context, cell, kind) : null;
}
