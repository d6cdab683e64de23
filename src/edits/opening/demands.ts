/** How far the places of a curve must move. Millimetres. */
import { defined } from '../../base/defined';
import type { Cubic, Line, Point, Quadratic } from '../../geometry/base/curve-types';
import { ON_CURVE } from '../../geometry/base/tolerances';
import { dot, interpolate } from '../../geometry/base/vector';

/** Arcs are written as cubics before they are moved. */
export type Movable = Line | Quadratic | Cubic;

/** A place of a curve, and how far it must move. */
export interface Demand {
  readonly t: number;
  /** Unit vector to the side that gives way; undefined where the curve bounds nothing. */
  readonly outward: Point | undefined;
  /** mm along it, at least. */
  readonly need: number;
}

export interface CurveDemands {
  readonly curve: Movable;
  /** In the order of `t`, both ends included. */
  readonly demands: readonly Demand[];
}

/** mm: by so much less than it must a place may move. */
export const SHORT = ON_CURVE;

/** From the last place before the demand to the first after it. */
export function demandedRange(demands: readonly Demand[]): { readonly from: number; readonly to: number } | undefined {
  const first = demands.findIndex(({ need }) => need > SHORT);
  if (first < 0) return undefined;
  const last = demands.findLastIndex(({ need }) => need > SHORT);
  return { from: demands[first - 1]?.t ?? 0, to: demands[last + 1]?.t ?? 1 };
}

/** A place of a curve, and where it moves, in mm. Those between two move in between. */
export interface Knot {
  readonly t: number;
  readonly by: Point;
}

/**
 * Whether all places move as far as they must.
 * @param knots in the order of `t`, both ends included
 * @param ease how far between two knots, 0 to 1, the movement has come at a share of the way
 * @param share of what must be that is enough
 */
export function areMet(
  demands: readonly Demand[],
  knots: readonly Knot[],
  ease: (share: number) => number,
  share = 1,
): boolean {
  return demands.every(({ t, outward, need }) => {
    if (!outward || need <= SHORT) return true;
    const after = Math.max(
      1,
      knots.findIndex((knot) => knot.t >= t),
    );
    const [a, b] = [defined(knots[after - 1]), defined(knots[after])];
    const by = interpolate(a.by, b.by, ease(b.t > a.t ? (t - a.t) / (b.t - a.t) : 0));
    return dot(by, outward) >= share * need - SHORT;
  });
}
