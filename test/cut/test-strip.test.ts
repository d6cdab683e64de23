/** The strip is at true size, its widths are what they are called, and only that is too fine which is meant to be. */
import { expect, it as test } from 'vitest';
import materials from '../../src/config/materials.json';
import { bridgesOf } from '../../src/engine/fixes/standing-bridges';
import { check, readConfig, STRIP_WIDTHS, testStrip } from '../../src/engine/index';
import { areaOf } from '../../src/geometry/boolean/index';

test('goes from 0.2 to 1.5 mm, and fits a bed of 200 mm', () => {
  expect(STRIP_WIDTHS).toEqual([0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.4, 1.5]);
  const { width, height } = check(testStrip()).drawing;
  expect(width).toBeLessThanOrEqual(200);
  expect(height).toBeLessThanOrEqual(200);
});

test('has two bridges and a slot of each width, as they are measured', () => {
  const report = check(testStrip());
  const [sheet] = report.sheets;
  const bridges = bridgesOf(report, sheet!).map(({ width }) => Math.round(width * 100) / 100);
  for (const width of STRIP_WIDTHS) expect(bridges.filter((each) => each === width).length).toBeGreaterThanOrEqual(2);
  // A slot is 8 mm long; a ring has 8 by 8 mm less 4 by 4 mm and two bridges of 2 mm; six squares of 1.5 mm mark the widths.
  const expected = STRIP_WIDTHS.reduce((sum, width) => sum + 8 * width + 48 - 4 * width, 6 * 1.5 ** 2);
  expect(areaOf(sheet!.openings)).toBeCloseTo(expected, 3);
});

test.each(Object.keys(materials))('is sound but for what is meant to be too fine, in %s', (material) => {
  const { config } = readConfig(JSON.stringify({ material, cutter: { tool: 'knife' } }));
  const { findings } = check(testStrip(), { config });
  const grave = findings.filter(({ severity }) => severity === 'warning' || severity === 'error');
  expect(grave.map(({ message }) => message)).toEqual([]);
});
