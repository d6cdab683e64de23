/** How far a bridge's strip must go beyond its ends, so that it crosses the whole opening over its whole width. */

import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import { NEAR_EDGE } from '../../geometry/base/tolerances';
import { cross, distance, dot, scale, subtract } from '../../geometry/base/vector';
import { nearestSegment, type SegmentIndex } from '../../geometry/spatial/segment-index';
import { type Strip, stripAlong } from './strip';

/** The least, in mm, that a strip reaches into the material: well above the flattening of curves. */
const MIN_REACH = NEAR_EDGE;
/** An edge of an opening is followed over so many of its straight pieces at most. */
const MAX_PIECES = 2000;

/**
 * The strip from→to in sheet mm, `width` wide, long enough at both ends for slanted and curved edges of the opening,
 * and no longer: at most `width` beyond either end.
 * @param openings the edges of the openings
 */
export function extendStrip(openings: SegmentIndex, from: Point, to: Point, width: number): Strip {
  const along = scale(subtract(to, from), 1 / distance(from, to));
  const spare = Math.min(width / 4, Math.max(MIN_REACH, width / 20));
  const before = extentBeyond(openings, from, scale(along, -1), width);
  const after = extentBeyond(openings, to, along, width);
  return stripAlong(from, to, width, Math.min(width, before + spare), Math.min(width, after + spare));
}

/** How far the opening's edge at a bridge's end goes beyond that end, over the bridge's width. */
function extentBeyond(openings: SegmentIndex, end: Point, outward: Point, width: number): number {
  const place = nearestSegment(openings, end, width);
  if (!place) return 0;
  const band: Band = { origin: end, outward, half: width / 2 };
  const ways = [openings.next, openings.previous];
  return Math.max(0, ...ways.map((step) => followOutline(openings, place.edge, band, step)));
}

interface Band {
  readonly origin: Point;
  readonly outward: Point;
  readonly half: number;
}

/** Along the edge one way, until it leaves the band that the strip covers. */
function followOutline(openings: SegmentIndex, first: number, band: Band, step: Uint32Array): number {
  let [edge, far] = [first, 0];
  for (let count = 0; count < MAX_PIECES; count += 1) {
    const start = toBandCoordinates(band, { x: defined(openings.x0[edge]), y: defined(openings.y0[edge]) });
    const end = toBandCoordinates(band, { x: defined(openings.x1[edge]), y: defined(openings.y1[edge]) });
    far = Math.max(far, reachWithin(start, end, band.half));
    const last = step === openings.next ? end : start;
    edge = defined(step[edge]);
    if (Math.abs(last.across) > band.half || Math.abs(last.beyond) > 4 * band.half || edge === first) break;
  }
  return far;
}

interface BandCoordinates {
  readonly beyond: number;
  readonly across: number;
}

function toBandCoordinates({ origin, outward }: Band, point: Point): BandCoordinates {
  const offset = subtract(point, origin);
  return { beyond: dot(offset, outward), across: cross(outward, offset) };
}

/** The farthest that the part of an edge within the band goes; -Infinity where none of it is. */
function reachWithin(start: BandCoordinates, end: BandCoordinates, half: number): number {
  const at = (across: number): number =>
    start.beyond + ((across - start.across) / (end.across - start.across)) * (end.beyond - start.beyond);
  const places = [start, end].filter(({ across }) => Math.abs(across) <= half).map(({ beyond }) => beyond);
  for (const side of [-half, half]) if ((start.across - side) * (end.across - side) < 0) places.push(at(side));
  return Math.max(-Infinity, ...places);
}
