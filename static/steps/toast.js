import { part, showToast } from "../lib/dom.js";
import { subscribe, undoable } from "../keeping/store.js";

let isWatching = false;

/** Say what was taken away, with undo beside it, until the next edit. */
export function showUndo() {
  showToast(undoable(), "Undo", "undo");
  if (isWatching) return;
  isWatching = true;
  subscribe((change) => {
    if (change.kind === "edit" || change.kind === "open") hideToast();
  });
}

/** Put the toast away; undo stays reachable in the menu. */
export function hideToast() {
  part("toast").hidden = true;
}
