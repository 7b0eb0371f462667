// The mix clock's bar: the time gone by as resin that runs to its edge, and marks where to scrape.
import { svg } from "../lib/dom.js";

const WIDTH = 328;
const BAR = { top: 26, height: 30 };
const EDGE = 16;

/** The outline of the bar filled up to x: round where it begins, and at x the edge of a film. */
function filled(x) {
  const { top, height } = BAR;
  const radius = height / 2;
  const bottom = top + height;
  const start = `M${radius} ${top}A${radius} ${radius} 0 0 0 ${radius} ${bottom}`;
  if (x >= WIDTH) return `${start}H${WIDTH - radius}A${radius} ${radius} 0 0 0 ${WIDTH - radius} ${top}Z`;
  const end = Math.max(x, radius + EDGE);
  const back = end - EDGE;
  return `${start}H${end}C${back + 4} ${bottom - 2} ${back + 8} ${top} ${back} ${top}Z`;
}

/**
 * Draw the bar of a stage's time.
 * @param {{marks: {share: number, words: string}[]}} options marks at shares of the whole, 0 to 1
 * @returns {SVGElement}
 */
export function mixClock({ marks }) {
  const { top, height } = BAR;
  const labels = marks.filter((mark) => mark.words).map(({ share, words }) => {
    const x = share * WIDTH;
    return svg("g", {},
      svg("text", { x, y: top - 10, "text-anchor": "middle", class: "mix-clock__words" }, words),
      svg("line", { x1: x, x2: x, y1: top - 6, y2: top + height + 6, class: "mix-clock__line" }));
  });
  return svg("svg", { viewBox: `0 0 ${WIDTH} 64`, "aria-hidden": "true", focusable: "false" },
    svg("path", { d: filled(WIDTH), class: "mix-clock__whole" }),
    svg("path", { d: filled(0), class: "mix-clock__gone" }),
    ...labels);
}

/** Fill the bar up to a share of the whole, 0 to 1. */
export function fillMixClock(picture, share) {
  const kept = Math.min(1, Math.max(0, share));
  picture.querySelector(".mix-clock__gone").setAttribute("d", filled(kept * WIDTH));
}
