// The steps of a formula as they are said, and the shared rules that they call: for workings and for the book.
import { inSentence } from "../sheet/quantities.js";
import { rules } from "../workings.js";
import { element, icon } from "../lib/dom.js";
import { mathOf } from "../lib/math.js";

/**
 * Say one step of a formula.
 * @param {{name: string, words: (string | [string])[]}} step
 * @param {(name: string) => string | null} valueOf the figure that stands for a name; null keeps its name
 * @param {string[]} results what comes out at the end, in each way it is said
 */
export function stepOf({ name, words }, valueOf, results = []) {
  const said = words.map((word) => {
    if (typeof word === "string") return word;
    const value = valueOf(word[0]);
    return value === null ? element("i", {}, inSentence(word[0])) : element("b", {}, value);
  });
  const start = name ? [element("i", {}, name), " is "] : [];
  const ends = results.flatMap((result) => [" = ", element("b", {}, result)]);
  return element("p", { class: "working__step" }, ...start, ...said, ...ends);
}

/** The shared rules by these names, each folded: what it returns, how, and the rules that it calls. */
export function rulesOf(names) {
  return names.map((name) => {
    const { summary, steps, rules: further } = rules[name];
    const title = inSentence(name);
    return element(
      "details",
      { class: "more" },
      element("summary", {}, `The ${title} `, icon("fold")),
      element(
        "div",
        { class: "more__body" },
        element("p", {}, summary),
        steps.map((step) => stepOf(step, () => null)),
        mathOf(steps),
        rulesOf(further),
      ),
    );
  });
}
