/** Moves a curve aside, each place of it by at least what it must; what it is, a line or a cubic, it stays if it can. */
import { defined } from '../../base/defined';
import type { Cubic, Line, Point, Quadratic } from '../../geometry/base/curve-types';
import { add, dot, interpolate, scale, subtract } from '../../geometry/base/vector';
import { pointAt, subCurve, tangentAt } from '../../geometry/curve/index';
import { areMet, type CurveDemands, type Demand, demandedRange, type Knot, type Movable, SHORT } from './demands';
import { splitCurve, steppedCurve } from './split-curve';
import { steppedLine } from './stepped-line';

/**
 * @param start mm: how its first point moves, as its neighbours ask it to
 * @param end mm: the same of its last point
 * @param most mm: how far places may move that need not
 * @returns the curves in its place, itself where it stays; undefined where it cannot be moved so
 */
export function displaceCurve(all: CurveDemands, start: Point, end: Point, most: number): Movable[] | undefined {
  const { curve, demands } = all;
  const still = isZero(start) && isZero(end);
  if (still && demands.every(({ need }) => need <= SHORT)) return [curve];
  const fit = (part: CurveDemands, first: Point, last: Point): Movable | undefined => {
    if (part.curve.kind === 'line') return undefined;
    const moved = fitted(part.curve, part.demands, first, last);
    return moved && holds(moved, part.curve, part.demands, most) ? moved : undefined;
  };
  const whole = curve.kind === 'line' ? movedLine(curve, start, end) : fitted(curve, demands, start, end);
  if (whole && holds(whole, curve, demands, most)) return [whole];
  const parts =
    curve.kind === 'line'
      ? (brokenLine(curve, demands, start, end) ?? steppedLine(curve, demands, start, end))
      : splitCurve(all, start, end, fit);
  if (parts) return parts;
  const stepped =
    curve.kind === 'line'
      ? undefined
      : steppedCurve(all, start, end, (part, first, last) => {
          const one = fit(part, first, last);
          return one ? [one] : splitCurve(part, first, last, fit);
        });
  return stepped ?? bulged(curve, demands, start, end);
}

function movedLine(line: Line, start: Point, end: Point): Line {
  return { kind: 'line', start: add(line.start, start), end: add(line.end, end) };
}

/** Whether a moved curve, place by place, has moved far enough, and not too far where it need not. */
function holds(moved: Movable, curve: Movable, demands: readonly Demand[], most: number): boolean {
  return demands.every(({ t, outward, need }) => {
    if (!outward) return true;
    const way = dot(subtract(pointAt(moved, t), pointAt(curve, t)), outward);
    return way >= need - SHORT && way <= need + most;
  });
}

/** How often a fit is asked for more where it fell short. */
const ROUNDS = 5;

/** The displacement as a curve of its own, of the same degree: its inner points come from least squares. */
function fitted(curve: Quadratic | Cubic, demands: readonly Demand[], start: Point, end: Point): Movable | undefined {
  const own = curve.kind === 'cubic' ? curve : elevated(curve);
  let asked = demands;
  let moved: Cubic | undefined;
  for (let round = 0; round < ROUNDS; round += 1) {
    const inner = innerPoints(asked, start, end);
    if (!inner) return undefined;
    moved = {
      kind: 'cubic',
      start: add(own.start, start),
      control1: add(own.control1, inner[0]),
      control2: add(own.control2, inner[1]),
      end: add(own.end, end),
    };
    const now = moved;
    asked = asked.map((demand, i) => {
      const { t, outward, need } = defined(demands[i]);
      if (!outward) return demand;
      const short = need - dot(subtract(pointAt(now, t), pointAt(own, t)), outward);
      return short > 0 ? { ...demand, need: demand.need + 1.3 * short } : demand;
    });
  }
  return moved;
}

/** The two inner points of a cubic displacement, each coordinate for itself. */
function innerPoints(demands: readonly Demand[], start: Point, end: Point): [Point, Point] | undefined {
  let [aa, ab, bb] = [0, 0, 0];
  const [right1, right2] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  for (const { t, outward, need } of demands) {
    if (!outward) continue;
    const s = 1 - t;
    const [a, b] = [3 * s * s * t, 3 * s * t * t];
    // Places that must move count for more than those that had better not.
    const weight = need > 0 ? 1 : 0.3;
    aa += weight * a * a;
    ab += weight * a * b;
    bb += weight * b * b;
    for (const axis of ['x', 'y'] as const) {
      const rest = weight * (need * outward[axis] - s * s * s * start[axis] - t * t * t * end[axis]);
      right1[axis] += a * rest;
      right2[axis] += b * rest;
    }
  }
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 1e-12)) return [interpolate(start, end, 1 / 3), interpolate(start, end, 2 / 3)];
  const solve = (axis: 'x' | 'y'): [number, number] => [
    (bb * right1[axis] - ab * right2[axis]) / determinant,
    (aa * right2[axis] - ab * right1[axis]) / determinant,
  ];
  const [x, y] = [solve('x'), solve('y')];
  return [
    { x: x[0], y: y[0] },
    { x: x[1], y: y[1] },
  ];
}

