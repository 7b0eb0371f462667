// The job sheet on paper: painted each time that the browser is about to print, by the marks of its templates.
import { state, subscribe } from "../keeping/store.js";
import { ALL, Binder, ROWS } from "../lib/binder.js";
import { clone, part, redraw, setHidden, setText } from "../lib/dom.js";
import { dateInFull } from "../lib/moments.js";
import { cards } from "../printed.js";
import { because } from "../sheet/reasons.js";
import { inSentence } from "../sheet/quantities.js";
import { rowAt } from "../sheet/sheet.js";
import { marks, readingOf } from "./marks.js";
import { drawChecks, standingChecks } from "./paper-checks.js";
import { cupsOnPaper } from "./paper-cups.js";

const PARTS = { a: "resin", b: "hardener" };

/** What a template for paper is marked with: as on the screen, but for figures, which are no buttons here. */
const onPaper = { ...marks, cell: reading, because: lacking, present, cups };

let binder = null;
const told = new Set();

/** Let the job print as one sheet, by its button and by the browser's own menu. */
export function join(page) {
  Object.assign(page.say, {
    "paper-job": () => state.job.name || "Job without a name",
    "paper-date": () => `Printed ${dateInFull(Date.now())}, Sixteenth ${version()}`,
    "paper-colour": ({ parent: colour, top }) => (top.rows.colour.length > 1 ? ` · ${page.say.colour(colour)}` : ""),
    "part-a": (row) => PARTS[resinPart(row)],
    "part-b": (row) => PARTS[resinPart(row) === "a" ? "b" : "a"],
  });
  Object.assign(page.draw, {
    "paper-practice": (node) => setHidden(node, !isPractice(state.job)),
    "paper-checks": (node, row) => redraw(node, standingChecks(row), drawChecks),
  });
  page.acts.print = () => {
    putOnPaper(page);
    globalThis.print();
  };
  globalThis.addEventListener("beforeprint", () => putOnPaper(page));
  // Some browsers draw the sheet only after they said that it was printed, so it stands until the next change.
  subscribe(() => delete document.documentElement.dataset.paper);
}

function putOnPaper(page) {
  if (!binder) {
    binder = new Binder(onPaper, { ...page, after: [] });
    binder.add(part("paper"), "job", true);
  }
  told.clear();
  binder.owe([ALL, ROWS]);
  binder.paintAll();
  document.documentElement.dataset.paper = "";
}

/** cell="CELL": what the figure reads on the screen, or shortly what it lacks; as="wait" is a span from a moment on. */
function reading(node, id, { page }) {
  const { cell, level, as } = node.dataset;
  return (row) => {
    const filled = rowAt(row, level).cells[cell];
    const { figure, unit } = readingOf(page, filled, cell, node.dataset);
    const isAtOnce = as === "wait" && filled?.value === 0;
    if (filled?.blank) setText(node, once(node, filled.blank));
    else setText(node, isAtOnce ? "at once" : [figure, unit].filter(Boolean).join("\u00a0"));
    node.classList.toggle("paper__lacking", Boolean(filled?.blank));
  };
}

/** because="CELL": shortly what the cell lacks, while it is blank. */
function lacking(node) {
  const { because: cell, level } = node.dataset;
  return (row) => {
    const blank = rowAt(row, level).cells[cell]?.blank;
    setHidden(node, !blank);
    if (blank) setText(node, once(node, blank));
  };
}

/** present="CELL": what stands around a figure, gone while that is blank. */
function present(node) {
  const { present: cell, level } = node.dataset;
  return (row) => setHidden(node, Boolean(rowAt(row, level).cells[cell]?.blank));
}

/** cups="TEMPLATE": a copy of the template for each cup of the colour, below a heading where they are several. */
function cups(node, id, owner) {
  let made = [];
  return (row) => {
    for (const copy of made) copy.remove();
    const lines = cupsOnPaper(row);
    const isOne = lines.length === 1;
    setHidden(node.firstElementChild, isOne);
    made = lines.map((cup) => {
      const copy = node.appendChild(clone(node.dataset.cups));
      const [touched, poured] = copy.querySelectorAll(".paper__box");
      setText(copy.querySelector("th"), isOne ? owner.page.say.colour(row) : cup.title);
      setText(touched, cup.touched);
      setText(poured, cup.poured);
      owner.paint(owner.mount(copy, id), cup.row);
      return copy;
    });
  };
}

/** What is lacking, in full where it first stands on the sheet. */
function once(node, blank) {
  const says = shortly(blank);
  if (told.has(says)) return "as above";
  if (!node.closest("[hidden]")) told.add(says);
  return says;
}

function shortly(blank) {
  return blank.kind === "missing" && blank.row.level === "job" ? `no ${inSentence(blank.name)}` : because(blank);
}

function resinPart(row) {
  return row.top.cells.resin_part.value;
}

function isPractice(job) {
  return Boolean(job.example) || cards.some(({ name }) => name === job.card?.name);
}

/** The version that this module is of, as its address says. */
function version() {
  return /\/v-(\w+)\//.exec(import.meta.url)?.[1] ?? "unknown";
}
