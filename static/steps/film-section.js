// The film's skin at a panel's edge, from the book's formulas: what the picture of the edge is drawn from.
import { beadProfile } from "../sheet/bead-profile.js";
import { root } from "../lib/numerics.js";
import { formulas } from "../printed.js";

const LEVEL_FROM = 16;
const HALF_TURN = Math.PI;
const DEGREE = Math.PI / 180;
const CHAMFER = 135 * DEGREE;
const PINNED = ["sharp", "chamfered"];

/**
 * Return the skin of a film at its edge, [in, up] from the corner inward, and whether it runs over.
 * @param {object} film lengths in cm, angles in radians, by the names of the sheet's cells; `edge` as chosen,
 * `stroke_width` null where the face is no stroke
 */
export function filmSection(film) {
  return isNarrow(film) ? beadSection(film) : wideSection(film);
}

function isNarrow({ edge, stroke_width: width, capillary_length: length }) {
  return PINNED.includes(edge) && width !== null && width < LEVEL_FROM * length;
}

/** A narrow stroke: the bead that holds the coat's volume, or the greatest that stands. */
function beadSection(film) {
  const { stroke_width: strokeWidth, wetting_angle: wetting, coat_depth: depth } = film;
  const most = film.edge === "chamfered" ? formulas.edge_angle(wetting, CHAMFER) : film.edge_angle;
  const bead = (angle) => beadProfile({ ...film, edge_angle: angle });
  const excess = (angle) => bead(angle).section / strokeWidth - depth;
  const ends = [DEGREE, most];
  const atEnds = ends.map(excess);
  const isSpilling = atEnds[1] < 0;
  const angle = isSpilling ? most : atEnds[0] > 0 ? DEGREE : root(excess, ends, atEnds, depth * 1e-3);
  const skin = bead(angle).profile.map(([out, up]) => [strokeWidth / 2 - out, up]).reverse();
  return { skin, width: strokeWidth, isSpilling, greatest: bead(most).height };
}

function wideSection(film) {
  const { coat_depth: depth, edge_hold_depth: hold } = film;
  const isSpilling = depth > hold;
  const { from, angle } = pinned(film, Math.min(depth, hold));
  if (angle === 0) return { skin: [from, [2, from[1]]], width: 0, isSpilling, greatest: hold };
  const { capillary_length: capillaryLength } = film;
  const strokeWidth = LEVEL_FROM * capillaryLength;
  const { profile } = beadProfile({ stroke_width: strokeWidth, capillary_length: capillaryLength, edge_angle: angle });
  const skin = profile.map(([out, up]) => [from[0] + strokeWidth / 2 - out, from[1] + up]).reverse();
  return { skin, width: 0, isSpilling, greatest: hold };
}

/** Where the skin meets the panel, [in, up], and at which angle it rises from there. */
function pinned(film, depth) {
  if (film.edge === "rounded") return onRound(film, depth);
  const rise = film.edge === "raised" ? film.raised_edge_height : 0;
  if (depth <= rise) return { from: [0, depth], angle: 0 };
  return { from: [0, rise], angle: angleOf(film, depth - rise) };
}

/** On a quarter round the skin climbs out until the panel's slope and the wetting angle carry its depth. */
function onRound(film, depth) {
  const { capillary_length: length, wetting_angle: wetting, edge_radius: radius } = film;
  const above = (lean) => formulas.sharp_edge_hold_depth(length, wetting + lean) - radius * (1 - Math.cos(lean));
  if (depth <= above(0)) return { from: [radius, 0], angle: angleOf(film, depth) };
  let lean = 0;
  while (above(lean) < depth && lean < 90 * DEGREE) lean += DEGREE;
  return { from: [radius * (1 - Math.sin(lean)), -radius * (1 - Math.cos(lean))], angle: wetting + lean };
}

/** The angle at which a skin stands that is so much deeper than where it is pinned. */
function angleOf({ capillary_length: length }, depth) {
  const excess = (angle) => formulas.sharp_edge_hold_depth(length, angle) - depth;
  const ends = [0, HALF_TURN];
  return root(excess, ends, ends.map(excess), 1e-9);
}
