/** Where a closed ring crosses itself. */
import Flatbush from 'flatbush';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Ring } from '../base/polygon-types';
import { pointsOf } from '../base/ring';
import { OVERLAY_GRID } from '../base/tolerances';
import { crossFrom } from '../base/vector';

export type Edge = readonly [Point, Point];

export interface SelfCrossing {
  readonly at: Point;
  /** The ends of the two edges that cross there. */
  readonly edges: readonly [Edge, Edge];
}

/** mm: corners of overlays lie on a grid finer than this. */
const ROUNDING = 20 * OVERLAY_GRID;

/**
 * A crossing of the ring's edges at a corner of the other ring, such as an area that the crossing cuts off. Edges that
 * only touch, or lie on each other, do not cross.
 */
export function selfCrossingBy(ring: Ring, corners: Ring): SelfCrossing | undefined {
  const edges = edgesOf(ring);
  const tree = new Flatbush(edges.length);
  for (const [a, b] of edges) tree.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y));
  tree.finish();
  for (const { x, y } of pointsOf(corners)) {
    const near = tree
      .search(x - ROUNDING, y - ROUNDING, x + ROUNDING, y + ROUNDING)
      .map((edge) => defined(edges[edge]));
    for (const [number, one] of near.entries()) {
      const other = near.slice(number + 1).find((each) => cross(one, each));
      if (other) return { at: crossingOf(one, other), edges: [one, other] };
    }
  }
  return undefined;
}

function edgesOf(ring: Ring): Edge[] {
  const points = pointsOf(ring);
  return points.map((point, i) => [point, defined(points[(i + 1) % points.length])]);
}

function cross([a, b]: Edge, [c, d]: Edge): boolean {
  return crossFrom(a, b, c) * crossFrom(a, b, d) < 0 && crossFrom(c, d, a) * crossFrom(c, d, b) < 0;
}

function crossingOf([a, b]: Edge, [c, d]: Edge): Point {
  const [before, after] = [crossFrom(c, d, a), crossFrom(c, d, b)];
  const t = before / (before - after);
  return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
}
