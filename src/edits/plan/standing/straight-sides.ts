/** The straight sides of necks: stretches of the material's edge beyond whose two ends the material widens. Sheet mm. */

import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { DRAWN_ALIKE, WRITTEN_STEP } from '../../../geometry/base/tolerances';
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

/** Sine of the angle within which the pieces of a flattened side count as straight. */
const STRAIGHT = Math.sin((8 * Math.PI) / 180);
/** Cosine of the angle within which two sides run alongside each other. */
export const ALONGSIDE = Math.cos((40 * Math.PI) / 180);
/** Cosine of the angle by which the edge turns at the ends of a side that was cut on purpose. */
const CORNER = Math.cos((25 * Math.PI) / 180);
const MAX_PIECES = 500;
/** mm: edges that are shorter have the direction of the grid rather than that of the outline. */
const MIN_SIDE = 2 * WRITTEN_STEP;

export function directionOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x1[edge]) - defined(edges.x0[edge]), y: defined(edges.y1[edge]) - defined(edges.y0[edge]) };
}

/** The straight stretch that an edge belongs to; undefined where the material does not widen at both of its ends. */
export function sideAlong(edges: SegmentIndex, edge: number): Side | undefined {
  const along = normalise(directionOf(edges, edge));
  if (!along) return undefined;
  const [last, first] = [edges.next, edges.previous].map((step) => followStraight(edges, edge, along, step));
  if (first === undefined || last === undefined) return undefined;
  const before = directionOf(edges, nextOnSide(edges, first, edges.previous));
  const after = directionOf(edges, nextOnSide(edges, last, edges.next));
  // The material is on the right (y down): it widens where its edge turns left.
  if (cross(before, along) >= 0 || cross(along, after) >= 0) return undefined;
  return [startOf(edges, first), endOf(edges, last)];
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

/** The next edge that is long enough to have a direction. */
function nextOnSide(edges: SegmentIndex, edge: number, step: Uint32Array): number {
  let at = defined(step[edge]);
  for (let count = 0; count < MAX_PIECES && vectorLength(directionOf(edges, at)) < MIN_SIDE; count += 1)
    at = defined(step[at]);
  return at;
}

/**
 * The middles of all sides that have a corner at both ends and another edge of about their own direction before them:
 * where somebody has cut through an opening's course.
 * @param reach mm: how far away the other edge may be
 */
export function* middlesOfCutSides(edges: SegmentIndex, reach: number): Iterable<Point> {
  for (let edge = 0; edge < edges.count; edge += 1) {
    const along = normalise(directionOf(edges, edge));
    if (!along || vectorLength(directionOf(edges, edge)) < MIN_SIDE) continue;
    if (!turnsAway(directionOf(edges, nextOnSide(edges, edge, edges.previous)), along)) continue;
    const last = followStraight(edges, edge, along, edges.next);
    if (last === undefined) continue;
    if (!turnsAway(directionOf(edges, last), directionOf(edges, nextOnSide(edges, last, edges.next)))) continue;
    const middle = interpolate(startOf(edges, edge), endOf(edges, last), 0.5);
    if (facesAnother(edges, middle, along, reach)) yield middle;
  }
}

/** Edges run the other way about on the far side of the material. */
function facesAnother(edges: SegmentIndex, middle: Point, along: Point, reach: number): boolean {
  const inward = perpendicular(along);
  const { ahead } = firstHits(edges, add(middle, scale(inward, DRAWN_ALIKE)), inward, reach);
  const facing = ahead && normalise(directionOf(edges, ahead.edge));
  return facing !== undefined && dot(facing, along) < -ALONGSIDE;
}

/** Whether the material, on the right of its edge, widens in a corner between two directions. */
function turnsAway(before: Point, after: Point): boolean {
  const [a, b] = [normalise(before), normalise(after)];
  return a !== undefined && b !== undefined && cross(a, b) < 0 && dot(a, b) < CORNER;
}

function startOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x0[edge]), y: defined(edges.y0[edge]) };
}

function endOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x1[edge]), y: defined(edges.y1[edge]) };
}
