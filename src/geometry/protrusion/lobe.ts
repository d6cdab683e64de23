/** The polygon of a lobe, whose chord and farthest point the search gives. */
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Polygon, Region } from '../base/polygon-types';
import { ringOfPoints } from '../base/ring';
import { buildSegmentIndex, nearestSegment } from '../spatial/segment-index';
import type { Protrusion } from './find';

/**
 * What the boundary goes round from one end of the chord to the other. Holes of the lobe are left out.
 * @param region that the lobe was found in
 * @returns undefined where both ends lie on no ring in common: the region is another one
 */
export function lobeOf(region: Region, { from, to }: Pick<Protrusion, 'from' | 'to'>): Polygon | undefined {
  const index = buildSegmentIndex(region);
  const [start, end] = [nearestSegment(index, from), nearestSegment(index, to)];
  if (!start || !end || index.ring[start.edge] !== index.ring[end.edge]) return undefined;
  const points: Point[] = [from];
  for (let edge = start.edge; edge !== end.edge; ) {
    edge = defined(index.next[edge]);
    points.push({ x: defined(index.x0[edge]), y: defined(index.y0[edge]) });
  }
  return { outer: ringOfPoints([...points, to]), holes: [] };
}
