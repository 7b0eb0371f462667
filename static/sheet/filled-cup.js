// The person's own cup in numbers: what its picture shows on the sheet and on the bench. Pure.
import { fromCanonical, show, unitOfMarks, unitShown } from "./quantities.js";

/**
 * What the picture of a cup shows, in the unit that the cup itself is marked in, whichever the job's is.
 * @param {{capacity: number, graduation: number | null, a: number | null, total: number | null}} cup canonical
 *   volumes; without marks known it has none but its brim, without readings no fill lines
 * @param {object} jobUnits
 * @param {"a" | "b"} upTo the part that goes in last
 * @returns {{capacity: number, graduation: number, fills: object[], title: string}} as `drawCup` takes it
 */
export function filledCup({ capacity, graduation, a, total }, jobUnits, upTo = "b") {
  const unit = unitShown("volume", jobUnits);
  const own = unitOfMarks(graduation ?? capacity, "volume", unit) ?? unit;
  const inMarks = (value) => fromCanonical(value, own, "volume");
  const says = (value) => show(value, "volume", unit, "mark");
  const line = (part, value, words) => ({ part, to: inMarks(value), says: words, also: `to ${says(value)}` });
  const lines = a === null || total === null ? [] : [line("a", a, "Part A"), line("b", total, "then B")];
  const fills = lines.slice(0, upTo === "a" ? 1 : 2);
  const words = fills.map((fill) => `${fill.says} ${fill.also}`).join(", ") || "no fill lines yet";
  return {
    capacity: inMarks(capacity),
    graduation: inMarks(graduation ?? capacity),
    fills,
    title: `Your cup of ${says(capacity)}: ${words}`,
  };
}
