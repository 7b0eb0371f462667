import { constants } from "../printed.js";
import { called, show, unitShown } from "../sheet/quantities.js";
import { state } from "../keeping/store.js";
import { part, redraw, setAttribute, setFigure, setHidden, setText } from "../lib/dom.js";
import { isUnfolded, joinFolds, sayVerdict } from "./fold.js";

const CLASSES = ["cool", "warm", "hot", "dangerous"];
const HEAT_VERDICTS = ["Stays cool", "Gets warm", "Gets hot", "Dangerous"];
const CLASS_FROM = ["cup_warm_from", "cup_hot_from", "cup_dangerous_from"];
const HEAT_SAYS = [
  "Left standing in the cup, this much stays cool.",
  "Left standing in the cup, this much gets warm.",
  "Left standing in the cup, this much gets hot. Pour it out, and leave no rest standing.",
  "Left standing in the cup, this much runs away, hot enough to smoke and burn. Pour it out by the mark, and "
    + "spread any rest thin.",
];
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
const found = new WeakMap();

/** Bring to life what is folded beside the work: dew, level, edge, levelling, heat of the cup, the maker's claim. */
export function join(page) {
  joinFolds(page);
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

/** The verdict needs the curve: it stands only as long as the figures that it was worked out from. */
function drawHeat(node, row) {
  const fold = node.closest(".fold");
  const values = valuesOf(row, loaded.heat.cupWarmingAsks);
  const by = cellOf(row, "usable_time")?.value ?? null;
  const facts = { values, by, unit: unitShown("temperature", state.job.units) };
  const key = JSON.stringify(facts);
  setHidden(node, !values);
  if (values && isUnfolded(node)) redraw(node, facts, () => heatPicture(fold, facts, key));
  const known = found.get(fold)?.key === key ? found.get(fold) : { verdict: "", kind: "good", says: "" };
  sayVerdict(fold, known.verdict, known.kind);
  setText(part("heat-says", fold), known.says);
}

function heatPicture(fold, { values, by, unit }, key) {
  const warming = ifComputable(() => loaded.heat.cupWarming(values));
  if (!warming) return null;
  const { heatClass, gel } = warming;
  found.set(fold, {
    key,
    verdict: HEAT_VERDICTS[heatClass],
    kind: heatClass > 1 ? "caution" : "good",
    says: `${HEAT_SAYS[heatClass]} ${gelSays(values, gel, by)}`.trim(),
  });
  return loaded.heat.drawCupHeat(pictureOf(values, warming, by, unit));
}

function gelSays({ cup_mass: mass, pot_life_mass: cardMass, small_cup_mass: small }, [early, late], by) {
  if (mass < small) return "So little thickens later than the card’s pot life; how much later nobody can say.";
  if (by === null || by <= early) return "";
  const it = mass > cardMass ? "More than the card’s cup, it" : "It";
  if (by < late) return `${it} may thicken a little before the pour-by mark: be early.`;
  return "It thickens before the pour-by mark: mix smaller cups.";
}

function pictureOf(values, { early, late, gel, heatClass }, by, unit) {
  const bounds = CLASS_FROM.map((name) => constants[name].value);
  const coolest = Math.min(values.air_temperature, values.resin_temperature) - 5;
  const classes = CLASSES.map((name, place) => ({
    name,
    from: place ? bounds[place - 1] : coolest,
    says: place ? show(bounds[place - 1], "temperature", unit) : "",
  }));
  const most = bounds[2] + (bounds[2] - bounds[1]) * 0.7;
  const title = `A cup left standing gets ${CLASSES[heatClass]}; it thickens within the gray band`;
  return { early, late, gel, isLateUnknown: values.cup_mass < values.small_cup_mass, classes, most, by, title };
}

/** The face of a colour for which a time is longest, or the first that lacks it. */
function slowestFace(colour, name) {
  const faces = colour.rows.face.filter((face) => face.touched);
  const known = faces.filter((face) => !face.cells[name]?.blank);
  const slower = (slow, face) => (face.cells[name].value > slow.cells[name].value ? face : slow);
  return known.reduce(slower, known[0]) ?? faces[0] ?? null;
}

function paintSlowest(page, node, colour) {
  const name = node.dataset.of;
  const face = slowestFace(colour, name);
  setHidden(node, !face);
  if (!face) return;
  setAttribute(node, "data-row", face.id);
  setAttribute(node, "data-cell", name);
  setFigure(node, page.readingOf(face.cells[name], name), called(name));
}
