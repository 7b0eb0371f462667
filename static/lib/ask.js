import { element } from "./dom.js";

/**
 * Ask below a button's row before something is done that the person may not mean: two taps in different places.
 * @param {Element} row what the question stands below; a question that stands there already is put again
 * @param {string} says
 * @param {{keep: string, sure: string}} labels of both buttons
 * @param {() => void} act what is done when the person is sure
 */
export function askBelow(row, says, labels, act) {
  const button = (label, kind, then) => {
    const made = element("button", { type: "button", class: `button ${kind}` }, label);
    made.addEventListener("click", () => {
      question.remove();
      then();
    });
    return made;
  };
  const back = document.activeElement;
  const keep = button(labels.keep, "", () => back?.focus());
  const question = element(row.localName, { class: "question" }, element("div", { class: "part", role: "group" },
    element("p", { class: "field__note field__note--error", role: "alert" }, says),
    element("div", { class: "button-row" }, keep, button(labels.sure, "button--danger", act)),
  ));
  if (row.nextElementSibling?.matches(".question")) row.nextElementSibling.remove();
  row.after(question);
  // Who taps the same key once more keeps it.
  keep.focus();
}
