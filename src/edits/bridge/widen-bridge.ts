/** Mends that work on material that is there: widening a neck, cutting an island away, closing an opening. */

import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { Polygon, Region } from '../../geometry/base/polygon-types';
import { add, distance, dot, interpolate, normalise, perpendicular, scale, subtract } from '../../geometry/base/vector';
import { areaOf, boxOfPolygon, intersection } from '../../geometry/boolean/index';
import type { ThinPlace } from '../../sheet/thin-places';
import type { Piece, Sheet } from '../../sheet/types';
import type { EditResult } from '../element/result';
import { removeMakers } from '../outline/remove-makers';
import { removeOutline } from '../outline/remove-outline';
import { polygonOf, stripAlong } from '../strip/strip';
import { cutStrips, ROUNDING_ROOM } from './cut';

/** How far beyond its own length a neck is followed, in needed widths. */
const FOLLOWED = 2;

/**
 * Takes from the openings on both sides of a neck or a tip what makes it `width` mm wide (as drawn), all along the stretch
 * where it is narrower.
 */
export function widenNeck(sheet: Sheet, part: ThinPlace, width: number): EditResult {
  if (part.kind === 'whole') return { refusal: 'A piece that is narrow all over cannot be widened.' };
  const place = narrowInterval(sheet.openings, part, width);
  if (!place) return { refusal: 'The neck is already as wide as that.' };
  return cutStrips(sheet, [stripAlong(place.from, place.to, width + ROUNDING_ROOM, 0.1 * width)]);
}

/**
 * The middle line of the stretch along which a neck is narrower than `width` mm, taken as straight; undefined where it
 * is nowhere so.
 * @param outside what may take room from the neck
 */
export function narrowInterval(
  outside: Region,
  part: ThinPlace,
  width: number,
): { readonly from: Point; readonly to: Point } | undefined {
  const across = normalise(subtract(part.to, part.from));
  if (!across) return undefined;
  const middle = interpolate(part.from, part.to, 0.5);
  const along = perpendicular(across);
  const half = part.length + FOLLOWED * width;
  const whole = stripAlong(pointAlong(middle, along, -half), pointAlong(middle, along, half), width + ROUNDING_ROOM, 0);
  const near = intersection(outside, [polygonOf(whole)]).filter((polygon) => touches(polygon, middle, width));
  if (near.length === 0) return undefined;
  const places = near.flatMap((polygon) => pointsAlong(polygon, middle, along));
  const low = Math.max(-half, Math.min(...places));
  const high = Math.min(half, Math.max(...places));
  return high > low ? { from: pointAlong(middle, along, low), to: pointAlong(middle, along, high) } : undefined;
}

/** Makes an island part of the opening round it, where one outline of the drawing is all that forms it. */
export function cutIslandAway(sheet: Sheet, island: Piece): EditResult {
  if (island.polygon.holes.length > 0) return { refusal: 'There are openings inside this island; bridge it instead.' };
  return removeOutline(sheet, island.polygon.outer, sheet.kerf / 2);
}

/** Closes an opening by removing the outlines and the elements that make it, where they make nothing else. */
export function removeOpening(sheet: Sheet, opening: Polygon): EditResult {
  const one = opening.holes.length > 0 ? undefined : removeOutline(sheet, opening.outer, 0);
  return one && !('refusal' in one) ? one : removeMakers(sheet, opening);
}

function pointAlong(origin: Point, direction: Point, far: number): Point {
  return add(origin, scale(direction, far));
}

/** Whether an overlap lies at the neck itself, not beyond it. */
function touches(polygon: Polygon, middle: Point, width: number): boolean {
  if (areaOf(polygon) < 1e-6) return false;
  const { minX, minY, maxX, maxY } = boxOfPolygon(polygon);
  const nearest = { x: Math.max(minX, Math.min(middle.x, maxX)), y: Math.max(minY, Math.min(middle.y, maxY)) };
  return distance(nearest, middle) <= width;
}

function pointsAlong({ outer }: Polygon, origin: Point, along: Point): number[] {
  const places: number[] = [];
  for (let i = 0; i < outer.length; i += 2) {
    places.push(dot(subtract({ x: defined(outer[i]), y: defined(outer[i + 1]) }, origin), along));
  }
  return places;
}
