import { inputs, nodes } from "../printed.js";
import { readQuantity, rounded, unitShown } from "../sheet/quantities.js";
import { whyFull } from "../keeping/most-rows.js";
import { addRow, copyRow, edit, removeRow, rowOf, state, typedIn, undo } from "../keeping/store.js";
import { element, part, redraw } from "../lib/dom.js";
import { cupsAtWork } from "../clocks/at-work.js";
import { drawFace, drawThumb, extentOf, tickOf } from "../pictures/face.js";
import { askBelow } from "../lib/ask.js";
import { joinFields } from "../lib/fields.js";
import { counted } from "../lib/moments.js";
import { jumpTo } from "./jump.js";
import { hideToast, showUndo } from "./toast.js";

const DELETE = { keep: "Keep the color", sure: "Delete the color" };
const DEPTHS = {
  in: ["1/32 in", "1/16 in", "3/32 in", "1/8 in"],
  mm: ["1 mm", "1.5 mm", "2 mm", "3 mm"],
  cm: ["0.1 cm", "0.15 cm", "0.2 cm", "0.3 cm"],
};
const SIZES = sizesByShape();
const largest = new WeakMap();

/** Bring faces to life: their pictures and sizes in words, and what their buttons do. */
export function join(page, { say }) {
  /** Go on where there is room for a row more; else say why there is none. */
  const ifRoom = (level, parentId, goOn, copied = null) => {
    const full = whyFull(state.job, level, rowOf(parentId).row, copied);
    if (full) say(full);
    else goOn(parentId);
  };
  Object.assign(page.say, {
    "face-count": (row) => counted(row.rows.face.filter((face) => face.touched).length, "face"),
    "face-sizes": (row) => sizesInWords(page, row),
  });
  Object.assign(page.draw, {
    thumb: (node, row) => redraw(tinted(node, row), thumbOf(row), drawThumb),
    face: (node, row) => {
      redraw(tinted(node, row), faceOf(page, row), drawFace);
      node.hidden = !node.firstChild;
    },
    "depth-chips": drawDepths,
  });
  page.jumpTo = (rowId, name) => jumpTo(page, rowId, name);
  Object.assign(page.acts, {
    "close-toast": hideToast,
    "open-face": (button) => openFace(page, page.rowIdOf(button)),
    "add-face": (button) => ifRoom("face", page.rowIdOf(button), (id) => begin(page, addFace(id))),
    "add-colour": () => ifRoom("colour", "job", (id) => begin(page, addFace(addRow("colour", id))), { faces: [{}] }),
    "add-opening": (button) => ifRoom("opening", page.rowIdOf(button), (id) => {
      jumpTo(page, addRow("opening", id, { shape: "rectangle" }), "width");
    }),
    "copy-row": (button) => {
      const { row, level, parent } = rowOf(page.rowIdOf(button));
      ifRoom(level, parent === state.job ? "job" : parent.id, () => copyOf(page, row.id), row);
    },
    "remove-row": (button) => removeAsked(page, button),
    "set-depth": (button) => edit(page.rowIdOf(button), "depth", button.dataset.depth),
    undo: () => {
      undo();
      hideToast();
    },
    because: (button) => jumpTo(page, button.dataset.row, button.dataset.name),
  });
  joinFields(part("page"));
  document.addEventListener("change", (event) => {
    const picker = event.target.closest(".picker");
    if (!picker) return;
    picker.open = false;
    picker.firstElementChild.focus();
  });
  page.requestRender();
}

/** The inputs that each shape asks for, in the order of its formula. */
function sizesByShape() {
  const find = (name) => nodes.find((node) => node.level === "face" && node.name === name);
  const formulas = Object.entries(find("shape_area").cells);
  return Object.fromEntries(formulas.map(([shape, formula]) => [shape, find(formula).asks.map(([, name]) => name)]));
}

function openFace(page, id) {
  page.editing = page.editing === id ? null : id;
  page.render();
  if (page.editing) document.querySelector(`[data-id="${id}"]`).scrollIntoView({ block: "nearest" });
  else document.querySelector(`[data-id="${id}"] .face__open`).focus();
}

function addFace(colourId) {
  return addRow("face", colourId, { shape: "rectangle" });
}

