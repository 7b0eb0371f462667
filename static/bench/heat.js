// What stands on the bench of a cup's own heat, from combining to the pour: a caution, or quiet text.
import { element as made, part } from "../lib/dom.js";
import { everyRow, rowAt } from "../sheet/sheet.js";
import { uncapitalized } from "../sheet/quantities.js";
import { heatSays } from "../sheet/heat.js";
import { saysOf } from "../sheet/reasons.js";
import { notice } from "./notices.js";

/**
 * Show what a stage says in quiet text, and before it the cup's heat where the stage looks after that.
 * @param {Element} element the stage's
 * @param {import("./figure.js").Context} context
 * @param {object} stage
 */
export function showHeat(element, { cup, root }, stage) {
  const looks = stage.heat_checks.length > 0;
  const found = looks ? wrong(root, stage.heat_checks) : [];
  part("heat", element).replaceChildren(...found.slice(0, 1).map((check) => notice("caution", saysOf(check))));
  const says = looks && !found.length ? [knownOf(rowAt(root.rows.colour[0], "cup"), cup.plan.units)] : [];
  const lines = [...says, ...stage.quiet];
  part("quiet", element).replaceChildren(...lines.map((line) => made("p", { class: "small quiet" }, line)));
}

function knownOf(row, jobUnits) {
  const says = heatSays(row, jobUnits);
  return row.cells.heat_class.blank ? `Heat not checked: ${uncapitalized(says)}` : says;
}

/** The checks of these names that are wrong for a cup, in the order of the names. */
function wrong(root, names) {
  const found = [...everyRow(root)].flatMap((row) => row.checks).filter(({ state }) => state === "wrong");
  return names.flatMap((name) => found.filter((check) => check.name === name));
}
