import { describe, expect, it } from 'vitest';
import { derivedFacts, memoizeByIdentity } from '../../../src/geometry/base/derived-facts';
import type { Ring } from '../../../src/geometry/base/polygon-types';
import { boxOfRing, perimeter, ringOfBox, signedArea } from '../../../src/geometry/base/ring';

describe('memoizeByIdentity', () => {
  it('computes once for each object, whatever comes of it', () => {
    const asked: object[] = [];
    const sizeOf = memoizeByIdentity('size of a list, in a test', (list: readonly number[]) => {
      asked.push(list);
      return list.length > 0 ? list.length : undefined;
    });
    const [one, other, empty] = [[1], [1], []];
    expect([one, other, empty, one, other, empty].map((list) => sizeOf(list))).toEqual([
      1,
      1,
      undefined,
      1,
      1,
      undefined,
    ]);
    expect(asked).toEqual([one, other, empty]);
  });
});

describe('a ring', () => {
  const square = () => ringOfBox({ minX: 0, minY: 0, maxX: 4, maxY: 4 });

  it('cannot be written to by its type', () => {
    const ring: Ring = square();
    // @ts-expect-error: a ring never changes
    ring[2] = 4;
    // @ts-expect-error: a ring never changes
    expect(() => ring.fill(4)).not.toThrow();
  });

  it('that was written to in spite of that is found out at the next question', () => {
    for (const measure of [boxOfRing, signedArea, perimeter]) {
      const ring = square();
      measure(ring);
      expect(() => measure(ring)).not.toThrow();
      (ring as Float64Array)[2] = 99;
      expect(() => measure(ring)).toThrow('Changed since it was known');
    }
  });

  it('is found out too when two of its numbers change places', () => {
    const ring = square() as Float64Array;
    boxOfRing(ring);
    [ring[0], ring[2]] = [ring[2]!, ring[0]!];
    expect(() => boxOfRing(ring)).toThrow('Changed since it was known');
  });
});

describe('the tables of derived facts', () => {
  it('have one name each', () => {
    derivedFacts.table('made once, in a test');
    expect(() => derivedFacts.table('made once, in a test')).toThrow('made once, in a test');
  });

  it('tell how much was derived and recalled, and forget when they are cleared', () => {
    const counts = () => derivedFacts.counts().get('area of a ring');
    derivedFacts.clear();
    const ring = ringOfBox({ minX: 0, minY: 0, maxX: 4, maxY: 4 });
    [signedArea(ring), signedArea(ring), signedArea(ring)].forEach((area) => expect(area).toBe(16));
    expect(counts()).toEqual({ derived: 1, recalled: 2 });
    derivedFacts.clear();
    expect(counts()).toEqual({ derived: 0, recalled: 0 });
    expect(signedArea(ring)).toBe(16);
    expect(counts()).toEqual({ derived: 1, recalled: 0 });
  });
});