function begin(page, faceId) {
  jumpTo(page, faceId, "width");
}

function copyOf(page, rowId) {
  const copy = copyRow(rowId);
  if (rowOf(copy).level === "face") begin(page, copy);
  else page.render();
}

/** A color whose cup somebody stands by goes only when asked for twice. */
function removeAsked(page, button) {
  const rowId = page.rowIdOf(button);
  const says = cupsAtWork([rowOf(rowId).row]);
  if (says) askBelow(button.parentElement, says, DELETE, () => remove(page, rowId));
  else remove(page, rowId);
}

function remove(page, rowId) {
  const parent = document.querySelector(`[data-id="${rowId}"]`).parentElement.closest("[data-id]");
  removeRow(rowId);
  if (page.editing === rowId) page.editing = null;
  page.render();
  parent.querySelector("[data-act^='add-']")?.focus();
  showUndo();
}

function tinted(node, row) {
  const colour = row.level === "colour" ? row : row.parent;
  node.style.setProperty("--swatch", colour.marks.swatch || "");
  return node;
}

function sizesOf(row) {
  const names = SIZES[row.cells.shape?.value] || [];
  return Object.fromEntries(names.map((name) => [name, row.cells[name]?.value ?? Number.NaN]));
}

function thumbOf(row) {
  return { shape: row.cells.shape?.value, sizes: sizesOf(row), largest: largestOf(row.parent) };
}

/** The greatest extent among a colour's faces, worked out once for each edit. */
function largestOf(colour) {
  const { edits } = colour.top;
  if (largest.get(colour)?.edits !== edits) {
    const extents = colour.rows.face.map((face) => extentOf(face.cells.shape?.value, sizesOf(face)));
    largest.set(colour, { edits, extent: Math.max(0, ...extents) });
  }
  return largest.get(colour).extent;
}

function faceOf(page, row) {
  const shape = row.cells.shape?.value;
  const sizes = sizesOf(row);
  const [across, up] = (SIZES[shape] || []).map((name) => written(page, row, name));
  const unit = unitShown("length", state.job.units) === "in" ? 2.54 : 1;
  const openings = row.rows.opening.map((each) => ({ shape: each.cells.shape?.value, sizes: sizesOf(each) }));
  const title = `${row.name || "Face"} to scale, ${sizesInWords(page, row)}`;
  return { shape, sizes, across, up: shape === "polygon" ? "" : up, tick: tickOf(shape, sizes, unit), openings, title };
}

function written(page, row, name) {
  const text = typedIn(row, name).trim();
  return text && `${text} ${page.unitBehind(name, text)}`.trim();
}

function sizesInWords(page, row) {
  const names = SIZES[row.cells.shape?.value] || [];
  const sizes = withOneUnit(names.map((name) => written(page, row, name)).filter(Boolean));
  const depth = written(page, row, "depth");
  const pieces = row.cells.pieces?.value;
  const parts = [sizes.join(" × ") || "no sizes yet", depth, pieces > 1 && `${rounded(pieces)} pieces`];
  return parts.filter(Boolean).join(" · ");
}

/** Write a unit that all sizes share only behind the last: "18 × 12 1/4 in". */
function withOneUnit(sizes) {
  const units = new Set(sizes.map((size) => size.replace(/^[-\d.,/ ]+/, "")));
  if (units.size !== 1) return sizes;
  const [unit] = units;
  const bare = (size) => size.slice(0, size.length - unit.length).trim();
  return sizes.map((size, place) => (place < sizes.length - 1 ? bare(size) : size));
}

function drawDepths(node, row) {
  const unit = unitShown("length", state.job.units);
  redraw(node, unit, () => DEPTHS[unit].map((depth) => element(
    "button",
    { type: "button", class: "chip", "data-act": "set-depth", "data-depth": depth, "aria-label": depth },
    depth.replace(` ${unit}`, ""),
  )));
  const value = row.cells.depth?.value;
  for (const chip of node.children) {
    const depth = readQuantity(chip.dataset.depth, inputs.depth.kind, unit).value;
    chip.setAttribute("aria-pressed", String(value !== null && Math.abs(depth - value) < 1e-9));
  }
}
