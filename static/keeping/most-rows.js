// How many rows a job may hold, said before one is added: more would make a phone slow, and no file would open again.
import { rules, shape } from "../job-shape.js";
import { levels } from "../printed.js";

/**
 * Why no row of a level can be added below a parent row, or "" where one can.
 * @param {object} job
 * @param {string} level
 * @param {object} parent the row or job that it would stand in
 * @param {object | null} copied the row that it would be a copy of, with all below it
 */
export function whyFull(job, level, parent, copied = null) {
  const rows = rowsOf(parent, level);
  const { most } = kindOf(level);
  if (rows.length >= most) return filled("", rules.full[level], most);
  const below = copied ? levelsBelow(level) : [];
  const counts = [[level, 1], ...below.map((each) => [each, countIn(copied, level, each)])];
  const [full] = counts.find(([each, more]) => countIn(job, "job", each) + more > kindOf(each).all) ?? [];
  return full ? filled(levels[full].word, rules.full.job, kindOf(full).all) : "";
}

/** Why no cup can be begun any more, or "" where one can: a job's record has its end. */
export function whyRecordFull(job) {
  const { most, of } = shape.colour.keys.cups;
  const cups = job.colours.flatMap((colour) => colour.cups ?? []);
  return cups.length >= most ? filled(of, rules.full.record, most) : "";
}

function filled(word, sentence, most) {
  return sentence.replace("{most}", most.toLocaleString("en-US")).replace("{words}", `${word}s`);
}

function kindOf(level) {
  return shape[levels[level].parent].keys[levels[level].rows];
}

function rowsOf(parent, level) {
  return parent[levels[level].rows] ?? [];
}

function levelsBelow(level) {
  return levels[level].held.flatMap((below) => [below, ...levelsBelow(below)]);
}

/** How many rows of a level stand in a row of another, at any depth. */
function countIn(row, rowLevel, level) {
  return levels[rowLevel].held.reduce((sum, below) => {
    const rows = rowsOf(row, below);
    return sum + (below === level ? rows.length : rows.reduce((inner, each) => inner + countIn(each, below, level), 0));
  }, 0);
}
