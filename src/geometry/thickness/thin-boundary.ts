/** The thin boundary of a region for one width: its stretches and chains, and which of them a place lies on. */

import { defined } from '../../base/defined';
import type { Box } from '../base/polygon-types';
import { OVERLAY_GRID, SAME_POINT } from '../base/tolerances';
import type { Boundary } from './boundary-index';
import { buildChains, type Chains, forEachInterval } from './chains';
import { type BoundaryPoint, boundaryPointAt, isEdge, sizeOf } from './tangent-disc';
import { findThinIntervals, type ThinIntervalSearch, type ThinIntervals } from './thin-intervals';

/** In mm and radians: a place this near to a stretch counts as on it, as both come with rounding errors. */
const NEAR = 10 * OVERLAY_GRID;

/** In mm: this near to its ends, a place on an edge counts as the vertex. */
const AT_VERTEX = SAME_POINT;

export interface ThinBoundary {
  readonly boundary: Boundary;
  /** mm: half of the width. */
  readonly radius: number;
  readonly intervals: ThinIntervals;
  readonly chains: Chains;
}

export function findThinBoundary(boundary: Boundary, search: ThinIntervalSearch): ThinBoundary {
  const stretches = findThinIntervals(boundary, search);
  return { boundary, radius: search.radius, intervals: stretches, chains: buildChains(boundary.outline, stretches) };
}

export function visitIntervals(thin: ThinBoundary, chain: number, visit: (stretch: number) => void): void {
  forEachInterval(thin.chains, thin.intervals, thin.boundary.outline, chain, visit);
}

/** The stretch of the element that holds the parameter or is nearest to it; -1 when none is near. */
export function intervalAt({ intervals: stretches }: ThinBoundary, element: number, parameter: number): number {
  let nearest = -1;
  let least = NEAR;
  for (let stretch = defined(stretches.first[element]); stretch < defined(stretches.first[element + 1]); stretch += 1) {
    const away = Math.max(defined(stretches.from[stretch]) - parameter, parameter - defined(stretches.to[stretch]), 0);
    if (away >= least) continue;
    least = away;
    nearest = stretch;
  }
  return nearest;
}

/** The turn, from the start of the cone at the vertex, at which the normal points along (dx, dy); in (−π, π]. */
export function turnTowards({ boundary }: ThinBoundary, vertex: number, dx: number, dy: number): number {
  const { alongX, alongY, previous } = boundary.outline;
  const [tx, ty] = [defined(alongX[defined(previous[vertex])]), defined(alongY[defined(previous[vertex])])];
  return Math.atan2(dx * tx + dy * ty, dy * tx - dx * ty);
}

/**
 * The stretch at a place of an edge where a disc touches that lies in the direction (dx, dy), of any length: at a
 * reflex vertex that direction is the normal. -1 when the place is not thin.
 */
export function touchedInterval(thin: ThinBoundary, edge: number, at: number, dx: number, dy: number): number {
  const { cone, length, next } = thin.boundary.outline;
  const atEnd = at > defined(length[edge]) - AT_VERTEX;
  const vertex = atEnd ? defined(next[edge]) : edge;
  if ((atEnd || at < AT_VERTEX) && defined(cone[vertex]) > 0) {
    const stretch = intervalAt(thin, 2 * vertex, turnTowards(thin, vertex, dx, dy));
    if (stretch >= 0) return stretch;
  }
  return intervalAt(thin, 2 * edge + 1, at);
}

/** mm along the boundary; turns on the spot count nothing. */
export function lengthOfChain(thin: ThinBoundary, chain: number): number {
  let length = 0;
  visitIntervals(thin, chain, (stretch) => {
    if (!isEdge(defined(thin.chains.elementOf[stretch]))) return;
    length += defined(thin.intervals.to[stretch]) - defined(thin.intervals.from[stretch]);
  });
  return length;
}

/** The box round the places of the chain. */
export function extentOfChain(thin: ThinBoundary, chain: number): Box {
  const { boundary, chains, intervals: stretches } = thin;
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  const place = { x: 0, y: 0, normalX: 0, normalY: 0 };
  visitIntervals(thin, chain, (stretch) => {
    for (const parameter of [defined(stretches.from[stretch]), defined(stretches.to[stretch])]) {
      const { x, y } = boundaryPointAt(boundary.outline, defined(chains.elementOf[stretch]), parameter, place);
      box.minX = Math.min(box.minX, x);
      box.minY = Math.min(box.minY, y);
      box.maxX = Math.max(box.maxX, x);
      box.maxY = Math.max(box.maxY, y);
    }
  });
  return box;
}

export interface Portal {
  /** Where the chain begins or ends. */
  readonly place: BoundaryPoint;
  /** Centre of the disc that touches there: the last, or first, one that fits. */
  readonly x: number;
  readonly y: number;
}

/** Portals at the begin and end of an open chain. */
export function portalsOf(thin: ThinBoundary, chain: number): [Portal, Portal] {
  const { chains, intervals: stretches } = thin;
  const [first, last] = [defined(chains.first[chain]), defined(chains.last[chain])];
  return [portalAt(thin, first, defined(stretches.from[first])), portalAt(thin, last, defined(stretches.to[last]))];
}

function portalAt({ boundary, chains, radius }: ThinBoundary, stretch: number, parameter: number): Portal {
  const place = { x: 0, y: 0, normalX: 0, normalY: 0 };
  boundaryPointAt(boundary.outline, defined(chains.elementOf[stretch]), parameter, place);
  return { place, x: place.x + radius * place.normalX, y: place.y + radius * place.normalY };
}

/** Whether no part of the polygon's thin boundary is missing: all rings are thin all round. */
export function isThinThroughout(thin: ThinBoundary, firstRing: number, endRing: number): boolean {
  const { outline } = thin.boundary;
  for (let ring = firstRing; ring < endRing; ring += 1) {
    const element = 2 * defined(outline.ringStart[ring]);
    const stretch = defined(thin.intervals.first[sizeOf(outline, element) > 0 ? element : element + 1]);
    if (stretch >= thin.chains.chainOf.length) return false;
    const chain = defined(thin.chains.chainOf[stretch]);
    const onRing = outline.ring[defined(thin.chains.elementOf[stretch]) >> 1] === ring;
    if (!onRing || thin.chains.closed[chain] === 0) return false;
  }
  return true;
}
