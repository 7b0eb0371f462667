// Notices and cautions on the bench.
import { clone } from "../lib/dom.js";

const MOST_BOXES = 2;
const MARKS = {
  stop: "#mark-stop",
  caution: "#mark-caution",
  note: "#mark-note",
  unchecked: "#mark-note",
  good: "#mark-tick",
};

/** A notice with its sign; kind is "stop", "caution", "note", "unchecked" or "good". */
export function notice(kind, says) {
  const element = clone("bench-notice");
  element.classList.add(`check--${kind}`);
  element.querySelector("use").setAttribute("href", MARKS[kind]);
  element.querySelector(".check__says").textContent = says;
  return element;
}

/**
 * Leave at most two boxes of stops and cautions on the bench: every stop, and the cautions that come first; the others
 * are quiet text.
 */
export function calm(root) {
  const seen = [...root.querySelectorAll(".check--stop, .check--caution, .caution")].filter((box) => box.offsetParent);
  const yellow = seen.filter((box) => !box.classList.contains("check--stop"));
  const most = Math.max(0, MOST_BOXES - (seen.length - yellow.length));
  yellow.forEach((box, place) => {
    const kind = box.classList.contains("caution") ? "caution--calm" : "check--calm";
    box.classList.toggle(kind, place >= most);
  });
}

/** The cautions of a stage. */
export function cautions(sentences) {
  return sentences.map((says) => {
    const element = clone("bench-caution");
    element.querySelector("span").textContent = says;
    return element;
  });
}
