/** Blur by boxes: three of them are nearly a Gaussian, at a cost that does not grow with their size. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';

/** Rows and columns of numbers. */
export interface Grid {
  readonly width: number;
  readonly height: number;
}

/** So many boxes, one after the other. */
export const BLURS = 3;

/**
 * Three box blurs of half-width `radius`, in place; outside, the values at the edge go on.
 * @param spare as long as `values`; it is written to
 */
export function blur(values: Float32Array, grid: Grid, radius: number, spare: Float32Array): void {
  if (radius < 1) return;
  for (let pass = 0; pass < BLURS; pass += 1) {
    blurRows(values, spare, grid, radius);
    blurColumns(spare, values, grid, radius);
  }
}

function blurRows(from: Float32Array, to: Float32Array, { width, height }: Grid, radius: number): void {
  const weight = 1 / (2 * radius + 1);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    const start = y * width;
    const last = start + width - 1;
    let sum = radius * defined(from[start]);
    for (let x = 0; x <= radius; x += 1) sum += defined(from[Math.min(last, start + x)]);
    for (let x = 0; x < width; x += 1) {
      to[start + x] = sum * weight;
      sum += defined(from[Math.min(last, start + x + radius + 1)]) - defined(from[Math.max(start, start + x - radius)]);
    }
  }
}

function blurColumns(from: Float32Array, to: Float32Array, { width, height }: Grid, radius: number): void {
  const weight = 1 / (2 * radius + 1);
  const sums = new Float32Array(width);
  for (let y = -radius; y <= radius; y += 1) {
    const row = Math.max(0, Math.min(height - 1, y)) * width;
    for (let x = 0; x < width; x += 1) sums[x] = defined(sums[x]) + defined(from[row + x]);
  }
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    const row = y * width;
    const next = Math.min(height - 1, y + radius + 1) * width;
    const past = Math.max(0, y - radius) * width;
    for (let x = 0; x < width; x += 1) {
      to[row + x] = defined(sums[x]) * weight;
      sums[x] = defined(sums[x]) + defined(from[next + x]) - defined(from[past + x]);
    }
  }
}
