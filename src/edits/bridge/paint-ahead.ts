/** Whether a stroked line that has left a strip paints in it once more. In one frame for both. */
import type { Point } from '../../geometry/base/curve-types';
import { crossFrom, distance } from '../../geometry/base/vector';
import { cornerAt, type Strip } from '../strip/strip';
import {
  advance,
  crossSectionAt,
  jointAt,
  type LinePosition,
  type PaintedLine,
  pointOnLine,
  type Way,
} from './painted-line';

/** Steps along a line, as a share of its width. */
const STEP = 1 / 8;
/** Of the width of the strip: what reaches in by less is rounding. */
const GRAZE = 1e-3;

/**
 * The last place at which the line paints in the strip, within the reach of its paint behind a place.
 * @returns that place, and how far away it is along the line; undefined where nothing is painted there
 */
export function lastPaintedAhead(
  line: PaintedLine,
  strip: Strip,
  from: LinePosition,
  way: Way,
): { readonly place: LinePosition; readonly away: number } | undefined {
  const wide = distance(cornerAt(strip, 1), cornerAt(strip, 2));
  const [reach, room] = [line.width + wide, GRAZE * wide];
  const step = line.width * STEP;
  let last: { place: LinePosition; away: number } | undefined;
  let [place, away] = [from, 0];
  while (away < reach) {
    const next = advance(line, place, step * way);
    if (next === undefined) break;
    // A step that ends within the next curve has passed a corner.
    const passed = Math.floor(next) !== Math.floor(place) ? jointAt(line, cornerBetween(place, next, way)) : undefined;
    away += Math.max(distance(pointOnLine(line, place), pointOnLine(line, next)), step / 4);
    place = next;
    if (meetsStrip(crossSectionAt(line, place), strip, room) || (passed && meetsStrip(passed, strip, room)))
      last = { place, away };
  }
  return last;
}

/** The number of the curve that begins at the corner between two places. */
function cornerBetween(place: LinePosition, next: LinePosition, way: Way): number {
  return way > 0 ? Math.floor(next) : Math.floor(place);
}

/**
 * Whether a convex figure, of two corners or more, has ground in common with the strip: by separating axes.
 * @param room by how much it may reach in
 */
export function meetsStrip(figure: readonly Point[], { corners }: Strip, room: number): boolean {
  const [first, second, third] = figure;
  const isTurned = first && second && third && crossFrom(first, second, third) < 0;
  const turned = isTurned ? [...figure].reverse() : figure;
  return !hasSideBefore(corners, turned, room) && !hasSideBefore(turned, corners, room);
}

/** Whether all of `others` lie beyond one side of a figure, or reach over it by less than `room`. */
function hasSideBefore(figure: readonly Point[], others: readonly Point[], room: number): boolean {
  return figure.some((corner, i) => {
    const next = figure[(i + 1) % figure.length] ?? corner;
    const size = distance(corner, next);
    return size > 0 && others.every((other) => crossFrom(corner, next, other) <= room * size);
  });
}
