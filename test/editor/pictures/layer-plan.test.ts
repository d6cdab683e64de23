/** The README's picture of a layer's plan: one of its bridges on its way, and its mirror image with it. */
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

test('a bridge of the sun is dragged, and its mirror image follows', async () => {
  const { bench, page } = workbench;
  await page.setViewportSize({ width: 1360, height: 850 });
  await workbench.widenBench();
  await bench.getByRole('button', { name: 'Bridge "Sun"…' }).click();
  await bench.getByRole('radio', { name: 'Level' }).check();
  const strip = bench.locator('.ghost-strip[data-look=planned]').first();
  await expect.poll(() => bench.locator('.plan-bar p').textContent(), { timeout: 30_000 }).toMatch(/^Bridge every/);
  const box = await strip.boundingBox();
  if (!box) throw new Error('no bridge');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y, { steps: 2 });
  await page.mouse.down();
  await page.mouse.move(x + 6, y + 36, { steps: 6 });
  await expect.poll(() => bench.locator('.ghost-strip[data-look=moving]').count(), { timeout: 30_000 }).toBe(2);
  await page.waitForTimeout(700);
  await savePicture(page, 'layer-plan.png');
  await page.keyboard.press('Escape');
  await page.mouse.up();
});
