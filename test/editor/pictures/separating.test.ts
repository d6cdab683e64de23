/** The README's picture of the panel in which a picture becomes sheets. */
import { test } from 'vitest';
import { useWorkbench } from '../workbench/workbench';
import { savePicture } from './screenshot';

const workbench = useWorkbench('test/editor/picture');

test('a painted marsh and its print, with a wipe between them', async () => {
  const { bench, page } = workbench;
  await workbench.chooseFromFile('marsh.jpg', 'Tombolo: Turn Picture into Sheets');
  await bench.locator('.paints li').nth(3).waitFor();
  await page.keyboard.press('Control+B');
  await bench.getByRole('spinbutton', { name: 'Number of paints' }).fill('6');
  await page.keyboard.press('Enter');
  await bench.locator('.paints li').nth(5).waitFor();
  await bench.locator('.dials .state', { hasText: /^6 sheets, / }).waitFor();
  await page.waitForTimeout(500);
  await savePicture(page, 'picture-to-sheets.png');
});
