/** Curves through the points of a ring, for outlines that are to be written down. Millimetres. */
import fitCurve from 'fit-curve';
import { defined } from '../../base/defined';
import type { Cubic, Line, Point } from '../base/curve-types';
import type { Ring } from '../base/polygon-types';
import { pointsOf } from '../base/ring';

/** The ring turns by more than this (radians) at a corner; flattened curves turn by less. */
const CORNER = 0.35;

/** Between the points of a straight edge the curve is held by points no farther apart than this, in mm. */
const HELD = 0.25;

/**
 * Lines and cubics that pass all points of the ring within `tolerance` mm, with its corners kept (P. J. Schneider, "An
 * algorithm for automatically fitting digitized curves", Graphics Gems, 1990; the library fit-curve). The last one ends
 * where the first begins.
 */
export function fitRing(ring: Ring, tolerance: number): (Line | Cubic)[] {
  const points = pointsOf(ring);
  const corners = [...points.keys()].filter((at) => turnAt(points, at) > CORNER);
  const starts = corners.length > 0 ? corners : [0, points.length >> 1];
  return starts.flatMap((from, i) => {
    const to = starts[i + 1] ?? defined(starts[0]) + points.length;
    const chain = Array.from({ length: to - from + 1 }, (_, at) => defined(points[(from + at) % points.length]));
    return fitChain(chain, tolerance);
  });
}

function fitChain(chain: readonly Point[], tolerance: number): (Line | Cubic)[] {
  const [start, end] = [defined(chain[0]), defined(chain.at(-1))];
  if (chain.every((point) => distanceToChord(point, start, end) < tolerance / 2)) return [{ kind: 'line', start, end }];
  const held = chain.flatMap((point, i) => pointsBetween(chain[i - 1] ?? point, point));
  return fitCurve(held, tolerance * tolerance).map(([a, b, c, d]) => ({
    kind: 'cubic',
    start: pointAt(a),
    control1: pointAt(b),
    control2: pointAt(c),
    end: pointAt(d),
  }));
}

/** The points on the way from one to the other, the last one included. */
function pointsBetween(from: Point, to: Point): [number, number][] {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / HELD));
  const way = Array.from({ length: steps - 1 }, (_, i): [number, number] => {
    const t = (i + 1) / steps;
    return [from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)];
  });
  return [...way, [to.x, to.y]];
}

function pointAt([x, y]: [number, number]): Point {
  return { x, y };
}

function turnAt(points: readonly Point[], at: number): number {
  const [before, here, after] = [points.at(at - 1), points[at], points[(at + 1) % points.length]] as [
    Point,
    Point,
    Point,
  ];
  const [ax, ay, bx, by] = [here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

function distanceToChord(point: Point, start: Point, end: Point): number {
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  const length = Math.hypot(dx, dy);
  if (length === 0) return Math.hypot(point.x - start.x, point.y - start.y);
  return Math.abs((point.x - start.x) * dy - (point.y - start.y) * dx) / length;
}
