import { setAttribute, setHidden, setText } from "../lib/dom.js";
import { everyRow } from "../sheet/sheet.js";
import { subscribe } from "../keeping/store.js";

const SEVERITIES = ["stop", "caution", "note"];

const opened = new Set();
const fired = new Set();

/** Bring folds to life: one opens by a tap, or by itself when one of its checks turns wrong. */
export function joinFolds(page) {
  page.draw.fold = paintFold;
  page.acts.unfold = (button) => {
    const { key } = button.closest(".fold").dataset;
    if (!opened.delete(key)) opened.add(key);
    page.render();
  };
  subscribe((change) => {
    if (change.kind !== "open") return;
    opened.clear();
    fired.clear();
  });
}

/** Whether a person sees what stands in a fold: only then is it worth working out. */
export function isUnfolded(node) {
  return !node.closest(".fold__body").hidden && !node.closest(".step").hasAttribute("data-folded");
}

/** Say a fold's verdict in a word; "" says none. */
function sayVerdict(fold, words, kind) {
  const verdict = fold.querySelector(".fold__verdict");
  setHidden(verdict, !words);
  setText(verdict, words);
  setAttribute(verdict, "data-kind", kind);
}

function paintFold(node, row) {
  const key = `${row.id} ${node.dataset.fold}`;
  node.dataset.key = key;
  if (node.dataset.foldChecks) paintVerdict(node, key, checksOf(row, node.dataset.foldChecks.split(" ")));
  const body = node.lastElementChild;
  const toggle = node.querySelector(".fold__toggle");
  body.id = `fold-${key.replace(" ", "-")}`;
  setHidden(body, !opened.has(key));
  setAttribute(toggle, "aria-expanded", String(opened.has(key)));
  setAttribute(toggle, "aria-controls", body.id);
}

function paintVerdict(node, key, checks) {
  const { good, wrong } = node.querySelector(".fold__verdict").dataset;
  const wrongs = checks.filter((check) => check.state === "wrong");
  const severity = SEVERITIES.find((each) => wrongs.some((check) => check.severity === each));
  if (severity && !fired.has(key)) opened.add(key);
  if (severity) fired.add(key);
  else fired.delete(key);
  const isRight = checks.every((check) => check.state === "right");
  if (wrong) sayVerdict(node, severity ? wrong : isRight ? good : "", severity || "good");
}

/** The checks by these names of the row, or else of the rows below it. */
function checksOf(row, names) {
  const among = (rows) => rows.flatMap((each) => each.checks).filter((check) => names.includes(check.name));
  const own = among([row]);
  return own.length ? own : among([...everyRow(row)]);
}
