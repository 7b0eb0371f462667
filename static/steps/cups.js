import { limits } from "../printed.js";
import { capital, rounded, show, unitShown } from "../sheet/quantities.js";
import { filledCup } from "../sheet/filled-cup.js";
import { because } from "../sheet/reasons.js";
import { rowAt } from "../sheet/sheet.js";
import { state } from "../keeping/store.js";
import { redraw } from "../lib/dom.js";
import { drawCup } from "../pictures/cup.js";

const LIMITS = {
  cup_capacity_limit: "your cup, filled no further than you allow",
  pourable_volume: "what you can pour and spread in the working time",
  heat_volume: "what you can pour before its own heat makes it too thick",
  cup_mass_limit: "the resin card’s largest batch",
};

const WHY_BY = {
  usable_time: ", by the working time",
  heat_pour_by: ", by its own heat",
};

/** Bring the cups to life: the measuring cup with its fill lines, and why there are that many. */
export function join(page) {
  Object.assign(page.say, {
    ratio: (row) => ratioInWords(row.cells),
    "your-cup": (row) => yourCup(row.cells),
    "a-coat": ({ cells: { coats_to_pour: coats } }) => (coats?.value > 1 ? `, for each of ${coats.value} coats` : ""),
    "why-before": ({ cells: { cups } }) => (
      cups?.value === 1 ? "one is enough; it may hold" : "one may hold"
    ),
    "pour-by-why": (row) => WHY_BY[rowAt(row, "cup").cells.pour_by?.winner] ?? "",
    "not-checked": notChecked,
    "why-after": (row) => `${LIMITS[row.cells.cup_limit?.winner] ?? "the least of your limits"}.`,
  });
  page.draw.cup = (node, row) => {
    const cup = cupOf(row);
    node.hidden = !cup;
    if (cup) redraw(node, cup, drawCup);
  };
  page.requestRender();
}

/** For each limit of a cup that was passed over: what it looks after, and what is missing for it. */
function notChecked(colour) {
  const found = new Map();
  for (const [name, word] of Object.entries(limits)) {
    const { blank } = (colour.cells[name] ?? colour.parent.cells[name]);
    if (blank) found.set(because(blank), [...(found.get(because(blank)) ?? []), word]);
  }
  const said = [...found].map(([why, words]) => (
    `${capital(words.join(" and "))} not checked: ${why.slice(0, 1).toLowerCase()}${why.slice(1)}`
  ));
  return said.join(" ");
}

function ratioInWords({ stated_ratio_a: a, stated_ratio_b: b, ratio_basis: basis }) {
  if (a.blank || b.blank) return "ratio missing";
  return `${rounded(a.value)}:${rounded(b.value)}${basis.value === "mass" ? " by mass" : ""}`;
}

function yourCup({ cup_capacity: capacity, cup_graduation: graduation }) {
  const unit = unitShown("volume", state.job.units);
  const says = (cell) => (cell.blank ? "____" : show(cell.value, "volume", unit, "mark"));
  return `Cup of ${says(capacity)}, marked every ${says(graduation)}.`;
}

/** What the picture of a cup row shows; null where no cup is known. */
function cupOf(row) {
  const { cells: job } = row.parent.parent;
  if (job.cup_capacity.blank) return null;
  const valueOf = ({ blank, value }) => (blank ? null : value);
  const [capacity, graduation] = [job.cup_capacity, job.cup_graduation].map(valueOf);
  const [a, total] = [row.cells.reading_a, row.cells.reading_total].map(valueOf);
  return filledCup({ capacity, graduation, a, total }, state.job.units);
}
