/** A hundred icon layers at three sizes, cut as two sheets. Prints what was refused, what failed, and the largest error. */
import { setImmediate } from 'node:timers/promises';
import { expect, it as test } from 'vitest';
import { iconLayers } from '../outside/icon-layers';
import { judgeTwoSheets } from '../outside/judge-two-sheets';

const LAYERS = 100;

/** Of a hundred, so many at least are whole: small rings have no room for two bridges and what lies between them. */
test.each([
  [100, 100],
  [50, 99],
  [25, 97],
])('icons %s mm wide: at least %s of a hundred', { timeout: 3 * 3_600_000 }, async (size, least) => {
  const lost: string[] = [];
  let [done, whole, worst] = [0, 0, 0];
  for (const { name, text } of iconLayers(LAYERS)) {
    const { refusals, faults, off } = judgeTwoSheets(text, size);
    await setImmediate();
    done += 1;
    whole += Number(refusals.length + faults.length === 0);
    worst = Math.max(worst, off);
    lost.push(...refusals.map((why) => `${name}: refused: ${why}`), ...faults.map((what) => `${name}: ${what}`));
    expect({ name, faults }).toEqual({ name, faults: [] });
  }
  console.log(
    `${size} mm: ${whole} of ${done} whole, areas off by ${worst.toExponential(1)} at most\n${lost.join('\n')}`,
  );
  expect(done).toBe(LAYERS);
  expect(whole).toBeGreaterThanOrEqual(least);
  expect(worst).toBeLessThan(1e-6);
});
