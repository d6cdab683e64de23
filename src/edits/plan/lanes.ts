/** Lines across a gap beside the middle line of a bridge. */
import type { Point } from '../../geometry/base/curve-types';
import { WRITTEN_STEP } from '../../geometry/base/tolerances';
import { add, interpolate, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { firstHit, firstHits } from '../../geometry/spatial/raycast';
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
 * The corners of the ground that a bridge takes up between the two pieces as cut, once round. Its strip reaches a little
 * into both: where one is so thin there that the strip comes out behind it, the whole strip counts.
 * @param width mm as drawn
 */
export function groundUnder(way: BridgeCandidate, island: number, width: number, pieces: SegmentIndex): Point[] {
  const offsets = Array.from({ length: GROUND_LANES }, (_, i) => (i / (GROUND_LANES - 1) - 0.5) * width);
  const half = { back: way.length / 2, ahead: way.length / 2 };
  const lanes = offsets.map((offset) => ({ ...axisOf(way, offset), ...(laneAt(way, offset, island, pieces) ?? half) }));
  const reach = (ends: readonly number[]) => Math.min(Math.max(...ends), way.length / 2 + width) + width / 4;
  const [back, ahead] = [reach(lanes.map((lane) => lane.back)), reach(lanes.map((lane) => lane.ahead))];
  const comesOut = lanes.some(({ origin, along, ...lane }) => {
    const isThin = (outward: Point, edge: number, end: number): boolean => {
      const inside = add(origin, scale(outward, edge + WRITTEN_STEP));
      return firstHit(pieces, inside, outward, Math.max(0, end - edge)) !== undefined;
    };
    return isThin(scale(along, -1), lane.back, back) || isThin(along, lane.ahead, ahead);
  });
  const outline = lanes.map((lane) => (comesOut ? { ...lane, back, ahead } : lane));
  const end = ({ origin, along }: Axis, distance: number) => add(origin, scale(along, distance));
  return [...outline.map((lane) => end(lane, -lane.back)), ...outline.map((lane) => end(lane, lane.ahead)).reverse()];
}

interface Axis {
  readonly origin: Point;
  readonly along: Point;
}

function axisOf({ from, to }: BridgeCandidate, offset: number): Axis {
  const way = subtract(to, from);
  const along = scale(way, 1 / Math.hypot(way.x, way.y));
  return { origin: add(interpolate(from, to, 0.5), scale(perpendicular(along), offset)), along };
}
