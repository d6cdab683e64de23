import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Box } from '../../../src/geometry/base/polygon-types';
import { boxesTouch, growBox } from '../../../src/geometry/base/ring';
import { packBoxes, SequenceIndex } from '../../../src/geometry/spatial/sequence-index';
import { point } from '../arbitraries';

const box = fc
  .tuple(point, fc.nat(30), fc.nat(30))
  .map(([{ x, y }, width, height]): Box => ({ minX: x, minY: y, maxX: x + width, maxY: y + height }));

/**
 * Runs of boxes each of which begins where the last one ends, with leaps between them: as the edges of small outlines.
 */
const steps = fc.array(fc.tuple(fc.nat(4), fc.nat(4)), { minLength: 1, maxLength: 12 });
const runs = fc.array(fc.tuple(point, steps), { minLength: 1, maxLength: 12 }).map((starts) =>
  starts.flatMap(([from, course]) => {
    let { x, y } = from;
    return course.map(([dx, dy]): Box => ({ minX: x, minY: y, maxX: (x += dx), maxY: (y += dy) }));
  }),
);

const boxes = fc.oneof(fc.array(box, { minLength: 1, maxLength: 200 }), runs);

/** All are looked at. */
const touching = (row: readonly Box[], around: Box): number[] =>
  [...row.keys()].filter((i) => boxesTouch(around, row[i] as Box));

/** What is written over a list that held something else. */
function gathered(gather: (found: number[]) => number): number[] {
  const found = [-1, -2, -3];
  const count = gather(found);
  return found.slice(0, count);
}

describe('SequenceIndex', () => {
  it('finds those that come within the reach of each, and those of them before and after it', () => {
    fc.assert(
      fc.property(boxes, fc.nat(40), (row, far) => {
        const reach = (number: number) => (number % 3) * far;
        const inRow = new SequenceIndex(packBoxes(row), reach);
        row.forEach((one, number) => {
          const expected = touching(row, growBox(one, reach(number)));
          expect(gathered((found) => inRow.near(number, found))).toEqual(expected);
          expect(gathered((found) => inRow.nearBefore(number, found))).toEqual(expected.filter((i) => i < number));
          expect(gathered((found) => inRow.nearAfter(number, found))).toEqual(expected.filter((i) => i > number));
        });
      }),
    );
  });

  it('can be asked in any order', () => {
    fc.assert(
      fc.property(boxes, fc.array(fc.nat(), { maxLength: 30 }), (row, asked) => {
        const inRow = new SequenceIndex(packBoxes(row));
        for (const number of asked.map((i) => i % row.length)) {
          expect(gathered((found) => inRow.near(number, found))).toEqual(touching(row, row[number] as Box));
        }
      }),
    );
  });

  it('finds those that touch any box', () => {
    fc.assert(
      fc.property(boxes, box, (row, around) => {
        const found: number[] = [];
        new SequenceIndex(packBoxes(row)).search(
          around.minX,
          around.minY,
          around.maxX,
          around.maxY,
          (i) => found.push(i) < 0,
        );
        expect(found.sort((a, b) => a - b)).toEqual(touching(row, around));
      }),
    );
  });

  it('stops when told to', () => {
    fc.assert(
      fc.property(boxes, box, (row, around) => {
        let found = 0;
        new SequenceIndex(packBoxes(row)).search(
          around.minX,
          around.minY,
          around.maxX,
          around.maxY,
          () => (found += 1) > 0,
        );
        expect(found).toBe(Math.min(1, touching(row, around).length));
      }),
    );
  });
});
