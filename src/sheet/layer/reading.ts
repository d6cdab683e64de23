/** How a layer is meant: what is filled is cut away, or stays; or only the cut lines are drawn. */

import type { Reading } from '../../config/types';
import type { Shape, Subpath } from '../../drawing/types';
import type { Box, Region } from '../../geometry/base/polygon-types';
import { PLAINLY_BESIDE } from '../../geometry/base/tolerances';
import { regionContains } from '../../geometry/boolean/index';
import { attributeOf } from '../../markup/query';
import type { ElementNode } from '../../markup/tree';

/** Lines up to this width in mm only show where to cut; wider ones are painted (common practice, no source). */
const HAIRLINE = 0.3;

/** How far inside the frame, in mm, we look whether the fill reaches round it. */
const INSET = PLAINLY_BESIDE;

/** The attribute, on the root or a layer, that says how filled area is meant. */
export const READING_ATTRIBUTE = 'data-tombolo-reading';

const READINGS: readonly string[] = ['openings', 'sheet', 'outlines'] satisfies Reading[];

/** All that the attribute may say; `detect` leaves it to us. */
export const READING_WORDS: readonly string[] = [...READINGS, 'detect'];

/** What the attribute says on one of the elements, the first that has it. */
export function statedReading(elements: readonly (ElementNode | undefined)[]): Reading | undefined {
  for (const element of elements) {
    const value = element && attributeOf(element, READING_ATTRIBUTE)?.value.trim();
    if (value && READINGS.includes(value)) return value as Reading;
  }
  return undefined;
}

/**
 * @param filled the union of all that is painted, computed only where it is needed
 * @param painted whether thin lines are known to be painted, and no cut lines
 */
export function detectReading(shapes: readonly Shape[], frame: Box, filled: () => Region, painted: boolean): Reading {
  if (!painted && showsCutLines(shapes)) return 'outlines';
  return reachesRound(filled(), frame) ? 'sheet' : 'openings';
}

function showsCutLines(shapes: readonly Shape[]): boolean {
  return shapes.length > 0 && shapes.every(({ part }) => part === 'stroke') && outlinesOf(shapes).length > 0;
}

/** The closed hairlines of a layer. */
export function outlinesOf(shapes: readonly Shape[]): readonly Subpath[] {
  return shapes
    .filter(isHairline)
    .flatMap((shape) => shape.centreline ?? [])
    .filter(isClosed);
}

/** Whether a shape is a line that only shows where to cut. */
export function isHairline({ part, strokeWidth }: Shape): boolean {
  return part === 'stroke' && (strokeWidth ?? 0) <= HAIRLINE;
}

/** Whether a line ends where it begins. */
export function isClosed({ closed, curves }: Subpath): boolean {
  const first = curves[0]?.start;
  const last = curves.at(-1)?.end;
  return closed || (first !== undefined && first.x === last?.x && first.y === last?.y);
}

/** Whether the region covers the whole rim of the frame, tried at points all along it. */
function reachesRound(region: Region, { minX, minY, maxX, maxY }: Box): boolean {
  const steps = 64;
  for (let i = 0; i <= steps; i += 1) {
    const x = minX + INSET + ((maxX - minX - 2 * INSET) * i) / steps;
    const y = minY + INSET + ((maxY - minY - 2 * INSET) * i) / steps;
    const rim = [
      { x, y: minY + INSET },
      { x, y: maxY - INSET },
      { x: minX + INSET, y },
      { x: maxX - INSET, y },
    ];
    if (!rim.every((point) => regionContains(region, point))) return false;
  }
  return true;
}
