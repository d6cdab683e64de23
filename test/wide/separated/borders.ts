/** How far the borders of a print lie from the true ones. Both are rendered without soft edges, `SCALE` times as fine as the picture. */
import type { Picture } from '../../../src/separate/index';

export const SCALE = 4;

/** In pixels of the picture: so near to a border of the second lie 95 of 100 places on the borders of the first. */
export function distance95(first: Picture, second: Picture): number {
  return distanceOf(first, second, 0.95);
}

/** In pixels of the picture: so near to a border of the second lie all places on the borders of the first. */
export function farthest(first: Picture, second: Picture): number {
  return distanceOf(first, second, 1);
}

function distanceOf(first: Picture, second: Picture, share: number): number {
  const squares = new Map<number, number>();
  const radius = 2 * SCALE;
  const steps: [number, number, number][] = [];
  for (let y = -radius; y <= radius; y += 1) {
    for (let x = -radius; x <= radius; x += 1) steps.push([x, y, Math.hypot(x, y)]);
  }
  steps.sort((a, b) => a[2] - b[2]);
  let count = 0;
  const { width, height } = first;
  for (let y = radius; y < height - radius; y += 1) {
    for (let x = radius; x < width - radius; x += 1) {
      if (!isBorder(first, x, y)) continue;
      const found = steps.find(([u, v]) => isBorder(second, x + u, y + v))?.[2] ?? radius;
      squares.set(found, (squares.get(found) ?? 0) + 1);
      count += 1;
    }
  }
  let passed = 0;
  for (const [distance, many] of [...squares].sort((a, b) => a[0] - b[0])) {
    passed += many;
    if (passed >= share * count) return distance / SCALE;
  }
  return Infinity;
}

function isBorder({ width, data }: Picture, x: number, y: number): boolean {
  const at = 4 * (y * width + x);
  return differ(data, at, at + 4) || differ(data, at, at + 4 * width);
}

function differ(data: Picture['data'], a: number, b: number): boolean {
  return data[a] !== data[b] || data[a + 1] !== data[b + 1] || data[a + 2] !== data[b + 2];
}

/** Put behind a print, it shows where nothing paints. */
export const BEHIND = '#ff00ff';

/** Pixels of the picture, squared, that nothing paints. */
export function bareIn({ data }: Picture): number {
  let bare = 0;
  for (let at = 0; at < data.length; at += 4)
    if (data[at] === 255 && data[at + 1] === 0 && data[at + 2] === 255) bare += 1;
  return bare / SCALE ** 2;
}
