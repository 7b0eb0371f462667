// How a cup warms that is left standing: what the picture of its heat is drawn from.
import { heatCurve, heatCurveAsks, rateConstant, rateConstantAsks } from "../sheet/heat-curve.js";
import { formulas } from "../printed.js";

/** The cells that `cupWarming` asks for. */
export const cupWarmingAsks = [
  ...new Set([...rateConstantAsks, ...heatCurveAsks].filter((name) => name !== "rate_constant")),
  "gel_time_band",
  "small_cup_mass",
  "cup_warm_from",
  "cup_hot_from",
  "cup_dangerous_from",
];

let card = { key: "", constant: 0 };

/**
 * Return how a cup warms and thickens, as a band: seconds from the moment A touches B, kelvins, the class of heat.
 * @param {Record<string, number>} values those of cupWarmingAsks
 */
export function cupWarming(values) {
  const { gel, peak, moments } = heatCurve({ ...values, rate_constant: rateConstantOf(values) });
  const { gel_time_band: band } = values;
  const rising = moments.filter((moment) => moment.time < peak.time);
  const ends = [formulas.earliest_gel_time, formulas.latest_gel_time];
  const [early, late] = ends.map((end) => [...rising, peak].map(({ time, state }) => [end(time, band), state[1]]));
  return {
    early,
    late,
    gel: ends.map((end) => end(gel.time, band)),
    heatClass: formulas.heat_class(peak.state[1], values.cup_warm_from, values.cup_hot_from, values.cup_dangerous_from),
  };
}

/** The card's rate constant is worked out once for a card: it takes longer than a curve. */
function rateConstantOf(values) {
  const key = JSON.stringify(rateConstantAsks.map((name) => values[name]));
  if (card.key !== key) card = { key, constant: rateConstant(values) };
  return card.constant;
}
