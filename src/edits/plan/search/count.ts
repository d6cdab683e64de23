/** How many bridges an island needs by its size alone. */
import type { Box } from '../../../geometry/base/polygon-types';

/** Extents in mm and areas in mm² up to which an island gets so many bridges (common practice, no source). */
const ONE_BRIDGE = { extent: 6, area: 20 };
const TWO_BRIDGES = { extent: 60 };
const THREE_BRIDGES = { extent: 120 };

/** The longer side of its box decides: light islands hang on one bridge, large ones would sag on two. */
export function bridgeCountFor(box: Box, area: number): number {
  const extent = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (extent <= ONE_BRIDGE.extent && area <= ONE_BRIDGE.area) return 1;
  if (extent <= TWO_BRIDGES.extent) return 2;
  return extent <= THREE_BRIDGES.extent ? 3 : 4;
}
