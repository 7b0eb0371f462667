// The bead over a stroke: its height, section and profile, from the book's formulas of its skin.
// The values are cells of the sheet by their names, in canonical units. The tests hold it to SciPy.
import { areaUnder, rootNear } from "../lib/numerics.js";
import { formulas } from "../printed.js";

const STRIPS = 16;
const POINTS = 24;

/**
 * Return the bead that stands over a stroke just before it runs over: cm, cm2, and its half profile [out, up].
 * @param {{stroke_width: number, capillary_length: number, edge_angle: number}} values
 */
export function beadProfile(values) {
  const { stroke_width: strokeWidth, capillary_length: capillaryLength, edge_angle: edgeAngle } = values;
  const apexCurvature = apexCurvatureOf(values);
  const height = formulas.bead_drop(apexCurvature, edgeAngle, capillaryLength);
  const section = formulas.bead_section(apexCurvature, height, strokeWidth, capillaryLength, edgeAngle);
  return { apexCurvature, height, section, profile: profileOf(apexCurvature, height, values) };
}

function apexCurvatureOf({ stroke_width: strokeWidth, capillary_length: capillaryLength, edge_angle: edgeAngle }) {
  const greatest = formulas.half_round_curvature(strokeWidth, capillaryLength);
  const width = Math.min(strokeWidth, formulas.level_bead_width(capillaryLength));
  const narrower = (exponent) => {
    const curvature = Math.exp(exponent);
    const edge = formulas.bead_edge_stretch(curvature, edgeAngle);
    const run = (stretch) => formulas.bead_run(stretch, curvature, capillaryLength);
    return (2 * areaUnder(run, 0, edge, STRIPS)) / width - 1;
  };
  return Math.exp(rootNear(narrower, Math.log(greatest), 1e-11));
}

function profileOf(curvature, height, { capillary_length: capillaryLength, edge_angle: edgeAngle }) {
  const edge = formulas.bead_edge_stretch(curvature, edgeAngle);
  const run = (stretch) => formulas.bead_run(stretch, curvature, capillaryLength);
  const points = [[0, height]];
  let out = 0;
  for (let number = 1; number <= POINTS; number += 1) {
    const stretch = (edge * number) / POINTS;
    out += areaUnder(run, (edge * (number - 1)) / POINTS, stretch, 1);
    const drop = formulas.bead_drop(curvature, formulas.bead_slope(stretch, curvature), capillaryLength);
    points.push([out, height - drop]);
  }
  return points;
}
