/** Chains of points as x0, y0, x1, y1, …, and straight lines through stretches of them. Any unit. */
import { defined } from '../../base/defined';

export interface FittedLine {
  /** A point of it, and its direction, of length one. */
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  /** The largest distance of a point from it. */
  readonly residual: number;
}

export function countOf(chain: Float64Array): number {
  return chain.length >> 1;
}

export function xOf(chain: Float64Array, at: number): number {
  return defined(chain[2 * at]);
}

export function yOf(chain: Float64Array, at: number): number {
  return defined(chain[2 * at + 1]);
}

/** From a point of the chain to another. */
export function chordLength(chain: Float64Array, from: number, to: number): number {
  const x = xOf(chain, to) - xOf(chain, from);
  const y = yOf(chain, to) - yOf(chain, from);
  // Coordinates of pixels need no care for overflow, which makes `Math.hypot` many times slower.
  return Math.sqrt(x * x + y * y);
}

/**
 * The straight line with the least squared distances (total least squares), directed from the first point to the last.
 * @param from and `to`: both included; `to` may be the smaller
 */
export function fitLine(chain: Float64Array, from: number, to: number): FittedLine {
  const [first, last] = from <= to ? [from, to] : [to, from];
  const count = last - first + 1;
  let [sumX, sumY] = [0, 0];
  for (let at = first; at <= last; at += 1) {
    sumX += xOf(chain, at);
    sumY += yOf(chain, at);
  }
  const [x, y] = [sumX / count, sumY / count];
  let [xx, xy, yy] = [0, 0, 0];
  for (let at = first; at <= last; at += 1) {
    const u = xOf(chain, at) - x;
    const v = yOf(chain, at) - y;
    xx += u * u;
    xy += u * v;
    yy += v * v;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  let [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const forth = (xOf(chain, to) - xOf(chain, from)) * dx + (yOf(chain, to) - yOf(chain, from)) * dy;
  if (forth < 0) [dx, dy] = [-dx, -dy];
  let residual = 0;
  for (let at = first; at <= last; at += 1) {
    residual = Math.max(residual, Math.abs((xOf(chain, at) - x) * dy - (yOf(chain, at) - y) * dx));
  }
  return { x, y, dx, dy, residual };
}
