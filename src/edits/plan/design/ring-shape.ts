/** What of rings does not change as they are moved together, and in which direction they lie. */
import { defined } from '../../../base/defined';
import type { Point } from '../../../geometry/base/curve-types';
import type { Ring } from '../../../geometry/base/polygon-types';
import { forEachEdge } from '../../../geometry/base/ring';

/** A complex number: its size, and its angle in radians. */
export interface Moment {
  readonly size: number;
  readonly angle: number;
}

/** Of rings taken as wires. */
export interface RingShape {
  /** The centroid of the wires. */
  readonly middle: Point;
  /** mm */
  readonly length: number;
  /** mm: the root mean square of the distances of the wires from the middle. */
  readonly radius: number;
  /**
   * The moment of order k, counted from 1: the mean of (r/radius)² · exp(ikθ) along the wires about the middle. Turned by
   * an angle its own grows by k times that; about a mirror axis at angle α it is k·α, or opposite to it.
   */
  readonly moments: readonly Moment[];
}

/** Shapes with more axes than this are mirrored about as good as any. */
const ORDERS = 8;

export function shapeOfRings(rings: readonly Ring[]): RingShape {
  const { middle, length } = centreOfWires(rings);
  const sums = new Float64Array(2 * ORDERS + 1);
  for (const ring of rings) forEachEdge(ring, (x0, y0, x1, y1) => addEdge(sums, middle, x0, y0, x1, y1));
  const square = defined(sums[0]);
  const moments = Array.from({ length: ORDERS }, (_, k): Moment => {
    const [re, im] = [defined(sums[2 * k + 1]), defined(sums[2 * k + 2])];
    return { size: square > 0 ? Math.hypot(re, im) / square : 0, angle: Math.atan2(im, re) };
  });
  return { middle, length, radius: length > 0 ? Math.sqrt(square / length) : 0, moments };
}

function centreOfWires(rings: readonly Ring[]): { middle: Point; length: number } {
  let [length, x, y] = [0, 0, 0];
  for (const ring of rings) {
    forEachEdge(ring, (x0, y0, x1, y1) => {
      const size = Math.hypot(x1 - x0, y1 - y0);
      length += size;
      x += (size * (x0 + x1)) / 2;
      y += (size * (y0 + y1)) / 2;
    });
  }
  return { middle: length > 0 ? { x: x / length, y: y / length } : { x: 0, y: 0 }, length };
}

/** By the midpoint rule, in parts that are short as seen from the middle, so that long edges count truly. */
function addEdge(sums: Float64Array, { x: cx, y: cy }: Point, x0: number, y0: number, x1: number, y1: number): void {
  const whole = Math.hypot(x1 - x0, y1 - y0);
  const away = Math.min(Math.hypot(x0 - cx, y0 - cy), Math.hypot(x1 - cx, y1 - cy));
  const parts = Math.min(64, Math.max(1, Math.ceil((8 * whole) / (away + whole / 8))));
  for (let part = 0; part < parts; part += 1) {
    const t = (part + 0.5) / parts;
    const [x, y] = [x0 + t * (x1 - x0) - cx, y0 + t * (y1 - y0) - cy];
    const square = x * x + y * y;
    const weight = (square * whole) / parts;
    sums[0] = defined(sums[0]) + weight;
    if (square > 0) addPowers(sums, weight, x / Math.sqrt(square), y / Math.sqrt(square));
  }
}

function addPowers(sums: Float64Array, weight: number, cos: number, sin: number): void {
  let [re, im] = [weight, 0];
  for (let k = 0; k < ORDERS; k += 1) {
    [re, im] = [re * cos - im * sin, re * sin + im * cos];
    sums[2 * k + 1] = defined(sums[2 * k + 1]) + re;
    sums[2 * k + 2] = defined(sums[2 * k + 2]) + im;
  }
}
