/** The edges of a region in a spatial index, side by side in typed arrays. */

import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Box, Region } from '../base/polygon-types';
import { forEachEdge, nearestOnEdge, ringsOf } from '../base/ring';

/** Edge i runs from x0[i], y0[i] to x1[i], y1[i], with the region's inside on its right on the screen (y down). */
export interface SegmentIndex {
  readonly count: number;
  /** mm */
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
  /** Counts all rings of the region: of each polygon the outer one first, then its holes. */
  readonly ring: Uint32Array;
  readonly polygon: Uint32Array;
  /** The number of the edge within its ring; edge k starts at the ring's point k. */
  readonly position: Uint32Array;
  readonly next: Uint32Array;
  readonly previous: Uint32Array;
  /** Undefined when there are no edges. */
  readonly tree: Flatbush | undefined;
}

export function buildSegmentIndex(region: Region): SegmentIndex {
  const rings = region.flatMap((polygon, number) => ringsOf(polygon).map((ring) => ({ ring, polygon: number })));
  const count = rings.reduce((sum, { ring }) => sum + edgesIn(ring.length), 0);
  const index = { ...emptyArrays(count), count, tree: count > 0 ? new Flatbush(count) : undefined };
  let start = 0;
  rings.forEach(({ ring, polygon }, number) => {
    const size = edgesIn(ring.length);
    let edge = start + size - 1;
    forEachEdge(ring, (x0, y0, x1, y1) => {
      index.x0[edge] = x0;
      index.y0[edge] = y0;
      index.x1[edge] = x1;
      index.y1[edge] = y1;
      index.ring[edge] = number;
      index.polygon[edge] = polygon;
      index.position[edge] = edge - start;
      index.next[edge] = start + ((edge - start + 1) % size);
      index.previous[edge] = start + ((edge - start + size - 1) % size);
      edge = defined(index.next[edge]);
    });
    start += size;
  });
  fillTree(index);
  return index;
}

function edgesIn(coordinates: number): number {
  return coordinates < 4 ? 0 : Math.floor(coordinates / 2);
}

function emptyArrays(count: number): Omit<SegmentIndex, 'count' | 'tree'> {
  return {
    x0: new Float64Array(count),
    y0: new Float64Array(count),
    x1: new Float64Array(count),
    y1: new Float64Array(count),
    ring: new Uint32Array(count),
    polygon: new Uint32Array(count),
    position: new Uint32Array(count),
    next: new Uint32Array(count),
    previous: new Uint32Array(count),
  };
}

function fillTree(index: SegmentIndex): void {
  const { tree, count, x0, y0, x1, y1 } = index;
  if (!tree) return;
  for (let edge = 0; edge < count; edge += 1) {
    checkpoint(4);
    const [ax, ay, bx, by] = [defined(x0[edge]), defined(y0[edge]), defined(x1[edge]), defined(y1[edge])];
    tree.add(Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by));
  }
  tree.finish();
}

/** Edges whose boxes touch the box; `visit` gets each, and nothing is gathered. */
export function forEachSegmentInBox(index: SegmentIndex, box: Box, visit: (edge: number) => void): void {
  index.tree?.search(box.minX, box.minY, box.maxX, box.maxY, (edge) => {
    checkpoint(2);
    visit(edge);
    return false;
  });
}

export interface PlaceOnSegment {
  readonly edge: number;
  /** 0 at the edge's start, 1 at its end. */
  readonly t: number;
  readonly point: Point;
  /** mm */
  readonly distance: number;
}

/** The place of an edge nearest to the point. */
export function placeOnSegment(index: SegmentIndex, edge: number, point: Point): PlaceOnSegment {
  const [x, y, x1, y1] = [
    defined(index.x0[edge]),
    defined(index.y0[edge]),
    defined(index.x1[edge]),
    defined(index.y1[edge]),
  ];
  const t = nearestOnEdge(point.x, point.y, x, y, x1, y1);
  const place = { x: x + t * (x1 - x), y: y + t * (y1 - y) };
  return { edge, t, point: place, distance: Math.hypot(place.x - point.x, place.y - point.y) };
}

/** Every edge within `distance` mm of the point, at its nearest place; in no particular order. */
export function segmentsNear(index: SegmentIndex, point: Point, distance: number): PlaceOnSegment[] {
  const box = {
    minX: point.x - distance,
    minY: point.y - distance,
    maxX: point.x + distance,
    maxY: point.y + distance,
  };
  const places: PlaceOnSegment[] = [];
  forEachSegmentInBox(index, box, (edge) => {
    const place = placeOnSegment(index, edge, point);
    if (place.distance <= distance) places.push(place);
  });
  return places;
}

/**
 * The edge nearest to the point among those that `accept` lets pass, not farther than `limit` mm. Boxes are looked at
 * in order of their distance, so the search ends as soon as no box can hold a nearer edge.
 */
export function nearestSegment(
  index: SegmentIndex,
  point: Point,
  limit = Infinity,
  accept: (edge: number) => boolean = () => true,
): PlaceOnSegment | undefined {
  let reach = limit;
  let best: PlaceOnSegment | undefined;
  const isAccepted = (edge: number): boolean => {
    checkpoint(2);
    return accept(edge);
  };
  for (let asked = 8; index.tree; asked *= 4) {
    const found = index.tree.neighbors(point.x, point.y, asked, reach, isAccepted);
    for (const edge of found) {
      const place = placeOnSegment(index, edge, point);
      if (place.distance <= reach && (!best || place.distance < best.distance)) best = place;
      reach = best ? best.distance : reach;
    }
    const last = found.at(-1);
    if (found.length < asked || last === undefined || boxDistance(index, last, point) > reach) break;
  }
  return best;
}

function boxDistance(index: SegmentIndex, edge: number, point: Point): number {
  const [ax, ay, bx, by] = [
    defined(index.x0[edge]),
    defined(index.y0[edge]),
    defined(index.x1[edge]),
    defined(index.y1[edge]),
  ];
  const dx = Math.max(Math.min(ax, bx) - point.x, point.x - Math.max(ax, bx), 0);
  const dy = Math.max(Math.min(ay, by) - point.y, point.y - Math.max(ay, by), 0);
  return Math.hypot(dx, dy);
}
