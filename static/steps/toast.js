import { part, setAttribute, setText } from "../lib/dom.js";
import { subscribe, undoable } from "../keeping/store.js";

let isWatching = false;

/** Say what was taken away, with undo beside it, until the next edit. */
export function showUndo() {
  show(undoable(), "Undo", "undo");
  if (isWatching) return;
  isWatching = true;
  subscribe((change) => {
    if (change.kind === "edit" || change.kind === "open") hideToast();
  });
}

/** Say something that waits to be read. */
export function showNotice(words, label = "Good", act = "close-toast") {
  show(words, label, act);
}

/** Put the toast away; undo stays reachable in the menu. */
export function hideToast() {
  part("toast").hidden = true;
}

function show(words, label, act) {
  const toast = part("toast");
  const [says, button] = toast.children;
  toast.hidden = false;
  setText(says, words);
  setText(button, label);
  setAttribute(button, "data-act", act);
}
