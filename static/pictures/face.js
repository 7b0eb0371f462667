import { svg } from "../lib/dom.js";
import { tenths } from "./tenths.js";

const WIDE = 300;
const TALL = 190;
const MARGIN = { side: 34, below: 30 };
const TICK_STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** The outline of each shape, fitted into a box from 0, 0; sizes in cm. */
const OUTLINES = {
  rectangle: ({ width, height }) => box(width, height, (w, h) => `M0 0H${w}V${h}H0z`),
  circle: ({ diameter }) => box(diameter, diameter, (w) => ellipse(w, w)),
  known: ({ stated_area: area }) => box(Math.sqrt(area * 1.6), Math.sqrt(area / 1.6), blob),
  rounded_rectangle: ({ width, height, corner_radius: radius }) => (
    box(width, height, (w, h) => rounded(w, h, (radius / width) * w))
  ),
  ring: ({ outer_diameter: outer, inner_diameter: inner }) => (
    box(outer, outer, (w) => ellipse(w, w) + hole(w, (inner / outer) * w))
  ),
  ellipse: ({ width, height }) => box(width, height, ellipse),
  triangle: ({ base, height }) => box(base, height, (w, h) => `M0 ${h}L${w / 2} 0 ${w} ${h}z`),
  polygon: ({ side_count: count, circumscribed_diameter: across }) => box(across, across, (w) => polygon(w, count)),
  capsule: ({ length, width }) => box(length, width, (w, h) => rounded(w, h, h / 2)),
  half_round: ({ diameter }) => box(diameter, diameter / 2, (w, h) => `M0 ${h}A${h} ${h} 0 0 1 ${w} ${h}z`),
  arch_top: ({ width, side_height: side, rise }) => (
    box(width, side + rise, (w, h) => arch(w, h, (rise / (side + rise)) * h))
  ),
  trapezoid: ({ top_width: top, bottom_width: bottom, height }) => box(Math.max(top, bottom), height, (w, h) => {
    const [upper, lower] = [top, bottom].map((each) => (each / Math.max(top, bottom)) * w);
    return `M${(w - upper) / 2} 0h${upper}L${(w + lower) / 2} ${h}h${-lower}z`;
  }),
  stroke: ({ stroke_length: length, stroke_width: width }) => box(length, width, (w, h) => rounded(w, h, h / 2)),
};

/**
 * Draw a face to scale with its dimensions, its cut-outs beside one another in the middle.
 * @param {object} face
 * @param {string} face.shape
 * @param {Record<string, number>} face.sizes in cm
 * @param {Record<string, string>} face.written the sizes as the person typed them
 * @param {string} face.across what to write along the width, and `face.up` along the height
 * @param {number} face.tick cm from one tick of the rule along its foot to the next
 * @param {{shape: string, sizes: Record<string, number>}[]} face.openings
 * @param {string} face.title
 * @returns {SVGElement | null} null where a size is missing
 */
export function drawFace({ shape, sizes, across, up, tick, openings, title }) {
  const outline = outlineOf(shape, sizes);
  if (!outline) return null;
  const scale = Math.min((WIDE - MARGIN.side * 2) / outline.width, (TALL - MARGIN.below - 8) / outline.height);
  const [w, h] = [outline.width * scale, outline.height * scale];
  const [x, y] = [(WIDE - w) / 2, (TALL - MARGIN.below - h) / 2 + 2];
  return svg(
    "svg",
    { class: "drawing", viewBox: `0 0 ${WIDE} ${TALL}`, role: "img", "aria-label": title },
    svg(
      "g",
      { transform: `translate(${tenths(x)} ${tenths(y)})` },
      svg("path", { class: "drawing__film", d: outline.path(w, h), "fill-rule": "evenodd" }),
      svg("path", { class: "drawing__gloss", d: gloss(w, h) }),
      cutOuts(openings, scale, w, h),
    ),
    across && rule(x, y + h + 8, w, tick * scale, across),
    up && upright(x - 10, y, h, up),
  );
}

/** Draw a face small, to stand beside its name; faces of one colour are drawn to one scale. */
export function drawThumb({ shape, sizes, largest }) {
  const outline = outlineOf(shape, sizes);
  const side = 40;
  const frame = { viewBox: "0 0 44 44", "aria-hidden": "true" };
  if (!outline) return svg("svg", { class: "thumb thumb--empty", ...frame }, svg("path", { d: "M7 11h30v22H7z" }));
  const size = Math.max(outline.width, outline.height);
  const fitted = side * Math.max(0.3, Math.sqrt(size / Math.max(largest, size)));
  const [w, h] = [(outline.width / size) * fitted, (outline.height / size) * fitted].map((each) => Math.max(each, 2));
  const transform = `translate(${tenths((44 - w) / 2)} ${tenths((44 - h) / 2)})`;
  const path = svg("path", { d: outline.path(w, h), "fill-rule": "evenodd", transform });
  return svg("svg", { class: "thumb", ...frame }, path);
}

