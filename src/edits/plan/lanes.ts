/** Lines across a gap beside the middle line of a bridge. */
import type { Point } from '../../geometry/base/curve-types';
import { add, interpolate, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { firstHits } from '../../geometry/spatial/raycast';
import type { SegmentIndex } from '../../geometry/spatial/segment-index';
import type { BridgeCandidate } from './candidates';

/** How far the opening reaches from the middle of the way across, back to the island and ahead to the other side. */
export interface Lane {
  readonly back: number;
  readonly ahead: number;
}

/**
 * @param offset mm beside the middle line
 * @returns undefined where the lane meets something else than the island behind and the target ahead
 */
export function laneAt(way: BridgeCandidate, offset: number, island: number, pieces: SegmentIndex): Lane | undefined {
  const { origin, along } = axisOf(way, offset);
  const limit = 2 * way.length + 4 * Math.abs(offset) + 1;
  const { back, ahead } = firstHits(pieces, origin, along, limit);
  if (back?.polygon !== island || ahead?.polygon !== way.target) return undefined;
  return { back: back.distance, ahead: ahead.distance };
}

/** Lines that are looked at for the ground under a bridge, its sides among them. */
const GROUND_LANES = 9;

/**
 * The corners of the ground that a bridge takes up between the two pieces as cut, once round.
 * @param width mm as drawn
 */
export function groundUnder(way: BridgeCandidate, island: number, width: number, pieces: SegmentIndex): Point[] {
  const offsets = Array.from({ length: GROUND_LANES }, (_, i) => (i / (GROUND_LANES - 1) - 0.5) * width);
  const ends = offsets.map((offset) => {
    const { origin, along } = axisOf(way, offset);
    const { back, ahead } = laneAt(way, offset, island, pieces) ?? { back: way.length / 2, ahead: way.length / 2 };
    return { back: add(origin, scale(along, -back)), ahead: add(origin, scale(along, ahead)) };
  });
  return [...ends.map(({ back }) => back), ...ends.map(({ ahead }) => ahead).reverse()];
}

function axisOf({ from, to }: BridgeCandidate, offset: number): { readonly origin: Point; readonly along: Point } {
  const way = subtract(to, from);
  const along = scale(way, 1 / Math.hypot(way.x, way.y));
  return { origin: add(interpolate(from, to, 0.5), scale(perpendicular(along), offset)), along };
}
