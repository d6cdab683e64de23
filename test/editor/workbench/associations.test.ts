/** With the editor's own associations an SVG opens as a picture; from there one click leads to text and bench. */
import { expect, test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace', {
  'workbench.editorAssociations': {},
  'workbench.colorTheme': 'Default High Contrast',
});

test('the picture has a button that opens the text with the bench beside it', async () => {
  await retry(async () => {
    // Opened before the editor knows its extensions, it would be text.
    await bench.command('View: Close All Editors');
    await bench.openFile('ring.svg');
    await bench.page.locator('iframe.webview').first().waitFor({ timeout: 5000 });
  });
  await bench.shot('picture-1');
  await bench.page.getByRole('button', { name: 'Tombolo: Open Stencil Preview (Bench)' }).first().click();
  await bench.page.getByRole('tab', { name: 'Stencil Preview (Bench): ring.svg' }).waitFor();
  await bench.page.locator('.squiggly-error').first().waitFor();
  await bench.shot('picture-2-bench');
});

test("the picture's own menu leads to the bench; a stencil is not offered to be set up", async () => {
  const item = (name: string) => bench.page.getByRole('menuitem', { name });
  const menuOf = async (file: string) => {
    await bench.command('View: Close All Editors');
    await bench.openFile(file);
    await retry(async () => {
      await bench.bench.locator('img').click({ button: 'right', timeout: 5000 });
      await item('Tombolo: Open Stencil Preview (Bench)').waitFor({ timeout: 3000 });
    });
  };
  await menuOf('plain.svg');
  await item('Tombolo: Set Up as Stencil…').waitFor();
  await bench.shot('picture-3-menu');
  await bench.page.keyboard.press('Escape');
  await menuOf('ring.svg');
  expect(await item('Tombolo: Set Up as Stencil…').count()).toBe(0);
  await retry(async () => {
    // A menu that has just opened takes no click.
    await item('Tombolo: Open Stencil Preview (Bench)').click({ timeout: 3000 });
    await item('Tombolo: Open Stencil Preview (Bench)').waitFor({ state: 'detached', timeout: 3000 });
  });
  await bench.page.getByRole('tab', { name: 'Stencil Preview (Bench): ring.svg' }).waitFor();
});

test('the Explorer offers the bench for drawings only', async () => {
  const item = bench.page.getByRole('menuitem', { name: 'Tombolo: Open Stencil Preview (Bench)' });
  await bench.page.getByRole('treeitem', { name: 'plain.svg' }).click({ button: 'right' });
  await item.waitFor();
  await bench.page.keyboard.press('Escape');
  await bench.page.getByRole('treeitem', { name: 'project' }).click({ button: 'right' });
  await bench.page.getByRole('menuitem').first().waitFor();
  expect(await item.count()).toBe(0);
  await bench.page.keyboard.press('Escape');
});
