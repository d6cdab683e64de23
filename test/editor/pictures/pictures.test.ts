/** The README's pictures: each way of looking, and from the squiggle to the bridge as it is seen in the print. */
import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { root } from '../workbench/root';
import { DEMO, retry, useWorkbench } from '../workbench/workbench';
import { type Frame, movingPicture } from './moving-picture';
import { type Part, savePicture, saveSmallPicture } from './screenshot';

const media = path.join(root, 'media');
const workbench = useWorkbench('media/demo', {
  'editor.minimap.enabled': false,
  'editor.wordWrap': 'on',
  'editor.wrappingIndent': 'none',
  'editor.stickyScroll.enabled': false,
  'breadcrumbs.enabled': false,
});

/** For the extension's package: the bench without the text, the sheet alone, text and print where they change. */
const BENCH: Part = { x: 425, y: 240, width: 931, height: 476 };
const SHEET: Part = { x: 425, y: 240, width: 612, height: 440 };
const AROUND_SUN: Part = { x: 52, y: 225, width: 780, height: 365 };

const inBench = (selector: string) => workbench.bench.locator(selector);
const control = (role: 'radio' | 'checkbox' | 'button', called: string | RegExp) =>
  workbench.bench.getByRole(role, { name: called });

beforeAll(async () => {
  mkdirSync(path.join(media, 'page'), { recursive: true });
  await workbench.page.setViewportSize({ width: 1360, height: 850 });
  await workbench.openFile(DEMO);
  await workbench.command('Tombolo: Open Stencil Preview (Bench)');
  await inBench('.layers li').nth(3).waitFor({ state: 'attached' });
});

async function picture(file: string): Promise<void> {
  await workbench.page.mouse.move(640, 845);
  await workbench.page.waitForTimeout(700);
  await savePicture(workbench.page, file);
}

/** Shows a line of the text in the middle of its window. */
async function goTo(line: number): Promise<void> {
  await workbench.command('Go to Line/Column...');
  await workbench.page.keyboard.type(String(line));
  await workbench.page.keyboard.press('Enter');
}

test('the editor with its findings', async () => {
  await goTo(24);
  await workbench.page.locator('.squiggly-error').first().waitFor();
  await workbench.page.keyboard.press('Control+Shift+M');
  await workbench.problems.locator('.monaco-list-row', { hasText: 'Island, 272' }).waitFor();
  await picture('editor.png');
  await workbench.page.keyboard.press('Control+Shift+M');
  await workbench.problems.waitFor({ state: 'hidden' });
});

test('each way of looking', async () => {
  await workbench.widenBench();
  await inBench('.slip summary').click();
  await workbench.bench.getByRole('combobox', { name: 'Sheet out of register' }).selectOption('Heron');
  await workbench.bench.getByRole('slider', { name: 'Shift down in mm' }).fill('1');
  await inBench('.slip .told')
    .getByText(/between colours: \d/)
    .waitFor();
  await inBench('vscode-button').filter({ hasText: 'Test all' }).click();
  await expect.poll(() => inBench('.sweep').count(), { timeout: 30_000 }).toBe(4);
  await picture('the-print.png');
  await saveSmallPicture(workbench.page, 'page/the-print.png', BENCH);
  await control('button', 'Reset').click();
  await inBench('.slip summary').click();
  await control('radio', 'Single sheet').check();
  await control('radio', 'Sun').check();
  await picture('one-sheet.png');
  await saveSmallPicture(workbench.page, 'page/one-sheet.png', SHEET);
  await control('radio', 'All sheets').check();
  await picture('all-sheets.png');
  await control('radio', 'Print').check();
});

test('from the squiggle to the bridge in the print', async () => {
  const frames: Frame[] = [];
  const take = async (delay: number) => {
    await workbench.page.waitForTimeout(350);
    frames.push({ png: await workbench.page.screenshot(), delay });
  };
  const fix = workbench.page.locator('.action-widget').getByText(/^Bridge this island/);
  await goTo(24);
  await take(1200);
  await retry(async () => {
    await control('button', /Island, 272/).click();
    await workbench.page.locator('.selected-text').first().waitFor();
    await workbench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    if (frames.length === 1) await take(1800);
    await workbench.page.keyboard.press('Control+.');
    await fix.waitFor({ timeout: 5000 });
  });
  await savePicture(workbench.page, 'lightbulb.png');
  await take(2200);
  await fix.click();
  await control('button', /Island, 272/).waitFor({ state: 'detached' });
  await take(2200);
  await control('radio', 'Single sheet').check();
  await control('radio', 'Sun').check();
  await workbench.page.mouse.move(640, 845);
  await take(2600);
  writeFileSync(path.join(media, 'squiggle-to-bridge.gif'), movingPicture(frames));
  writeFileSync(path.join(media, 'page/squiggle-to-bridge.gif'), movingPicture(frames.slice(1, -1), 48, AROUND_SUN));
  expect(statSync(path.join(media, 'squiggle-to-bridge.gif')).size).toBeLessThan(2e6);
});
