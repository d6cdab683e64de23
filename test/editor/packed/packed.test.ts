/** What is shipped: the packed extension, installed as users do, opens the demo and mends it. */
import { expect, inject, test } from 'vitest';
import { DEMO, useWorkbench } from '../workbench/workbench';

const bench = useWorkbench('media/demo');

test('it is installed under its name', () => {
  expect(inject('installed')).toMatch(/^tombolo\.tombolo-stencil$/m);
});

test('it underlines, shows the bench and bridges', async () => {
  await bench.openFile(DEMO);
  await bench.page.locator('.squiggly-error').first().waitFor();
  await bench.command('Tombolo: Open Stencil Preview (Bench)');
  const island = bench.bench.getByRole('button', { name: /Island, 272/ });
  await island.waitFor();
  await bench.command('Tombolo: Bridge Every Island');
  await island.waitFor({ state: 'detached' });
  await bench.shot('packed');
});
