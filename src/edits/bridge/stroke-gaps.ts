/**
 * Which stretches of a stroked line must go, so that nothing of its paint is left in a strip. In one frame for both.
 */

import { defined } from '../../base/defined';
import type { Curve, Point } from '../../geometry/base/curve-types';
import { add, crossFrom, distance, perpendicular, scale } from '../../geometry/base/vector';
import { lengthOf, pointAt, tangentAt } from '../../geometry/curve/index';
import { cornerAt, depthInStrip, type Strip } from '../strip/strip';

/** A line with a width: a chain of curves, closed or open. */
export interface PaintedLine {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
  readonly width: number;
  readonly cap: 'butt' | 'round' | 'square';
}

/** A place on a line: the number of the curve plus the parameter on it. */
export type LinePosition = number;

/** From one place to another in the line's course; past the end of a closed line where `to` is less than `from`. */
export interface Gap {
  readonly from: LinePosition;
  readonly to: LinePosition;
}

/** Steps along a line, as a share of its width. */
const STEP = 1 / 16;
const HALVINGS = 40;
/** How far, in widths of line and strip together, an end is sought before the line is said to run along the strip. */
const MAX_EXTENSION = 8;

/**
 * @returns undefined where the line does not cross the strip from one long side to the other, so that no cut across it
 * would leave a straight bridge
 */
export function gapsInLine(line: PaintedLine, strip: Strip): Gap[] | undefined {
  const places = sampleLine(line, strip);
  const inside = places.map((place) => depthInStrip(strip, pointOnLine(line, place)) > 0);
  if (!line.closed) {
    inside[0] ||= endReaches(line, strip, defined(places[0]), 1);
    inside[inside.length - 1] ||= endReaches(line, strip, defined(places.at(-1)), -1);
  }
  const gaps: Gap[] = [];
  for (const [first, last] of runsOf(inside, line.closed)) {
    const from = retreat(line, strip, defined(places[first]), -1);
    const to = retreat(line, strip, defined(places[last]), 1);
    if (from === undefined || to === undefined) return undefined;
    gaps.push({ from, to });
  }
  return gaps;
}

/** Fine enough that no crossing of the strip is stepped over; with the end of an open line. */
function sampleLine({ curves, closed }: PaintedLine, strip: Strip): LinePosition[] {
  const step = distance(cornerAt(strip, 1), cornerAt(strip, 2)) / 8;
  const places = curves.flatMap((curve, index) => {
    const count = Math.min(4096, Math.max(1, Math.ceil(lengthOf(curve) / step)));
    return Array.from({ length: count }, (_, k) => index + k / count);
  });
  return closed ? places : [...places, curves.length];
}

/** First and last index of each run of `true`; round the end where closed. */
function runsOf(flags: readonly boolean[], closed: boolean): [number, number][] {
  const runs: [number, number][] = [];
  flags.forEach((flag, index) => {
    if (!flag) return;
    const last = runs.at(-1);
    if (last && last[1] === index - 1) last[1] = index;
    else runs.push([index, index]);
  });
  const [first, last] = [runs[0], runs.at(-1)];
  if (closed && first && last && first !== last && first[0] === 0 && last[1] === flags.length - 1) {
    runs.pop();
    first[0] = last[0];
  }
  return runs;
}

/** From a place inside the strip along the line until an end there would paint nothing in the strip. */
function retreat(line: PaintedLine, strip: Strip, place: LinePosition, way: 1 | -1): LinePosition | undefined {
  const width = distance(cornerAt(strip, 1), cornerAt(strip, 2));
  const step = Math.min(line.width, width) * STEP;
  let [near, passed] = [place, 0];
  while (passed < MAX_EXTENSION * (line.width + width)) {
    const far = advance(line, near, step * way);
    if (far === undefined) return way > 0 ? line.curves.length : 0;
    if (isClear(line, strip, far, way)) return interpolatePosition(line, strip, near, far, way);
    near = far;
    passed += step;
  }
  return undefined;
}

