/** Polygons that are thin as a whole: no disc of the width fits into them. */

import { defined } from '../../base/defined';
import { boxOfVertices } from '../base/ring';
import type { Outline } from './boundary-arrays';
import { largestDisc } from './largest-circle';
import { isThinThroughout, type ThinBoundary } from './thin-boundary';
import type { ThinPart } from './types';

/** Marks polygons whose boxes are narrower than the width: nothing more need be asked about them. */
export function fullyThinByBox(outline: Outline, polygons: number, width: number): Uint8Array {
  const { ringStart, polygon } = outline;
  const whole = new Uint8Array(polygons);
  for (let ring = 0; ring + 1 < ringStart.length; ring += 1) {
    if (ring > 0 && polygon[defined(ringStart[ring])] === polygon[defined(ringStart[ring - 1])]) continue;
    const { minX, minY, maxX, maxY } = boxOfVertices(
      outline.x,
      outline.y,
      defined(ringStart[ring]),
      defined(ringStart[ring + 1]),
    );
    if (Math.min(maxX - minX, maxY - minY) < width) whole[defined(polygon[defined(ringStart[ring])])] = 1;
  }
  return whole;
}

/** Marks polygons whose boundary is thin all round. */
export function markFullyThin(thin: ThinBoundary, whole: Uint8Array): void {
  forEachPolygon(thin.boundary.outline, (polygon, firstRing, endRing) => {
    if (whole[polygon] === 0 && isThinThroughout(thin, firstRing, endRing)) whole[polygon] = 1;
  });
}

export function describeFullyThin(thin: ThinBoundary, whole: Uint8Array): ThinPart[] {
  const parts: ThinPart[] = [];
  const { outline } = thin.boundary;
  forEachPolygon(outline, (polygon, firstRing, endRing) => {
    if (whole[polygon] === 0) return;
    const [start, end] = [defined(outline.ringStart[firstRing]), defined(outline.ringStart[endRing])];
    const [from, to] = largestDisc(thin.boundary, start, end, 1.01 * thin.radius);
    const width = Math.hypot(to.x - from.x, to.y - from.y);
    let perimeter = 0;
    for (let edge = start; edge < end; edge += 1) perimeter += defined(outline.length[edge]);
    const sides = endRing - firstRing;
    const length = Math.max(width, perimeter / 2 - (sides === 1 ? width : 0));
    const extent = boxOfVertices(outline.x, outline.y, start, end);
    parts.push({ kind: 'whole', width, from, to, length, reach: 0, sides, extent, polygon, holds: undefined });
  });
  return parts;
}

/** The rings of a polygon come one after the other. */
function forEachPolygon(
  { ringStart, polygon }: Outline,
  visit: (polygon: number, firstRing: number, endRing: number) => void,
): void {
  const rings = ringStart.length - 1;
  for (let first = 0; first < rings; ) {
    const number = defined(polygon[defined(ringStart[first])]);
    let end = first + 1;
    while (end < rings && polygon[defined(ringStart[end])] === number) end += 1;
    visit(number, first, end);
    first = end;
  }
}
