/** From a ring of short edges back to the curves that the artist drew. Sheet mm. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import type { Ring } from '../../geometry/base/polygon-types';
import { perimeter, pointsOf, signedArea } from '../../geometry/base/ring';
import { DRAWN_ALIKE, ON_CURVE, OVERLAY_GRID, SAME_POINT, TIE } from '../../geometry/base/tolerances';
import { cross, distance, dot, subtract } from '../../geometry/base/vector';
import { fitRing } from '../../geometry/curve/fit';
import { derivativeAt, pointAt, reverseCurve, subCurve, transformCurve } from '../../geometry/curve/index';
import { signedAreaOf } from '../../geometry/curve/measure';
import type { SourceCurves } from './source-curves';

/** Edges that follow each other on one curve, or on a straight line that is nobody's. */
interface Run {
  readonly curve: number | undefined;
  readonly from: number;
  readonly to: number;
  readonly start: Point;
  readonly end: Point;
}

/** Of two edges that follow each other on one curve, where they meet: places are looked up on it to less than this. */
const SAME_PARAMETER = 1e-3;

/** A parameter this near to an end of its curve is the end: far below the grid on any curve that can be cut. */
const NEAR_END = 1e-7;

/** Chords of curves that meet at a small angle cross far from where the curves do. */
const MOST_MOVED = DRAWN_ALIKE;

/**
 * The ring's course as a closed chain of curves: the artist's own, whole where nothing cuts them off. What no curve drew
 * stays a straight line. The chain lies within `ON_CURVE` of the ring.
 */
export function traceRing(ring: Ring, sources: SourceCurves): Curve[] {
  const runs = withCrossings(closedRuns(runsOf(pointsOf(ring), sources)), sources);
  const chain = joined(runs.map((run) => curveOf(run, sources)));
  return isSame(chain, ring) ? chain : fitRing(ring, ON_CURVE);
}

function runsOf(points: readonly Point[], sources: SourceCurves): Run[] {
  const runs: Run[] = [];
  points.forEach((start, i) => {
    checkpoint();
    const end = defined(points[(i + 1) % points.length]);
    const found = sources.stretchOf(start, end, runs.at(-1)?.curve);
    const run: Run = { ...(found ?? { curve: undefined, from: 0, to: 1 }), start, end };
    const before = runs.at(-1);
    const whole = before && merged(before, run);
    if (whole) runs[runs.length - 1] = whole;
    else runs.push(run);
  });
  return runs;
}

/** The ring may begin in the middle of a run. */
function closedRuns(runs: readonly Run[]): readonly Run[] {
  const [first, last] = [runs[0], runs.at(-1)];
  if (!first || !last || first === last) return runs;
  const whole = merged(last, first);
  return whole ? [whole, ...runs.slice(1, -1)] : runs;
}

function merged(a: Run, b: Run): Run | undefined {
  if (a.curve !== b.curve) return undefined;
  if (a.curve === undefined) return isStraight(a, b) ? { ...a, end: b.end } : undefined;
  const sameWay = Math.sign(a.to - a.from) === Math.sign(b.to - b.from);
  const goesOn = Math.abs(a.to - b.from) < SAME_PARAMETER;
  return sameWay && goesOn && Math.abs(b.to - a.from) > 0 ? { ...a, to: b.to, end: b.end } : undefined;
}

function isStraight(a: Run, b: Run): boolean {
  const [one, other] = [subtract(a.end, a.start), subtract(b.end, b.start)];
  const whole = distance(a.start, b.end);
  return dot(one, other) > 0 && Math.abs(cross(one, other)) < OVERLAY_GRID * whole;
}

/** Where two curves cross, the ring has the crossing of their chords: it is moved to that of the curves themselves. */
function withCrossings(runs: readonly Run[], sources: SourceCurves): Run[] {
  const moved = [...runs];
  moved.forEach((_, i) => {
    const at = (i + moved.length - 1) % moved.length;
    const [before, after] = [defined(moved[at]), defined(moved[i])];
    if (at === i || before.curve === undefined || after.curve === undefined) return;
    if (isEnd(before.to) || isEnd(after.from)) return;
    const [one, other] = [sources.curve(before.curve), sources.curve(after.curve)];
    const crossing = crossingNear(one, before.to, other, after.from);
    if (!crossing || distance(pointAt(one, crossing.t), after.start) > MOST_MOVED) return;
    const end = pointAt(one, crossing.t);
    moved[at] = { ...before, to: crossing.t, end };
    moved[i] = { ...after, from: crossing.u, start: end };
  });
  return moved;
}

