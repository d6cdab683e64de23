/** A stack of several files: its order is that of tombolo.json, and is changed and undone there. */
import { beforeAll, expect, test } from 'vitest';
import { useWorkbench } from './workbench';

const workbench = useWorkbench('test/editor/workspace');
const inBench = (selector: string) => workbench.bench.locator(selector);
const names = () => inBench('.layers label span').allTextContents();

beforeAll(async () => {
  await workbench.openFile('sun.svg', 'print');
  await workbench.command('Tombolo: Open Stencil Preview (Bench)');
  await inBench('.layers li').nth(1).waitFor({ state: 'attached' });
  await workbench.showList('Layers');
});

test('the bench shows the whole print on its ground, whichever file is open', async () => {
  expect(await names()).toEqual(['sun', 'reeds']);
  expect(await inBench('.ground').getAttribute('fill')).toBe('#c9d6c3');
  await workbench.shot('project-1');
});

test('to go to another file of the print changes nothing of what is looked at', async () => {
  await workbench.bench.getByRole('checkbox', { name: 'sun' }).uncheck();
  await workbench.bench.getByRole('button', { name: 'Zoom in' }).click();
  const nearness = await inBench('.nearness').textContent();
  await workbench.openFile('reeds.svg');
  await workbench.page.getByRole('tab', { name: 'Stencil Preview (Bench): reeds.svg' }).waitFor();
  await workbench.page.waitForTimeout(500);
  expect(await workbench.bench.getByRole('checkbox', { name: 'sun' }).isChecked()).toBe(false);
  expect(await inBench('.nearness').textContent()).toBe(nearness);
  await workbench.bench.getByRole('checkbox', { name: 'sun' }).check();
});

test('a layer painted later moves its entry; undo in tombolo.json brings it back', async () => {
  await workbench.bench.getByRole('button', { name: 'Move sun down in the spray order' }).click();
  await expect.poll(names, { timeout: 15_000 }).toEqual(['reeds', 'sun']);
  await workbench.openFile('tombolo.json');
  await workbench.save();
  expect(workbench.onDisk('print/tombolo.json')).toContain(`    { "from": "reeds.svg", "paint": "#6b8a4e" },
    { "from": "sun.svg", "paint": "#f0b13c" } // the bank`);
  await workbench.page.locator('.editor-instance .view-lines').first().click();
  await workbench.page.keyboard.press('Control+Z');
  await expect.poll(names, { timeout: 15_000 }).toEqual(['sun', 'reeds']);
});
