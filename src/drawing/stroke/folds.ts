/**
 * Stretches of curve that bend more tightly than the pen is wide. There the inner side of the stroke runs backwards,
 * from the curve's centres of curvature (its evolute) on. Three ribbons cover what the pen sweeps, each without folds:
 * from the curve outwards, from the curve to the evolute, and from there on inwards, turned round.
 */

import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { polyline, type QuadStrip } from './figures';
import { type Bent, type Sample, sampleCurve } from './offset-sides';

export interface SelfOverlap {
  /** Whether the curve bends to the right (y down). */
  readonly right: boolean;
  readonly line: readonly Point[];
  readonly outer: readonly Point[];
  readonly evolute: readonly Point[];
  readonly inner: readonly Point[];
}

const SHARES = [0, 0.25, 0.5, 0.75, 1] as const;

/**
 * The fold of the stretch from `t0` to `t1`. Undefined where it does not bend tightly all the way, or where four chords
 * would stray by more than `tolerance` from any of its lines.
 */
export function selfOverlapOf(
  curve: Bent,
  t0: number,
  t1: number,
  first: Sample,
  last: Sample,
  half: number,
  tolerance: number,
): SelfOverlap | undefined {
  const samples = SHARES.map((share) =>
    share === 0 ? first : share === 1 ? last : sampleCurve(curve, t0 + share * (t1 - t0)),
  );
  const bends = samples.map(bendAt);
  const right = defined(bends[0]) > 0;
  const isTight = (bend: number): boolean => Number.isFinite(bend) && bend > 0 === right && Math.abs(bend) * half >= 1;
  if (!bends.every(isTight)) return undefined;
  const inward = right ? half : -half;
  const fold: SelfOverlap = {
    right,
    line: samples.map(({ x, y }) => ({ x, y })),
    outer: samples.map((sample) => offsetPoint(sample, -inward)),
    evolute: samples.map((sample, index) => offsetPoint(sample, 1 / defined(bends[index]))),
    inner: samples.map((sample) => offsetPoint(sample, inward)),
  };
  const lines = [fold.line, fold.outer, fold.evolute, fold.inner];
  return lines.every((points) => isFollowed(points, tolerance)) ? fold : undefined;
}

/** Signed curvature in 1/pen unit, positive to the right (y down). */
function bendAt({ dx, dy, ddx, ddy }: Sample): number {
  const squared = dx * dx + dy * dy;
  return (dx * ddy - dy * ddx) / (squared * Math.sqrt(squared));
}

function offsetPoint({ x, y, dx, dy }: Sample, distance: number): Point {
  const speed = Math.sqrt(dx * dx + dy * dy);
  return { x: x - (distance * dy) / speed, y: y + (distance * dx) / speed };
}

/** Two chords straying by up to four times the tolerance, four of them keep to it: the error falls with the square. */
function isFollowed(points: readonly Point[], tolerance: number): boolean {
  const [a, b, c, d, e] = points;
  if (!a || !b || !c || !d || !e) return false;
  return (
    fromChord(b, a, c) <= 4 * tolerance && fromChord(d, c, e) <= 4 * tolerance && fromChord(c, a, e) <= 16 * tolerance
  );
}

/** Distance of `point` from the segment between two others. */
function fromChord(point: Point, start: Point, end: Point): number {
  const [x, y] = [end.x - start.x, end.y - start.y];
  const squared = x * x + y * y;
  const share = squared > 0 ? ((point.x - start.x) * x + (point.y - start.y) * y) / squared : 0;
  const t = Math.min(1, Math.max(0, share));
  return Math.hypot(point.x - start.x - t * x, point.y - start.y - t * y);
}

export function overlapStrips({ right, line, outer, evolute, inner }: SelfOverlap): readonly QuadStrip[] {
  const [on, out, middle, far] = [chords(line), chords(outer), chords(evolute), chords(inner)];
  return right
    ? [
        { left: out, right: on },
        { left: on, right: middle },
        { left: far, right: middle },
      ]
    : [
        { left: on, right: out },
        { left: middle, right: on },
        { left: middle, right: far },
      ];
}

function chords(points: readonly Point[]): QuadStrip['left'] {
  const lines = polyline(points);
  const [only] = points;
  // A ribbon may run to a point: it still needs an end for the next one to go on from.
  return lines.length > 0 || !only ? lines : [{ kind: 'line', start: only, end: only }];
}
