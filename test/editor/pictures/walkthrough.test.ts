/** The first pictures of the walkthrough: how a drawing begins. */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, test } from 'vitest';
import { root } from '../workbench/root';
import { useWorkbench } from '../workbench/workbench';
import { saveSmallPicture } from './screenshot';

const pictures = path.join(root, 'media/walkthrough');
const workbench = useWorkbench('test/editor/workspace/beginning', {
  'editor.minimap.enabled': false,
  'editor.wordWrap': 'on',
  'breadcrumbs.enabled': false,
});
const input = () => workbench.page.locator('.quick-input-widget input').first();

beforeAll(async () => {
  mkdirSync(pictures, { recursive: true });
  await workbench.page.setViewportSize({ width: 900, height: 600 });
  await workbench.page.keyboard.press('Control+B');
});

async function picture(name: string): Promise<void> {
  await workbench.page.mouse.move(450, 595);
  await workbench.page.waitForTimeout(700);
  await saveSmallPicture(workbench.page, `walkthrough/${name}.png`, { x: 52, y: 36, width: 840, height: 532 });
}

test('a new stencil', async () => {
  await workbench.command('Tombolo: New Stencil');
  await workbench.page.getByText('(1 of 2): size').waitFor();
  await workbench.page.keyboard.press('Enter');
  await workbench.page.getByText('(2 of 2): layers').waitFor();
  await input().fill('4');
  await workbench.page.keyboard.press('Enter');
  await workbench.page.getByText('Reeds').first().waitFor();
  await picture('new');
  await workbench.command('Revert and Close Editor');
});

test('setting a drawing up', async () => {
  await workbench.page.keyboard.press('Control+B');
  await workbench.openFile('reeds.svg');
  await workbench.page.keyboard.press('Control+B');
  await workbench.command('Tombolo: Set Up as Stencil');
  await workbench.page.getByText('Finished width of the artwork').waitFor();
  await picture('setUp');
  await workbench.page.keyboard.press('Escape');
});
