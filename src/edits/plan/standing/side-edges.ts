/** Edges of material, one by one. Sheet mm. */

import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import { WRITTEN_STEP } from '../../../geometry/base/tolerances';
import { vectorLength } from '../../../geometry/base/vector';
import type { SegmentIndex } from '../../../geometry/spatial/segment-index';

/** mm: edges that are shorter have the direction of the grid rather than that of the outline. */
export const MIN_SIDE = 2 * WRITTEN_STEP;
const MAX_SKIPPED = 500;

export function directionOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x1[edge]) - defined(edges.x0[edge]), y: defined(edges.y1[edge]) - defined(edges.y0[edge]) };
}

/** The next edge that is long enough to have a direction. */
export function nextOnSide(edges: SegmentIndex, edge: number, step: Uint32Array): number {
  let at = defined(step[edge]);
  for (let count = 0; count < MAX_SKIPPED && vectorLength(directionOf(edges, at)) < MIN_SIDE; count += 1)
    at = defined(step[at]);
  return at;
}

export function startOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x0[edge]), y: defined(edges.y0[edge]) };
}

export function endOf(edges: SegmentIndex, edge: number): Point {
  return { x: defined(edges.x1[edge]), y: defined(edges.y1[edge]) };
}
