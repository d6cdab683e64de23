import { describe, expect, it } from 'vitest';
import { Bitmap } from '../../../src/separate/bits/bitmap';
import { blur } from '../../../src/separate/labels/box-blur';
import { evened } from '../../../src/separate/labels/evened';
import type { LabelMap } from '../../../src/separate/raster';
import { blots } from '../pictures';

/** Each label's area blurred all over, not tile by tile. */
function blurredAreas(map: LabelMap, radius: number): Map<number, Float32Array> {
  return new Map(
    [...new Set(map.labels)].map((label) => {
      const area = Float32Array.from(map.labels, (each) => Number(each === label));
      blur(area, map, radius, new Float32Array(area.length));
      return [label, area];
    }),
  );
}

describe('evened borders', () => {
  // More than one tile either way, the last ones cut off by the frame.
  const map = blots(170, 140, 5, 60, 3);

  it.each([1, 2, 5])('are where the two greatest of the blurred areas are as great (%d)', (radius) => {
    const areas = blurredAreas(map, radius);
    const soft = evened(map, radius);
    for (let at = 0; at < map.labels.length; at += 1) {
      const values = [...areas].map(([label, area]) => ({ label, value: area[at]! }));
      values.sort((one, other) => other.value - one.value);
      const [first, second] = values as [(typeof values)[0], (typeof values)[0]];
      if (first.value - second.value > 1e-5) expect(soft.labels[at]).toBe(first.label);
      const share = second.value > 1e-6 ? first.value / (first.value + second.value) : 1;
      expect(soft.share[at]).toBeCloseTo(share, 4);
    }
  });

  it('are the same where only some pixels are asked for', () => {
    const asked = [30 * 170 + 20, 139 * 170 + 169];
    const [all, some] = [evened(map, 2), evened(map, 2, Bitmap.ofPixels(map, asked))];
    for (const at of asked) {
      expect([some.labels[at], some.other[at], some.share[at]]).toEqual([all.labels[at], all.other[at], all.share[at]]);
    }
  });
});
