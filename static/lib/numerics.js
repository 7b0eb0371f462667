// Short generic numerics: a stiff integrator of two rates, a search for a root, a quadrature.
// Nothing here knows of resin: what is integrated is handed in.

const MOST_STEPS = 2000;
const MOST_HALVINGS = 40;
const NUDGE = 1e-7;
const POINTS = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
];

/**
 * Return the state one step later and the error of that, by the L-stable RODAS3 of order 3.
 * @param {(x: number, y: number) => [number, number]} rates
 * @param {{time: number, state: [number, number], rates: [number, number]}} start
 * @param {number} length
 * @param {[number, number]} scales
 */
function rosenbrockStep(rates, start, length, scales) {
  const [x, y] = start.state;
  const [f, g] = start.rates;
  const dx = NUDGE * scales[0];
  const dy = NUDGE * scales[1];
  const [fx, gx] = rates(x + dx, y);
  const [fy, gy] = rates(x, y + dy);
  const [a, c] = [(fx - f) / dx, (gx - g) / dx];
  const [b, d] = [(fy - f) / dy, (gy - g) / dy];
  const corner = 2 / length;
  const determinant = (corner - a) * (corner - d) - b * c;
  const solve = (first, second) => [
    ((corner - d) * first + b * second) / determinant,
    ((corner - a) * second + c * first) / determinant,
  ];
  const [p1, q1] = solve(f, g);
  const [p2, q2] = solve(f + (4 * p1) / length, g + (4 * q1) / length);
  const [u, v] = rates(x + 2 * p1, y + 2 * q1);
  const [p3, q3] = solve(u + (p1 - p2) / length, v + (q1 - q2) / length);
  const [r, s] = rates(x + 2 * p1 + p3, y + 2 * q1 + q3);
  const error = solve(r + (p1 - p2 - (8 / 3) * p3) / length, s + (q1 - q2 - (8 / 3) * q3) / length);
  return { state: [x + 2 * p1 + p3 + error[0], y + 2 * q1 + q3 + error[1]], error };
}

/** Step two rates through time until `done`; steps are as long as the tolerance allows. */
export function integrate(rates, start, scales, tolerance, firstStep, done) {
  const moments = [{ time: 0, state: start, rates: rates(...start) }];
  let length = firstStep;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const last = moments[moments.length - 1];
    if (done(last)) break;
    const { state, error } = rosenbrockStep(rates, last, length, scales);
    const off = Math.max(Math.abs(error[0]) / scales[0], Math.abs(error[1]) / scales[1]) / tolerance;
    if (off <= 1) moments.push({ time: last.time + length, state, rates: rates(...state) });
    length *= Math.min(5, Math.max(0.2, 0.9 / Math.max(off, 1e-9) ** (1 / 3)));
  }
  return moments;
}

/** Return the moment between two at which a measure passes zero, stepping again from the earlier one. */
export function crossing(rates, before, after, scales, measure) {
  const at = (time) => {
    const { state } = rosenbrockStep(rates, before, time - before.time, scales);
    return { time, state, rates: rates(...state) };
  };
  const ends = [before.time, after.time];
  return at(root((time) => measure(at(time)), ends, [measure(before), measure(after)], 1e-10));
}

/** Return where a function comes near zero between two ends of unlike sign, by the Illinois method. */
export function root(calculated, ends, atEnds, near) {
  let [low, high] = ends;
  let [atLow, atHigh] = atEnds;
  let side = 0;
  let middle = high;
  for (let step = 0; step < MOST_HALVINGS; step += 1) {
    middle = (low * atHigh - high * atLow) / (atHigh - atLow);
    const value = calculated(middle);
    if (Math.abs(value) <= near) break;
    if (value > 0 === atHigh > 0) {
      [high, atHigh] = [middle, value];
      if (side === 1) atLow *= 0.5;
      side = 1;
    } else {
      [low, atLow] = [middle, value];
      if (side === -1) atHigh *= 0.5;
      side = -1;
    }
  }
  return middle;
}

/** Return where a falling function passes zero, by longer and longer strides, the first right for a slope of -1. */
export function rootNear(calculated, start, near) {
  let [here, atHere] = [start, calculated(start)];
  if (Math.abs(atHere) <= near) return here;
  let stride = atHere;
  let [there, atThere] = [here + stride, calculated(here + stride)];
  while (Math.abs(atThere) > near && atThere > 0 === atHere > 0) {
    stride *= 2;
    [here, atHere] = [there, atThere];
    there += stride;
    atThere = calculated(there);
  }
  return root(calculated, [here, there], [atHere, atThere], near);
}

/** Return the integral of a smooth function, by Gauss's eight points in each strip. */
export function areaUnder(calculated, low, high, strips) {
  const half = (high - low) / strips / 2;
  let total = 0;
  for (let strip = 0; strip < strips; strip += 1) {
    const middle = low + (2 * strip + 1) * half;
    for (const [at, weight] of POINTS) {
      total += weight * (calculated(middle - at * half) + calculated(middle + at * half));
    }
  }
  return total * half;
}
