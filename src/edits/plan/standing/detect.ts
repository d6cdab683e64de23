/** Bridges that are in the drawing already, recognised by their shape alone: no mark in the file is needed. */

import type { Point } from '../../../geometry/base/curve-types';
import type { Box } from '../../../geometry/base/polygon-types';
import { DRAWN_ALIKE, WRITTEN_STEP } from '../../../geometry/base/tolerances';
import {
  add,
  distance,
  dot,
  interpolate,
  normalise,
  perpendicular,
  scale,
  subtract,
} from '../../../geometry/base/vector';
import { regionContains } from '../../../geometry/boolean/index';
import { firstHits, type Hit } from '../../../geometry/spatial/raycast';
import { buildSegmentIndex, nearestSegment, type SegmentIndex } from '../../../geometry/spatial/segment-index';
import type { Sheet } from '../../../sheet/types';
import type { Side } from '../../bridge/rejoin-fill';
import { directionOf } from './side-edges';
import { ALONGSIDE, type StraightSide, sideAlong } from './straight-sides';

/** A neck of material between two openings, or between two parts of one. Sheet mm, as drawn. */
export interface StandingBridge {
  readonly centre: Point;
  /** Where it is narrowest. */
  readonly width: number;
  /** Of length 1, from bank to bank. */
  readonly along: Point;
  /** Both sides from the same bank to the other, each straight; up to where they would meet rounded roots as corners. */
  readonly sides: readonly [Side, Side];
  /** mm: how far beside the sides rounded roots reach; 0 where none is rounded. */
  readonly flare: number;
}

/** mm: a place on an edge is looked at so far inside. */
const INSIDE = DRAWN_ALIKE;
/** The narrowest place is sought in so many directions over a half turn. */
const DIRECTIONS = 36;

/**
 * The bridge at a place: there the material is narrower than `widest`, and at both ends of both sides it widens.
 * @param place on the bridge or on one of its sides, sheet mm
 * @param widest mm: wider necks are parts of the picture, not bridges
 * @param edges of the sheet's material, where they are known
 */
export function standingBridgeAt(
  sheet: Sheet,
  place: Point,
  widest: number,
  edges: SegmentIndex = buildSegmentIndex(sheet.material),
): StandingBridge | undefined {
  const inside = insideOf(sheet, edges, place, widest);
  const chord = inside && shortestChord(edges, inside, widest);
  if (!chord || chord.some(({ edge }) => isOnFrame(edges, edge, sheet.frame))) return undefined;
  const width = distance(chord[0].point, chord[1].point);
  const [near, far] = chord.map(({ edge }) => sideAlong(edges, edge, width));
  return near && far && describe(near, far, chord);
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

function isOnFrame(edges: SegmentIndex, edge: number, { minX, minY, maxX, maxY }: Box): boolean {
  const [x, y] = [
    [edges.x0[edge], edges.x1[edge]],
    [edges.y0[edge], edges.y1[edge]],
  ];
  const all = (values: readonly (number | undefined)[], at: number) =>
    values.every((value) => Math.abs((value ?? 0) - at) < WRITTEN_STEP);
  return all(x, minX) || all(x, maxX) || all(y, minY) || all(y, maxY);
}

/** @param far runs the other way about */
function describe(near: StraightSide, far: StraightSide, chord: readonly [Hit, Hit]): StandingBridge | undefined {
  const [a, b]: [Side, Side] = [near.side, [far.side[1], far.side[0]]];
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
  return { centre, along, sides: [a, b], width: Math.min(...widths), flare: Math.max(near.flare, far.flare) };
}

/** How far a point is from a side. */
function distanceToSide(point: Point, [from, to]: Side): number {
  const whole = subtract(to, from);
  const share = dot(subtract(point, from), whole) / dot(whole, whole);
  return distance(point, interpolate(from, to, Math.max(0, Math.min(1, share))));
}
