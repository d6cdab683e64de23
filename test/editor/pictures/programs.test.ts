/** The README's picture of a program that draws: the finding at its line, and the bench beside it. */
import { afterAll, test } from 'vitest';
import { useWorkbench } from '../workbench/workbench';
import { savePicture } from './screenshot';

const workbench = useWorkbench('media/demo/posts', {
  'editor.minimap.enabled': false,
  'editor.stickyScroll.enabled': false,
  'breadcrumbs.enabled': false,
});

afterAll(async () => {
  await workbench.command('Tasks: Terminate Task');
  await workbench.page.keyboard.press('Escape');
});

test('a program beside its drawing', async () => {
  const { page, bench } = workbench;
  await page.setViewportSize({ width: 1360, height: 850 });
  await workbench.openFile('posts.mjs');
  await workbench.command("Tombolo: Watch This Program's Drawings");
  await bench.locator('.finding').nth(2).waitFor();
  await workbench.command('View: Focus First Editor Group');
  await page.keyboard.press('Control+G');
  await page.locator('.quick-input-widget input').fill(':24:48');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+B');
  await page.waitForTimeout(1500);
  await page.keyboard.press('Control+.');
  await page.locator('.action-widget .monaco-list-row.action').first().waitFor();
  await page.waitForTimeout(700);
  await savePicture(page, 'program.png');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+B');
});
