import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { underWatch } from '../../../src/base/checkpoint';
import { boxesTouch, growBox } from '../../../src/geometry/base/ring';
import { clusterBoxes } from '../../../src/geometry/spatial/clusters';

const side = fc.integer({ min: 0, max: 30 });
const box = fc.tuple(side, side, fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })).map(([x, y, w, h]) => {
  return { minX: x, minY: y, maxX: x + w, maxY: y + h };
});

describe('clusterBoxes', () => {
  it('is the transitive closure of touching', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 30 }), fc.constantFrom(0, 1), (boxes, margin) => {
        const groups = clusterBoxes(boxes, margin);
        expect(groups.flat().sort((a, b) => a - b)).toEqual([...boxes.keys()]);
        const groupOf = new Map(groups.flatMap((group, number) => group.map((member) => [member, number] as const)));
        boxes.forEach((first, i) =>
          boxes.forEach((second, j) => {
            if (boxesTouch(growBox(first, margin), second)) expect(groupOf.get(i)).toBe(groupOf.get(j));
          }),
        );
        for (const group of groups)
          expect(
            reach(
              boxes.map((each) => growBox(each, margin / 2)),
              group[0] ?? 0,
            ),
          ).toEqual(group);
      }),
    );
  });

  it('takes steps in proportion to the boxes, however many lie on each other', () => {
    const looksOver = (count: number): number => {
      let looks = 0;
      const boxes = Array.from({ length: count }, (_, i) => ({ minX: 0, minY: i / 1e6, maxX: 9, maxY: 9 }));
      const watch = () => {
        looks += 1;
        return undefined;
      };
      expect(underWatch(watch, () => clusterBoxes(boxes))).toHaveLength(1);
      return looks;
    };
    expect(looksOver(80_000)).toBeLessThan(10 * looksOver(10_000));
  });

  it('has no groups of nothing', () => {
    expect(clusterBoxes([])).toEqual([]);
  });
});

/** All that can be reached over touching boxes, by search in breadth. */
function reach(boxes: readonly { minX: number; minY: number; maxX: number; maxY: number }[], start: number): number[] {
  const seen = new Set([start]);
  for (const at of seen) {
    const here = boxes[at];
    boxes.forEach((other, index) => {
      if (here && boxesTouch(here, other)) seen.add(index);
    });
  }
  return [...seen].sort((a, b) => a - b);
}
