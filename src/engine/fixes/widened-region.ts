import type { Polygon } from '../../geometry/base/polygon-types';
import type { ThinPlace } from '../../sheet/thin-places';

/**
 * Where widening a neck may change the sheet: a square about its middle that the widened neck cannot leave. Sheet mm.
 * @param width to which it is widened, mm
 */
export function widenedRegion({ from, to, length }: ThinPlace, width: number): Polygon {
  const [x, y, half] = [(from.x + to.x) / 2, (from.y + to.y) / 2, length + 2 * width];
  return {
    outer: Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half),
    holes: [],
  };
}
