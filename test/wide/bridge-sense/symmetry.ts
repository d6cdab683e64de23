/** Mirror images and likenesses, on pixels alone. */
import { hasAll, type Mask, type Move } from './pixels';

/** In a drawing that the eye calls symmetric, so much of the paint may have no mirror image within so many pixels. */
const DRAWING = { missing: 0.008, slack: 1 };
/** The same of what bridges take: they need not be cut to the hair. */
const BRIDGES = { missing: 0.1, slack: 3 };

/**
 * Upright or level, and twice the pixel that it lies at; or a diagonal, falling where x - y is the number on it, rising
 * where x + y is.
 */
export type Axis = readonly [kind: 'upright' | 'level' | 'falling' | 'rising', at: number];

/**
 * Axes that halve the paint's box, upright and level, in which the drawing is its own mirror image; of those that have one,
 * as squares and rings, the diagonals as well.
 */
export function mirrorAxesOf(paint: Mask): Axis[] {
  const [minX, minY, maxX, maxY] = boxOf(paint);
  const near = (kind: Axis[0], at: number): Axis[] => [0, -1, 1].map((shift) => [kind, at + shift]);
  const found = (all: Axis[][]): Axis[] =>
    all.map((axes) => axes.find((axis) => isItsOwnImage(paint, axis, DRAWING))).filter((axis) => axis !== undefined);
  const straight = found([near('upright', minX + maxX), near('level', minY + maxY)]);
  const isSquare = Math.abs(maxX - minX - maxY + minY) <= 1;
  if (straight.length === 0 || !isSquare) return straight;
  return [...straight, ...found([near('falling', minX - minY), near('rising', minX + maxY)])];
}

/** Whether what bridges take is mirrored in one of the axes. */
export function isMirrored(lost: Mask, axes: readonly Axis[]): boolean {
  return axes.some((axis) => isItsOwnImage(lost, axis, BRIDGES));
}

function isItsOwnImage(mask: Mask, [kind, at]: Axis, allowed: typeof DRAWING): boolean {
  const moves: Readonly<Record<Axis[0], readonly [Move, Move]>> = {
    upright: [(x) => at - x, (_, y) => y],
    level: [(x) => x, (_, y) => at - y],
    falling: [(_, y) => at + y, (x) => x - at],
    rising: [(_, y) => at - y, (x) => at - x],
  };
  return hasAll(mask, mask, ...moves[kind], allowed);
}

/** A part of a mask from one column to another. */
export function columnsOf({ width, height, on }: Mask, from: number, to: number): Mask {
  const size = to - from;
  const part = new Uint8Array(size * height);
  for (let y = 0; y < height; y += 1) part.set(on.subarray(y * width + from, y * width + to), y * size);
  return { width: size, height, on: part };
}

/** Whether two masks of one size have the same on them. */
export function areAlike(one: Mask, other: Mask, allowed: typeof DRAWING): boolean {
  const sameX: Move = (x) => x;
  const sameY: Move = (_, y) => y;
  return hasAll(one, other, sameX, sameY, allowed) && hasAll(other, one, sameX, sameY, allowed);
}

/** The share of the border of paint that runs level or upright, to about 3°, for 2 mm or more. */
export function straightShareOf({ width, height, on }: Mask): number {
  let [edges, straight] = [0, 0];
  const isEdge = (pixel: number, step: number): boolean => on[pixel] === 1 && on[pixel + step] === 0;
  for (const [step, along] of [
    [1, width],
    [-1, width],
    [width, 1],
    [-width, 1],
  ] as const) {
    const [lines, places] = along === 1 ? [height, width] : [width, height];
    for (let line = 1; line < lines - 1; line += 1) {
      let run = 0;
      for (let place = 1; place < places; place += 1) {
        const pixel = along === 1 ? line * width + place : place * width + line;
        if (place < places - 1 && isEdge(pixel, step)) {
          run += 1;
          edges += 1;
        } else {
          if (run >= RUN) straight += run;
          run = 0;
        }
      }
    }
  }
  return edges === 0 ? 0 : straight / edges;
}

const RUN = 16;

function boxOf({ width, on }: Mask): [number, number, number, number] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, 0, 0];
  for (let pixel = 0; pixel < on.length; pixel += 1) {
    if (!on[pixel]) continue;
    const [x, y] = [pixel % width, Math.floor(pixel / width)];
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return [minX, minY, maxX, maxY];
}
