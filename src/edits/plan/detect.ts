/** Bridges that are in the drawing already, recognised by their shape alone: no mark in the file is needed. */

import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Box } from '../../geometry/base/polygon-types';
import { DRAWN_ALIKE, WRITTEN_STEP } from '../../geometry/base/tolerances';
import {
  add,
  cross,
  distance,
  dot,
  interpolate,
  normalise,
  perpendicular,
  scale,
  subtract,
  vectorLength,
} from '../../geometry/base/vector';
import { regionContains } from '../../geometry/boolean/index';
import { firstHits, type Hit } from '../../geometry/spatial/raycast';
import { buildSegmentIndex, nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import type { Sheet } from '../../sheet/types';
import type { Side } from '../bridge/rejoin-fill';

/** A neck of material between two openings, or between two parts of one. Sheet mm, as drawn. */
export interface StandingBridge {
  readonly centre: Point;
  /** Where it is narrowest. */
  readonly width: number;
  /** Of length 1, from bank to bank. */
  readonly along: Point;
  /** Both sides from the same bank to the other, each straight. */
  readonly sides: readonly [Side, Side];
}

/** mm: a place on an edge is looked at so far inside. */
const INSIDE = DRAWN_ALIKE;
/** The narrowest place is sought in so many directions over a half turn. */
const DIRECTIONS = 36;
/** Sine of the angle within which the pieces of a flattened side count as straight. */
const STRAIGHT = Math.sin((8 * Math.PI) / 180);
/** Cosine of the angle within which two sides run alongside each other. */
const ALONGSIDE = Math.cos((40 * Math.PI) / 180);
const MAX_PIECES = 500;
/** mm: edges that are shorter have the direction of the grid rather than that of the outline. */
const MIN_SIDE = 2 * WRITTEN_STEP;

/**
 * The bridge at a place: there the material is narrower than `widest`, and at both ends of both sides it widens.
 * @param place on the bridge or on one of its sides, sheet mm
 * @param widest mm: wider necks are parts of the picture, not bridges
 */
export function standingBridgeAt(sheet: Sheet, place: Point, widest: number): StandingBridge | undefined {
  const edges = buildSegmentIndex(sheet.material);
  const inside = insideOf(sheet, edges, place, widest);
  const chord = inside && shortestChord(edges, inside, widest);
  if (!chord || chord.some(({ edge }) => isOnFrame(edges, edge, sheet.frame))) return undefined;
  const [near, far] = chord.map(({ edge }) => sideAlong(edges, edge));
  if (!near || !far) return undefined;
  return describe([near, [far[1], far[0]]], chord);
}

/** The place itself if it is well inside the material, else one beside the nearest edge. */
function insideOf(sheet: Sheet, edges: SegmentIndex, place: Point, reach: number): Point | undefined {
  const near = nearestSegment(edges, place, reach);
  if (!near) return undefined;
  if (near.distance > INSIDE) return regionContains(sheet.material, place) ? place : undefined;
  const inward = normalise(perpendicular(directionOf(edges, near.edge)));
  return inward && add(near.point, scale(inward, INSIDE));
}

function shortestChord(edges: SegmentIndex, inside: Point, widest: number): readonly [Hit, Hit] | undefined {
  const near = nearestSegment(edges, inside, widest);
  const square = near && normalise(subtract(near.point, inside));
  const round = Array.from({ length: DIRECTIONS }, (_, k) => {
    const turn = (k * Math.PI) / DIRECTIONS;
    return { x: Math.cos(turn), y: Math.sin(turn) };
  });
  let best: { hits: readonly [Hit, Hit]; length: number } | undefined;
  for (const direction of square ? [square, ...round] : round) {
    const { back, ahead } = firstHits(edges, inside, direction, widest);
    const length = back && ahead ? back.distance + ahead.distance : Infinity;
    if (back && ahead && length <= widest && length < (best?.length ?? Infinity) - 1e-9) {
      best = { hits: [back, ahead], length };
    }
  }
  return best?.hits;
}

function directionOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x1[edge]) - defined(edges.x0[edge]), y: defined(edges.y1[edge]) - defined(edges.y0[edge]) };
}

function isOnFrame(edges: SegmentIndex, edge: number, { minX, minY, maxX, maxY }: Box): boolean {
  const [x, y] = [
    [edges.x0[edge], edges.x1[edge]],
    [edges.y0[edge], edges.y1[edge]],
  ];
  const all = (values: readonly (number | undefined)[], at: number) =>
    values.every((value) => Math.abs((value ?? 0) - at) < WRITTEN_STEP);
  return all(x, minX) || all(x, maxX) || all(y, minY) || all(y, maxY);
}

/** The straight stretch that an edge belongs to; undefined where the material does not widen at both of its ends. */
function sideAlong(edges: SegmentIndex, edge: number): Side | undefined {
  const along = normalise(directionOf(edges, edge));
  if (!along) return undefined;
  const [last, first] = [edges.next, edges.previous].map((step) => followStraight(edges, edge, along, step));
  if (first === undefined || last === undefined) return undefined;
  const before = directionOf(edges, nextOnSide(edges, first, edges.previous));
  const after = directionOf(edges, nextOnSide(edges, last, edges.next));
  // The material is on the right (y down): it widens where its edge turns left.
  if (cross(before, along) >= 0 || cross(along, after) >= 0) return undefined;
  return [
    { x: defined(edges.x0[first]), y: defined(edges.y0[first]) },
    { x: defined(edges.x1[last]), y: defined(edges.y1[last]) },
  ];
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

function describe([a, b]: readonly [Side, Side], chord: readonly [Hit, Hit]): StandingBridge | undefined {
  const [first, second] = [a, b].map(([from, to]) => normalise(subtract(to, from)));
  const along = first && second && dot(first, second) > ALONGSIDE ? normalise(add(first, second)) : undefined;
  if (!along) return undefined;
  const middle = interpolate(chord[0].point, chord[1].point, 0.5);
  const places = [...a, ...b].map((end) => dot(subtract(end, middle), along));
  const centre = add(middle, scale(along, (Math.min(...places) + Math.max(...places)) / 2));
  const widths = [
    distance(chord[0].point, chord[1].point),
    ...a.map((end) => distanceToSide(end, b)),
    ...b.map((end) => distanceToSide(end, a)),
  ];
  return { centre, along, sides: [a, b], width: Math.min(...widths) };
}

/** How far a point is from a side. */
function distanceToSide(point: Point, [from, to]: Side): number {
  const whole = subtract(to, from);
  const share = dot(subtract(point, from), whole) / dot(whole, whole);
  return distance(point, interpolate(from, to, Math.max(0, Math.min(1, share))));
}
