// What is said of a cup's heat: webapp/sheet/heat.py is the twin.
import { leftStanding } from "../printed.js";
import { capital, show, unitShown } from "./quantities.js";
import { because } from "./reasons.js";

/** What becomes of the cup of a row by its own heat, in a sentence; why nobody knows, where a figure is missing. */
export function heatSays({ cells: { pour_by_temperature: warm, heat_class: kind } }, jobUnits) {
  if (kind.blank) return because(kind.blank);
  const left = `left standing it ${leftStanding[kind.value]}`;
  if (warm.blank) return capital(`${left}.`);
  return `At pour-by about ${show(warm.value, "temperature", unitShown("temperature", jobUnits))}; ${left}.`;
}
