/** A finding that is left as it is: the reason is typed where the caret has been put. */
import { expect, test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');

test('the comment waits for its reason', async () => {
  await bench.openFile('ring.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
  const row = bench.page.locator('.action-widget').getByText(/^(?:Accept|Ignore) floating-island/);
  await retry(async () => {
    await bench.page.keyboard.press('Escape');
    await bench.page.locator('.view-line', { hasText: 'M20 30' }).click();
    await bench.page.keyboard.press('End');
    for (let left = 5; left > 0; left -= 1) await bench.page.keyboard.press('ArrowLeft');
    await bench.page.keyboard.press('Control+.');
    await row.waitFor({ timeout: 5000 });
  });
  await row.click();
  await bench.page.locator('.view-line', { hasText: 'tombolo' }).first().waitFor();
  await bench.page.waitForTimeout(500);
  await bench.page.keyboard.type('hung by hand');
  await expect
    .poll(() => bench.page.locator('.view-line', { hasText: 'hung by hand' }).first().textContent())
    .toMatch(/<!--\stombolo\saccept\sfloating-island:\shung\sby\shand\s-->/);
  await bench.shot('ignore-1-reason');
  await bench.page.locator('.squiggly-error').waitFor({ state: 'detached' });
});
