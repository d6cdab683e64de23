import { describe, expect, it } from 'vitest';
import { defined } from '../../../src/base/defined';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { buildSegmentIndex, placeOnSegment } from '../../../src/geometry/spatial/segment-index';

describe('defined', () => {
  it('gives the element, whatever it is', () => {
    expect(defined([0][0])).toBe(0);
    expect(defined([Number.NaN][0])).toBeNaN();
    expect(defined([null][0])).toBeNull();
  });

  it('throws for an index beyond either end', () => {
    expect(() => defined([1, 2][2])).toThrow(RangeError);
    expect(() => defined(Float64Array.of(1, 2)[-1])).toThrow(RangeError);
  });

  it('shows that an edge was asked for which is not there', () => {
    const index = buildSegmentIndex([polygonOfBox({ minX: 0, minY: 0, maxX: 10, maxY: 5 })]);
    const middle = (edge: number): number => placeOnSegment(index, edge, { x: 5, y: 0 }).distance;
    expect([0, 1, 2, 3].map(middle)).toContain(0);
    expect(() => middle(4)).toThrow(RangeError);
  });
});
