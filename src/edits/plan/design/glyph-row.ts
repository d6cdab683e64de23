/** Counters that stand in a row as those of letters do: their bridges look calm when all are upright. */
import type { Box } from '../../../geometry/base/polygon-types';

/** So many make a row (common practice, no source). */
const MIN_ROW_LENGTH = 3;
/** Which share of the taller one's height two must have in common to stand in one row: b and o do, o and . do not. */
const MIN_SHARED_HEIGHT = 0.5;

/** @param counters boxes of islands, in any order */
export function formGlyphRow(counters: readonly Box[]): boolean {
  return counters.some(
    (first) => counters.filter((other) => other === first || areBeside(first, other)).length >= MIN_ROW_LENGTH,
  );
}

function areBeside(a: Box, b: Box): boolean {
  const apart = a.maxX < b.minX || b.maxX < a.minX;
  const common = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  return apart && common >= MIN_SHARED_HEIGHT * Math.max(a.maxY - a.minY, b.maxY - b.minY);
}
