// Notices and cautions on the bench.
import { clone } from "../lib/dom.js";

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

/** The cautions of a stage. */
export function cautions(sentences) {
  return sentences.map((says) => {
    const element = clone("bench-caution");
    element.querySelector("span").textContent = says;
    return element;
  });
}
