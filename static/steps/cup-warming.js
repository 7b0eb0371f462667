// How a cup warms that is left standing: what the picture of its heat is drawn from.
import { heatCurve, heatCurveAsks } from "../sheet/heat-curve.js";
import { formulas } from "../printed.js";

/** The cells that `cupWarming` asks for. */
export const cupWarmingAsks = [...heatCurveAsks, "gel_time_band", "earliest_gel_time", "latest_gel_time"];

/**
 * Return how a cup warms and thickens, as a band: seconds from the moment A touches B, kelvins.
 * @param {Record<string, number>} values those of cupWarmingAsks
 */
export function cupWarming(values) {
  const { peak, moments } = heatCurve(values);
  const rising = moments.filter((moment) => moment.time < peak.time);
  const ends = [formulas.earliest_gel_time, formulas.latest_gel_time];
  const [early, late] = ends.map((end) => (
    [...rising, peak].map(({ time, state }) => [end(time, values.gel_time_band), state[1]])
  ));
  return { early, late, gel: [values.earliest_gel_time, values.latest_gel_time] };
}
