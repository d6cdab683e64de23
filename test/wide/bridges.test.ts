/** Bridging thousands of real drawings. Prints what failed, and the figures. */
import { expect, test } from 'vitest';
import { bridge, islandsOf } from '../bridges/bridging';
import { glyphs, icons } from '../bridges/corpus';

const JOBS = 2000;
const LETTERS = 'ABDOPQRabdegopq04689@#%$&';

test('icons and glyphs', { timeout: 3_600_000 }, () => {
  const weights = [['400', false], ['400', true], ['700', false], ['700', true]] as const;
  const drawings = [...weights.flatMap(([weight, evenodd]) => glyphs(LETTERS, weight, evenodd)), ...icons()];
  const failures: string[] = [];
  let [jobs, islands, bridges] = [0, 0, 0];
  for (const { name, text } of drawings) {
    if (jobs >= JOBS) break;
    const failure = attempt(text, (before, count) => {
      jobs += 1;
      islands += before;
      bridges += count;
    });
    if (failure) failures.push(`${name}: ${failure}`);
  }
  const sum = `${jobs} drawings, ${islands} islands, ${bridges} bridges, ${failures.length} failed`;
  console.log([sum, ...failures].join('\n'));
  expect(jobs).toBe(JOBS);
  expect(failures.length).toBeLessThan(0.01 * JOBS);
});

/** What went wrong, in words. */
function attempt(text: string, count: (islands: number, bridges: number) => void): string | undefined {
  try {
    const result = bridge(text);
    const before = islandsOf(result.before);
    if (before === 0) return undefined;
    count(before, result.bridges.length);
    if (islandsOf(result.after) > 0) return `${islandsOf(result.after)} of ${before} islands left`;
    if (result.error > result.allowance) return `${result.error} mm² changed elsewhere`;
    const wrong = Math.abs(result.lost - result.expectedLoss);
    return wrong > 0.02 * result.expectedLoss + 1e-3 ? `took ${result.lost} mm² for ${result.expectedLoss}` : undefined;
  } catch (error) {
    count(0, 0);
    return String(error);
  }
}
