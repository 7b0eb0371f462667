import { svg } from "../lib/dom.js";
import { tenths } from "./tenths.js";

const TOP = 16;
const BOTTOM = 206;
const TALL = BOTTOM - TOP;
const MIDDLE = 92;
const HALF_TOP = 84;
const HALF_BOTTOM = 60;
const LABEL_TALL = 40;
const LABELS_APART = 22;
const MOST_MARKS = 40;
// A cup marked in halves is numbered in whole ones.
const HALVES = [0.5, 0.25, 0.125, 0.0625];
const DOUBLING = [1, 2, 4, 8, 16, 32, 64, 128, 256, 512];
// A longer text is written smaller, so that it stays inside.
const LONG = 12;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/**
 * Draw a person's measuring cup from its numbers: its marks, and how far to fill it with A, then with B.
 * @param {object} cup volumes in one unit, whichever the labels are in
 * @param {number} cup.capacity to the brim
 * @param {number} cup.graduation from one mark to the next
 * @param {{part: "a" | "b", to: number, says: string, also: string}[]} cup.fills from the bottom up
 * @param {string} cup.title what the picture says in words
 * @returns {SVGElement}
 */
export function drawCup({ capacity, graduation, fills, title }) {
  const levels = fills.filter((fill) => fill.to > 0 && fill.to <= capacity * 1.0001);
  const isLong = levels.some((fill) => fill.also.length > LONG);
  const labels = labelHeights(levels.map((fill) => height(fill.to / capacity)));
  return svg(
    "svg",
    { class: "cup", viewBox: "0 0 320 216", role: "img", "aria-label": title },
    levels.map((fill, place) => film(fill, place ? levels[place - 1].to : 0, capacity)),
    marks(capacity, graduation, levels.map((fill) => height(fill.to / capacity))),
    halfMarks(capacity, graduation, levels.map((fill) => fill.to)),
    svg("path", { class: "cup__wall", d: wall() }),
    svg("path", { class: "cup__light", d: `M${half(0.12, -0.8)} ${height(0.12)}L${half(0.72, -0.8)} ${height(0.72)}` }),
    levels.map((fill, place) => level(fill, capacity, labels[place], isLong)),
  );
}

/** Share of the wall's height at which a share of the brim's volume stands: a cup is wider at the top. */
function rise(share) {
  const cubes = HALF_BOTTOM ** 3 + share * (HALF_TOP ** 3 - HALF_BOTTOM ** 3);
  return (Math.cbrt(cubes) - HALF_BOTTOM) / (HALF_TOP - HALF_BOTTOM);
}

function height(share) {
  return tenths(BOTTOM - rise(share) * TALL);
}

/** The x so far from the middle: 1 is the right wall at this share of the volume, -1 the left one. */
function half(share, side) {
  return tenths(MIDDLE + side * (HALF_BOTTOM + rise(share) * (HALF_TOP - HALF_BOTTOM)));
}

function wall() {
  const [left, right] = [MIDDLE - HALF_TOP, MIDDLE + HALF_TOP];
  return `M${left - 5} ${TOP - 3}q5 0 6 6L${MIDDLE - HALF_BOTTOM} ${BOTTOM - 4}q1 5 6 5H${MIDDLE + HALF_BOTTOM - 6}`
    + `q5 0 6-5L${right - 1} ${TOP + 3}q1-6 6-6`;
}

function film({ part, to }, from, capacity) {
  const [low, high] = [from / capacity, to / capacity];
  const left = `M${half(low, -1)} ${height(low)}L${half(high, -1)} ${height(high)}`;
  const d = `${left}H${half(high, 1)}L${half(low, 1)} ${height(low)}z`;
  return svg("path", { class: `cup__film cup__film--${part}`, d });
}

function level({ part, to, says, also }, capacity, labelled, isLong) {
  const labelX = MIDDLE + HALF_TOP + 25;
  const share = to / capacity;
  const [x, y] = [half(share, 1), height(share)];
  return svg(
    "g",
    { class: `cup__level cup__level--${part}` },
    svg("path", { d: `M${half(share, -1)} ${y}H${x + 6}L${MIDDLE + HALF_TOP + 14} ${labelled}h6` }),
    svg("text", { class: "cup__says", x: labelX, y: labelled - 1 }, says),
    svg("text", { class: `cup__to${isLong ? " cup__to--long" : ""}`, x: labelX, y: labelled + 17 }, also),
  );
}

/** Labels keep their distance, the lowest first: each gives way upwards, and none leaves the picture. */
function labelHeights(lines) {
  let limit = BOTTOM - 14;
  return lines.map((line) => {
    const placed = Math.min(line, limit);
    limit = placed - LABEL_TALL;
    return Math.max(placed, TOP);
  });
}

/** The marks at the left wall; a figure gives way to a fill line that would cross it out. */
function marks(capacity, graduation, lines) {
  const all = Math.floor((capacity / graduation) * 1.0001);
  const steps = HALVES.some((part) => Math.abs(part - graduation) < 1e-6) ? DOUBLING : STEPS;
  const drawnEach = steps.find((step) => all / step <= MOST_MARKS) || 1000;
  const labelledEach = steps.find((step) => step >= drawnEach && (TALL / all) * step >= LABELS_APART) || 1000;
  const drawn = [];
  for (let mark = drawnEach; mark < all; mark += drawnEach) {
    const share = (mark * graduation) / capacity;
    const isLong = mark % labelledEach === 0;
    const [x, y] = [half(share, -1), height(share)];
    drawn.push(svg("path", { class: "cup__mark", d: `M${x} ${y}h${isLong ? 22 : 12}` }));
    if (isLong && lines.every((line) => Math.abs(line - y) > 8)) {
      drawn.push(svg("text", { class: "cup__number", x: x + 27, y: y + 4.5 }, figure(mark * graduation)));
    }
  }
  return svg("g", {}, drawn);
}

/** Where a fill line stands between two marks: a half mark outside the wall, and both marks beside it. */
function halfMarks(capacity, graduation, fills) {
  const counts = fills.map((to) => to / graduation).filter((count) => Math.abs((count % 1) - 0.5) < 1e-3);
  return counts.map((count) => {
    const tick = (at, name, d) => {
      const share = Math.min(1, (at * graduation) / capacity);
      return svg("path", { class: name, d: `M${half(share, -1)} ${height(share)}${d}` });
    };
    return svg(
      "g",
      {},
      tick(Math.floor(count), "cup__mark", "h12"),
      tick(count, "cup__mark cup__mark--half", "h-7"),
      tick(Math.ceil(count), "cup__mark", "h12"),
    );
  });
}

function figure(value) {
  return String(Math.round(value * 100) / 100);
}
