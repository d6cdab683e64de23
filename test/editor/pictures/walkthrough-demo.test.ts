/** The other pictures of the walkthrough, from the demo: how it is seen painted, and what is found. */
import { beforeAll, test } from 'vitest';
import { useDemo } from '../workbench/workbench';
import { savePicture } from './screenshot';

const workbench = useDemo({
  'editor.minimap.enabled': false,
  'editor.wordWrap': 'on',
  'editor.stickyScroll.enabled': false,
  'breadcrumbs.enabled': false,
});
const island = () => workbench.page.locator('.markers-panel .monaco-list-row', { hasText: 'floating-island' }).first();

beforeAll(async () => {
  await workbench.page.setViewportSize({ width: 1100, height: 720 });
  await workbench.page.keyboard.press('Control+B');
});

async function picture(name: string): Promise<void> {
  await workbench.page.mouse.move(450, 715);
  await workbench.page.waitForTimeout(900);
  await savePicture(workbench.page, `walkthrough/${name}.png`);
}

test('the print and its layers', () => picture('preview'));

test('what is found', async () => {
  await workbench.page.keyboard.press('Control+Shift+M');
  await island().dblclick();
  await workbench.page.locator('.squiggly-error').first().waitFor();
  await picture('findings');
});
