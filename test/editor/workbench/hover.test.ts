/** What the editor shows where the pointer rests on a finding. */
import { expect, test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');

test('a little picture shows the place of the finding', async () => {
  await bench.openFile('ring.svg');
  await bench.page.keyboard.press('Control+Home');
  await bench.page.locator('.squiggly-error').first().waitFor();
  const picture = bench.page.locator('.monaco-hover:visible img[src^="data:image/svg"]').first();
  await retry(async () => {
    await bench.page.mouse.move(700, 600);
    await bench.page.waitForTimeout(500);
    const box = await bench.page.locator('.squiggly-error').first().boundingBox();
    await bench.page.mouse.move((box?.x ?? 0) + 20, (box?.y ?? 0) + 8, { steps: 4 });
    await picture.waitFor({ timeout: 4000 });
  });
  expect(await picture.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(160);
  await bench.shot('hover-1-picture');
});
