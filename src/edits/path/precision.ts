/** How finely new points are written. */
import { WRITTEN_STEP } from '../../geometry/base/tolerances';

/** Digits after the point for which one step of a coordinate in user units is at most 1 µm. */
export function decimalsFor(mmPerUnit: number): number {
  return Math.max(0, Math.ceil(-Math.log10(WRITTEN_STEP / mmPerUnit) - 1e-9));
}
