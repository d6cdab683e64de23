import { describe, expect, it } from 'vitest';
import { componentsOf } from '../../../src/separate/layers/components';
import { blots, seeded } from '../pictures';

const random = seeded(3);
const specks = { width: 23, height: 17, labels: Uint8Array.from({ length: 23 * 17 }, () => Math.floor(3 * random())) };

describe('the parts of a map', () => {
  it.each([blots(40, 30, 4, 25, 2), specks, { width: 5, height: 1, labels: Uint8Array.of(1, 1, 2, 1, 1) }])(
    'are those of flooding across sides, numbered by their first pixels',
    (map) => {
      const { width, height, labels } = map;
      const { ids, list } = componentsOf(map);
      const expected = new Int32Array(labels.length).fill(-1);
      const parts = [...labels.keys()].flatMap((pixel) => {
        if (expected[pixel] !== -1) return [];
        const id = Math.max(-1, ...expected) + 1;
        const open = [pixel];
        expected[pixel] = id;
        for (const at of open) {
          const x = at % width;
          const beside = [x > 0 ? at - 1 : -1, x + 1 < width ? at + 1 : -1, at - width, at + width];
          for (const other of beside) {
            if (labels[other] !== labels[pixel] || expected[other] !== -1) continue;
            expected[other] = id;
            open.push(other);
          }
        }
        const isOnFrame = (at: number): boolean =>
          at < width || at >= width * (height - 1) || at % width === 0 || at % width === width - 1;
        return [{ label: labels[pixel], size: open.length, touchesFrame: open.some(isOnFrame), pixel }];
      });
      expect(ids).toEqual(expected);
      expect(list).toEqual(parts);
    },
  );
});
