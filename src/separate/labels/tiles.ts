/** A grid in squares that fit into a processor's cache, each with what lies round it. */
import type { Grid } from './box-blur';

/** Pixels. */
const SIDE = 64;

export interface Tile {
  /** Its own pixels: from the first column and row to before the others. */
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** Those and what lies round them, as far as the frame lets it. */
  readonly window: Window;
}

export interface Window extends Grid {
  readonly left: number;
  readonly top: number;
}

/** @param margin pixels round each tile */
export function* tilesOf({ width, height }: Grid, margin: number): Generator<Tile> {
  for (let minY = 0; minY < height; minY += SIDE) {
    for (let minX = 0; minX < width; minX += SIDE) {
      const [maxX, maxY] = [Math.min(width, minX + SIDE), Math.min(height, minY + SIDE)];
      const [left, top] = [Math.max(0, minX - margin), Math.max(0, minY - margin)];
      const window = {
        left,
        top,
        width: Math.min(width, maxX + margin) - left,
        height: Math.min(height, maxY + margin) - top,
      };
      yield { minX, minY, maxX, maxY, window };
    }
  }
}

/** The most pixels that a window has. */
export function mostInWindow(margin: number): number {
  return (SIDE + 2 * margin) ** 2;
}
