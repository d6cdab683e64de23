/** A line of which a part moves aside in parallel: it stays straight there, with a short slope at either end. */
import { defined } from '../../base/defined';
import type { Line, Point } from '../../geometry/base/curve-types';
import { add, scale, vectorLength } from '../../geometry/base/vector';
import { pointAt } from '../../geometry/curve/index';
import { areMet, type Demand, demandedRange, type Knot } from './demands';

/** Of the most that is needed: what needs so much is moved as far as that. */
const LEVEL = 0.98;

/**
 * @param start mm: how its first point moves, as its neighbours ask it to
 * @param end mm: the same of its last point
 * @returns undefined where the demand is not the same over its whole length
 */
export function steppedLine(line: Line, demands: readonly Demand[], start: Point, end: Point): Line[] | undefined {
  const knots = knotsOf(demands, start, end);
  if (!knots || !areMet(demands, knots, (way) => way, LEVEL)) return undefined;
  const at = knots.map(({ t, by }) => add(pointAt(line, t), by));
  return at.slice(1).map((to, i): Line => ({ kind: 'line', start: defined(at[i]), end: to }));
}

function knotsOf(demands: readonly Demand[], start: Point, end: Point): Knot[] | undefined {
  const range = demandedRange(demands);
  const top = Math.max(...demands.map(({ need }) => need));
  const level = demands.filter(({ need }) => need >= LEVEL * top);
  const [first, last] = [level[0], level.at(-1)];
  if (!range || !first?.outward || !last?.outward || first === last) return undefined;
  const none = { x: 0, y: 0 };
  const up = (by: Point): boolean => vectorLength(by) >= LEVEL * top;
  const rise = up(start) ? [] : [...(range.from > 0 ? [{ t: range.from, by: none }] : []), knotAt(first, top)];
  const fall = up(end) ? [] : [knotAt(last, top), ...(range.to < 1 ? [{ t: range.to, by: none }] : [])];
  const inner = [...rise, ...fall].filter(({ t }) => t > 0 && t < 1);
  return [{ t: 0, by: start }, ...inner, { t: 1, by: end }];
}

function knotAt({ t, outward }: Demand, need: number): Knot {
  return { t, by: scale(outward ?? { x: 0, y: 0 }, need) };
}
