import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EarlierBoxes } from '../../src/geometry/earlier-boxes';
import type { Box } from '../../src/geometry/region';
import { growBox, boxesTouch } from '../../src/geometry/rings';
import { point } from './arbitraries';

const box = fc.tuple(point, fc.nat(30), fc.nat(30)).map(([{ x, y }, width, height]): Box =>
  ({ minX: x, minY: y, maxX: x + width, maxY: y + height }));
const boxes = fc.array(box, { minLength: 1, maxLength: 60 });

describe('EarlierBoxes', () => {
  it('finds those before each box that come within its reach', () => {
    fc.assert(fc.property(boxes, fc.nat(40), (row, far) => {
      const reach = (number: number) => (number % 3) * far;
      const near = new EarlierBoxes(row, reach);
      row.forEach((one, number) => {
        const around = growBox(one, reach(number));
        const expected = [...row.keys()].filter((i) => i < number && boxesTouch(around, row[i] as Box));
        expect([...near.before(number)]).toEqual(expected);
      });
    }));
  });

  it('can be asked in any order', () => {
    fc.assert(fc.property(boxes, fc.array(fc.nat(), { maxLength: 30 }), (row, asked) => {
      const near = new EarlierBoxes(row, () => 1);
      for (const number of asked.map((i) => i % row.length)) {
        const expected = [...row.keys()].filter((i) => i < number && boxesTouch(growBox(row[number] as Box, 1), row[i] as Box));
        expect([...near.before(number)]).toEqual(expected);
      }
    }));
  });
});
