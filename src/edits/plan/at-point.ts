/** A bridge across an opening at a place that the artist chose, whatever stands on either side. */

import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { normalise, perpendicular, subtract } from '../../geometry/base/vector';
import { firstHits } from '../../geometry/spatial/raycast';
import { nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Sheet } from '../../sheet/types';
import { calmLength } from './calm';
import type { BridgeCandidate } from './candidates';
import { bridgeFrom, surroundingsOf } from './index';
import { type ScoredCandidate, scoreCandidate } from './score';
import type { Bridge, PlanOptions } from './types';

/** What is round about all places of a sheet, for bridges of one width: worked out once for many of them. */
export type GapSurroundings = ReturnType<typeof surroundingsOf>;

/** Ways through the place are tried in so many directions, evenly spread over a half turn. */
const DIRECTIONS = 24;

/**
 * The bridge through `point` that is short and square to the gap's sides.
 * @param point in an opening, sheet mm
 * @param along the direction that it is to have, where one can stand so
 * @param around of the same sheet and options, where it is known
 * @returns undefined where no bridge of that width can stand
 */
export function bridgeAcrossGap(
  sheet: Sheet,
  point: Point,
  options: PlanOptions,
  along?: Point,
  around: GapSurroundings = surroundingsOf(sheet, options),
): Bridge | undefined {
  const { frame } = sheet;
  const limit = Math.hypot(frame.maxX - frame.minX, frame.maxY - frame.minY);
  const rate = (directions: readonly Point[]): ScoredCandidate[] =>
    directions
      .flatMap((direction) => gapCrossings(around.pieces, point, direction, limit))
      .flatMap(({ island, candidate: crosser }) => scoreCandidate(crosser, island, options.width, around) ?? []);
  const wanted = along ? rate([along]) : [];
  const [first, ...others] = wanted.length > 0 ? wanted : rate(directionsAt(around.pieces, point));
  if (!first) return undefined;
  const best = others.reduce(
    (cheapest, way) => (squareCost(way, around.lines) < squareCost(cheapest, around.lines) - 1e-9 ? way : cheapest),
    first,
  );
  return bridgeFrom(best, defined(sheet.pieces[best.island]), sheet, options);
}

/** The artist chose the place: only how square a bridge stands there counts, not how calm it looks. */
function squareCost(way: ScoredCandidate, acrossLines: boolean): number {
  return (way.cost * way.length) / calmLength(way, acrossLines);
}

/** Square to the nearest edge, along it, and all round. */
function directionsAt(pieces: SegmentIndex, point: Point): Point[] {
  const near = nearestSegment(pieces, point);
  const away = near && normalise(subtract(point, near.point));
  const round = Array.from({ length: DIRECTIONS }, (_, k) => {
    const turn = (k * Math.PI) / DIRECTIONS;
    return { x: Math.cos(turn), y: Math.sin(turn) };
  });
  return away ? [away, perpendicular(away), ...round] : round;
}

interface GapCrossing {
  /** The number of the piece that it leaves. */
  readonly island: number;
  readonly candidate: BridgeCandidate;
}

function gapCrossings(pieces: SegmentIndex, point: Point, direction: Point, limit: number): GapCrossing[] {
  const { back, ahead } = firstHits(pieces, point, direction, limit);
  if (!back || !ahead) return [];
  const crosser = { from: back.point, to: ahead.point, length: back.distance + ahead.distance, target: ahead.polygon };
  return [{ island: back.polygon, candidate: crosser }];
}
