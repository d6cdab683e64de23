import type { Box, Region } from '../../src/geometry/base/polygon-types';
import type { Sheet } from '../../src/sheet/types';
import { measureSeams, type Seams } from '../../src/stack/index';

/** The seams of layers of which nothing but the openings is known. */
export function seamsOf(layers: readonly Region[], frame: Box, slip: number, earlier?: Seams, kerf = 0): Seams {
  return measureSeams(
    layers.map((openings) => ({ openings, frame, kerf }) as unknown as Sheet),
    slip,
    earlier,
  );
}
