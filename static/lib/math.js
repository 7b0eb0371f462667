import { element } from "./dom.js";

const MATHML = "http://www.w3.org/1998/Math/MathML";

/** Draw the steps of a working as formulas, where the phone can; elsewhere their words are enough. */
export function mathOf(steps) {
  if (!globalThis.MathMLElement) return null;
  return element("div", {}, steps.map(({ name, math }) => {
    const row = name ? ["mrow", ["mi", name], ["mo", "="], math] : math;
    const formula = node(["math", row]);
    formula.setAttribute("display", "block");
    const attributes = { class: "working__formula", tabindex: "0", role: "group", "aria-label": "The formula" };
    return element("div", attributes, formula);
  }));
}

function node([tag, ...children]) {
  const made = document.createElementNS(MATHML, tag);
  made.append(...children.map((child) => (typeof child === "string" ? child : node(child))));
  return made;
}
