/** The README's picture of a sheet's cuts on the bench: the ways between them, those that are done, which come first. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { useDemo } from '../workbench/workbench';
import { savePicture } from './screenshot';

const workbench = useDemo({
  'editor.minimap.enabled': false,
  'editor.wordWrap': 'on',
  'editor.wrappingIndent': 'none',
  'editor.stickyScroll.enabled': false,
  'breadcrumbs.enabled': false,
});

test('half of the heron is cut', async () => {
  const { bench, page, folder } = workbench;
  const config = JSON.parse(workbench.onDisk('tombolo.json')) as { cutter: object };
  const cutter = { ...config.cutter, speed: '20mm/s', acceleration: '500mm/s²' };
  writeFileSync(path.join(folder, 'tombolo.json'), JSON.stringify({ ...config, cutter }));
  await page.setViewportSize({ width: 1360, height: 850 });
  await workbench.widenBench();
  await bench.locator('.cutting summary').click();
  const told = bench.locator('.cutting .told').first();
  await expect.poll(() => told.textContent(), { timeout: 30_000 }).toMatch(/^Cutting takes/);
  await bench.getByRole('button', { name: '3. Heron' }).click();
  await bench.getByRole('button', { name: 'Show cut order' }).click();
  const slider = bench.getByRole('slider', { name: 'Cuts that are done' });
  await slider.waitFor();
  await slider.fill('7');
  await bench.getByRole('button', { name: 'Write cut files…' }).scrollIntoViewIfNeeded();
  await page.waitForTimeout(700);
  await savePicture(page, 'cut-order.png');
});
