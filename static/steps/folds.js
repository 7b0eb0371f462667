import { constants } from "../printed.js";
import { called, show, unitShown } from "../sheet/quantities.js";
import { heatSays } from "../sheet/heat.js";
import { rowAt } from "../sheet/sheet.js";
import { state } from "../keeping/store.js";
import { redraw, setAttribute, setFigure, setHidden } from "../lib/dom.js";
import { isUnfolded, joinFolds } from "./fold.js";

const CLASSES = ["cool", "warm", "hot"];
const CLASS_FROM = ["cup_warm_from", "cup_hot_from"];
const EDGE_ASKS = [
  "coat_depth",
  "edge_hold_depth",
  "safe_edge_depth",
  "capillary_length",
  "edge_angle",
  "wetting_angle",
  "panel_edge_angle",
];
const EDGE_ASKS_MORE = { rounded: ["edge_radius"], raised: ["raised_edge_height"] };
const STROKES = { stroke: "stroke_width", lettering: "plain_stroke_width" };

const loaded = {};

/** Bring to life what is folded beside the work: dew, level, edge, levelling, heat of the cup, the maker's claim. */
export function join(page) {
  joinFolds(page);
  page.say.heat = (row) => heatSays(rowAt(row, "cup"), state.job.units);
  Object.assign(page.draw, {
    slowest: (node, row) => paintSlowest(page, node, row),
    "film-edge": (node, row) => isLoaded(page, node, "edge") && isUnfolded(node) && drawEdge(node, row),
    "cup-heat": (node, row) => isLoaded(page, node, "heat") && drawHeat(node, row),
  });
  page.requestRender();
}

const LOADS = {
  edge: () => Promise.all([import("./film-section.js"), import("../pictures/film-edge.js")]),
  heat: () => Promise.all([import("./cup-warming.js"), import("../pictures/cup-heat.js")]),
};

/** A picture's modules load when its fold is first opened; it is drawn once they are there. */
function isLoaded(page, node, name) {
  if (!loaded[name] && isUnfolded(node)) {
    LOADS[name]().then((modules) => {
      loaded[name] = Object.assign({}, ...modules);
      page.requestRender();
    });
  }
  return Boolean(loaded[name]);
}

/** Find what a row or one above it holds by a name. */
function cellOf(row, name) {
  for (let each = row; each; each = each.parent) if (each.cells[name]) return each.cells[name];
  return null;
}

/** The values by their names, or null where one of them is blank. */
function valuesOf(row, names) {
  const cells = names.map((name) => cellOf(row, name));
  if (cells.some((cell) => !cell || cell.blank)) return null;
  return Object.fromEntries(names.map((name, place) => [name, cells[place].value]));
}

/** What can be worked out, or null where a formula signals that it cannot. */
function ifComputable(work) {
  try {
    return work();
  } catch (signal) {
    if (signal instanceof Error) throw signal;
    return null;
  }
}

function drawEdge(node, row) {
  const edge = row.cells.edge?.value;
  const values = valuesOf(row, [...EDGE_ASKS, ...(EDGE_ASKS_MORE[edge] || [])]);
  setHidden(node, !values);
  if (!values) return;
  const colour = row.parent;
  node.style.setProperty("--swatch", colour.marks.swatch || "");
  const stroke = cellOf(row, STROKES[row.cells.shape?.value]);
  const film = { ...values, edge, stroke_width: stroke && !stroke.blank ? stroke.value : null };
  const unit = unitShown("length", state.job.units);
  redraw(node, { film, unit }, () => drawSection(film, unit));
}

function drawSection(film, unit) {
  const section = ifComputable(() => loaded.edge.filmSection(film));
  if (!section) return null;
  const { skin, width, isSpilling, greatest } = section;
  const says = (depth) => show(depth, "length", unit);
  const marks = width
    ? [{ kind: "hold", depth: greatest, says: `bead to ${says(greatest)}` }]
    : [
      { kind: "hold", depth: film.edge_hold_depth, says: `holds ${says(film.edge_hold_depth)}` },
      { kind: "safe", depth: film.safe_edge_depth, says: `plan to ${says(film.safe_edge_depth)}` },
      { kind: "film", depth: film.coat_depth, says: `coat ${says(film.coat_depth)}` },
    ];
  const { edge: kind, panel_edge_angle: angle, edge_radius: radius = 0, raised_edge_height: rise = 0 } = film;
  const corner = { kind, angle, radius, rise };
  const depths = marks.map((mark) => mark.says).join(", ");
  const title = `The film’s edge in section, to scale: ${depths}${isSpilling ? "; it runs over" : ""}`;
  return loaded.edge.drawFilmEdge({ skin, corner, marks, width, isSpilling, title });
}

function drawHeat(node, row) {
  const values = valuesOf(row, loaded.heat.cupWarmingAsks);
  const by = cellOf(row, "pour_by")?.value ?? null;
  const facts = { values, by, unit: unitShown("temperature", state.job.units) };
  setHidden(node, !values);
  if (values && isUnfolded(node)) redraw(node, facts, () => heatPicture(facts, heatSays(row, state.job.units)));
}

function heatPicture({ values, by, unit }, says) {
  const warming = ifComputable(() => loaded.heat.cupWarming(values));
  if (!warming) return null;
  const bounds = CLASS_FROM.map((name) => constants[name].value);
  const coolest = Math.min(values.air_temperature, values.resin_temperature) - 5;
  const classes = CLASSES.map((name, place) => ({
    name,
    from: place ? bounds[place - 1] : coolest,
    says: place ? show(bounds[place - 1], "temperature", unit) : "",
  }));
  const most = constants.cup_smokes_from.value;
  const isLateUnknown = values.cup_mass < constants.small_cup_mass.value;
  return loaded.heat.drawCupHeat({ ...warming, isLateUnknown, classes, most, by, title: says });
}

/** The face of a colour for which a time is longest, or the first that lacks it. */
function slowestFace(colour, name) {
  const faces = colour.rows.face.filter((face) => face.touched);
  const known = faces.filter((face) => !face.cells[name]?.blank);
  const slower = (slow, face) => (face.cells[name].value > slow.cells[name].value ? face : slow);
  return known.reduce(slower, known[0]) ?? faces[0] ?? null;
}

function paintSlowest(page, node, colour) {
  const { of: name, by = name } = node.dataset;
  const face = slowestFace(colour, by);
  setHidden(node, !face);
  if (!face) return;
  setAttribute(node, "data-row", face.id);
  setAttribute(node, "data-cell", name);
  setFigure(node, page.readingOf(face.cells[name], name), called(name));
}
