/** Bridging thousands of real drawings, told in every way. Prints the table, what failed, and what was refused. */
import { setImmediate } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { glyphs, icons } from '../edits/corpus';
import { awkward, dashes, drawings, instances, lines, outlines, sheets, topGroups } from '../edits/drawings';
import { judgeBridging, type Verdict } from '../edits/judge';
import { WAYS } from '../edits/variety';

/** How many, unless TOMBOLO_JOBS says otherwise. */
const JOBS = Number(process.env.TOMBOLO_JOBS ?? 2000);
const LETTERS = 'ABDOPQRabdegopq04689@#%$&';

interface Job {
  readonly way: string;
  readonly name: string;
  readonly text: string;
}

function* jobs(): Iterable<Job> {
  const made = { ...drawings, ...lines, ...sheets, ...outlines, ...instances, ...awkward, ...dashes, ...topGroups };
  for (const [name, text] of Object.entries(made)) yield { way: 'made by hand', name, text };
  for (const [weight, evenodd] of [
    ['400', false],
    ['400', true],
    ['700', false],
    ['700', true],
  ] as const) {
    for (const { name, text } of glyphs(LETTERS, weight, evenodd)) yield { way: 'letters', name, text };
  }
  for (const [i, { name, text }] of icons().entries()) {
    const way = WAYS[i % WAYS.length];
    const data = [...text.matchAll(/ d="([^"]+)"/g)].map(([, each]) => each).join('');
    if (way) yield { way: way.name, name, text: way.tell(data) };
  }
}

interface Row {
  jobs: number;
  islands: number;
  bridges: number;
  refused: number;
  /** Islands that all else is farther from than a bridge may be long. */
  tooFar: number;
  failed: number;
}

test('icons, letters and drawings made by hand', { timeout: 6 * 3_600_000 }, async () => {
  const rows = new Map<string, Row>();
  const lost: string[] = [];
  let done = 0;
  for (const { way, name, text } of jobs()) {
    if (done >= JOBS) break;
    const { islands, bridges, refusals, tooFar, faults } = judged(text);
    // The renderer's pictures are only freed between turns of the event loop; there are gigabytes of them.
    await setImmediate();
    if (islands === 0 && faults.length === 0) continue;
    done += 1;
    const row = rows.get(way) ?? { jobs: 0, islands: 0, bridges: 0, refused: 0, tooFar: 0, failed: 0 };
    rows.set(way, {
      jobs: row.jobs + 1,
      islands: row.islands + islands,
      bridges: row.bridges + bridges,
      refused: row.refused + Number(refusals.length > 0),
      tooFar: row.tooFar + tooFar,
      failed: row.failed + Number(faults.length > 0),
    });
    for (const sentence of refusals) lost.push(`${way}, ${name}: refused: ${sentence}`);
    for (const sentence of faults) lost.push(`${way}, ${name}: ${sentence}`);
  }
  console.table(Object.fromEntries(rows));
  console.log(lost.join('\n'));
  const sum = (key: keyof Row): number => [...rows.values()].reduce((total, row) => total + row[key], 0);
  const sums = (['islands', 'bridges', 'refused', 'tooFar', 'failed'] as const).map((key) => `${sum(key)} ${key}`);
  console.log(`${done} drawings, ${sums.join(', ')}`);
  expect(done).toBe(JOBS);
  expect(Math.min(...WAYS.map(({ name }) => rows.get(name)?.jobs ?? 0))).toBeGreaterThanOrEqual(2);
  expect(sum('failed')).toBe(0);
  expect(sum('refused')).toBeLessThan(0.01 * JOBS);
});

function judged(text: string): Verdict {
  try {
    return judgeBridging(text);
  } catch (error) {
    return { islands: 0, bridges: 0, refusals: [], tooFar: 0, faults: [String(error)] };
  }
}
