/**
 * Necks whose ends are crossings of two curves, measured on the curves. Edges lie within 0.7 µm of their curves; but where two
 * curves cross at a small angle α, their edges cross up to 0.7 µm / sin α beside, which two discs that barely overlap make
 * hundredths of a millimetre. So the crossing is sought on the curves themselves, by Newton's method from where the edges cross.
 */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import type { Curve, Point } from '../geometry/base/curve-types';
import { ON_CURVE, PLAINLY_BESIDE, SAME_POINT } from '../geometry/base/tolerances';
import { cross, distance, subtract } from '../geometry/base/vector';
import { derivativeAt, nearestOn, pointAt } from '../geometry/curve/index';
import { curveKeys } from './layer/artwork-key';
import type { SourceIndex } from './source-index';
import type { ThinPlace } from './thin-places';

/** From a start within 1.5 µm of both curves, Newton's method doubles its right digits in each step. */
const STEPS = 12;
/** What it costs to begin with a pair of curves, and for each of those. */
const STEPS_PER_PAIR = 10;
const STEPS_PER_STEP = 15;
/** More curves at one place are copies of each other, as of a line that goes to and fro. */
const FEW = 8;

/** How far a parameter may lie beyond the end of its curve by rounding. */
const BEYOND = 1e-9;

interface OnCurve {
  readonly curve: Curve;
  readonly t: number;
}

/**
 * The necks with their ends where the curves cross; those that are not thinner than the limit on the curves are none.
 * @param limit mm, of the drawn width
 */
export function neckedOnCurves(places: readonly ThinPlace[], limit: number, sources: () => SourceIndex): ThinPlace[] {
  return places.flatMap((place) => {
    const own = place.kind === 'neck' ? onCurves(place, sources()) : place;
    return own.drawnWidth < limit ? [own] : [];
  });
}

function onCurves(place: ThinPlace, sources: SourceIndex): ThinPlace {
  const [a, b] = [crossingAt(place.from, sources), crossingAt(place.to, sources)];
  if (!a && !b) return place;
  const from = a ?? nearestTo(place.from, defined(b), sources);
  const to = b ?? nearestTo(place.to, from, sources);
  const { drawnWidth, cutWidth } = place;
  const width = distance(from, to);
  const flat = { from: place.from, to: place.to, width: drawnWidth };
  return { ...place, from, to, drawnWidth: width, cutWidth: cutWidth + width - drawnWidth, flat };
}

/** Where the two curves cross whose edges cross at the point; undefined where they do not, or do so just there. */
function crossingAt(point: Point, sources: SourceIndex): Point | undefined {
  const near = nearCurves(point, sources);
  let best: Point | undefined;
  near.forEach((one, i) => {
    for (const other of near.slice(i + 1)) {
      const crossing = crossingOf(one, other);
      if (crossing && !(best && distance(best, point) <= distance(crossing, point))) best = crossing;
    }
  });
  const far = best ? distance(best, point) : 0;
  return far > ON_CURVE && far < PLAINLY_BESIDE ? best : undefined;
}

function nearCurves(point: Point, sources: SourceIndex): OnCurve[] {
  const curves = sources.curvesNear(point);
  return (curves.length > FEW ? withoutCopies(curves) : curves).flatMap((curve) => {
    const { t, distance: far } = nearestOn(curve, point);
    return far < 2 * ON_CURVE ? [{ curve, t }] : [];
  });
}

/** Copies cross what the first one crosses, at the same place. */
function withoutCopies(curves: readonly Curve[]): Curve[] {
  checkpoint(STEPS_PER_STEP * curves.length);
  const keys = curveKeys(curves);
  return [...new Map(keys.map((key, i) => [key, defined(curves[i])])).values()];
}

/** The nearest place to another end on the curves at an end that is no crossing. */
function nearestTo(end: Point, other: Point, sources: SourceIndex): Point {
  const [first, ...rest] = nearCurves(end, sources).map(({ curve }) => nearestOn(curve, other));
  if (!first) return end;
  const nearest = rest.reduce((best, each) => (each.distance < best.distance ? each : best), first).point;
  return distance(nearest, end) < PLAINLY_BESIDE ? nearest : end;
}

function crossingOf(one: OnCurve, other: OnCurve): Point | undefined {
  checkpoint(STEPS_PER_PAIR);
  let [t, s] = [one.t, other.t];
  for (let step = 0; step < STEPS; step += 1) {
    checkpoint(STEPS_PER_STEP);
    const gap = subtract(pointAt(other.curve, s), pointAt(one.curve, t));
    const [u, v] = [derivativeAt(one.curve, t), derivativeAt(other.curve, s)];
    const turn = cross(u, v);
    if (turn === 0) return undefined;
    t += cross(gap, v) / turn;
    s += cross(gap, u) / turn;
    if (!(Math.abs(t) < 2 && Math.abs(s) < 2)) return undefined;
  }
  if (!(isWithin(t) && isWithin(s))) return undefined;
  const crossing = pointAt(one.curve, t);
  return distance(crossing, pointAt(other.curve, s)) < SAME_POINT ? crossing : undefined;
}

const isWithin = (t: number): boolean => t > -BEYOND && t < 1 + BEYOND;
