/** A window of a sheet as dots, and the dots as characters of braille: eight to a character, two across and four down. */
import { defined } from '../../base/defined';
import type { Polygon, Region, Ring } from '../../geometry/base/polygon-types';
import { boxOfRing, ringsOf } from '../../geometry/base/ring';

/** Where dots lie on a sheet. Sheet mm, y down. */
export interface DotWindow {
  /** The corner at the top left. */
  readonly x: number;
  readonly y: number;
  /** From dot to dot. */
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** Row by row. */
export type Dots = readonly Uint8Array[];

/** The dots whose middles lie in a region. */
export function dotsOf(region: Region, window: DotWindow): Dots {
  const near = region.flatMap((polygon) => ringsWithin(polygon, window));
  return Array.from({ length: window.rows }, (_, row) => {
    const dots = new Uint8Array(window.columns);
    const crossings = near.flatMap((ring) => crossingsAt(ring, window.y + (row + 0.5) * window.step));
    crossings.sort((a, b) => a - b);
    // Polygons of a region do not overlap: between an odd crossing and the next even one lies one of them.
    for (let at = 0; at + 1 < crossings.length; at += 2) {
      const [from, to] = [defined(crossings[at]), defined(crossings[at + 1])].map((x) =>
        Math.ceil((x - window.x) / window.step - 0.5),
      );
      dots.fill(1, Math.max(0, defined(from)), Math.min(window.columns, Math.max(0, defined(to))));
    }
    return dots;
  });
}

/** Those of a polygon that share a height with the window. */
function ringsWithin(polygon: Polygon, { y, step, rows }: DotWindow): Ring[] {
  return ringsOf(polygon).filter((ring) => {
    const { minY, maxY } = boxOfRing(ring);
    return maxY > y && minY < y + rows * step;
  });
}

/** Where a ring's edges cross a height. An end that lies on it counts as below. */
function crossingsAt(ring: Ring, height: number): number[] {
  const found: number[] = [];
  let [x, y] = [defined(ring[ring.length - 2]), defined(ring[ring.length - 1])];
  for (let at = 0; at < ring.length; at += 2) {
    const [nextX, nextY] = [defined(ring[at]), defined(ring[at + 1])];
    if (y >= height !== nextY >= height) found.push(x + ((height - y) / (nextY - y)) * (nextX - x));
    [x, y] = [nextX, nextY];
  }
  return found;
}

/** Every other dot, so that what is hatched is told from what is filled. */
export function hatched(dots: Dots): Dots {
  return dots.map((row, y) => row.map((dot, x) => (dot && (x + y) % 2 === 0 ? 1 : 0)));
}

export function joined(one: Dots, other: Dots): Dots {
  return one.map((row, y) => row.map((dot, x) => dot | (other[y]?.[x] ?? 0)));
}

/** What the dots of a character count, by column and row (Unicode, chapter 21.1: dots 1 to 8). */
const DOT_VALUES: readonly (readonly number[])[] = [
  [1, 8],
  [2, 16],
  [4, 32],
  [64, 128],
];

const FIRST_BRAILLE = 0x2800;

/** Lines of braille; a rest of a character is empty. */
export function brailleOf(dots: Dots): string[] {
  const across = Math.ceil((dots[0]?.length ?? 0) / 2);
  return Array.from({ length: Math.ceil(dots.length / 4) }, (_line, line) =>
    Array.from({ length: across }, (_cell, cell) => {
      const values = DOT_VALUES.flatMap((pair, y) =>
        pair.map((value, x) => (dots[4 * line + y]?.[2 * cell + x] ? value : 0)),
      );
      return String.fromCharCode(FIRST_BRAILLE + values.reduce((sum, value) => sum + value, 0));
    }).join(''),
  );
}

/** How many of its eight dots a character of braille has. */
export function dotsIn(character: string): number {
  let [bits, count] = [character.charCodeAt(0) - FIRST_BRAILLE, 0];
  for (; bits > 0; bits >>= 1) count += bits & 1;
  return count;
}