/** The greater of a shape's width and height in cm, or 0 where a size is missing. */
export function extentOf(shape, sizes) {
  const outline = outlineOf(shape, sizes);
  return outline ? Math.max(outline.width, outline.height) : 0;
}

/** The step of ticks that leaves them apart enough to be told from one another. */
export function tickOf(shape, sizes, unit) {
  const outline = outlineOf(shape, sizes);
  return outline ? unit * (TICK_STEPS.find((step) => outline.width / (unit * step) <= 30) || 1000) : unit;
}

function outlineOf(shape, sizes) {
  if (!OUTLINES[shape] || !Object.values(sizes).every(Number.isFinite)) return null;
  const outline = OUTLINES[shape](sizes);
  return outline.width > 0 && outline.height > 0 ? outline : null;
}

function box(width, height, path) {
  return { width, height, path };
}

/** Two strokes of light, as a wet film shows a window. */
function gloss(w, h) {
  const y = tenths(h * 0.18 + 3);
  return `M${tenths(w * 0.3)} ${y}h${tenths(w * 0.2)}m8 0h${tenths(w * 0.04)}`;
}

function cutOuts(openings, scale, w, h) {
  const drawn = openings.map(({ shape, sizes }) => outlineOf(shape, sizes)).filter(Boolean);
  const total = drawn.reduce((sum, each) => sum + each.width * scale, 0);
  let x = (w - total - (drawn.length - 1) * 6) / 2;
  return drawn.map((each) => {
    const [wide, tall] = [each.width * scale, each.height * scale];
    const node = svg("path", {
      class: "drawing__opening",
      d: each.path(wide, tall),
      transform: `translate(${tenths(x)} ${tenths((h - tall) / 2)})`,
    });
    x += wide + 6;
    return node;
  });
}

function rule(x, y, width, step, says) {
  let ticks = "";
  for (let place = 0, count = 0; place <= width + 0.01 && step > 0; place += step, count += 1) {
    ticks += `M${tenths(x + place)} ${tenths(y)}v${count % 4 ? (count % 2 ? 4 : 6) : 9}`;
  }
  return svg(
    "g",
    { class: "drawing__rule" },
    svg("path", { d: `M${tenths(x)} ${tenths(y)}h${tenths(width)}${ticks}M${tenths(x + width)} ${tenths(y)}v9` }),
    svg("text", { x: tenths(x + width / 2), y: tenths(y + 22), "text-anchor": "middle" }, says),
  );
}

function upright(x, y, height, says) {
  const middle = tenths(y + height / 2);
  const ends = `M${tenths(x - 4)} ${tenths(y)}h8M${tenths(x - 4)} ${tenths(y + height)}h8`;
  const transform = `rotate(-90 ${tenths(x - 8)} ${middle})`;
  return svg(
    "g",
    { class: "drawing__rule" },
    svg("path", { d: `M${tenths(x)} ${tenths(y)}v${tenths(height)}${ends}` }),
    svg("text", { x: tenths(x - 8), y: middle, "text-anchor": "middle", transform }, says),
  );
}

function ellipse(w, h) {
  return `M0 ${h / 2}a${w / 2} ${h / 2} 0 1 1 ${w} 0a${w / 2} ${h / 2} 0 1 1 ${-w} 0z`;
}

function hole(w, inner) {
  const r = inner / 2;
  return `M${w / 2 - r} ${w / 2}a${r} ${r} 0 1 0 ${inner} 0a${r} ${r} 0 1 0 ${-inner} 0z`;
}

function rounded(w, h, radius) {
  const r = Math.min(radius, w / 2, h / 2);
  const corner = (across, down) => `a${r} ${r} 0 0 1 ${across} ${down}`;
  const right = `H${w - r}${corner(r, r)}V${h - r}${corner(-r, r)}`;
  return `M${r} 0${right}H${r}${corner(-r, -r)}V${r}${corner(r, -r)}z`;
}

function polygon(w, count) {
  const corners = Array.from({ length: count }, (_, place) => {
    const angle = (2 * Math.PI * place) / count - Math.PI / 2;
    return `${tenths(w / 2 + (w / 2) * Math.cos(angle))} ${tenths(w / 2 + (w / 2) * Math.sin(angle))}`;
  });
  return `M${corners.join("L")}z`;
}

function arch(w, h, rise) {
  const radius = (w * w) / 4 / (2 * rise) + rise / 2;
  return `M0 ${h}V${rise}A${radius} ${radius} 0 0 1 ${w} ${rise}V${h}z`;
}

function blob(w, h) {
  return `M0 ${h * 0.45}C0 ${h * 0.1} ${w * 0.25} ${-h * 0.05} ${w * 0.5} ${h * 0.05}S${w} ${h * 0.1} ${w} ${h * 0.5} `
    + `${w * 0.8} ${h * 1.02} ${w * 0.5} ${h * 0.95}S0 ${h * 0.9} 0 ${h * 0.45}z`;
}
