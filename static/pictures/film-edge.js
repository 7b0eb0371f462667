import { svg } from "../lib/dom.js";
import { tenths } from "./tenths.js";

const EDGE = 156;
const GROUND = 104;
const TALLEST = 78;
const WIDEST = 0.72;
const THICK = 32;
const TAPE = 5;
const LABELS_APART = 19;

/**
 * Draw a film's edge in section, to scale: the panel with its corner, the film's skin, and the depths to mind.
 * Lengths are cm; the skin runs from the edge inward as [in, up] from the panel's outermost upper corner.
 * @param {object} section
 * @param {[number, number][]} section.skin
 * @param {{kind: string, angle: number, radius: number, rise: number}} section.corner
 * @param {{kind: "hold" | "safe" | "film", depth: number, says: string}[]} section.marks
 * @param {number} section.width of a narrow stroke, drawn whole; 0 for a face that runs on
 * @param {boolean} section.isSpilling
 * @param {string} section.title
 * @returns {SVGElement}
 */
export function drawFilmEdge({ skin, corner, marks, width, isSpilling, title }) {
  const highest = Math.max(...marks.map((mark) => mark.depth), ...skin.map(([, up]) => up));
  const scale = Math.min((EDGE - 12) / (width || WIDEST), TALLEST / highest);
  const left = width ? EDGE - width * scale : 0;
  const x = (inward) => tenths(EDGE - inward * scale);
  const y = (up) => tenths(GROUND - up * scale);
  const spill = spillPath(corner, x(skin[0][0]), y(skin[0][1]));
  return svg(
    "svg",
    { class: "section", viewBox: "0 16 320 126", role: "img", "aria-label": title },
    svg("path", { class: "section__film", d: filmPath(skin, x, y, left, width) }),
    svg("path", { class: "section__panel", d: panelPath(corner, scale, left, width) }),
    isSpilling && ["under", "over"].map((which) => (
      svg("path", { class: `section__spill section__spill--${which}`, d: spill })
    )),
    corner.kind === "raised" && svg("path", { class: "section__tape", d: tapePath(y(corner.rise)) }),
    svg("path", { class: "section__gloss", d: glossPath(skin, x, y, left) }),
    spread(marks.map((mark) => ({ ...mark, at: y(mark.depth) }))).map((mark) => drawMark(mark, left)),
  );
}

/** The panel is painted over the film's foot, which reaches under it. */
function filmPath(skin, x, y, left, width) {
  const points = skin.map(([inward, up]) => `${x(inward)} ${y(up)}`).join("L");
  const [inward, up] = skin[0];
  const far = width ? mirrored(skin, x, y, left) : `L0 ${y(skin[skin.length - 1][1])}V${GROUND + 4}`;
  return `M${points}${far}${up < 0 ? "" : `H${x(inward)}`}z`;
}

/** The other half of a bead over a narrow stroke, from its middle to the far edge. */
function mirrored(skin, x, y, left) {
  const far = [...skin].reverse().map(([inward, up]) => `${tenths(left + EDGE - x(inward))} ${y(up)}`);
  return `L${far.join("L")}V${GROUND + 4}`;
}

function panelPath({ kind, angle, radius }, scale, left, width) {
  const end = GROUND + THICK;
  const far = width ? tenths(left) : -4;
  if (kind === "rounded") {
    const r = Math.min(tenths(radius * scale), THICK - 4, EDGE);
    return `M${far} ${GROUND}H${EDGE - r}a${r} ${r} 0 0 1 ${r} ${r}V${end}H${far}z`;
  }
  if (kind === "chamfered") return `M${far} ${GROUND}H${EDGE}l20 20V${end}H${far}z`;
  const side = kind === "raised" ? 0 : sideOf(angle);
  return `M${far} ${GROUND}H${EDGE}L${EDGE + side} ${end}H${width ? tenths(left - side) : far}z`;
}

/** What runs over goes down the panel's side. */
function spillPath({ kind, angle }, fromX, fromY) {
  const down = GROUND + THICK - 7;
  if (kind === "chamfered") return `M${fromX - 2} ${fromY - 5}L${EDGE + 23} ${GROUND + 19}V${down}`;
  if (kind === "raised") return `M${fromX - 2} ${fromY - 4}H${EDGE + TAPE + 3}V${down}`;
  const lean = kind === "rounded" ? 0 : sideOf(angle);
  return `M${fromX - 2} ${fromY - 5}L${EDGE + 3} ${Math.max(fromY, GROUND)}L${EDGE + 3 + tenths(lean * 0.8)} ${down}`;
}

/** The tape along a raised edge, down from its top. */
function tapePath(top) {
  return `M${EDGE} ${top}h${TAPE}V${GROUND + 16}h${-TAPE}z`;
}

/** How far a panel's side leans out over its thickness. */
function sideOf(angle) {
  return Math.max(-40, Math.min(40, tenths(-THICK / Math.tan(angle))));
}

function glossPath(skin, x, y, left) {
  const shown = skin.filter(([, up], place) => place > skin.length / 3 && up > 0)
    .map(([inward, up]) => [x(inward) - 2, y(up) + 4])
    .filter(([at]) => at > left + 24);
  return shown.length > 1 ? `M${shown.map((point) => point.join(" ")).join("L")}` : "";
}

/** Labels keep their distance: from the top down each gives way, then all move up if they ran out of room. */
function spread(marks) {
  const sorted = [...marks].sort((one, other) => one.at - other.at);
  let above = -Infinity;
  const placed = sorted.map((mark) => {
    above = Math.max(mark.at, above + LABELS_APART);
    return { ...mark, label: above };
  });
  const over = Math.max(0, above - GROUND - 8);
  return placed.map((mark) => ({ ...mark, label: mark.label - over }));
}

function drawMark({ kind, at, label, says }, left) {
  return svg(
    "g",
    { class: `section__mark section__mark--${kind}` },
    svg("path", { d: `M${tenths(left) + 4} ${at}H${EDGE + 14}L${EDGE + 24} ${label}h4` }),
    svg("text", { class: "section__says", x: EDGE + 32, y: label + 4.5 }, says),
  );
}
