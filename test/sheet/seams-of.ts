import type { Box, Region } from '../../src/geometry/base/polygon-types';
import type { SheetMeasures } from '../../src/sheet/types';
import { type MeasuredSeams, measureSeams, type Seams } from '../../src/stack/index';

/** The seams of layers of which nothing but the openings is known. */
export function seamsOf(...args: Parameters<typeof measuredSeamsOf>): Seams {
  return measuredSeamsOf(...args).seams;
}

/** The same, with what a later measuring can take over. */
export function measuredSeamsOf(
  layers: readonly Region[],
  frame: Box,
  slip: number,
  previous?: MeasuredSeams,
  kerf = 0,
): MeasuredSeams {
  return measureSeams(
    layers.map((openings) => ({ openings, frame, kerf }) as unknown as SheetMeasures),
    slip,
    previous,
  );
}
