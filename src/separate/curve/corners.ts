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
  /** The chain; where it is closed once more before and behind it. */
  readonly points: Float64Array;
  readonly count: number;
  /** The place in `points` of the chain's first. */
  readonly first: number;

  constructor(chain: Float64Array, closed: boolean, count: number) {
    const once = chain.subarray(0, 2 * count);
    this.count = count;
    this.first = closed ? count : 0;
    this.points = once;
    if (!closed) return;
    this.points = new Float64Array(6 * count);
    for (const turn of [0, 1, 2]) this.points.set(once, 2 * count * turn);
  }

  /** How far one may go from a point, without coming back to it. */
  lastFrom(at: number, direction: 1 | -1): number {
    const here = this.first + at;
    return direction > 0
      ? Math.min(countOf(this.points) - 1, here + this.count - 1)
      : Math.max(0, here - this.count + 1);
  }
}

function cornerAt(walk: Walk, at: number, rule: CornerRule): { place: Point; sharpness: number } | undefined {
  const { points } = walk;
  const here = walk.first + at;
  const before = stretchFrom(walk, at, -1, rule);
  const after = stretchFrom(walk, at, 1, rule);
  if (before.count < LEAST_POINTS || after.count < LEAST_POINTS) return undefined;
  if (chordTurn(points, before, after) < rule.angle - CHORDS_BESIDE) return undefined;
  // Both lines run in the course of the chain.
  const arriving = fitLine(points, before.far, before.near);
  const going = fitLine(points, after.near, after.far);
  const turn = turnBetween(arriving.dx * going.dx + arriving.dy * going.dy);
  if (turn < rule.angle || arriving.residual > rule.residual || going.residual > rule.residual) return undefined;
  const own = { x: xOf(points, here), y: yOf(points, here) };
  const meeting = meetingOf(arriving, going) ?? own;
  const off = Math.hypot(meeting.x - own.x, meeting.y - own.y);
  return { place: off < rule.farthest ? meeting : own, sharpness: Math.max(1e-3, turn - 4 * off) };
}

/** Points next to a place, in one direction: places in the chain of a walk. */
interface NearStretch {
  readonly near: number;
  readonly far: number;
  readonly count: number;
}

/** The points from `skip` to `reach` pixels on. */
function stretchFrom(walk: Walk, at: number, direction: 1 | -1, { reach, skip }: CornerRule): NearStretch {
  const last = walk.lastFrom(at, direction);
  let here = walk.first + at;
  let [near, far, count, distance] = [here, here, 0, 0];
  while (here !== last) {
    distance += chordLength(walk.points, here, here + direction);
    here += direction;
    if (distance > reach) break;
    if (distance < skip) continue;
    if (count === 0) near = here;
    far = here;
    count += 1;
  }
  return { near, far, count };
}

/** Degrees by which the chords of two stretches may turn less than the lines through them, at the most. */
const CHORDS_BESIDE = 20;

function chordTurn(points: Float64Array, before: NearStretch, after: NearStretch): number {
  const [x1, y1] = [
    xOf(points, before.near) - xOf(points, before.far),
    yOf(points, before.near) - yOf(points, before.far),
  ];
  const [x2, y2] = [xOf(points, after.far) - xOf(points, after.near), yOf(points, after.far) - yOf(points, after.near)];
  return turnBetween((x1 * x2 + y1 * y2) / Math.sqrt((x1 * x1 + y1 * y1) * (x2 * x2 + y2 * y2) || 1));
}

/** Degrees. */
function turnBetween(cosine: number): number {
  return (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI;
}

function meetingOf(first: FittedLine, second: FittedLine): Point | undefined {
  const across = first.dx * second.dy - first.dy * second.dx;
  if (Math.abs(across) < 1e-6) return undefined;
  const along = ((second.x - first.x) * second.dy - (second.y - first.y) * second.dx) / across;
  return { x: first.x + along * first.dx, y: first.y + along * first.dy };
}

function isSharpest(walk: Walk, at: number, sharpness: Float64Array): boolean {
  const own = defined(sharpness[at]);
  for (const direction of [1, -1] as const) {
    const last = walk.lastFrom(at, direction);
    let distance = 0;
    for (let here = walk.first + at; here !== last; ) {
      distance += chordLength(walk.points, here, here + direction);
      if (distance > APART) break;
      here += direction;
      const next = here % walk.count;
      const other = defined(sharpness[next]);
      if (other > own || (other === own && next < at)) return false;
    }
  }
  return true;
}
