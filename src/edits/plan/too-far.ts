/** Whether a loose piece is too far from all that hangs, for any bridge and any chain of bridges. Sheet mm. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { pointsOf, ringsOf } from '../../geometry/base/ring';
import { distance, interpolate } from '../../geometry/base/vector';
import { nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Piece } from '../../sheet/types';

/** mm between the places of an outline that are looked at: 20 mm seem at most 0.01 mm longer. */
const SPACING = 1;

/**
 * By way of other loose pieces, too: they and the piece are farther from what hangs than a bridge may be long.
 * @param index edges of all pieces as cut, numbered as they are
 * @param longest mm as cut
 */
export function isTooFar(pieces: readonly Piece[], number: number, index: SegmentIndex, longest: number): boolean {
  const cluster = new Set([number]);
  for (const member of cluster) {
    const places = ringsOf(defined(pieces[member]).polygon).flatMap(placesAlong);
    for (let found = piecesNear(places, index, longest, cluster); found.size > 0; ) {
      if ([...found].some((each) => !pieces[each]?.island)) return false;
      for (const each of found) cluster.add(each);
      found = piecesNear(places, index, longest, cluster);
    }
  }
  return true;
}

/** Of the pieces that are not known yet those that are nearest to some place. */
function piecesNear(
  places: readonly Point[],
  index: SegmentIndex,
  longest: number,
  known: ReadonlySet<number>,
): Set<number> {
  const found = new Set<number>();
  for (const place of places) {
    checkpoint(4);
    const near = nearestSegment(index, place, longest, (edge) => !known.has(defined(index.polygon[edge])));
    if (near) found.add(defined(index.polygon[near.edge]));
  }
  return found;
}

function placesAlong(ring: Ring): Point[] {
  const corners = pointsOf(ring);
  return corners.flatMap((start, i) => {
    const end = defined(corners[(i + 1) % corners.length]);
    const count = Math.max(1, Math.ceil(distance(start, end) / SPACING));
    return Array.from({ length: count }, (_, k) => interpolate(start, end, k / count));
  });
}
