import { describe, expect, it } from 'vitest';
import { memoizeByIdentity } from '../../../src/geometry/base/memoize';

describe('remember', () => {
  it('computes once for each object, whatever comes of it', () => {
    const asked: object[] = [];
    const sizeOf = memoizeByIdentity((list: readonly number[]) => {
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
