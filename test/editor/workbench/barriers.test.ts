/** Nothing on the bench keeps people out: each way of looking in each theme, looked over by axe-core. */
import { beforeAll, describe, expect, test } from 'vitest';
import { barriers, THEMES } from './accessibility';
import { useDemo } from './workbench';

const bench = useDemo();

beforeAll(() => bench.widenBench());

describe.each(THEMES)('%s', (theme, bodyClass) => {
  beforeAll(async () => {
    bench.chooseTheme(theme);
    await bench.bench.locator(`body.${bodyClass}`).waitFor();
  });

  test.each(['Print', 'Single sheet', 'All sheets'])('%s', async (look) => {
    await bench.bench.getByRole('radio', { name: look }).check();
    expect(await barriers(bench)).toEqual([]);
  });

  test('with a card, a planned bridge and the question about the screen', async () => {
    await bench.bench.getByRole('radio', { name: 'Print' }).check();
    await bench.bench.locator('.canvas').focus();
    await bench.page.keyboard.press('.');
    await bench.bench.locator('.part-card').waitFor();
    expect(await barriers(bench)).toEqual([]);
    await bench.bench.getByRole('button', { name: /Island, 272/ }).click();
    await bench.bench.locator('.ghost-bar').waitFor();
    expect(await barriers(bench)).toEqual([]);
    await bench.bench.getByRole('button', { name: 'Cancel' }).click();
    await bench.chooseMore('Calibrate screen…');
    await bench.bench.getByRole('dialog').waitFor();
    expect(await barriers(bench)).toEqual([]);
    await bench.bench.getByRole('button', { name: 'Cancel' }).click();
  });
});
