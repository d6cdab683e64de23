/** Nothing on the bench keeps people out: each way of looking in each theme, looked over by axe-core. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { useDemo } from './workbench';

const bench = useDemo();
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

beforeAll(() => bench.widenBench());

/** Moderate, serious and critical findings, each with its elements. By the debugger: no policy of the page is loosened. */
async function barriers(): Promise<string[]> {
  const body = await bench.bench.locator('body').elementHandle();
  const frame = await body?.ownerFrame();
  if (!frame) throw new Error('The bench has no page.');
  await frame.evaluate(axeSource);
  const options: RunOptions = { resultTypes: ['violations'] };
  const results = await frame.evaluate(
    (given) =>
      (globalThis as unknown as { axe: { run(what: Document, how: object): Promise<AxeResults> } }).axe.run(
        document,
        given,
      ),
    options,
  );
  expect(results.passes.length, 'rules that axe tried').toBeGreaterThan(15);
  return results.violations
    .filter(({ impact }) => impact !== 'minor')
    .flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ''}`));
}

describe.each([
  ['Default Light Modern', 'vscode-light'],
  ['Default Dark Modern', 'vscode-dark'],
  ['Default High Contrast', 'vscode-high-contrast'],
  ['Default High Contrast Light', 'vscode-high-contrast-light'],
])('%s', (theme, bodyClass) => {
  beforeAll(async () => {
    bench.chooseTheme(theme);
    await bench.bench.locator(`body.${bodyClass}`).waitFor();
  });

  test.each(['Print', 'Single sheet', 'All sheets'])('%s', async (look) => {
    await bench.bench.getByRole('radio', { name: look }).check();
    expect(await barriers()).toEqual([]);
  });

  test('with a card, a planned bridge and the question about the screen', async () => {
    await bench.bench.getByRole('radio', { name: 'Print' }).check();
    await bench.bench.locator('.canvas').focus();
    await bench.page.keyboard.press('.');
    await bench.bench.locator('.part-card').waitFor();
    expect(await barriers()).toEqual([]);
    await bench.bench.getByRole('button', { name: /Island, 272/ }).click();
    await bench.bench.locator('.ghost-bar').waitFor();
    expect(await barriers()).toEqual([]);
    await bench.bench.getByRole('button', { name: 'Cancel' }).click();
    await bench.chooseMore('Calibrate screen…');
    await bench.bench.getByRole('dialog').waitFor();
    expect(await barriers()).toEqual([]);
    await bench.bench.getByRole('button', { name: 'Cancel' }).click();
  });
});
