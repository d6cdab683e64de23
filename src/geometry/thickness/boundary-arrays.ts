/**
 * The boundary of a region as one course of elements in typed arrays. Element 2·i is the *cone* at vertex i, element
 * 2·i + 1 the *edge* that starts there. Along an edge the place moves and the inward normal stands; in a cone, which
 * only a reflex vertex has (inner angle above 180°), the place stands and the normal turns.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Region, Ring } from '../base/polygon-types';
import { ringsOf } from '../base/ring';
import { NO_WIDTH, SAME_POINT } from '../base/tolerances';

/** In mm: points nearer to each other than this are one, and spikes and slits narrower than this are none. */
const NOTHING = NO_WIDTH;

/** In mm: a vertex this near to the straight line between those kept beside it is left out. */
const STRAIGHT = SAME_POINT;

export interface Outline {
  /** How many vertices, and as many edges. */
  readonly count: number;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /**
   * Unit vector along the edge. The region lies to its left when y points up: the inward normal is (−alongY, alongX).
   */
  readonly alongX: Float64Array;
  readonly alongY: Float64Array;
  /** mm */
  readonly length: Float64Array;
  /** Radians by which the normal turns in the cone at the vertex; 0 where there is none. */
  readonly cone: Float64Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  /** Which polygon of the region the edge bounds. */
  readonly polygon: Int32Array;
  /** Which ring the edge is of; ring k holds the vertices from ringStart[k] up to, not including, ringStart[k + 1]. */
  readonly ring: Int32Array;
  readonly ringStart: Int32Array;
}

/** Points that repeat or are not finite are left out, so are spikes and slits without width and rings without area. */
export function buildOutline(region: Region): Outline {
  const rings: Ring[] = [];
  const polygons: number[] = [];
  region.forEach((polygon, number) => {
    ringsOf(polygon).forEach((ring) => {
      const clean = cleanRing(ring);
      if (clean.length < 6) return;
      rings.push(clean);
      polygons.push(number);
    });
  });
  const outline = emptyOutline(rings);
  rings.forEach((ring, number) => fillRing(outline, ring, number, defined(polygons[number])));
  return outline;
}

function emptyOutline(rings: readonly Ring[]): Outline {
  const ringStart = new Int32Array(rings.length + 1);
  rings.forEach((ring, number) => (ringStart[number + 1] = defined(ringStart[number]) + ring.length / 2));
  const count = defined(ringStart[rings.length]);
  return {
    count,
    x: new Float64Array(count),
    y: new Float64Array(count),
    alongX: new Float64Array(count),
    alongY: new Float64Array(count),
    length: new Float64Array(count),
    cone: new Float64Array(count),
    next: new Int32Array(count),
    previous: new Int32Array(count),
    polygon: new Int32Array(count),
    ring: new Int32Array(count),
    ringStart,
  };
}

function fillRing(outline: Outline, ring: Ring, number: number, polygon: number): void {
  checkpoint(4 * ring.length);
  const start = defined(outline.ringStart[number]);
  const size = ring.length / 2;
  for (let at = 0; at < size; at += 1) {
    const next = at + 1 < size ? at + 1 : 0;
    const x = defined(ring[2 * at]);
    const y = defined(ring[2 * at + 1]);
    const dx = defined(ring[2 * next]) - x;
    const dy = defined(ring[2 * next + 1]) - y;
    const length = Math.sqrt(dx * dx + dy * dy);
    const vertex = start + at;
    outline.x[vertex] = x;
    outline.y[vertex] = y;
    outline.length[vertex] = length;
    outline.alongX[vertex] = dx / length;
    outline.alongY[vertex] = dy / length;
    outline.next[vertex] = start + next;
    outline.previous[start + next] = vertex;
    outline.polygon[vertex] = polygon;
    outline.ring[vertex] = number;
  }
  for (let vertex = start; vertex < start + size; vertex += 1) outline.cone[vertex] = coneAt(outline, vertex);
}

function coneAt({ alongX, alongY, previous }: Outline, vertex: number): number {
  const before = defined(previous[vertex]);
  const ax = defined(alongX[before]);
  const ay = defined(alongY[before]);
  const bx = defined(alongX[vertex]);
  const by = defined(alongY[vertex]);
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  return turn < -1e-9 ? -turn : 0;
}

