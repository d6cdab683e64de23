/** What is found in the demo, for the walkthrough; its other pictures are those of the extension's page. */
import { beforeAll, test } from 'vitest';
import { useDemo } from '../workbench/workbench';
import { type Part, saveSmallPicture } from './screenshot';

const workbench = useDemo({
  'editor.minimap.enabled': false,
  'editor.wordWrap': 'on',
  'editor.stickyScroll.enabled': false,
  'breadcrumbs.enabled': false,
});
const island = () => workbench.page.locator('.markers-panel .monaco-list-row', { hasText: 'floating-island' }).first();

beforeAll(async () => {
  await workbench.page.setViewportSize({ width: 960, height: 600 });
  await workbench.page.keyboard.press('Control+B');
});

/** Text and findings without what is round them. */
const FOUND: Part = { x: 52, y: 36, width: 900, height: 492 };

test('what is found', async () => {
  await workbench.page.keyboard.press('Control+Shift+M');
  await island().dblclick();
  await workbench.page.locator('.squiggly-error').first().waitFor();
  await workbench.page.mouse.move(450, 595);
  await workbench.page.waitForTimeout(900);
  await saveSmallPicture(workbench.page, 'walkthrough/findings.png', FOUND);
});
