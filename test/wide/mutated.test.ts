/**
 * Real documents, mutated, with all fixes of all their findings applied: nothing of what may never be (`test/fuzz/judge.ts`).
 * `npm run fuzz` goes on for as long as it is let.
 */
import { availableParallelism } from 'node:os';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fuzzInBatches } from '../fuzz/batches';
import { bundled } from '../fuzz/bundle.mjs';
import { rowsOf } from '../fuzz/table';

/** So many are known to hold; how many of them are judged, the time says. */
const DOCUMENTS = 780;
const SECONDS = 300;
/** Characters: of small documents more are judged. */
const LONGEST = 1500;

let program: Awaited<ReturnType<typeof bundled>>;
beforeAll(async () => {
  program = await bundled('test/fuzz/batch.ts');
});
afterAll(() => program.remove());

test.each([
  ['their fixes applied', { seed: 20_261_129, count: DOCUMENTS, seconds: SECONDS, pictures: false }],
  ['pictures before and after each fix', { seed: 20_261_130, count: 110, seconds: SECONDS / 4, pictures: true }],
])('mutated documents: %s', async (_, order) => {
  const ways = { from: 0, fixed: Infinity, longest: LONGEST, jobs: availableParallelism() };
  const table = await fuzzInBatches({ ...order, ...ways, program: program.file });
  console.table(rowsOf(table));
  expect(table.documents).toBeGreaterThan(0);
  expect(table.failures.map(({ kind, number, words }) => `${kind}: document ${number}: ${words}`)).toEqual([]);
});
