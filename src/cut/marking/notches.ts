/**
 * Notches in a sheet's edge, for tools that only cut. Pointed ones on the upper edge count the sheet, square ones on the
 * left edge count all sheets; both begin at the upper left corner. However a sheet is turned, its number can be read; and
 * where the pointed ones do not follow the square ones clockwise round that corner, it lies face down.
 */
import { limitsOf } from '../../config/limits';
import type { Config } from '../../config/types';
import type { Point } from '../../geometry/base/curve-types';
import type { Box, Ring } from '../../geometry/base/polygon-types';
import { boxesTouch, growBox, ringOfPoints } from '../../geometry/base/ring';
import { boxOfPolygon, clipToBox } from '../../geometry/boolean/index';
import type { Sheet } from '../../sheet/types';

/** mm: found by eye and by a fingernail. Common practice, no source. */
const [DEPTH, WIDTH] = [2, 2];
const PITCH = 4;
/** mm from the corner to the first notch, at least. */
const FROM_CORNER = 6;

export interface Notches {
  /** mm from the upper left corner to the first pointed notch, and to the first square one. */
  readonly upper: number;
  readonly left: number;
}

/**
 * Where the notches find room; undefined where openings are too near, or the sheet is too small: they begin in the half of
 * the edge that is next to the corner.
 */
export function placeNotches(
  { frame, openings }: Sheet,
  { number, count }: { number: number; count: number },
  config: Config,
): Notches | undefined {
  const clearance = limitsOf(config).bridge;
  const isFree = (box: Box) => {
    const around = growBox(box, clearance);
    const near = openings.filter((opening) => boxesTouch(boxOfPolygon(opening), around));
    return near.length === 0 || clipToBox(near, around).length === 0;
  };
  const { minX, minY, maxX, maxY } = frame;
  const upper = firstFree(number, maxX - minX, (from, to) =>
    isFree({ minX: minX + from, maxX: minX + to, minY, maxY: minY + DEPTH }),
  );
  const left = firstFree(count, maxY - minY, (from, to) =>
    isFree({ minX, maxX: minX + DEPTH, minY: minY + from, maxY: minY + to }),
  );
  return upper === undefined || left === undefined ? undefined : { upper, left };
}

function firstFree(count: number, side: number, isFree: (from: number, to: number) => boolean): number | undefined {
  const length = (count - 1) * PITCH + WIDTH;
  for (let from = FROM_CORNER; from + length / 2 < side / 2 && from + length < side - FROM_CORNER; from += 1) {
    if (isFree(from, from + length)) return from;
  }
  return undefined;
}

/** The sheet's edge with its notches, clockwise on the screen. */
export function notchedEdge(
  box: Box,
  { upper, left }: Notches,
  { number, count }: { number: number; count: number },
): Ring {
  const { minX, minY, maxX, maxY } = box;
  const pointed = Array.from({ length: number }, (_, i): Point[] => {
    const from = minX + upper + i * PITCH;
    return [
      { x: from, y: minY },
      { x: from + WIDTH / 2, y: minY + DEPTH },
      { x: from + WIDTH, y: minY },
    ];
  });
  // Clockwise, the left edge is passed upwards: its notches come from below.
  const square = Array.from({ length: count }, (_, i): Point[] => {
    const to = minY + left + (count - 1 - i) * PITCH;
    return [
      { x: minX, y: to + WIDTH },
      { x: minX + DEPTH, y: to + WIDTH },
      { x: minX + DEPTH, y: to },
      { x: minX, y: to },
    ];
  });
  const corners = [
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  return ringOfPoints([{ x: minX, y: minY }, ...pointed.flat(), ...corners, ...square.flat()]);
}
