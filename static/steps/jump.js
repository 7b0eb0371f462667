import { findRow } from "../sheet/sheet.js";
import { state } from "../keeping/store.js";

/** Open whatever hides the field of a row's input, bring it into view and put the cursor in it. */
export function jumpTo(page, rowId, name) {
  const row = findRow(state.sheet, rowId);
  if (!row) return;
  page.leaveBench?.();
  const face = rowAbove(row, "face");
  if (face) page.editing = face.id;
  const goal = () => fieldOf(row, name);
  open(page, "faces", Boolean(face) || name === "face");
  page.isWhole = true;
  page.render();
  page.isWhole = false;
  const field = goal();
  if (!field) return;
  open(page, field.closest(".step")?.dataset.step, true);
  page.render();
  for (let node = field.parentElement; node; node = node.parentElement) {
    if (node.localName === "details") node.open = true;
  }
  goal().focus();
  goal().scrollIntoView({ block: "center" });
}

/** Find the field of an input in the page; for what is no input, the nearest place to start from. */
function fieldOf(row, name) {
  return document.getElementById(`${row.id}-${name}`)
    || document.querySelector(`[data-id="${row.id}"] [data-choice="${name}"] input`)
    || document.querySelector(`[data-id="${row.id}"] [data-act="add-${name}"]`)
    || document.querySelector(`[data-id="${rowAbove(row, "colour")?.id}"] .figure[data-cell="${name}"]`)
    || document.querySelector(`.step__body .figure[data-row="${row.id}"][data-cell="${name}"]`);
}

function open(page, name, isWanted) {
  const step = isWanted && document.querySelector(`.step[data-step="${name}"]`);
  if (step) page.setFolded(step, false);
}

function rowAbove(row, level) {
  let found = row;
  while (found && found.level !== level) found = found.parent;
  return found;
}
