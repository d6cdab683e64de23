/** What the bench says when its file is deleted, and when the `tombolo.json` in force is broken; and which editor it uses. */
import { rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { useWorkbench } from './workbench';

const workbench = useWorkbench('test/editor/workspace');
const bench = () => workbench.bench;

test('a broken tombolo.json is said in the drawing and on the bench', async () => {
  await workbench.openFile('reeds.svg', 'project');
  await workbench.command('Tombolo: Open Stencil Preview (Bench)');
  await bench().locator('.finding').first().waitFor();
  writeFileSync(path.join(workbench.folder, 'project/tombolo.json'), '{ "material": "card-0.33" }');
  await bench().getByText('tombolo.json has 1 error').waitFor();
  await workbench.page.keyboard.press('Control+Shift+M');
  await workbench.problems.locator('.monaco-list-row', { hasText: 'tombolo.json has 1 error' }).first().waitFor();
  await workbench.shot('missing-1-broken-config');
  await workbench.page.keyboard.press('Control+J');
  writeFileSync(path.join(workbench.folder, 'project/tombolo.json'), '{}');
  await bench().getByText('tombolo.json has 1 error').waitFor({ state: 'hidden' });
});

test('a finding that is chosen is selected in the editor that was used last', async () => {
  await workbench.openFile('reeds.svg');
  await workbench.command('View: Split Editor Down');
  const editors = workbench.page.locator('.editor-instance .monaco-editor');
  await expect.poll(() => editors.count()).toBe(2);
  await editors.nth(1).locator('.view-line').first().click();
  await bench().locator('.finding').first().click();
  await expect.poll(() => editors.nth(1).locator('.selected-text').count()).toBeGreaterThan(0);
  expect(await editors.nth(0).locator('.selected-text').count()).toBe(0);
  await workbench.shot('missing-2-split');
});

test('a file that is deleted is said to be gone', async () => {
  rmSync(path.join(workbench.folder, 'project/reeds.svg'));
  await bench().getByText('reeds.svg is gone').waitFor();
  await workbench.shot('missing-3-deleted');
});
