/** Round to a tenth: finer than a phone can draw, and shorter to write. */
export function tenths(value) {
  return Math.round(value * 10) / 10;
}
