/**
 * What a general renderer (@resvg/resvg-js) paints, as pixels, and what can be told from these alone. Nothing of the engine
 * is used here.
 */
import type { Raster } from '../../outside/raster';

/** Pixels to the mm. */
export const FINENESS = 8;

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Whether paint passes, pixel by pixel. */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly on: Uint8Array;
}

export function paintOf({ width, height, coverage }: Raster): Mask {
  return { width, height, on: coverage.map((value) => Number(value >= 128)) };
}

/** What is painted before and not after. */
export function lostBetween(before: Mask, after: Mask): Mask {
  return { ...before, on: before.on.map((value, i) => Number(value === 1 && after.on[i] === 0)) };
}

/** Pieces of the bare sheet: for each pixel the number of its piece, 0 for paint, 1 for what reaches the border. */
export interface Pieces {
  readonly width: number;
  readonly height: number;
  readonly number: Int32Array;
  /** By number. */
  readonly pieces: readonly Piece[];
}

export interface Piece {
  readonly number: number;
  readonly pixels: number;
  /** Pixels. */
  readonly middle: Point;
  readonly box: readonly [minX: number, minY: number, maxX: number, maxY: number];
}

/** Joined along edges: contact of corners joins nothing. */
export function piecesOf({ width, height, on }: Mask): Pieces {
  const number = new Int32Array(on.length);
  const pieces: Piece[] = [];
  const start = (pixel: number, own: number): void => {
    pieces[own] = fill(pixel, own, number, on, width, height, pieces[own]);
  };
  for (let pixel = 0; pixel < on.length; pixel += 1) {
    const [x, y] = [pixel % width, Math.floor(pixel / width)];
    const isBorder = x === 0 || y === 0 || x === width - 1 || y === height - 1;
    if (isBorder && !on[pixel] && !number[pixel]) start(pixel, 1);
  }
  let next = 2;
  for (let pixel = 0; pixel < on.length; pixel += 1) {
    if (on[pixel] || number[pixel]) continue;
    start(pixel, next);
    next += 1;
  }
  return { width, height, number, pieces };
}

function fill(
  from: number,
  own: number,
  number: Int32Array,
  on: Uint8Array,
  width: number,
  height: number,
  earlier: Piece | undefined,
): Piece {
  const stack = [from];
  number[from] = own;
  let [pixels, sumX, sumY, minX, minY, maxX, maxY] = [0, 0, 0, width, height, 0, 0];
  const visit = (pixel: number): void => {
    if (on[pixel] || number[pixel]) return;
    number[pixel] = own;
    stack.push(pixel);
  };
  for (let pixel = stack.pop(); pixel !== undefined; pixel = stack.pop()) {
    const x = pixel % width;
    const y = (pixel - x) / width;
    pixels += 1;
    sumX += x;
    sumY += y;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
    if (x > 0) visit(pixel - 1);
    if (x < width - 1) visit(pixel + 1);
    if (y > 0) visit(pixel - width);
    if (y < height - 1) visit(pixel + width);
  }
  // The frame may be filled from several sides; nothing is asked of its shape.
  const count = pixels + (earlier?.pixels ?? 0);
  return { number: own, pixels: count, middle: { x: sumX / pixels, y: sumY / pixels }, box: [minX, minY, maxX, maxY] };
}

/** mm²: what is smaller is no island, here as there (a square of 0.22 mm a side). */
const SPECK = 0.05;

export function islandsAmong({ pieces }: Pieces): Piece[] {
  return pieces.filter((piece) => piece.number > 1 && piece.pixels >= SPECK * FINENESS ** 2);
}

/** Which of the pixels at or near a place belongs to a piece: its number, or 0 where none does within `reach` pixels. */
export function pieceNear({ width, height, number }: Pieces, { x, y }: Point, reach: number): number {
  let [best, nearest] = [0, Infinity];
  for (let dy = -reach; dy <= reach; dy += 1) {
    for (let dx = -reach; dx <= reach; dx += 1) {
      const [atX, atY] = [Math.floor(x) + dx, Math.floor(y) + dy];
      if (atX < 0 || atY < 0 || atX >= width || atY >= height) continue;
      const own = number[atY * width + atX] ?? 0;
      const away = dx * dx + dy * dy;
      if (own > 0 && away < nearest) [best, nearest] = [own, away];
    }
  }
  return best;
}

/** Where a pixel is looked for in another mask. */
export type Move = (x: number, y: number) => number;

/**
 * Whether at most a share of a mask's pixels have no like one where `moveX` and `moveY` lead, nor within `slack` pixels of
 * that.
 */
export function hasAll(
  one: Mask,
  other: Mask,
  moveX: Move,
  moveY: Move,
  { slack, missing }: { readonly slack: number; readonly missing: number },
): boolean {
  let left = missing * one.on.reduce((sum, value) => sum + value, 0);
  for (let pixel = 0; pixel < one.on.length; pixel += 1) {
    if (!one.on[pixel]) continue;
    const x = pixel % one.width;
    const y = (pixel - x) / one.width;
    if (hasNear(other, moveX(x, y), moveY(x, y), slack)) continue;
    left -= 1;
    if (left < 0) return false;
  }
  return true;
}

function hasNear({ width, height, on }: Mask, x: number, y: number, slack: number): boolean {
  if (x >= 0 && y >= 0 && x < width && y < height && on[y * width + x]) return true;
  for (let atY = Math.max(0, y - slack); atY <= Math.min(height - 1, y + slack); atY += 1)
    for (let atX = Math.max(0, x - slack); atX <= Math.min(width - 1, x + slack); atX += 1)
      if (on[atY * width + atX]) return true;
  return false;
}
