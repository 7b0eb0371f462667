// What the sheet has to say beside its figures: why one is blank, what a check found, and what would do.
import { because, saysOf, waysOut } from "../sheet/reasons.js";
import { shownChecks } from "../sheet/sheet.js";
import { clone, element, keepInStep, redraw, setAttribute, setHidden, setText } from "../lib/dom.js";

/** Let the page say why figures are blank and what its checks found. */
export function join(page) {
  page.findings = { whyBlank, checks };
  page.requestRender();
}

/** Say why a cell of a row is blank, while it is. */
function whyBlank(node, row) {
  const blank = row.cells[node.dataset.because]?.blank;
  setHidden(node, !blank);
  if (blank) tieToBlank(node, blank, because(blank));
}

/** Say what is wrong beside some cells of a row, or "*" all but what is said elsewhere; `blocks` are those there. */
function checks(node, row, blocks) {
  const others = node.dataset.but?.split(" ") ?? [];
  const shown = shownChecks(row, node.dataset.checks.split(" ")).filter(({ beside }) => !others.includes(beside));
  keepInStep(node, shown.map(({ name, state }) => `${state}-${name}`), blocks, (key) => ({
    node: clone(key.startsWith("wrong") ? "check" : "unchecked"),
  }));
  shown.forEach((check, place) => showCheck(node.children[place], check));
}

function showCheck(node, check) {
  if (check.state !== "wrong") {
    tieToBlank(node.querySelector("button"), check.blank, saysOf(check));
    return;
  }
  setAttribute(node, "class", `check check--${check.severity}`);
  setAttribute(node.querySelector("use"), "href", `#mark-${check.severity}`);
  setText(node.querySelector(".check__says"), saysOf(check));
  showWays(node, waysOut(check));
}

/** Show what would do, folded below the sentence; nothing where there is nothing. */
function showWays(node, ways) {
  const fold = node.querySelector("details");
  if (!ways.length) {
    fold?.remove();
    return;
  }
  if (!fold) {
    node.append(element("details", { class: "ways" }, element("summary", {}, "Ways to fix ›"), element("ul")));
  }
  redraw(node.querySelector("ul"), ways, () => ways.map((way) => element("li", {}, way)));
}

/** A button that says why a figure is blank leads to what is missing. */
function tieToBlank(button, { row, name }, says) {
  setText(button.lastElementChild, says);
  setAttribute(button, "data-row", row.id);
  setAttribute(button, "data-name", name);
}
