import { expect, it as test } from 'vitest';
import type { JobLayer } from '../../../src/cut/job/job';
import { rowOf } from '../../../src/cut/job/table';

const layer = { number: 1, name: 'Sun', paint: '#e8a33d', area: 1, cutLength: 1, coats: 1, marks: 3 };

test.each([
  [0.00002, '< 0.1 %'],
  [0.004, '0.4 %'],
  [0.12, '12 %'],
  [0, '0.0 %'],
])('of %d cans says %s: little paint is not none', (cans, told) => {
  expect(rowOf({ ...layer, cans } as unknown as JobLayer)).toContain(told);
});
