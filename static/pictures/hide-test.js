import { svg } from "../lib/dom.js";

const WIDE = 320;
const STRIPE = 20;
const FROM_ABOVE = { x: 88, y: 70, puddle: 46, tape: 60, tall: 140 };
const SECTION = { x: 194, y: 76, wide: 116, tape: 16, deep: 22 };

/** Draw the hide test: a puddle in a ring of tape on printed stripes, from above and cut through. */
export function drawHideTest() {
  const title = "Hide test: a ring of tape on black and white stripes, filled as deep as the film";
  return svg(
    "svg",
    { class: "hide-test", viewBox: `0 0 ${WIDE} ${FROM_ABOVE.tall}`, role: "img", "aria-label": title },
    stripes(FROM_ABOVE.x - 80, 2, 160, FROM_ABOVE.tall - 4),
    fromAbove(),
    section(),
  );
}

function fromAbove() {
  const { x, y, puddle, tape } = FROM_ABOVE;
  const ring = `M${x - tape} ${y}a${tape} ${tape} 0 1 0 ${tape * 2} 0a${tape} ${tape} 0 1 0 ${-tape * 2} 0z`
    + `M${x - puddle} ${y}a${puddle} ${puddle} 0 1 0 ${puddle * 2} 0a${puddle} ${puddle} 0 1 0 ${-puddle * 2} 0z`;
  return [
    svg("circle", { class: "hide-test__puddle", cx: x, cy: y, r: puddle }),
    svg("path", { class: "hide-test__tape", d: ring, "fill-rule": "evenodd" }),
  ];
}

function section() {
  const { x, y, wide, tape, deep } = SECTION;
  return [
    svg("rect", { class: "hide-test__puddle", x: x + tape, y, width: wide - tape * 2, height: deep }),
    svg("rect", { class: "hide-test__tape", x, y, width: tape, height: deep }),
    svg("rect", { class: "hide-test__tape", x: x + wide - tape, y, width: tape, height: deep }),
    ...stripes(x, y + deep, wide, 8),
    svg("text", { class: "hide-test__words", x: x + wide / 2, y: y - 28, "text-anchor": "middle" }, "as deep as"),
    svg("text", { class: "hide-test__words", x: x + wide / 2, y: y - 10, "text-anchor": "middle" }, "the film"),
  ];
}

function stripes(left, top, wide, tall) {
  const count = Math.ceil(wide / STRIPE);
  const dark = Array.from({ length: count }, (_, place) => place).filter((place) => place % 2 === 0);
  return [
    svg("rect", { class: "hide-test__sheet", x: left, y: top, width: wide, height: tall }),
    ...dark.map((place) => svg("rect", {
      class: "hide-test__stripe",
      x: left + place * STRIPE,
      y: top,
      width: Math.min(STRIPE, wide - place * STRIPE),
      height: tall,
    })),
  ];
}
