/** Which fillets the roots of strips can have, by the edges of the openings that they cross. Sheet mm. */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { distance, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { firstHits, type Hit } from '../../geometry/spatial/raycast';
import type { SegmentIndex } from '../../geometry/spatial/segment-index';
import { cornerAt, distanceToStrip, type Strip } from '../strip/strip';
import { bankFrom, type Root } from './bank';
import type { RootFillet } from './fillet';
import { filletOf } from './fit';

/**
 * The radius of a fillet in widths of its bridge. Stress at a shoulder falls with the radius over the width: about 2 times
 * the mean at a tenth, 1.3 to 1.5 times at a half, and little less beyond (Peterson's charts of stress concentration, from memory).
 */
const RADIUS = 1 / 2;
/** In lengths of the side, where that is less; at banks that are not square to it an arc may take so much of the side. */
const OF_SIDE = { radius: 1 / 4, tangent: 1 / 3 };
/** mm: a beam of 0.1 mm rounds every inner corner by as much itself. */
const LEAST_RADIUS = 2.5 * NEAR_EDGE;
/** A smaller radius is tried where a larger one has no room. */
const SMALLER = 0.8;

/**
 * The strips with the fillets for which there is room: smaller ones, or none, where a gap is short, where a corner of the
 * drawing, another strip or another opening is near.
 * @param openings their edges
 */
export function withFillets(openings: SegmentIndex, strips: readonly Strip[]): Strip[] {
  return strips.map((strip) => {
    const others = strips.filter((other) => other !== strip);
    const fillets = [0, 2].flatMap((side) => filletsOnSide(openings, strip, side, others));
    return fillets.length > 0 ? { ...strip, fillets } : strip;
  });
}

/** @param side the number of its first corner */
function filletsOnSide(openings: SegmentIndex, strip: Strip, side: number, others: readonly Strip[]): RootFillet[] {
  const [a, b] = [cornerAt(strip, side), cornerAt(strip, side + 1)];
  const along = normalise(subtract(b, a));
  if (!along) return [];
  const hits = firstHits(openings, interpolate(a, b, 0.5), along, distance(a, b) / 2);
  const { back, ahead } = hits;
  if (!back || !ahead || !leaves(openings, back, scale(along, -1)) || !leaves(openings, ahead, along)) return [];
  const length = back.distance + ahead.distance;
  const width = distance(cornerAt(strip, side + 1), cornerAt(strip, side + 2));
  // Corners go round so that the strip lies clockwise of its sides.
  const away = scale(perpendicular(along), -1);
  return [
    { hit: back, inward: along },
    { hit: ahead, inward: scale(along, -1) },
  ].flatMap(({ hit: { point: corner, edge }, inward }) => {
    const free = Math.min(Infinity, ...others.map((other) => distanceToStrip(other, corner))) / 2;
    const largest = Math.min(RADIUS * width, OF_SIDE.radius * length, free);
    const room = { side: Math.min(OF_SIDE.tangent * length, free), bank: Math.min(free, 3 * largest) };
    return largestFillet(openings, { corner, edge, inward, away }, largest, room) ?? [];
  });
}

/** Whether who follows a ray over an edge comes out of the opening. */
function leaves(openings: SegmentIndex, { edge }: Hit, direction: Point): boolean {
  const along = {
    x: defined(openings.x1[edge]) - defined(openings.x0[edge]),
    y: defined(openings.y1[edge]) - defined(openings.y0[edge]),
  };
  return dot(direction, perpendicular(along)) < 0;
}

function largestFillet(
  openings: SegmentIndex,
  root: Root,
  largest: number,
  room: { readonly side: number; readonly bank: number },
): RootFillet | undefined {
  if (largest < LEAST_RADIUS) return undefined;
  const bank = bankFrom(openings, root, room.bank);
  for (let radius = largest; bank && radius >= LEAST_RADIUS; radius *= SMALLER) {
    const fillet = filletOf(openings, root, bank, radius, room.side);
    if (fillet) return fillet;
  }
  return undefined;
}