/** The same curve as a cubic (standard degree elevation). */
export function elevated(curve: Line | Quadratic): Cubic {
  const { start, end } = curve;
  const [a, b] =
    curve.kind === 'line'
      ? [interpolate(start, end, 1 / 3), interpolate(start, end, 2 / 3)]
      : [interpolate(start, curve.control, 2 / 3), interpolate(end, curve.control, 2 / 3)];
  return { kind: 'cubic', start, control1: a, control2: b, end };
}

/** A line with a corner or two more: straight up to where it must move, and on from where it need no more. */
function brokenLine(line: Line, demands: readonly Demand[], start: Point, end: Point): Movable[] | undefined {
  const knots = [{ t: 0, by: start }, ...hullKnots(demands, start, end), { t: 1, by: end }];
  if (knots.length > 4) return undefined;
  const at = knots.map(({ t, by }) => add(pointAt(line, t), by));
  const parts = at.slice(1).map((to, i): Line => ({ kind: 'line', start: defined(at[i]), end: to }));
  const isEnough = demands.every(({ t, outward, need }) => {
    if (!outward) return true;
    const part = Math.max(0, knots.findIndex((knot) => knot.t >= t) - 1);
    const [a, b] = [defined(knots[part]), defined(knots[part + 1])];
    const by = interpolate(a.by, b.by, b.t > a.t ? (t - a.t) / (b.t - a.t) : 0);
    return dot(by, outward) >= need - SHORT;
  });
  return isEnough ? parts : undefined;
}

/** Where the demand begins and ends, if that is between the ends. */
function hullKnots(demands: readonly Demand[], start: Point, end: Point): Knot[] {
  const range = demandedRange(demands);
  if (!range) return [];
  const knots: Knot[] = [];
  if (range.from > 0 && isZero(start)) knots.push({ t: range.from, by: { x: 0, y: 0 } });
  if (range.to < 1 && isZero(end)) knots.push({ t: range.to, by: { x: 0, y: 0 } });
  return knots;
}

/** A smooth bulge where the demand is, that leaves the rest of the curve as it was. */
function bulged(curve: Movable, demands: readonly Demand[], start: Point, end: Point): Movable[] | undefined {
  const range = demandedRange(demands);
  if (!range) return undefined;
  const top = Math.max(...demands.map(({ need }) => need));
  const high = demands.filter(({ need }) => need > 0.8 * top);
  const [first, last] = [defined(high[0]), defined(high.at(-1))];
  for (const wider of [1.25, 1.6, 2, 2.6, 3.4]) {
    const from = Math.max(0, first.t - wider * (first.t - range.from));
    const to = Math.min(1, last.t + wider * (range.to - last.t));
    const knots = knotsOf(curve, { from, to, first: first.t, last: last.t }, demands, top, [start, end]);
    const parts = knots && smoothParts(curve, knots);
    if (parts && areMet(demands, knots, (way) => way * way * (3 - 2 * way))) return parts;
  }
  return undefined;
}

function knotsOf(
  curve: Movable,
  { from, to, first, last }: { from: number; to: number; first: number; last: number },
  demands: readonly Demand[],
  top: number,
  [start, end]: readonly [Point, Point],
): Knot[] {
  const side = demands.find(({ need }) => need > 0)?.outward ?? { x: 0, y: 0 };
  const outwardAt = (t: number): Point => {
    const along = tangentAt(curve, t);
    const normal = { x: -along.y, y: along.x };
    return dot(normal, side) < 0 ? scale(normal, -1) : normal;
  };
  const knots: Knot[] = [{ t: 0, by: start }];
  const push = (t: number, by: Point) => {
    if (t > defined(knots.at(-1)).t + 1e-6 && t < 1 - 1e-6) knots.push({ t, by });
  };
  if (isZero(start)) push(from, { x: 0, y: 0 });
  for (const t of first === last ? [first] : [first, last]) push(t, scale(outwardAt(t), 1.02 * top));
  if (isZero(end)) push(to, { x: 0, y: 0 });
  return [...knots, { t: 1, by: end }];
}

function smoothParts(curve: Movable, knots: readonly Knot[]): Movable[] {
  return knots.slice(1).map(({ t, by }, i) => {
    const before = defined(knots[i]);
    const part = subCurve(curve, before.t, t) as Movable;
    if (isZero(before.by) && isZero(by)) return part;
    const cubic = part.kind === 'cubic' ? part : elevated(part);
    if (part.kind === 'line' && isZero(subtract(before.by, by))) return movedLine(part, before.by, by);
    return {
      kind: 'cubic',
      start: add(cubic.start, before.by),
      control1: add(cubic.control1, before.by),
      control2: add(cubic.control2, by),
      end: add(cubic.end, by),
    };
  });
}

function isZero({ x, y }: Point): boolean {
  return Math.abs(x) < 1e-9 && Math.abs(y) < 1e-9;
}
