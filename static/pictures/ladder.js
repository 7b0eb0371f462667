import { svg } from "../lib/dom.js";
import { tenths } from "./tenths.js";

const LEFT = 8;
const RIGHT = 270;
const BASE = 58;

/**
 * Draw the tint ladder: a rung for each drop up to the limit, filled as far as to start with, and the stop line.
 * @param {{start: number, limit: number, title: string}} ladder drops
 * @returns {SVGElement}
 */
export function drawLadder({ start, limit, title }) {
  const step = limit > 0 ? (RIGHT - LEFT) / limit : 0;
  const at = (drops) => tenths(LEFT + drops * step);
  const each = Math.max(1, Math.ceil(limit / 60));
  let rungs = "";
  for (let drop = each; drop < limit; drop += each) rungs += `M${at(drop)} ${BASE}v${drop % (each * 5) ? -10 : -18}`;
  return svg(
    "svg",
    { class: "ladder", viewBox: "0 0 300 84", role: "img", "aria-label": title },
    svg("path", { class: "ladder__rest", d: `M${LEFT} ${BASE}h${RIGHT - LEFT}v-24h${LEFT - RIGHT}z` }),
    svg("path", { class: "ladder__start", d: start > 0 ? `M${LEFT} ${BASE}V34H${at(start) - 8}c6 0 6 24 14 24z` : "" }),
    svg("path", { class: "ladder__rungs", d: rungs }),
    svg("path", { class: "ladder__stop", d: `M${RIGHT} 14V${BASE + 4}` }),
    svg("path", { class: "ladder__drop", d: `M${at(start)} 9c4 5 6 8 6 11a6 6 0 0 1-12 0c0-3 2-6 6-11z` }),
    svg("text", { class: "ladder__words", x: at(start), y: 78, "text-anchor": "middle" }, `start ${start}`),
    svg(
      "text",
      { class: "ladder__words ladder__words--stop", x: RIGHT + 26, y: 78, "text-anchor": "end" },
      `stop ${limit}`,
    ),
  );
}
