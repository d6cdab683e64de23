/** The straight sides of necks: stretches of the material's edge beyond whose two ends the material widens. Sheet mm. */

import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { DRAWN_ALIKE } from '../../../geometry/base/tolerances';
import {
  add,
  cross,
  dot,
  interpolate,
  normalise,
  perpendicular,
  scale,
  vectorLength,
} from '../../../geometry/base/vector';
import { firstHits } from '../../../geometry/spatial/raycast';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';
import type { Side } from '../../bridge/rejoin-fill';
import { roundedRoot } from './rounded-root';
import { directionOf, endOf, MIN_SIDE, nextOnSide, startOf } from './side-edges';

/** Sine of the angle within which the pieces of a flattened side count as straight. */
const STRAIGHT = Math.sin((8 * Math.PI) / 180);
/** Cosine of the angle within which two sides run alongside each other. */
export const ALONGSIDE = Math.cos((40 * Math.PI) / 180);
/** Cosine of the angle by which the edge turns at the ends of a side that was cut on purpose. */
const CORNER = Math.cos((25 * Math.PI) / 180);
const MAX_PIECES = 500;

export interface StraightSide {
  /** From root to root; where these are rounded, to where the side would meet its banks. */
  readonly side: Side;
  /** mm: how far beside its line rounded roots reach. */
  readonly flare: number;
}

/**
 * The straight stretch that an edge belongs to; undefined where the material does not widen at both of its ends.
 * @param width mm: of the bridge
 */
export function sideAlong(edges: SegmentIndex, edge: number, width: number): StraightSide | undefined {
  const along = normalise(directionOf(edges, edge));
  if (!along) return undefined;
  const [last, first] = [edges.next, edges.previous].map((step) => followStraight(edges, edge, along, step));
  if (first === undefined || last === undefined) return undefined;
  const before = directionOf(edges, nextOnSide(edges, first, edges.previous));
  const after = directionOf(edges, nextOnSide(edges, last, edges.next));
  // The material is on the right (y down): it widens where its edge turns left.
  if (cross(before, along) >= 0 || cross(along, after) >= 0) return undefined;
  // Where the edge is the first of an arc, the side itself is longer.
  const main = longestOf(edges, first, last);
  const away = scale(perpendicular(normalise(directionOf(edges, main)) ?? along), -1);
  const [start, end] = [edges.previous, edges.next].map((step) => roundedRoot(edges, main, away, step, width));
  return {
    side: [start?.corner ?? startOf(edges, first), end?.corner ?? endOf(edges, last)],
    flare: Math.max(start?.flare ?? 0, end?.flare ?? 0),
  };
}

function longestOf(edges: SegmentIndex, first: number, last: number): number {
  let longest = first;
  for (let at = first; at !== last; ) {
    at = defined(edges.next[at]);
    if (vectorLength(directionOf(edges, at)) > vectorLength(directionOf(edges, longest))) longest = at;
  }
  return longest;
}

function followStraight(edges: SegmentIndex, edge: number, along: Point, step: Uint32Array): number | undefined {
  let at = edge;
  for (let count = 0; count < MAX_PIECES; count += 1) {
    const next = nextOnSide(edges, at, step);
    const direction = normalise(directionOf(edges, next));
    if (!direction || dot(direction, along) < 0 || Math.abs(cross(direction, along)) > STRAIGHT) return at;
    at = next;
  }
  return undefined;
}

/** A straight side is so many times as long as the pieces of the arcs at its rounded roots. */
const LONGER_THAN_ARC = 3;

/**
 * The middles of all sides that have a corner or a rounded root at both ends and another edge of about their own direction
 * before them: where somebody has cut through an opening's course.
 * @param reach mm: how far away the other edge may be
 */
export function* middlesOfCutSides(edges: SegmentIndex, reach: number): Iterable<Point> {
  for (let edge = 0; edge < edges.count; edge += 1) {
    const course = directionOf(edges, edge);
    const along = normalise(course);
    if (!along || vectorLength(course) < MIN_SIDE) continue;
    const before = directionOf(edges, nextOnSide(edges, edge, edges.previous));
    const begins = turnsAway(before, along);
    if (!begins && vectorLength(course) < LONGER_THAN_ARC * vectorLength(before)) continue;
    const last = followStraight(edges, edge, along, edges.next);
    if (last === undefined) continue;
    const after = directionOf(edges, nextOnSide(edges, last, edges.next));
    const ends = turnsAway(directionOf(edges, last), after);
    if (!ends && vectorLength(course) < LONGER_THAN_ARC * vectorLength(after)) continue;
    const middle = interpolate(startOf(edges, edge), endOf(edges, last), 0.5);
    const width = distanceToFacing(edges, middle, along, reach);
    if (width === undefined) continue;
    const away = scale(perpendicular(along), -1);
    if (!begins && !roundedRoot(edges, edge, away, edges.previous, width)) continue;
    if (ends || roundedRoot(edges, edge, away, edges.next, width)) yield middle;
  }
}

/** mm, to the edge on the far side of the material that runs the other way about; undefined where there is none. */
function distanceToFacing(edges: SegmentIndex, middle: Point, along: Point, reach: number): number | undefined {
  const inward = perpendicular(along);
  const { ahead } = firstHits(edges, add(middle, scale(inward, DRAWN_ALIKE)), inward, reach);
  const facing = ahead && normalise(directionOf(edges, ahead.edge));
  return facing && dot(facing, along) < -ALONGSIDE ? ahead.distance : undefined;
}

/** Whether the material, on the right of its edge, widens in a corner between two directions. */
function turnsAway(before: Point, after: Point): boolean {
  const [a, b] = [normalise(before), normalise(after)];
  return a !== undefined && b !== undefined && cross(a, b) < 0 && dot(a, b) < CORNER;
}
