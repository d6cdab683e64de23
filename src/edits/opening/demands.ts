/** How far the places of a curve must move. Millimetres. */
import type { Cubic, Line, Point, Quadratic } from '../../geometry/base/curve-types';
import { ON_CURVE } from '../../geometry/base/tolerances';

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
