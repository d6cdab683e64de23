/** What is told and offered at the lines of a program that draws: nothing of it edits a drawing that the next run makes anew. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, it as test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const PROGRAM = 'posts.mjs';
const DRAWING = 'post-8.svg';

const workbench = useWorkbench('media/demo/posts', { 'editor.wordWrap': 'off', 'editor.minimap.enabled': false });
const squiggles = () => workbench.page.locator('.editor-group-container').first().locator('.squiggly-error');
const onDisk = (name: string) => readFileSync(path.join(workbench.folder, name), 'utf8');

beforeAll(async () => {
  await workbench.openFile(PROGRAM);
  await workbench.command("Tombolo: Watch This Program's Drawings");
  await squiggles().first().waitFor();
});

afterAll(async () => {
  await workbench.command('Tasks: Terminate Task');
  await workbench.page.waitForTimeout(500);
  const all = workbench.page.locator('.quick-input-list .monaco-list-row', { hasText: /All Running|Watch/ }).first();
  if (await all.isVisible()) await all.click();
  await workbench.page.keyboard.press('Escape');
});

/** Puts the caret behind words of the program that draw. */
async function goTo(words: string): Promise<void> {
  const lines = onDisk(PROGRAM).split('\n');
  const line = lines.findIndex((each) => each.includes(words));
  const column = (lines[line] ?? '').indexOf('<path') + 2;
  await workbench.command('View: Focus First Editor Group');
  await workbench.page.keyboard.press('Control+G');
  await workbench.page.locator('.quick-input-widget input').fill(`:${line + 1}:${column}`);
  await workbench.page.keyboard.press('Enter');
  await workbench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
}

/** Opens the lightbulb at words of the program, and takes a row of it. */
async function choose(words: string, row: RegExp): Promise<void> {
  const offered = workbench.page.locator('.action-widget .monaco-list-row.action', { hasText: row }).first();
  await retry(async () => {
    await workbench.page.keyboard.press('Escape');
    await goTo(words);
    await workbench.page.keyboard.press('Control+.');
    await offered.waitFor({ timeout: 5000 });
  });
  await offered.click();
}

test('the hover tells what a line has drawn', async () => {
  const hover = workbench.page.locator('.monaco-hover:visible').first();
  await retry(async () => {
    await goTo('<path id="reed');
    await workbench.command('Show or Focus Hover');
    await hover.waitFor({ timeout: 4000 });
  });
  expect(await hover.textContent()).toMatch(/7 shapes/);
  await workbench.shot('program-offers-1-hover');
  await workbench.page.keyboard.press('Escape');
});

test('to ignore a finding asks why, and is kept in tombolo.json', async () => {
  const before = await squiggles().count();
  await choose('<path id="digit', /^Ignore floating-island in "digit1"/);
  await workbench.page.locator('.quick-input-widget input').fill('glued by hand');
  await workbench.page.keyboard.press('Enter');
  await expect.poll(() => squiggles().count()).toBeLessThan(before);
  await expect.poll(() => onDisk('tombolo.json')).toContain('glued by hand');
  await workbench.shot('program-offers-2-ignored');
});

test('bridges that are kept are in each new drawing, and the program is as it was', async () => {
  const program = onDisk(PROGRAM);
  const before = onDisk(DRAWING);
  await choose('const ring', /^Keep bridges for/);
  await expect.poll(() => existsSync(path.join(workbench.folder, 'bridges.json'))).toBe(true);
  // While the program runs, the file holds what it writes, marks and all.
  await expect.poll(() => ['data-tombolo', before].some((text) => onDisk(DRAWING).includes(text))).toBe(false);
  await expect.poll(() => squiggles().count()).toBe(0);
  expect(onDisk(PROGRAM)).toBe(program);
  await workbench.shot('program-offers-3-kept');
});
