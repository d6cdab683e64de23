/**
 * Which stretches of a stroked line must go, so that nothing of its paint is left in a strip. In one frame for both.
 */

import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { boxesTouch, growBox } from '../../geometry/base/ring';
import { add, crossFrom, distance, interpolate, perpendicular, scale } from '../../geometry/base/vector';
import { lengthOf, pointAt, roughBoundsOf, tangentAt } from '../../geometry/curve/index';
import { boxOfCorners, cornerAt, depthInStrip, lengthenStrip, type Strip } from '../strip/strip';
import { lastPaintedAhead, meetsStrip } from './paint-ahead';
import {
  advance,
  crossSectionAt,
  directionOnLine,
  type LinePosition,
  type PaintedLine,
  pointOnLine,
  type Way,
  wrapPosition,
} from './painted-line';

/** From one place to another in the line's course; past the end of a closed line where `to` is less than `from`. */
export interface Gap {
  readonly from: LinePosition;
  readonly to: LinePosition;
}

/** Steps along a line, as a share of its width. */
const STEP = 1 / 16;
/** A step is halved until what is left of it is less than any digit that is written. */
const HALVINGS = 18;
/** Of a strip's width: how much shorter it counts at either end, and how far in a line beside it must reach, to be in its way. */
const [SHORTER, BESIDE] = [0.15, 0.05];
/** How far, in widths of line and strip together, an end is sought before the line is said to run along the strip. */
const MAX_EXTENSION = 8;

/**
 * @returns undefined where the line does not cross the strip from one long side to the other, so that no cut across it
 * would leave a straight bridge
 */
export function gapsInLine(whole: PaintedLine, strip: Strip): Gap[] | undefined {
  const kept = whole.curves.flatMap((curve, number) => (lengthOf(curve) > 0 ? [number] : []));
  if (kept.length === 0) return gapsAmong(whole, strip);
  // What has no length has no direction either: nothing is painted for it between two others.
  const gaps = gapsAmong({ ...whole, curves: kept.map((number) => defined(whole.curves[number])) }, strip);
  const inWhole = (place: LinePosition): LinePosition => {
    const number = kept[Math.floor(place)];
    return number === undefined ? whole.curves.length : number + (place % 1);
  };
  return gaps?.map(({ from, to }) => ({ from: inWhole(from), to: inWhole(to) }));
}

function gapsAmong(line: PaintedLine, strip: Strip): Gap[] | undefined {
  const places = sampleLine(line, strip);
  const body = lengthenStrip(strip, -2 * SHORTER * distance(cornerAt(strip, 1), cornerAt(strip, 2)));
  const inside = places.map(
    (place) => depthInStrip(strip, pointOnLine(line, place)) > 0 || reachesIn(line, body, place),
  );
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

/** Whether a line that passes beside a strip reaches in with its paint. */
function reachesIn(line: PaintedLine, strip: Strip, place: LinePosition): boolean {
  const [a, b, c] = strip.corners;
  const middle = interpolate(a, c, 0.5);
  const near = (distance(a, c) + line.width) / 2;
  if (distance(middle, pointOnLine(line, place)) > near) return false;
  return meetsStrip(crossSectionAt(line, place), strip, BESIDE * distance(b, c));
}

/** Fine enough that no crossing of the strip is stepped over; with the end of an open line. */
function sampleLine({ curves, closed, width }: PaintedLine, strip: Strip): LinePosition[] {
  const step = distance(cornerAt(strip, 1), cornerAt(strip, 2)) / 8;
  const around = growBox(boxOfCorners(strip.corners), width);
  const places = curves.flatMap((curve, index) => {
    if (!boxesTouch(roughBoundsOf(curve), around)) return [index];
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

/**
 * From a place inside the strip along the line until an end there would paint nothing in the strip, nor anything that follows
 * soon after: a jagged line comes back. Where it always does, the first such end has to do.
 */
function retreat(line: PaintedLine, strip: Strip, place: LinePosition, way: Way): LinePosition | undefined {
  const width = distance(cornerAt(strip, 1), cornerAt(strip, 2));
  const step = Math.min(line.width, width) * STEP;
  let [near, passed] = [place, 0];
  let first: LinePosition | undefined;
  while (passed < MAX_EXTENSION * (line.width + width)) {
    const before = near;
    const far = advance(line, before, step * way);
    if (far === undefined) return first ?? (way > 0 ? line.curves.length : 0);
    near = far;
    passed += step;
    if (!isClear(line, strip, far, way)) continue;
    const end = interpolatePosition(line, strip, before, far, way);
    const back = lastPaintedAhead(line, strip, end, way);
    if (!back) return end;
    first ??= end;
    near = back.place;
    passed += back.away;
  }
  return first;
}

function interpolatePosition(
  line: PaintedLine,
  strip: Strip,
  near: LinePosition,
  far: LinePosition,
  way: Way,
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

/**
 * Whether an end of the line here, looking into the strip, lies beyond one of the strip's long sides, and what follows as
 * well: behind a sharp corner the next stretch begins as wide as the line is, and may reach back beside the end.
 */
function isClear(line: PaintedLine, strip: Strip, place: LinePosition, way: Way): boolean {
  return liesBeyond(endAt(line, place, way), strip, [0, 2]) && areBeginningsClear(line, strip, place, way);
}

/** Whether the curves that follow within the line's width begin clear of the strip. */
function areBeginningsClear(line: PaintedLine, strip: Strip, place: LinePosition, way: Way): boolean {
  const { curves, closed, width } = line;
  const from = pointOnLine(line, place);
  const index = Math.min(curves.length - 1, Math.floor(place));
  const at = way > 0 ? 0 : 1;
  for (let step: number = way; Math.abs(step) <= curves.length; step += way) {
    const curve = curves[closed ? wrapPosition(index + step, curves.length) : index + step];
    if (!curve) break;
    const corner = pointAt(curve, at);
    if (distance(from, corner) > width) break;
    const beginning = endOf(width, 'butt', corner, scale(tangentAt(curve, at), -way));
    if (!liesBeyond(beginning, strip, [0, 2])) return false;
  }
  return true;
}

/** Whether the end of an open line paints in the strip, as its cap may where the line itself ends before. */
function endReaches(line: PaintedLine, strip: Strip, place: LinePosition, way: Way): boolean {
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
function endAt(line: PaintedLine, place: LinePosition, way: Way): LineEnd {
  return endOf(line.width, line.cap, pointOnLine(line, place), scale(directionOnLine(line, place), -way));
}

/** @param outward the way in which the line would go on */
function endOf(width: number, cap: PaintedLine['cap'], centre: Point, outward: Point): LineEnd {
  if (cap === 'round') return { points: [centre], radius: width / 2 };
  const half = scale(perpendicular(outward), width / 2);
  const back = scale(half, -1);
  const sides = [add(centre, half), add(centre, back)];
  if (cap === 'butt') return { points: sides, radius: 0 };
  const reach = scale(outward, width / 2);
  return { points: [...sides, ...sides.map((side) => add(side, reach))], radius: 0 };
}
