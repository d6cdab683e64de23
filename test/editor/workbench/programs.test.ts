/** Programs that draw: findings at their lines, the bench beside them, and both ways between line and picture. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it as test } from 'vitest';
import { useWorkbench } from './workbench';

const workbench = useWorkbench('media/demo/posts', {
  'editor.wordWrap': 'off',
  'editor.minimap.enabled': false,
  'editor.stickyScroll.enabled': false,
});
const squiggles = () => workbench.page.locator('.editor-group-container').first().locator('.squiggly-error');
const tabs = () => workbench.page.getByRole('tab', { name: /^post-/ });
const inBench = (selector: string) => workbench.bench.locator(selector);

/** On the foot of the third reed, sheet mm. */
const REED = { x: 35.5, y: 84 };

/** @param x mm of the sheet */
async function clickOn(x: number, y: number): Promise<void> {
  const position = await inBench('.painting').evaluate(
    (canvas, place) => {
      const sheet = document.querySelector<SVGGElement>('.targets')?.getScreenCTM();
      const point = new DOMPoint(place.x, place.y).matrixTransform(sheet ?? undefined);
      const box = canvas.getBoundingClientRect();
      return { x: point.x - box.x, y: point.y - box.y };
    },
    { x, y },
  );
  await inBench('.painting').click({ position, force: true });
}

/** The line that the caret is in, as the status bar says it. */
const caretLine = async () => {
  const text = await workbench.page.locator('[id="status.editor.selection"]').textContent();
  return Number(/Ln (\d+)/.exec(text ?? '')?.[1]);
};

async function goToLine(line: number): Promise<void> {
  await workbench.command('View: Focus First Editor Group');
  await workbench.page.keyboard.press('Control+G');
  await workbench.page.locator('.quick-input-widget input').fill(`:${line}`);
  await workbench.page.keyboard.press('Enter');
  await expect.poll(caretLine).toBe(line);
}

const lineOf = (file: string, words: string) =>
  workbench
    .onDisk(file)
    .split('\n')
    .findIndex((line) => line.includes(words)) + 1;

async function endTasks(): Promise<void> {
  await workbench.command('Tasks: Terminate Task');
  await workbench.page.waitForTimeout(500);
  const all = workbench.page
    .locator('.quick-input-list .monaco-list-row', { hasText: /All Running Tasks|Watch/ })
    .first();
  if (await all.isVisible()) await all.click();
  await workbench.page.keyboard.press('Escape');
}

describe.each([
  { program: 'posts.mjs', ring: 'const ring' },
  { program: 'posts.py', ring: 'return f\'<path id="{name}"' },
])('$program', ({ program, ring }) => {
  const name = program.replace('.', '-');

  beforeAll(async () => {
    await workbench.openFile(program);
    await workbench.command("Tombolo: Watch This Program's Drawings");
  });
  afterAll(endTasks);

  test('is underlined where it draws what falls out, while its drawing stays closed', async () => {
    await squiggles().first().waitFor();
    await workbench.bench.locator('.layers li').nth(2).waitFor({ state: 'attached' });
    await workbench.bench.locator('.finding').nth(2).waitFor();
    await workbench.shot(`programs-${name}-1-squiggle`);
    expect(await tabs().count()).toBe(0);
    expect(existsSync(path.join(workbench.folder, 'post-8.svg'))).toBe(true);
    expect(readFileSync(path.join(workbench.folder, 'post-8.svg'), 'utf8')).not.toContain('data-tombolo');
  });

  test('marks on the bench what the line at the caret draws', async () => {
    const painted = () => workbench.paintedAt(REED.x, REED.y);
    const before = await painted();
    await goToLine(lineOf(program, 'id="reed'));
    await expect.poll(painted).not.toBe(before);
    await goToLine(1);
    await expect.poll(painted).toBe(before);
    await goToLine(lineOf(program, 'id="reed'));
    await expect.poll(painted).not.toBe(before);
    await workbench.shot(`programs-${name}-2-caret`);
  });

  test('is led to by a click on a shape', async () => {
    // On the outer ring of the sun.
    await clickOn(50, 10);
    await expect.poll(caretLine).toBe(lineOf(program, ring));
    await workbench.shot(`programs-${name}-3-click`);
    expect(await tabs().count()).toBe(0);
  });

  test('is clean at a line once the fault is mended and saved', async () => {
    const before = await squiggles().count();
    const line = lineOf(program, ring);
    await goToLine(line);
    const text = workbench.onDisk(program).split('\n')[line - 1] ?? '';
    await workbench.page.keyboard.press('End');
    await workbench.page.keyboard.press('Shift+Home');
    await workbench.page.keyboard.press('Shift+Home');
    await workbench.page.keyboard.insertText(text.replace(/\$?\{circle\(x, y, inner\)\}/, ''));
    await workbench.save();
    await expect.poll(() => squiggles().count()).toBeLessThan(before);
    await workbench.shot(`programs-${name}-4-mended`);
  });
});
