// What the checks of a job say on paper: what is wrong or could not be checked, the worst first.
import { levels } from "../printed.js";
import { capital } from "../sheet/quantities.js";
import { rowTitle, saysOf } from "../sheet/reasons.js";
import { everyRow } from "../sheet/sheet.js";
import { element } from "../lib/dom.js";

const RANKS = ["stop wrong", "caution wrong", "stop unchecked"];
const SIGNS = { "stop wrong": "Stop", "caution wrong": "Caution" };
const MOST_NAMES = 3;

/**
 * The stops and cautions that stand anywhere on the sheet, each sentence once with the rows that it speaks of.
 * @returns {{rank: string, says: string, rows: string[]}[]}
 */
export function standingChecks(root) {
  const found = new Map();
  for (const check of [...everyRow(root)].filter(isUsed).flatMap((row) => row.checks)) {
    const rank = `${check.severity} ${check.state}`;
    if (!RANKS.includes(rank)) continue;
    const says = saysOf(check);
    const known = found.get(says) ?? { rank, says, rows: [] };
    if (RANKS.indexOf(rank) < RANKS.indexOf(known.rank)) known.rank = rank;
    if (check.state === "wrong" && check.row.level !== "job") known.rows.push(capital(rowTitle(check.row)));
    found.set(says, known);
  }
  return [...found.values()].sort((one, other) => RANKS.indexOf(one.rank) - RANKS.indexOf(other.rank));
}

/** A new row that nobody typed in, and what is worked out for it, says nothing yet. */
function isUsed(row) {
  const isNew = levels[row.level].rows && row.level !== "job" && !row.touched;
  return !isNew && (!row.parent || isUsed(row.parent));
}

/** Draw them as the items of a list. */
export function drawChecks(standing) {
  return standing.map(({ rank, says, rows }) => element(
    "li",
    {},
    SIGNS[rank] ? element("b", {}, `${SIGNS[rank]}: `) : null,
    `${namesOf(rows)}${says}`,
  ));
}

function namesOf(rows) {
  if (!rows.length) return "";
  const more = rows.length - MOST_NAMES;
  return `${rows.slice(0, MOST_NAMES).join(", ")}${more > 0 ? ` and ${more} more` : ""}. `;
}