/** By Newton's method from a place near it; undefined where the curves run too much alike. */
function crossingNear(one: Curve, t0: number, other: Curve, u0: number): { t: number; u: number } | undefined {
  let [t, u] = [t0, u0];
  for (let step = 0; step < 8; step += 1) {
    const gap = subtract(pointAt(other, u), pointAt(one, t));
    if (Math.hypot(gap.x, gap.y) < TIE) return t > 0 && t < 1 && u > 0 && u < 1 ? { t, u } : undefined;
    const [along, across] = [derivativeAt(one, t), derivativeAt(other, u)];
    const area = cross(along, across);
    if (Math.abs(area) < TIE) return undefined;
    t += cross(gap, across) / area;
    u += cross(gap, along) / area;
  }
  return undefined;
}

function isEnd(t: number): boolean {
  return t < NEAR_END || t > 1 - NEAR_END;
}

/** A part of a curve, with the ends that it has in the ring where it is cut off. */
interface Part {
  readonly curve: Curve;
  readonly startCut: boolean;
  readonly endCut: boolean;
  readonly start: Point;
  readonly end: Point;
}

function curveOf({ curve: number, from, to, start, end }: Run, sources: SourceCurves): Part {
  if (number === undefined) {
    return { curve: { kind: 'line', start, end }, startCut: true, endCut: true, start, end };
  }
  const [first, last] = [endOr(from), endOr(to)];
  const curve = sources.curve(number);
  const [startCut, endCut] = [first !== 0 && first !== 1, last !== 0 && last !== 1];
  const whole = !startCut && !endCut && first !== last;
  const part = whole ? (first === 0 ? curve : reverseCurve(curve)) : subCurve(curve, first, last);
  return { curve: part, startCut, endCut, start, end };
}

function endOr(t: number): number {
  if (t < NEAR_END) return 0;
  return t > 1 - NEAR_END ? 1 : t;
}

/** Ends that meet are the same point: the artist's own where one of the two curves is whole there. */
function joined(parts: readonly Part[]): Curve[] {
  const joint = (i: number): Point => {
    const [before, after] = [defined(parts[(i + parts.length - 1) % parts.length]), defined(parts[i])];
    if (!before.endCut) return before.curve.end;
    if (!after.startCut) return after.curve.start;
    // Rather than an arc any other curve gives way.
    if (before.curve.kind === 'arc') return before.curve.end;
    return after.curve.kind === 'arc' ? after.curve.start : after.start;
  };
  const joints = parts.map((_, i) => joint(i));
  return parts.flatMap(({ curve }, i): Curve[] => {
    const [start, end] = [defined(joints[i]), defined(joints[(i + 1) % joints.length])];
    // A curve that begins at its own end stays whole; anything else of no length is nothing.
    if (curve.kind === 'line' && distance(start, end) < SAME_POINT) return [];
    return [curve.start === start && curve.end === end ? curve : withEnds(curve, start, end)];
  });
}

/** An arc is turned and scaled as a whole: else its ends would not be round its centre, which may lie far off. */
function withEnds(curve: Curve, start: Point, end: Point): Curve {
  if (curve.kind !== 'arc') return { ...curve, start, end };
  const [from, to] = [subtract(curve.end, curve.start), subtract(end, start)];
  const square = dot(from, from);
  if (square < SAME_POINT) return { ...curve, start, end };
  const [a, b] = [dot(from, to) / square, cross(from, to) / square];
  const turned = { a, b, c: -b, d: a };
  const { x, y } = curve.start;
  const moved = transformCurve(curve, { ...turned, e: start.x - a * x + b * y, f: start.y - b * x - a * y });
  return { ...moved, start, end };
}

/** Whether the chain closes and bounds what the ring does, to within the flattening. */
function isSame(chain: readonly Curve[], ring: Ring): boolean {
  const closes = chain.every((curve, i) => distance(defined(chain.at(i - 1)).end, curve.start) < ON_CURVE);
  const area = chain.reduce((sum, curve) => sum + signedAreaOf(curve), 0);
  return closes && Math.abs(area - signedArea(ring)) < ON_CURVE * perimeter(ring) + ON_CURVE;
}
