/** A ring with fewer points: for searches that need not know each flattened edge. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../base/curve-types';
import type { Ring } from '../base/polygon-types';
import { ringOfPoints } from '../base/ring';

/**
 * Some of the ring's own points, so chosen that no point left out is farther than `tolerance` mm from the edge that
 * passes it. From each point kept, the next one is the last that can be reached by a line which passes all between
 * within the tolerance, and along which the ring does not turn back (K. Reumann and A. Witkam's strip, with a sleeve of
 * directions as in C. Williams, 1978). Linear in the number of points. A ring of less than three points comes out
 * empty.
 */
export function simplifyRing(ring: Ring, tolerance: number): Ring {
  const count = ring.length / 2;
  const kept = [0];
  for (let anchor = 0; anchor < count; ) {
    const before = anchor;
    anchor = reachFrom(ring, anchor, tolerance);
    checkpoint(4 * (anchor - before));
    if (anchor < count) kept.push(anchor);
  }
  if (kept.length < 3) return new Float64Array(0);
  return Float64Array.from(kept.flatMap((point) => [defined(ring[2 * point]), defined(ring[2 * point + 1])]));
}

/** The same for points that do not close: indices of those that stay, the first and the last among them. */
export function keptOfChain(points: readonly Point[], tolerance: number): number[] {
  const last = points.length - 1;
  const ring = ringOfPoints(points);
  const kept = [0];
  for (let anchor = 0; anchor < last; ) {
    anchor = Math.min(last, reachFrom(ring, anchor, tolerance));
    kept.push(anchor);
  }
  return kept;
}

/** The last point to which one edge may lead; the number of points stands for the first one, come round again. */
function reachFrom(ring: Ring, anchor: number, tolerance: number): number {
  const count = ring.length / 2;
  const [x, y] = [defined(ring[2 * anchor]), defined(ring[2 * anchor + 1])];
  let [middle, low, high, farthest] = [NaN, -Infinity, Infinity, 0];
  for (let next = anchor + 1; next <= count; next += 1) {
    const at = next % count;
    const [dx, dy] = [defined(ring[2 * at]) - x, defined(ring[2 * at + 1]) - y];
    const far = Math.hypot(dx, dy);
    const last = Math.max(anchor + 1, next - 1);
    if (far < farthest - tolerance) return last;
    farthest = Math.max(farthest, far);
    if (far <= tolerance) continue;
    if (Number.isNaN(middle)) middle = Math.atan2(dy, dx);
    const turn = wrapAngle(Math.atan2(dy, dx) - middle);
    if (turn < low || turn > high) return last;
    const half = Math.asin(tolerance / far);
    [low, high] = [Math.max(low, turn - half), Math.min(high, turn + half)];
  }
  return count;
}

function wrapAngle(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
