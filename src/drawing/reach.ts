/** How large a sheet can be, and how far from it anything drawn still means something. */
import { checkpoint } from '../base/checkpoint';
import type { Curve } from '../geometry/base/curve-types';
import type { Box } from '../geometry/base/polygon-types';
import { boundsOf, roughBoundsOf } from '../geometry/curve/measure';
import type { Subpath } from './types';

/** mm: 100 m. What is larger is a slip of the keyboard or of a program, and no work. */
export const FARTHEST = 100_000;

/** mm: no tool cuts a smaller sheet. */
const SMALLEST_SHEET = 0.1;

/** @param side of a sheet, mm; a side of 0 is another question: SVG draws nothing then */
export function isNoSheetSide(side: number): boolean {
  return side > FARTHEST || (side > 0 && side < SMALLEST_SHEET);
}

/** Whether any curve of an outline in sheet mm comes too far away. */
export function reachesTooFar(outline: readonly Subpath[]): boolean {
  return outline.some(({ curves }) => {
    checkpoint(curves.length);
    return curves.some(isFar);
  });
}

function isFar(curve: Curve): boolean {
  const { start, end } = curve;
  if (isFarAt(start.x, start.y) || isFarAt(end.x, end.y)) return true;
  return curve.kind !== 'line' && isFarBox(roughBoundsOf(curve)) && isFarBox(boundsOf(curve));
}

const isFarBox = ({ minX, minY, maxX, maxY }: Box): boolean => isFarAt(minX, minY) || isFarAt(maxX, maxY);

/** A number that is none is far, too. */
const isFarAt = (x: number, y: number): boolean => !(Math.abs(x) <= FARTHEST && Math.abs(y) <= FARTHEST);
