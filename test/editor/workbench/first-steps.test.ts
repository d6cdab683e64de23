/** The walkthrough, the status of a drawing, and the pages of checks, as they are seen. */
import { expect, test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('media/demo');

test('the first steps show a picture at each step', async () => {
  await bench.command('Tombolo: Show the First Steps');
  const steps = bench.page.locator('.getting-started-step');
  await expect.poll(() => steps.count()).toBe(5);
  for (const [index, title] of ['Start a drawing', 'Say what it is cut from', 'See what would fall out'].entries()) {
    await steps.nth(index).click();
    await steps.nth(index).getByText(title).waitFor();
    const picture = bench.page.locator('.getting-started-media img').first();
    await expect.poll(() => picture.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBeGreaterThan(0);
    await bench.shot(`first-steps-${index + 1}`);
  }
});

test('the status says what was found, how large it is, and which tombolo.json is in force', async () => {
  await bench.openFile('waymarker.svg');
  // A page that other tests have left opens the drawing where they last looked at it.
  await bench.page.keyboard.press('Control+Home');
  await bench.page.locator('.squiggly-error').first().waitFor();
  const status = bench.page.locator('[id="status.languageStatus"]');
  await retry(async () => {
    await bench.page.mouse.move(200, 300);
    await status.hover();
    await bench.page.locator('.hover-language-status').getByText('148 × 105 mm').first().waitFor({ timeout: 5000 });
  });
  const shown = bench.page
    .locator('.monaco-hover:visible, .workbench-hover:visible')
    .filter({ hasText: '148 × 105 mm' });
  for (const words of ['3 errors', 'filled = cut out', 'Show Log', 'tombolo.json', 'Open']) {
    await shown.getByText(words).first().waitFor();
  }
  await bench.shot('status-1');
});
