/**
 * Corners of a border. Pixels round them off; two straight lines, fitted to the border before and after, meet where the
 * corner was.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { chordLength, countOf, type FittedLine, fitLine, xOf, yOf } from './chain';

/** What counts as a corner. Lengths in pixels. */
export interface CornerRule {
  /** So far along the border the lines are fitted, */
  readonly reach: number;
  /** leaving out so much next to the corner. */
  readonly skip: number;
  /** Degrees by which the border turns at least. */
  readonly angle: number;
  /** Largest distance of the border from the lines. */
  readonly residual: number;
  /** Where the lines meet farther than this from the border, the corner is left where the border has it. */
  readonly farthest: number;
}

export interface Corner {
  /** The point of the chain that is nearest to it. */
  readonly at: number;
  readonly place: Point;
}

/** Of several corners within so many pixels along the border only the sharpest counts. */
const APART = 3;

const LEAST_POINTS = 3;

/** @param chain points in pixels; the first again at its end where it is closed */
export function cornersOf(chain: Float64Array, closed: boolean, rule: CornerRule): Corner[] {
  const count = countOf(chain) - (closed ? 1 : 0);
  if (count < 2 * LEAST_POINTS) return [];
  const walk = new Walk(chain, closed, count);
  const sharpness = new Float64Array(count);
  const places: (Point | undefined)[] = [];
  for (let at = 0; at < count; at += 1) {
    checkpoint(4);
    const found = cornerAt(walk, at, rule);
    places.push(found?.place);
    sharpness[at] = found?.sharpness ?? 0;
  }
  const corners: Corner[] = [];
  for (let at = 0; at < count; at += 1) {
    const place = places[at];
    if (place && isSharpest(walk, at, sharpness)) corners.push({ at, place });
  }
  return corners;
}

/** Steps along a chain, round and round where it is closed. */
class Walk {
  readonly chain: Float64Array;
  private readonly closed: boolean;
  private readonly count: number;

  constructor(chain: Float64Array, closed: boolean, count: number) {
    this.chain = chain;
    this.closed = closed;
    this.count = count;
  }

  /** The point so many steps on; undefined beyond an end. */
  from(at: number, steps: number): number | undefined {
    if (Math.abs(steps) >= this.count) return undefined;
    const to = at + steps;
    if (this.closed) return (to + this.count) % this.count;
    return to < 0 || to >= this.count ? undefined : to;
  }

  /** The points from `skip` to `reach` pixels on, in one direction. */
  stretch(at: number, direction: 1 | -1, { reach, skip }: CornerRule): Float64Array {
    const points: number[] = [];
    let [distance, last] = [0, at];
    for (let step = direction; ; step += direction) {
      const next = this.from(at, step);
      if (next === undefined) break;
      distance += chordLength(this.chain, last, next);
      if (distance > reach) break;
      if (distance >= skip) points.push(xOf(this.chain, next), yOf(this.chain, next));
      last = next;
    }
    return Float64Array.from(points);
  }
}

function cornerAt(walk: Walk, at: number, rule: CornerRule): { place: Point; sharpness: number } | undefined {
  const before = walk.stretch(at, -1, rule);
  const after = walk.stretch(at, 1, rule);
  if (countOf(before) < LEAST_POINTS || countOf(after) < LEAST_POINTS) return undefined;
  // Both lines run in the course of the chain.
  const arriving = fitLine(before, countOf(before) - 1, 0);
  const going = fitLine(after, 0, countOf(after) - 1);
  const cosine = arriving.dx * going.dx + arriving.dy * going.dy;
  const turn = (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI;
  if (turn < rule.angle || arriving.residual > rule.residual || going.residual > rule.residual) return undefined;
  const own = { x: xOf(walk.chain, at), y: yOf(walk.chain, at) };
  const meeting = meetingOf(arriving, going) ?? own;
  const off = Math.hypot(meeting.x - own.x, meeting.y - own.y);
  return { place: off < rule.farthest ? meeting : own, sharpness: Math.max(1e-3, turn - 4 * off) };
}

function meetingOf(first: FittedLine, second: FittedLine): Point | undefined {
  const across = first.dx * second.dy - first.dy * second.dx;
  if (Math.abs(across) < 1e-6) return undefined;
  const along = ((second.x - first.x) * second.dy - (second.y - first.y) * second.dx) / across;
  return { x: first.x + along * first.dx, y: first.y + along * first.dy };
}

function isSharpest(walk: Walk, at: number, sharpness: Float64Array): boolean {
  const own = defined(sharpness[at]);
  for (const direction of [1, -1]) {
    let [distance, last] = [0, at];
    for (let step = direction; ; step += direction) {
      const next = walk.from(at, step);
      if (next === undefined) break;
      distance += chordLength(walk.chain, last, next);
      if (distance > APART) break;
      const other = defined(sharpness[next]);
      if (other > own || (other === own && next < at)) return false;
      last = next;
    }
  }
  return true;
}
