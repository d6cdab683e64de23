/** How finely new points are written. */

/** The step of a written coordinate, in mm: 1 µm. */
const POINT_STEP = 0.001;

/** Digits after the point for which one step of a coordinate in user units is at most 1 µm. */
export function decimalsFor(mmPerUnit: number): number {
  return Math.max(0, Math.ceil(-Math.log10(POINT_STEP / mmPerUnit) - 1e-9));
}