function cleanRing(ring: Ring): Ring {
  const clean = new Float64Array(ring.length);
  let size = 0;
  for (let at = 0; at + 1 < ring.length; at += 2) {
    const x = defined(ring[at]);
    const y = defined(ring[at + 1]);
    if (Number.isFinite(x) && Number.isFinite(y)) size = pushPoint(clean, size, x, y);
  }
  return straighten(closeSeam(clean.subarray(0, size)));
}

/**
 * Leaves out vertices on straight courses, so that cost depends on shapes and not on how densely they are drawn. From
 * the last vertex kept a sleeve looks ahead: it holds the slopes of all lines that pass every vertex since within
 * STRAIGHT, and the course goes on as long as the next vertex lies in it. Those kept move up in the same array.
 */
function straighten(points: Float64Array): Ring {
  if (points.length < 8) return points;
  let size = 2;
  for (let anchor = 0, at = 2; at < points.length; anchor = size - 2, at += 2) {
    at = lastOfCourse(points, anchor, at);
    points[size] = defined(points[at]);
    points[size + 1] = defined(points[at + 1]);
    size += 2;
  }
  return points.subarray(0, size);
}

/** Where the straight course ends that leads from the anchor to `first`. */
function lastOfCourse(points: Ring, anchor: number, first: number): number {
  const x = defined(points[anchor]);
  const y = defined(points[anchor + 1]);
  const dx = defined(points[first]) - x;
  const dy = defined(points[first + 1]) - y;
  let farthest = Math.sqrt(dx * dx + dy * dy);
  const unitX = dx / farthest;
  const unitY = dy / farthest;
  let high = STRAIGHT / farthest;
  let low = -high;
  let at = first;
  for (; at + 2 < points.length; at += 2) {
    const nextX = defined(points[at + 2]) - x;
    const nextY = defined(points[at + 3]) - y;
    const along = nextX * unitX + nextY * unitY;
    const slope = (nextY * unitX - nextX * unitY) / along;
    if (along <= farthest || slope < low || slope > high) break;
    farthest = along;
    low = Math.max(low, slope - STRAIGHT / along);
    high = Math.min(high, slope + STRAIGHT / along);
  }
  return at;
}

/** Takes back what the point makes void: the last point when it repeats it or the course doubles back at it. */
function pushPoint(points: Float64Array, size: number, x: number, y: number): number {
  let end = size;
  for (;;) {
    if (end >= 2 && isNear(defined(points[end - 2]), defined(points[end - 1]), x, y)) return end;
    if (end < 4) break;
    if (
      !doublesBack(
        defined(points[end - 4]),
        defined(points[end - 3]),
        defined(points[end - 2]),
        defined(points[end - 1]),
        x,
        y,
      )
    )
      break;
    end -= 2;
  }
  points[end] = x;
  points[end + 1] = y;
  return end + 2;
}

/** The same where the ring's end meets its start. */
function closeSeam(points: Float64Array): Float64Array {
  let from = 0;
  let to = points.length;
  const at = (index: number): [number, number] => [defined(points[index]), defined(points[index + 1])];
  while (to - from >= 6) {
    const [first, second, last, beforeLast] = [at(from), at(from + 2), at(to - 2), at(to - 4)];
    if (isNear(...first, ...last) || doublesBack(...beforeLast, ...last, ...first)) to -= 2;
    else if (doublesBack(...last, ...first, ...second)) from += 2;
    else return points.subarray(from, to);
  }
  return points.subarray(0, 0);
}

function isNear(ax: number, ay: number, bx: number, by: number): boolean {
  return Math.abs(bx - ax) < NOTHING && Math.abs(by - ay) < NOTHING;
}

/** Whether the course from a to b to c returns along itself. */
function doublesBack(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): boolean {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = cx - bx;
  const vy = cy - by;
  if (ux * vx + uy * vy >= 0) return false;
  const longer = Math.sqrt(Math.max(ux * ux + uy * uy, vx * vx + vy * vy));
  return Math.abs(ux * vy - uy * vx) <= NOTHING * longer;
}
