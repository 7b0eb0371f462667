// The cup's heat curve: conversion and temperature over time, gel time and peak, from the book's rates.
// All that is known of resin comes from printed formulas; the values are cells of the sheet by their names, in
// canonical units. The tests hold it to SciPy.
import { crossing, integrate } from "../lib/numerics.js";
import { formulas } from "../printed.js";

const SCALES = [1, 100];
const TOLERANCE = 3e-5;
const FIRST_STEP = 1;
const CURED = 0.9999;

const KINETICS = [
  "cure_self_start",
  "gel_conversion",
  "activation_energy",
  "gas_constant",
  "kinetic_reference_temperature",
  "reaction_heat",
  "heat_capacity",
  "heat_capacity_slope",
  "greatest_heat_capacity",
  "air_loss",
  "air_loss_slope",
];

/** The cells that `heatCurve` asks for: the cup's, the room's and the constants. */
export const heatCurveAsks = [
  "rate_constant",
  "cup_mass",
  "cup_surface",
  "resin_temperature",
  "air_temperature",
  ...KINETICS,
];

/**
 * Return how a cup cures and warms: the moments of gel and of the peak, and all moments on the way.
 * A moment is {time, state: [conversion, temperature], rates}; seconds, shares, kelvins.
 * @param {Record<string, number>} values those of heatCurveAsks
 */
export function heatCurve(values) {
  const rates = ratesOf(values);
  const gelled = pastGel(values);
  const start = [0, values.resin_temperature];
  const moments = integrate(rates, start, SCALES, TOLERANCE, FIRST_STEP, spent(values, gelled));
  let gel = moments[moments.length - 1];
  let peak = moments.reduce(hotter);
  moments.slice(1).forEach((after, index) => {
    const before = moments[index];
    if (gelled(before) < 0 && gelled(after) >= 0) gel = crossing(rates, before, after, SCALES, gelled);
    if (before.rates[1] > 0 && after.rates[1] <= 0) {
      peak = hotter(peak, crossing(rates, before, after, SCALES, (moment) => moment.rates[1]));
    }
  });
  return { gel, peak, moments };
}

function hotter(one, other) {
  return other.state[1] > one.state[1] ? other : one;
}

function ratesOf(v) {
  const { conversion_rate, mix_heat_capacity, surface_loss, heating_rate } = formulas;
  return (conversion, temperature) => {
    const curing = conversion_rate(
      conversion,
      temperature,
      v.rate_constant,
      v.cure_self_start,
      v.activation_energy,
      v.gas_constant,
      v.kinetic_reference_temperature,
    );
    const capacity = mix_heat_capacity(
      temperature,
      v.heat_capacity,
      v.heat_capacity_slope,
      v.greatest_heat_capacity,
      v.kinetic_reference_temperature,
    );
    const loss = surface_loss(temperature, v.air_temperature, v.air_loss, v.air_loss_slope);
    const warming = heating_rate(
      curing,
      capacity,
      loss,
      temperature,
      v.air_temperature,
      v.reaction_heat,
      v.cup_mass,
      v.cup_surface,
    );
    return [curing, warming];
  };
}

function pastGel(values) {
  return (moment) => moment.state[0] - values.gel_conversion;
}

function spent(values, gelled) {
  let hottest = 0;
  return (moment) => {
    const excess = moment.state[1] - values.air_temperature;
    hottest = Math.max(hottest, excess);
    const cooled = gelled(moment) >= 0 && moment.rates[1] < 0 && excess < hottest / 2;
    return cooled || moment.state[0] >= CURED;
  };
}
