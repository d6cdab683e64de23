/**
 * Real documents, mutated: nothing of what may never be (`test/fuzz/judge.ts`). Each is checked twice, and after a small change
 * both anew and from what was known; all fixes of all its findings are made, what each gives is checked again, one in four anew
 * as well. Most come of short documents, of which ten are judged in the time of a longer one; those of more than 250 bytes are
 * drawn before and after each fix too. `npm run fuzz` goes on for as long as it is let.
 */
import { availableParallelism } from 'node:os';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fuzzInBatches } from '../fuzz/batches';
import { bundled } from '../fuzz/bundle.mjs';
import { rowsOf } from '../fuzz/table';

interface Share {
  readonly seed: number;
  readonly count: number;
  /** Bytes of the documents that are changed. */
  readonly longest: number;
  /** Seconds after which no further document is begun, on a machine that is slow or busy: twice what two processors take. */
  readonly seconds: number;
  /** Documents that have fixes with pictures before and after, at least; of none where there are to be no pictures. */
  readonly pictured: number;
}

/** 20,000 documents in all; of more than 500 there are pictures. */
const SHARES: readonly (readonly [name: string, share: Share])[] = [
  ['of up to 250 bytes', { seed: 20_261_131, count: 17_000, longest: 250, seconds: 1000, pictured: 0 }],
  ['of up to 500 bytes', { seed: 20_261_132, count: 2500, longest: 500, seconds: 500, pictured: 410 }],
  ['of up to 1,500 bytes', { seed: 20_261_133, count: 440, longest: 1500, seconds: 200, pictured: 85 }],
  ['of any length', { seed: 20_261_134, count: 60, longest: 30_000, seconds: 150, pictured: 10 }],
];

let program: Awaited<ReturnType<typeof bundled>>;
beforeAll(async () => {
  program = await bundled('test/fuzz/batch.ts');
});
afterAll(() => program.remove());

test.each(SHARES)('mutated documents %s', { timeout: 3_600_000 }, async (name, { pictured, ...share }) => {
  const ways = { from: 0, fixed: Infinity, jobs: availableParallelism(), pictures: pictured > 0 };
  const table = await fuzzInBatches({ ...share, ...ways, program: program.file });
  console.log(`mutated documents ${name}: ${table.documents} of ${share.count}`);
  console.table(rowsOf(table));
  expect(table.failures.map(({ kind, number, words }) => `${kind}: document ${number}: ${words}`)).toEqual([]);
  if (table.documents === share.count) expect(table.pictured).toBeGreaterThanOrEqual(pictured);
  else expect(table.documents).toBeGreaterThan(0);
});
