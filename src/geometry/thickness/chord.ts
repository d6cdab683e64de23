/** Chords: straight lines from boundary to boundary. */

import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import { TIE } from '../base/tolerances';
import type { Outline } from './boundary-arrays';
import { type Boundary, visitBox } from './boundary-index';

/** A point of the boundary, `at` mm from the start of the edge. */
export interface EdgePlace extends Point {
  readonly edge: number;
  readonly at: number;
}

export interface Chord {
  readonly from: EdgePlace;
  readonly to: EdgePlace;
}

export function edgePlace({ x, y, alongX, alongY }: Outline, edge: number, at: number): EdgePlace {
  return {
    x: defined(x[edge]) + at * defined(alongX[edge]),
    y: defined(y[edge]) + at * defined(alongY[edge]),
    edge,
    at,
  };
}

export function lengthOfChord({ from, to }: Chord): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** mm: chords whose lengths differ by less are equally long, for lengths come with rounding errors. */
export const TIE_TOLERANCE = TIE;

/**
 * Whether a chord takes the place of the shortest one yet, `least` mm long. Of equally long ones that which lies
 * farther left (then higher up) is taken, and of one that is seen from both of its ends that which begins there: so it
 * does not matter in which order they come.
 */
export function isPreferred(chord: Chord, length: number, best: Chord | undefined, least: number): boolean {
  if (length < least - TIE_TOLERANCE) return true;
  return best ? length < least + TIE_TOLERANCE && liesBefore(chord, best) : length < least;
}

function liesBefore(a: Chord, b: Chord): boolean {
  const [a0, a1] = inOrder(a);
  const [b0, b1] = inOrder(b);
  const away = a0.x - b0.x || a0.y - b0.y || a1.x - b1.x || a1.y - b1.y;
  return (away || a.from.x - b.from.x || a.from.y - b.from.y) < 0;
}

function inOrder({ from, to }: Chord): readonly [EdgePlace, EdgePlace] {
  return from.x < to.x || (from.x === to.x && from.y <= to.y) ? [from, to] : [to, from];
}

/** Whether no edge of the chord's polygon crosses it; those at its ends are not asked. */
export function isClear(boundary: Boundary, { from, to }: Chord): boolean {
  const { outline } = boundary;
  let clear = true;
  visitBox(boundary, from.x, from.y, to.x, to.y, (edge) => {
    if (outline.polygon[edge] !== outline.polygon[from.edge]) return false;
    if (meets(outline, edge, from) || meets(outline, edge, to)) return false;
    clear = !segmentsCross(from, to, edgePlace(outline, edge, 0), edgePlace(outline, defined(outline.next[edge]), 0));
    return !clear;
  });
  return clear;
}

function meets({ next, previous, length }: Outline, edge: number, place: EdgePlace): boolean {
  if (edge === place.edge) return true;
  return place.at <= 0
    ? edge === previous[place.edge]
    : place.at >= defined(length[place.edge]) && edge === next[place.edge];
}

/** Whether the segments ab and cd cross; touching at an end of ab counts for nothing. */
export function segmentsCross(a: Point, b: Point, c: Point, d: Point): boolean {
  return sideOf(c, d, a) * sideOf(c, d, b) < 0 && sideOf(a, b, c) * sideOf(a, b, d) <= 0;
}

function sideOf(a: Point, b: Point, point: Point): number {
  return (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
}
