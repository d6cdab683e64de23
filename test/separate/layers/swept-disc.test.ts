import { describe, expect, it as test } from 'vitest';
import { coresOf } from '../../../src/separate/clean/cores';
import { NearestOther } from '../../../src/separate/clean/nearest-other';
import { edgeOf } from '../../../src/separate/layers/discs';
import { SweptDisc } from '../../../src/separate/layers/swept-disc';
import { blots } from '../pictures';

const GRIDS = [
  [37, 29],
  [64, 20],
  [5, 40],
  [3, 3],
] as const;

const RADII = [-0.5, 0, 0.7, 1, 2.5, 4.49, 6];

/** Pixels within the radius of one, looked for all over. */
function within(width: number, height: number, at: number, radius: number): number[] {
  const all = Array.from({ length: width * height }, (_, pixel) => pixel);
  return all.filter((pixel) => radius >= 0 && squared(width, at, pixel) <= radius * radius);
}

function squared(width: number, one: number, other: number): number {
  return ((one % width) - (other % width)) ** 2 + (Math.floor(one / width) - Math.floor(other / width)) ** 2;
}

describe.each(GRIDS)('in a grid of %d by %d pixels', (width, height) => {
  const map = blots(width, height, 3, 12, 4);
  const set = map.labels.map((label) => Number(label === 1));
  const pixels = [...map.labels.keys()];
  const beside = (at: number): number[] => pixels.filter((pixel) => squared(width, at, pixel) === 1);

  test.each([0, 1])('the edge of %d is what has another value beside it', (value) => {
    const isEdge = (at: number): boolean => set[at] === value && beside(at).some((pixel) => set[pixel] !== value);
    expect(edgeOf(map, set, value)).toEqual(pixels.filter(isEdge));
  });

  test.each(RADII)('a disc of %d swept over pixels covers what lies near some of them', (radius) => {
    // Edges, whole areas, and pixels far apart.
    for (const middles of [
      edgeOf(map, set, 1),
      pixels.filter((at) => set[at] === 1),
      pixels.filter((at) => at % 7 === 0),
    ]) {
      const covered = new Set(middles.flatMap((at) => within(width, height, at, radius)));
      const swept = new SweptDisc(map, radius);
      const marks = new Uint8Array(width * height);
      swept.mark(middles, marks, 1);
      expect(pixels.filter((at) => marks[at] === 1)).toEqual(pixels.filter((at) => covered.has(at)));
      const visited = new Set<number>();
      swept.visit(middles, (pixel, middle) => {
        expect(squared(width, pixel, middle)).toBeLessThanOrEqual(radius * radius);
        visited.add(pixel);
      });
      expect(visited).toEqual(covered);
    }
  });

  test.each([1, 2.25, 4])('cores are what a disc of %d has room round', (radius) => {
    const isRim = (at: number): boolean => {
      const others = beside(at);
      return others.length < 4 || others.some((pixel) => map.labels[pixel] !== map.labels[at]);
    };
    const rim = pixels.filter(isRim);
    const reach = (radius - 0.5 - 1e-6) ** 2;
    const cores = pixels.filter((at) => rim.every((pixel) => squared(width, at, pixel) > reach));
    const core = coresOf(map, radius);
    expect(pixels.filter((at) => core?.[at] === 1)).toEqual(cores);
  });

  test('the nearest pixel of another label is found, or the frame', () => {
    const nearest = new NearestOther(map, 4);
    for (const at of pixels) {
      const [x, y] = [at % width, Math.floor(at / width)];
      const frame = Math.min(x + 1, width - x, y + 1, height - y);
      const others = pixels.filter((pixel) => map.labels[pixel] !== map.labels[at]);
      const least = others.reduce((sum, pixel) => Math.min(sum, Math.sqrt(squared(width, at, pixel))), Infinity);
      const { distance, pixel } = nearest.of(at);
      expect(distance).toBe(Math.min(4, frame, least));
      if (pixel !== undefined) expect(Math.sqrt(squared(width, at, pixel))).toBe(least);
      else expect(Math.min(4, frame)).toBe(distance);
    }
  });
});
