import { svg } from "../lib/dom.js";
import { tenths } from "./tenths.js";

const LEFT = 88;
const RIGHT = 312;
const TOP = 20;
const BOTTOM = 158;
const MINUTE = 60;
const STEPS = [5, 10, 15, 20, 30, 60, 120, 240, 480].map((minutes) => minutes * MINUTE);
let drawings = 0;

/**
 * Draw how warm a cup may get that is left standing: a band over time, through the classes of heat.
 * Times are seconds from the moment A touches B, temperatures any one scale.
 * @param {object} heat
 * @param {[number, number][]} heat.early the moments of the early end of the band, up to its peak
 * @param {[number, number][]} heat.late those of the late end
 * @param {{name: string, from: number, says: string}[]} heat.classes from the coolest; `says` is where it begins
 * @param {number} heat.most the top of the scale
 * @param {[number, number]} heat.gel when it thickens, from and to; nobody knows to when where that is `isLateUnknown`
 * @param {boolean} heat.isLateUnknown
 * @param {number | null} heat.by the pour-by mark
 * @param {string} heat.title
 * @returns {SVGElement}
 */
export function drawCupHeat({ early, late, classes, most, gel, isLateUnknown, by, title }) {
  const end = Math.max(gel[1], by ?? 0) * 1.12;
  const least = classes[0].from;
  const x = (seconds) => tenths(LEFT + (Math.min(seconds, end) / end) * (RIGHT - LEFT));
  const share = (warmth) => (Math.max(least, Math.min(warmth, most)) - least) / (most - least);
  const y = (warmth) => tenths(BOTTOM - share(warmth) * (BOTTOM - TOP));
  drawings += 1;
  const clip = `heat-band-${drawings}`;
  const top = (place) => y(classes[place + 1]?.from ?? most);
  const strips = (kindOf) => classes.map(({ name, from }, place) => (
    svg("path", { class: kindOf(name), d: box(LEFT, RIGHT, top(place), y(from)) })
  ));
  return svg(
    "svg",
    { class: "heat", viewBox: "0 0 320 188", role: "img", "aria-label": title },
    svg("clipPath", { id: clip }, svg("path", { d: bandPath(early, late, x, y) })),
    strips((name) => `heat__class heat__class--${name}`),
    svg("path", { class: "heat__gel", d: box(x(gel[0]), isLateUnknown ? RIGHT : x(gel[1]), TOP, BOTTOM) }),
    svg("g", { "clip-path": `url(#${clip})` }, strips((name) => `heat__band heat__band--${name}`)),
    svg("path", { class: "heat__skin", d: bandPath(early, late, x, y) }),
    classes.map(({ name, says }, place) => classLabel(name, says, y(classes[place].from), top(place))),
    svg("path", { class: "heat__axis", d: `M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}` }),
    ticks(end).map((seconds) => tick(x(seconds), `${seconds / MINUTE}`)),
    words("minutes", { x: LEFT - 6, y: BOTTOM + 19, "text-anchor": "end" }),
    words("thickens", { ...gelPlace(x(gel[0]), x(gel[1]), by === null ? 0 : x(by)), y: BOTTOM - 5 }),
    by !== null && svg("path", { class: "heat__stop", d: `M${x(by)} ${TOP - 4}V${BOTTOM + 4}` }),
    by !== null && words("pour by", { x: x(by), y: TOP - 8, "text-anchor": "middle" }, "heat__words heat__words--stop"),
  );
}

/** The band between the early and the late end; between their peaks it may be as warm as either. */
function bandPath(early, late, x, y) {
  const there = early.map(([time, warmth]) => `${x(time)} ${y(warmth)}`);
  const back = [...late].reverse().map(([time, warmth]) => `${x(time)} ${y(warmth)}`);
  return `M${[...there, ...back].join("L")}z`;
}

function classLabel(name, says, from, to) {
  return svg(
    "g",
    {},
    words(name, { x: LEFT - 6, y: tenths((from + to) / 2 + 4), "text-anchor": "end" }),
    says && svg("text", { class: "heat__from", x: LEFT + 5, y: from - 3 }, says),
  );
}

/** Inside its band, on the roomier side of the pour-by mark. */
function gelPlace(from, to, by) {
  if (by <= from || by >= to) return { x: (from + to) / 2, "text-anchor": "middle" };
  return by - from > to - by ? { x: by - 6, "text-anchor": "end" } : { x: by + 6, "text-anchor": "start" };
}

function ticks(end) {
  const step = STEPS.find((each) => end / each <= 6) || STEPS[STEPS.length - 1];
  const found = [];
  for (let each = 0; each <= end * 0.96; each += step) found.push(each);
  return found;
}

function tick(x, says) {
  return svg(
    "g",
    { class: "heat__tick" },
    svg("path", { d: `M${x} ${BOTTOM}v5` }),
    words(says, { x, y: BOTTOM + 19, "text-anchor": "middle" }),
  );
}

function words(says, attributes, kind = "heat__words") {
  return svg("text", { class: kind, ...attributes }, says);
}

function box(left, right, top, bottom) {
  return `M${left} ${top}H${right}V${bottom}H${left}z`;
}
