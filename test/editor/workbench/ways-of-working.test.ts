/** What goes on round a drawing: split editors, a `tombolo.json` that is being typed or broken, a file that moves or goes. */
import { rmSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { findings } from './lightbulb';
import { retry, useWorkbench } from './workbench';

const workbench = useWorkbench('test/editor/ways');
const editors = () => workbench.page.locator('.editor-instance .monaco-editor');
const planned = () => workbench.bench.getByRole('button', { name: 'Add bridge' });
const told = () => findings(workbench).allTextContents();

beforeAll(async () => {
  await workbench.openFile('reeds.svg', 'trail');
  await workbench.command('Tombolo: Open Stencil Preview');
  await findings(workbench).first().waitFor();
});

/** Types over a word in `tombolo.json`; nothing is saved. */
async function typeOver(token: string, word: string): Promise<void> {
  const shown = workbench.page.locator('.editor-instance .view-line span').getByText(`"${token}"`, { exact: true });
  // Behind the quotation mark.
  await shown.last().dblclick({ position: { x: 14, y: 8 } });
  await workbench.page.keyboard.type(word);
}

test('of two editors of the drawing, a finding is selected in the one that was used last', async () => {
  await workbench.page.locator('.editor-instance .view-lines').first().click();
  await workbench.page.keyboard.press('Control+K');
  await workbench.page.keyboard.press('Control+\\');
  await expect.poll(() => editors().count()).toBe(2);
  for (const [used, other] of [
    [0, 1],
    [1, 0],
  ] as const) {
    for (const each of [0, 1]) await editors().nth(each).locator('.view-line').first().click();
    await editors().nth(used).locator('.view-line').first().click();
    await findings(workbench).filter({ hasText: 'Island' }).click();
    await expect.poll(() => editors().nth(used).locator('.selected-text').count()).toBeGreaterThan(0);
    expect(await editors().nth(other).locator('.selected-text').count()).toBe(0);
  }
  await workbench.shot('working-1-split');
  await editors().nth(1).locator('.view-line').first().click();
  await workbench.page.keyboard.press('Control+W');
  await expect.poll(() => editors().count()).toBe(1);
});

test('a size that is typed into tombolo.json counts before it is saved', async () => {
  const before = await told();
  expect(before.join()).not.toContain('thin-bridge');
  await workbench.openFile('tombolo.json');
  await planned().waitFor();
  await typeOver('60mm', '30mm');
  await workbench.page.locator('.tab.dirty').waitFor();
  await expect.poll(async () => (await told()).join()).toContain('Bridge only 0.45 mm');
  // The bridge that was planned at the other size would be half as wide.
  await planned().waitFor({ state: 'hidden' });
  await workbench.shot('working-2-unsaved');
  expect(workbench.onDisk('trail/tombolo.json')).toContain('60mm');
  await workbench.page.keyboard.press('Control+Z');
  await expect.poll(told).toEqual(before);
});

test('a word that is wrong in tombolo.json is told there with the right one, and in the drawing', async () => {
  await typeOver('card-0.3', 'cart');
  await workbench.bench.getByText('tombolo.json has 1 error').waitFor();
  await workbench.page.keyboard.press('Control+Shift+M');
  const row = (text: string) => workbench.problems.locator('.monaco-list-row', { hasText: text }).first();
  await row('Did you mean "card-0.3"?').waitFor();
  await row('tombolo.json has 1 error').waitFor();
  await workbench.shot('working-3-broken');
  await typeOver('cart-0.3', 'card');
  await workbench.bench.getByText('tombolo.json has 1 error').waitFor({ state: 'hidden' });
  await row('Did you mean').waitFor({ state: 'detached' });
  await workbench.save();
});

test('a drawing that is renamed keeps its findings under the new name, on the bench too', async () => {
  const before = await told();
  await retry(async () => {
    await workbench.page.getByRole('treeitem', { name: 'reeds.svg', exact: true }).click();
    await workbench.page.keyboard.press('F2');
    await workbench.page.locator('.explorer-item-edited input').fill('sedge.svg', { timeout: 3000 });
  });
  await workbench.page.keyboard.press('Enter');
  await workbench.page.getByRole('tab', { name: 'Stencil Preview (Bench): sedge.svg' }).waitFor();
  await expect.poll(told).toEqual(before);
  expect(await workbench.bench.getByText('is gone').isVisible()).toBe(false);
  await workbench.problems.getByText('sedge.svg').first().waitFor();
  await workbench.problems.getByText('reeds.svg').first().waitFor({ state: 'detached' });
  await findings(workbench).filter({ hasText: 'Island' }).click();
  await workbench.page.locator('.editor-instance .selected-text').first().waitFor();
  await planned().waitFor();
  await workbench.shot('working-4-renamed');
});

test('a drawing that is deleted is said to be gone; its problems go with its text', async () => {
  rmSync(path.join(workbench.folder, 'trail/sedge.svg'));
  await workbench.bench.getByText('sedge.svg is gone').waitFor();
  await planned().waitFor({ state: 'hidden' });
  await workbench.shot('working-5-deleted');
  // The editor keeps the text, with its problems, for whoever wants to save it after all.
  await workbench.page.locator('.tab[data-resource-name="sedge.svg"]').first().click();
  await workbench.page.keyboard.press('Control+W');
  await workbench.problems.getByText('sedge.svg').first().waitFor({ state: 'detached' });
});
