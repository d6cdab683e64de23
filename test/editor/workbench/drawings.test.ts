/** Drawings that are no stencils yet. */
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { picturesOfFailures, root, Workbench } from './workbench';

let bench: Workbench;

beforeAll(async () => {
  bench = await Workbench.open(path.join(root, 'test/editor/workspace'), {
    'workbench.colorTheme': 'Default Dark Modern',
  });
});
afterAll(async () => { await bench?.close(); });
picturesOfFailures(() => bench);

describe('a drawing that nobody called a stencil', () => {
  test('has no underlines; the bench says so and offers to begin', async () => {
    await bench.openFile('plain.svg');
    await bench.command('Tombolo: Open the Bench');
    await bench.bench.getByText('has not been called a stencil yet').waitFor();
    expect(await bench.page.locator('.squiggly-error').count()).toBe(0);
    await bench.shot('plain-1-left-in-peace');
  });

  test('is one after a click, its questions declined', async () => {
    await bench.bench.getByText('Begin a stencil here').click();
    await bench.page.getByText('How wide is the artwork cut?').waitFor();
    await bench.page.keyboard.press('Escape');
    await bench.page.locator('.squiggly-error').first().waitFor();
    await bench.bench.getByText('has not been called a stencil yet').waitFor({ state: 'hidden' });
    await bench.shot('plain-2-begun');
  });
});