function interpolatePosition(
  line: PaintedLine,
  strip: Strip,
  near: LinePosition,
  far: LinePosition,
  way: 1 | -1,
): LinePosition {
  const count = line.curves.length;
  let [low, high] = [near, far];
  if (way > 0 && high < low) high += count;
  if (way < 0 && high > low) high -= count;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (isClear(line, strip, wrapPosition(middle, count), way)) high = middle;
    else low = middle;
  }
  return wrapPosition(high, count);
}

/** Undefined beyond the end of an open line. */
function advance({ curves, closed }: PaintedLine, place: LinePosition, far: number): LinePosition | undefined {
  const count = curves.length;
  const curve = curves[Math.min(count - 1, Math.floor(place))];
  const next = place + far / Math.max(1e-9, curve ? lengthOf(curve) : 1);
  const bounded = Math.max(Math.floor(place) - 0.5, Math.min(Math.floor(place) + 1.5, next));
  if (bounded >= 0 && bounded < count) return bounded;
  return closed ? wrapPosition(bounded, count) : undefined;
}

function wrapPosition(place: LinePosition, count: number): LinePosition {
  return ((place % count) + count) % count;
}

function pointOnLine({ curves }: PaintedLine, place: LinePosition): Point {
  const index = Math.min(curves.length - 1, Math.floor(place));
  return pointAt(defined(curves[index]), place - index);
}

/**
 * Whether an end of the line here, looking into the strip, lies beyond one of the strip's long sides, and what follows as
 * well: behind a sharp corner the next stretch begins as wide as the line is, and may reach back beside the end.
 */
function isClear(line: PaintedLine, strip: Strip, place: LinePosition, way: 1 | -1): boolean {
  const ends = [endAt(line, place, way), ...beginningsFrom(line, place, way)];
  return ends.every((end) => liesBeyond(end, strip, [0, 2]));
}

/** How the curves begin that follow within the line's width. */
function beginningsFrom(line: PaintedLine, place: LinePosition, way: 1 | -1): LineEnd[] {
  const { curves, closed, width } = line;
  const from = pointOnLine(line, place);
  const found: LineEnd[] = [];
  const index = Math.min(curves.length - 1, Math.floor(place));
  for (let step: number = way; Math.abs(step) <= curves.length; step += way) {
    const curve = curves[closed ? wrapPosition(index + step, curves.length) : index + step];
    if (!curve) break;
    const at = way > 0 ? 0 : 1;
    const corner = pointAt(curve, at);
    if (distance(from, corner) > width) break;
    found.push(endOf({ ...line, cap: 'butt' }, corner, scale(tangentAt(curve, at), -way)));
  }
  return found;
}

/** Whether the end of an open line paints in the strip, as its cap may where the line itself ends before. */
function endReaches(line: PaintedLine, strip: Strip, place: LinePosition, way: 1 | -1): boolean {
  return !liesBeyond(endAt(line, place, way), strip, [0, 1, 2, 3]);
}

/** The end of a line: its corners, or the disc of a round cap. */
interface LineEnd {
  readonly points: readonly Point[];
  /** How far paint reaches round each of them. */
  readonly radius: number;
}

function liesBeyond({ points, radius }: LineEnd, strip: Strip, sides: readonly number[]): boolean {
  return sides.some((side) => {
    const [a, b] = [cornerAt(strip, side), cornerAt(strip, side + 1)];
    const room = radius * distance(a, b);
    return points.every((point) => crossFrom(a, b, point) <= -room);
  });
}

/** @param way the way from the end along the line */
function endAt(line: PaintedLine, place: LinePosition, way: 1 | -1): LineEnd {
  const index = Math.min(line.curves.length - 1, Math.floor(place));
  const tangent = tangentAt(defined(line.curves[index]), place - index);
  return endOf(line, pointOnLine(line, place), scale(tangent, -way));
}

/** @param outward the way in which the line would go on */
function endOf({ width, cap }: PaintedLine, centre: Point, outward: Point): LineEnd {
  if (cap === 'round') return { points: [centre], radius: width / 2 };
  const half = scale(perpendicular(outward), width / 2);
  const back = scale(half, -1);
  const reach = cap === 'square' ? scale(outward, width / 2) : { x: 0, y: 0 };
  return { points: [half, back].flatMap((side) => [add(centre, side), add(add(centre, side), reach)]), radius: 0 };
}
