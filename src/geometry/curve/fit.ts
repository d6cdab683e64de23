/** Lines and cubics through the points of a ring or a chain, for outlines that are to be written down. Millimetres. */
import fitCurve from 'fit-curve';
import { defined } from '../../base/defined';
import type { Cubic, Line, Point } from '../base/curve-types';
import type { Ring } from '../base/polygon-types';
import { pointsOf } from '../base/ring';
import { distance } from '../base/vector';
import { keptOfChain } from '../polygon/simplify';

/** At a corner the chain turns by more than this (radians). */
const CORNER = 0.35;

/** So many times as much as the chords of an arc turn that stay within the tolerance is a corner, too. */
const BEYOND_ARC = 2.5;

/** Radians: two chords of an arc turn by no more. */
const MOST_OF_ARC = 0.5;

/** An edge that is so many times as long as its neighbours is no chord of the curve that they belong to. */
const LONGER = 3;

/** mm: a shorter edge is not told from the curve beside it. */
const LEAST_EDGE = 0.3;

/** In tolerances. */
const EVEN = 0.15;

/** So many edges are rather drawn as lines than as one cubic. */
const LINES_FOR_CUBIC = 2;

/** So large is the tolerance where curves are fitted: the library betters a fit only where its square is above one. */
const FINE = 4;

/** Between the points of a straight edge the curve is held by points no farther apart than this, in mm. */
const HELD = 0.25;

/**
 * Lines and cubics that pass all points of the ring within `tolerance` mm, with its corners and straight edges kept
 * (P. J. Schneider, "An algorithm for automatically fitting digitized curves", Graphics Gems, 1990; the library
 * fit-curve). The last one ends where the first begins.
 */
export function fitRing(ring: Ring, tolerance: number): (Line | Cubic)[] {
  const points = pointsOf(ring);
  const kept = keptOfChain([...points, defined(points[0])], tolerance).slice(0, -1);
  const joints = jointsOf(points, kept, tolerance, true);
  const starts = joints.length > 0 ? joints : [0, kept.length >> 1];
  const whole = [...points, ...points];
  return starts.flatMap((from, i) => {
    const to = starts[i + 1] ?? defined(starts[0]) + kept.length;
    const places = Array.from({ length: to - from + 1 }, (_, step) => {
      const at = from + step;
      return defined(kept[at % kept.length]) + (at < kept.length ? 0 : points.length);
    });
    return fitSection(whole, places, tolerance);
  });
}

/** The same for a chain that does not close; its ends stay where they are. */
export function fitChain(points: readonly Point[], tolerance: number): (Line | Cubic)[] {
  const kept = keptOfChain(points, tolerance);
  const joints = [0, ...jointsOf(points, kept, tolerance, false), kept.length - 1];
  return joints.slice(1).flatMap((to, i) => fitSection(points, kept.slice(joints[i], to + 1), tolerance));
}

/** Where a curve ends: at corners, and at both ends of straight edges. */
function jointsOf(all: readonly Point[], kept: readonly number[], tolerance: number, closed: boolean): number[] {
  const points = kept.map((at) => defined(all[at]));
  const count = points.length;
  const lengthAfter = (at: number): number => distance(pointAround(points, at), pointAround(points, at + 1));
  const ofArc = (at: number): number => (4 * tolerance) / lengthAfter(at - 1) + (4 * tolerance) / lengthAfter(at);
  const isCorner = (at: number): boolean =>
    turnAt(points, at) > CORNER && turnAt(points, at) > BEYOND_ARC * Math.min(ofArc(at), MOST_OF_ARC);
  const isEnd = (at: number, beyond: number, length: number): boolean =>
    (!closed && (at <= 0 || at >= count - 1)) ||
    isCorner(at) ||
    turnAt(points, at) > (4 * BEYOND_ARC * tolerance) / length ||
    length > LONGER * lengthAfter(beyond);
  const isStraight = (at: number): boolean => {
    const length = lengthAfter(at);
    return length > LEAST_EDGE && isEnd(at, at - 1, length) && isEnd(at + 1, at + 1, length);
  };
  const inner = [...points.keys()].filter((at) => closed || (at > 0 && at < count - 1));
  return inner.filter((at) => isCorner(at) || isStraight(at) || isStraight(at - 1));
}

/** A stretch without corners: as cubics, or by its own edges where there are few of them. */
function fitSection(points: readonly Point[], kept: readonly number[], tolerance: number): (Line | Cubic)[] {
  const corners = kept.map((at) => defined(points[at]));
  const lines = corners.slice(1).map((end, i): Line => ({ kind: 'line', start: defined(corners[i]), end }));
  if (lines.length <= LINES_FOR_CUBIC) return lines;
  const all = points.slice(defined(kept[0]), defined(kept.at(-1)) + 1);
  // What is uneven in a small way would turn the curves' ends.
  const own = keptOfChain(all, EVEN * tolerance).map((at) => defined(all[at]));
  const cubics = fitCubics(own, (1 - EVEN) * tolerance);
  return lines.length <= LINES_FOR_CUBIC * cubics.length ? lines : cubics;
}

/** From the first point to the last, to the digit. */
function fitCubics(points: readonly Point[], tolerance: number): Cubic[] {
  const scale = FINE / tolerance;
  const held = points.flatMap((point, i) => pointsBetween(points[i - 1] ?? point, point));
  const scaled = held.map(([x, y]): [number, number] => [x * scale, y * scale]);
  const joints = fitCurve(scaled, FINE * FINE).map((curve) => curve.map(([x, y]) => ({ x: x / scale, y: y / scale })));
  return joints.map((curve, i): Cubic => {
    const [start, control1, control2, end] = curve.map((point) => defined(point)) as [Point, Point, Point, Point];
    const [isFirst, isLast] = [i === 0, i === joints.length - 1];
    return {
      kind: 'cubic',
      start: isFirst ? defined(points[0]) : start,
      control1,
      control2,
      end: isLast ? defined(points.at(-1)) : end,
    };
  });
}

/** The points on the way from one to the other, the last one included. */
function pointsBetween(from: Point, to: Point): [number, number][] {
  const steps = Math.max(1, Math.ceil(distance(from, to) / HELD));
  const way = Array.from({ length: steps - 1 }, (_, i): [number, number] => {
    const t = (i + 1) / steps;
    return [from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)];
  });
  return [...way, [to.x, to.y]];
}

function pointAround(points: readonly Point[], at: number): Point {
  return defined(points[(at + points.length) % points.length]);
}

function turnAt(points: readonly Point[], at: number): number {
  const [before, here, after] = [pointAround(points, at - 1), pointAround(points, at), pointAround(points, at + 1)];
  const [ax, ay, bx, by] = [here.x - before.x, here.y - before.y, after.x - here.x, after.y - here.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}
