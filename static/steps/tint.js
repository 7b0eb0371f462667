import { redraw } from "../lib/dom.js";
import { counted } from "../lib/moments.js";
import { drawLadder } from "../pictures/ladder.js";

/** Bring the tint to life: the ladder of drops up to the stop line. */
export function join(page) {
  page.draw.ladder = (node, row) => {
    const [start, limit] = [row.cells.starting_drops?.value, row.cells.tint_limit_drops?.value];
    node.hidden = !(limit >= 1) || start === null || start === undefined;
    if (node.hidden) return;
    const title = `Tint ladder: start with ${counted(start, "drop")}, stop at ${limit}`;
    redraw(node, { start, limit, title }, drawLadder);
  };
  page.requestRender();
}
