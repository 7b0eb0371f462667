import { svg } from "../lib/dom.js";
import { tenths } from "./tenths.js";

const LEFT = 10;
const RIGHT = 310;
const MINUTE = 60;
const HOUR = 3600;
// What a letter takes at most, as wide as the widest; and what stands free between two labels.
const LETTER = 9;
const GAP = 6;
const ROWS = [-1, 13, -15];
const STEPS = [5, 10, 15, 20, 30, 60, 120, 240, 480].map((minutes) => minutes * MINUTE);

/**
 * Draw the day: above the minutes up to the second mist with the pour-by line, below the days up to the top coat.
 * All times are seconds from the moment A touches B; blank ones are null.
 * @param {object} day
 * @param {number} day.start the moment A touches B, milliseconds
 * @param {{by: number, poured: number, mists: number[]}} day.minutes
 * @param {{name: string, at: number}[]} day.later
 * @param {[number, number] | null} day.recoat
 * @param {string} day.title
 * @returns {SVGElement}
 */
export function drawDay({ start, minutes, later, recoat, title }) {
  return svg(
    "svg",
    { class: "day", viewBox: "0 0 320 184", role: "img", "aria-label": title },
    hourStrip(start, minutes),
    dayStrip(start, later, recoat),
  );
}

function hourStrip(start, { by, poured, mists }) {
  const ends = [by, poured, ...mists].filter((each) => each !== null);
  if (!ends.length) return null;
  const span = Math.max(...ends) * 1.08;
  const at = (seconds) => place(seconds, span);
  const step = STEPS.find((each) => span / each <= 4) || STEPS[STEPS.length - 1];
  const clocks = wholeClocks(start, span, step);
  return svg(
    "g",
    {},
    svg("path", { class: "day__wash", d: bar(LEFT, RIGHT, 26) }),
    poured !== null && svg("path", { class: "day__film", d: film(LEFT, at(poured), 26) }),
    ticks(clocks, at),
    by !== null && svg("path", { class: "day__stop", d: `M${at(by)} 18V54` }),
    by !== null && words(at(by), 13, "pour by", "day__words day__words--stop"),
    mists.map((each, index) => each !== null && (
      svg("g", { class: "day__mist" }, mist(at(each)), svg("title", {}, index ? "second mist" : "first mist"))
    )),
  );
}

function dayStrip(start, later, recoat) {
  const known = later.filter((each) => each.at !== null);
  if (!known.length) return null;
  const span = Math.max(...known.map((each) => each.at)) * 1.04;
  const at = (seconds) => place(seconds, span);
  return svg(
    "g",
    { transform: "translate(0 104)" },
    svg("path", { class: "day__wash", d: bar(LEFT, RIGHT, 26) }),
    nights(start, span).map(([from, to]) => svg("path", { class: "day__night", d: bar(at(from), at(to), 26) })),
    recoat && svg("path", { class: "day__recoat", d: `M${at(recoat[0])} 46H${at(Math.min(recoat[1], span))}` }),
    ticks(midnights(start, span), at),
    points(known.map(({ name, at: seconds }) => ({ says: name, x: at(seconds) }))),
  );
}

/** Each point with its name above it, in the first row where that stands free of the others. */
function points(known) {
  const rows = ROWS.map(() => []);
  const placed = known.map((point) => {
    const free = rows.find((row) => row.every((other) => areApart(other, point))) ?? rows[0];
    free.push(point);
    return { ...point, y: ROWS[rows.indexOf(free)] };
  });
  return [
    placed.map(({ x, y }) => svg("path", { class: "day__lead", d: `M${x} ${y + 4}V29` })),
    placed.map(({ x, y, says }) => svg(
      "g",
      { class: "day__point" },
      svg("circle", { cx: x, cy: 36, r: 6 }),
      words(x, y, says, "day__words day__words--point"),
    )),
  ].flat();
}

function place(seconds, span) {
  return tenths(LEFT + (Math.min(seconds, span) / span) * (RIGHT - LEFT));
}

function bar(from, to, y) {
  return `M${from} ${y}H${to}v20H${from}z`;
}

function film(from, to, y) {
  return `M${from} ${y}H${Math.max(from, to - 6)}c5 0 4 20 10 20H${from}z`;
}

function mist(x) {
  return svg("path", { d: `M${x} 30v.1M${x - 5} 36v.1M${x + 5} 36v.1M${x} 42v.1` });
}

/** The marks of an axis with what they say, without those that would stand in the one before. */
function ticks(marks, at) {
  const kept = [];
  for (const { seconds, says } of marks) {
    const mark = { x: at(seconds), says };
    if (kept.length === 0 || areApart(kept[kept.length - 1], mark)) kept.push(mark);
  }
  return kept.map(({ x, says }) => (
    svg("g", { class: "day__tick" }, svg("path", { d: `M${x} 46v6` }), words(x, 67, says))
  ));
}

function words(x, y, says, kind = "day__words") {
  return svg("text", { class: kind, x, y, "text-anchor": anchor(x) }, says);
}

/** Whether two labels stand apart, each as wide as its letters can be. */
function areApart(one, other) {
  const [left, right] = one.x < other.x ? [one, other] : [other, one];
  return extent(left)[1] + GAP <= extent(right)[0];
}

function extent({ x, says }) {
  const width = says.length * LETTER;
  const from = { start: x, middle: x - width / 2, end: x - width }[anchor(x)];
  return [from, from + width];
}

function anchor(x) {
  return x < LEFT + 30 ? "start" : x > RIGHT - 30 ? "end" : "middle";
}

function wholeClocks(start, span, step) {
  const begin = new Date(start);
  const offset = begin.getHours() * HOUR + begin.getMinutes() * MINUTE + begin.getSeconds();
  const clocks = [];
  for (let each = Math.ceil(offset / step) * step - offset; each <= span; each += step) {
    const says = new Date(start + each * 1000).toLocaleTimeString(undefined, { hour: "numeric", minute: "2-digit" });
    clocks.push({ seconds: each, says });
  }
  return clocks;
}

function midnights(start, span) {
  const days = [];
  const next = new Date(start);
  next.setHours(24, 0, 0, 0);
  const step = Math.ceil(span / (6 * 24 * HOUR));
  while ((next - start) / 1000 <= span) {
    days.push({ seconds: (next - start) / 1000, says: next.toLocaleDateString(undefined, { weekday: "short" }) });
    next.setDate(next.getDate() + step);
  }
  return days;
}

/** From ten in the evening to six in the morning, as pairs of seconds from the start. */
function nights(start, span) {
  const found = [];
  const evening = new Date(start);
  evening.setHours(22 - 24, 0, 0, 0);
  while ((evening - start) / 1000 < span && found.length < 20) {
    const from = (evening - start) / 1000;
    if (from + 8 * HOUR > 0) found.push([Math.max(0, from), Math.min(span, from + 8 * HOUR)]);
    evening.setDate(evening.getDate() + 1);
  }
  return found;
}
