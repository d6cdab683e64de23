/**
 * Measures of closed rings and their boxes, in millimetres. A ring never changes, is measured in many places, and is
 * met again after an edit: so its measures are remembered.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from './curve-types';
import { memoizeByIdentity } from './derived-facts';
import type { Box, Polygon, Ring } from './polygon-types';

/** Calls back with each edge in turn, the closing edge last. */
export function forEachEdge(ring: Ring, visit: (x0: number, y0: number, x1: number, y1: number) => void): void {
  const size = ring.length;
  if (size < 4) return;
  checkpoint(size / 4);
  let x0 = defined(ring[size - 2]);
  let y0 = defined(ring[size - 1]);
  for (let index = 0; index + 1 < size; index += 2) {
    const x1 = defined(ring[index]);
    const y1 = defined(ring[index + 1]);
    visit(x0, y0, x1, y1);
    x0 = x1;
    y0 = y1;
  }
}

/** In mm²; positive for outer rings (clockwise on the screen), negative for holes. Shoelace about the first point. */
export const signedArea = memoizeByIdentity('area of a ring', (ring: Ring): number => {
  if (ring.length < 2) return 0;
  const [originX, originY] = [defined(ring[0]), defined(ring[1])];
  let sum = 0;
  forEachEdge(ring, (x0, y0, x1, y1) => {
    sum += (x0 - originX) * (y1 - originY) - (x1 - originX) * (y0 - originY);
  });
  return sum / 2;
});

/** In mm, the closing edge included. */
export const perimeter = memoizeByIdentity('perimeter of a ring', (ring: Ring): number => {
  let sum = 0;
  forEachEdge(ring, (x0, y0, x1, y1) => {
    sum += Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
  });
  return sum;
});

/** By crossing parity: self-overlapping rings count as even-odd. On the boundary either answer may come. */
export function ringContains(ring: Ring, point: Point): boolean {
  const { x, y } = point;
  const size = ring.length;
  if (size < 4) return false;
  checkpoint(size / 8);
  let inside = false;
  let x0 = defined(ring[size - 2]);
  let y0 = defined(ring[size - 1]);
  for (let index = 0; index + 1 < size; index += 2) {
    const x1 = defined(ring[index]);
    const y1 = defined(ring[index + 1]);
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
    x0 = x1;
    y0 = y1;
  }
  return inside;
}

/** An empty ring has an empty box: minX > maxX. */
export const boxOfRing = memoizeByIdentity('box of a ring', (ring: Ring): Box => {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  checkpoint(ring.length / 8);
  for (let index = 0; index + 1 < ring.length; index += 2) {
    const x = defined(ring[index]);
    const y = defined(ring[index + 1]);
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
});

/** Of the vertices from `start` up to, not including, `end`. */
export function boxOfVertices(x: Float64Array, y: Float64Array, start: number, end: number): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let vertex = start; vertex < end; vertex += 1) {
    minX = Math.min(minX, defined(x[vertex]));
    minY = Math.min(minY, defined(y[vertex]));
    maxX = Math.max(maxX, defined(x[vertex]));
    maxY = Math.max(maxY, defined(y[vertex]));
  }
  return { minX, minY, maxX, maxY };
}

/** Of the area within; of the vertices when there is no area. Undefined for an empty ring. */
export function centroidOfRing(ring: Ring): Point | undefined {
  if (ring.length < 2) return undefined;
  const [originX, originY] = [defined(ring[0]), defined(ring[1])];
  let [twice, momentX, momentY] = [0, 0, 0];
  forEachEdge(ring, (x0, y0, x1, y1) => {
    const part = (x0 - originX) * (y1 - originY) - (x1 - originX) * (y0 - originY);
    twice += part;
    momentX += part * (x0 + x1 - 2 * originX);
    momentY += part * (y0 + y1 - 2 * originY);
  });
  const centroid = { x: originX + momentX / (3 * twice), y: originY + momentY / (3 * twice) };
  const box = boxOfRing(ring);
  const { minX, minY, maxX, maxY } = box;
  return boxContains(box, centroid) ? centroid : { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

export const reverseRing = memoizeByIdentity('ring reversed', (ring: Ring): Ring => {
  const reversed = new Float64Array(ring.length);
  for (let index = 0; index + 1 < ring.length; index += 2) {
    reversed[ring.length - 2 - index] = defined(ring[index]);
    reversed[ring.length - 1 - index] = defined(ring[index + 1]);
  }
  return reversed;
});

/** To the last digit, and begun at the same point. */
export function isSameRing(a: Ring, b: Ring): boolean {
  return a === b || (a.length === b.length && a.every((value, i) => value === b[i]));
}

/** Where on the edge from (x0, y0) to (x1, y1) the nearest place to (x, y) is: 0 at its start, 1 at its end. */
export function nearestOnEdge(x: number, y: number, x0: number, y0: number, x1: number, y1: number): number {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const square = dx * dx + dy * dy;
  return square > 0 ? Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / square)) : 0;
}

/** From (x, y) to the edge from (x0, y0) to (x1, y1). */
export function distanceToEdge(x: number, y: number, x0: number, y0: number, x1: number, y1: number): number {
  const t = nearestOnEdge(x, y, x0, y0, x1, y1);
  return Math.hypot(x0 + t * (x1 - x0) - x, y0 + t * (y1 - y0) - y);
}

export function pointsOf(ring: Ring): Point[] {
  return Array.from({ length: ring.length / 2 }, (_, i) => ({ x: defined(ring[2 * i]), y: defined(ring[2 * i + 1]) }));
}

export function ringOfPoints(points: readonly Point[]): Ring {
  return Float64Array.from(points.flatMap(({ x, y }) => [x, y]));
}

/** The outer ring first. */
export function ringsOf(polygon: Polygon): Ring[] {
  return [polygon.outer, ...polygon.holes];
}

/** How many edges rings have together. */
export function edgesIn(rings: readonly Ring[]): number {
  return rings.reduce((sum, { length }) => sum + (length >> 1), 0);
}

/** As an outer ring: clockwise on the screen. */
export function ringOfBox(box: Box): Ring {
  const { minX, minY, maxX, maxY } = box;
  return Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);
}

export function polygonOfBox(box: Box): Polygon {
  return { outer: ringOfBox(box), holes: [] };
}

export function boxesTouch(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

export function boxContains({ minX, minY, maxX, maxY }: Box, { x, y }: Point): boolean {
  return x >= minX && x <= maxX && y >= minY && y <= maxY;
}

export function boxContainsBox(outer: Box, inner: Box): boolean {
  return outer.minX <= inner.minX && outer.minY <= inner.minY && outer.maxX >= inner.maxX && outer.maxY >= inner.maxY;
}

/** Wider by `margin` mm on all sides; narrower when it is negative. */
export function growBox(box: Box, margin: number): Box {
  return {
    minX: box.minX - margin,
    minY: box.minY - margin,
    maxX: box.maxX + margin,
    maxY: box.maxY + margin,
  };
}

/** The box round all of them; empty (minX > maxX) for none. */
export function joinBoxes(boxes: Iterable<Box>): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const box of boxes) {
    minX = Math.min(minX, box.minX);
    minY = Math.min(minY, box.minY);
    maxX = Math.max(maxX, box.maxX);
    maxY = Math.max(maxY, box.maxY);
  }
  return { minX, minY, maxX, maxY };
}
