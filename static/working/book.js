import { checks } from "../printed.js";
import { checkSentences } from "../sentences.js";
import { called } from "../sheet/quantities.js";
import { sentence } from "../sheet/reasons.js";
import { origins, steps as titles, workings } from "../workings.js";
import { clone, part, setHidden, setText } from "../lib/dom.js";
import { entryBody, entryWords } from "./book-entry.js";

const CONSTANTS = "Constants";

let entries = null;
let page = null;

/**
 * Open the formula book, at an entry if one is named.
 * @param {object} sheetPage the job sheet's page
 * @param {string} [name] of a formula, check or constant
 */
export function openBook(sheetPage, name) {
  page = sheetPage;
  const dialog = part("book");
  if (!entries) fill(dialog);
  if (!dialog.open) dialog.showModal();
  if (name) turnTo(name);
}

/** Every entry stands in the page from the start; what is in one is made when it is first opened. */
function fill(dialog) {
  page.acts["book-close"] = () => dialog.close();
  page.acts["book-turn"] = (button) => turnTo(button.dataset.formula);
  entries = new Map();
  part("book-groups").append(...groupsOf().map(groupNode));
  part("book-words").addEventListener("input", search);
  dialog.addEventListener("toggle", opened, true);
  search();
}

/** The groups in the order of the work: [title, [name]], formulas before checks. */
function groupsOf() {
  const names = Object.keys(workings);
  const ofStep = (step) => names.filter((name) => workings[name].step === step);
  const groups = Object.entries(titles).map(([step, title]) => [title, ofStep(step)]);
  return [...groups, [CONSTANTS, Object.keys(origins)]];
}

function groupNode([title, names]) {
  const group = clone("book-group");
  group.firstElementChild.textContent = title;
  for (const name of names) {
    const node = entryNode(name);
    entries.set(name, { node, group, words: entryWords(name) });
    group.append(node);
  }
  return group;
}

function entryNode(name) {
  const node = clone("book-entry");
  const [title, unit, what] = node.firstElementChild.children;
  const { unit: unitSays, summary } = workings[name] || { unit: origins[name].shown, summary: "" };
  node.dataset.name = name;
  title.textContent = called(name);
  unit.textContent = checks[name] ? checks[name].severity : unitSays;
  if (checks[name]) unit.classList.add(`entry__unit--${checks[name].severity}`);
  what.textContent = checkSentences[name] ? sentence(checkSentences[name].says) : summary;
  return node;
}

/** Show the entries that hold every word typed, and the groups that have some. */
function search() {
  const wanted = part("book-words").value.toLowerCase().split(/\s+/).filter(Boolean);
  const kept = new Set();
  let count = 0;
  for (const { node, group, words } of entries.values()) {
    const isFound = wanted.every((word) => words.includes(word));
    setHidden(node, !isFound);
    if (isFound) kept.add(group);
    count += isFound;
  }
  for (const group of part("book-groups").children) setHidden(group, !kept.has(group));
  const all = `${entries.size} entries`;
  setText(part("book-count"), wanted.length ? `${count} of ${all}` : `${all}, in the order of the work`);
}

function opened({ target }) {
  if (!target.open || target.children.length > 1) return;
  target.append(entryBody(target.dataset.name, entries));
}

function turnTo(name) {
  const entry = entries.get(name);
  if (!entry) return;
  part("book-words").value = "";
  search();
  entry.node.open = true;
  entry.node.firstElementChild.focus({ preventScroll: true });
  const show = () => entry.node.scrollIntoView({ block: "start" });
  show();
  // Groups out of sight have a guessed height until the first scroll brings them near.
  requestAnimationFrame(show);
}
