/** The way of an artist through the demo: open, see, mend, undo. */
import { beforeAll, expect, test } from 'vitest';
import { DEMO, retry, useWorkbench } from './workbench';

const bench = useWorkbench('media/demo');
/** The line round what the caret's text draws. */
const DARK = '#111111';
let original: string;

beforeAll(() => {
  original = bench.onDisk(DEMO);
});

test('opening the demo underlines its islands and thin places', async () => {
  await bench.openFile(DEMO);
  await bench.page.locator('.squiggly-error').first().waitFor();
  expect(await bench.page.locator('.notification-toast').count()).toBe(0);
  await bench.shot('demo-1-opened');
});

test('the Problems list shows message, code and place', async () => {
  await bench.page.keyboard.press('Control+Shift+M');
  const row = bench.problems.locator('.monaco-list-row', { hasText: 'Island, 272' });
  await row.waitFor();
  expect(await row.textContent()).toMatch(/it will fall out.*tombolo.*floating-island.*\[Ln 28, Col \d+\]/s);
  await bench.shot('demo-2-problems');
});

test('the bench shows the stack beside the text, with a mark and a button for each finding', async () => {
  await bench.command('Tombolo: Open Stencil Preview (Bench)');
  await bench.bench.locator('.canvas').waitFor();
  await expect.poll(() => bench.bench.locator('.finding').count(), { timeout: 15_000 }).toBeGreaterThan(2);
  const buttons = await bench.bench.locator('.finding').count();
  const marks = await bench.bench.locator('.mark .number').allTextContents();
  // Where two would overlap, one mark has their count.
  expect(marks.reduce((sum, text) => sum + (text.startsWith('×') ? Number(text.slice(1)) : 1), 0)).toBe(buttons);
  await bench.showList('Layers');
  expect(await bench.bench.locator('.layers').getByRole('checkbox').count()).toBe(4);
  await bench.showList('Findings');
  expect(await bench.bench.getByRole('application').getAttribute('aria-label')).toBe('Stencil, 148 by 105 mm');
  expect(await bench.bench.locator('#canvas-description').textContent()).toMatch(/^Layers: 4, findings: 5\./);
  await bench.shot('demo-3-bench');
});

test('choosing a finding selects its text', async () => {
  await bench.bench.getByRole('button', { name: /Island, 272/ }).click();
  await bench.page.locator('.selected-text').first().waitFor();
  await bench.page.getByText(/Ln 28, Col \d+ \(\d+ selected\)/).waitFor();
});

test('the shape whose text holds the caret is marked on the picture, and only then', async () => {
  // On the rim of the sun's ring, whose text the finding before has selected.
  const rim = () => bench.paintedAt(49.6, 38);
  await expect.poll(rim, { timeout: 10_000 }).toBe(DARK);
  await bench.shot('demo-3-caret');
  await bench.page.locator('.editor-instance .view-lines').first().click();
  await bench.page.keyboard.press('Control+Home');
  await expect.poll(rim, { timeout: 10_000 }).not.toBe(DARK);
});

test('the picture answers to the keyboard', async () => {
  const nearness = bench.bench.locator('.nearness');
  const whole = await nearness.textContent();
  await bench.bench.getByRole('application').focus();
  await bench.page.keyboard.press('+');
  expect(await nearness.textContent()).not.toBe(whole);
  await bench.page.keyboard.press('ArrowLeft');
  await bench.page.keyboard.press('0');
  expect(await nearness.textContent()).toBe(whole);
});

test('a layer can be switched off, and looked at as one sheet', async () => {
  const marks = await bench.bench.locator('.mark').count();
  await bench.showList('Layers');
  await bench.bench.getByRole('checkbox', { name: 'Sun' }).uncheck();
  expect(await bench.bench.locator('.mark').count()).toBeLessThan(marks);
  await bench.bench.getByRole('checkbox', { name: 'Sun' }).check();
  await bench.bench.getByRole('radio', { name: 'Single sheet' }).check();
  await bench.bench.getByRole('radio', { name: 'Numeral' }).check();
  expect(await bench.bench.locator('.fallen').count()).toBe(2);
  await bench.shot('demo-4-one-sheet');
  await bench.showList('Findings');
  await bench.bench.getByRole('radio', { name: 'Print' }).check();
});

test('the lightbulb bridges the island of the sun; problem and mark go, and the bench keeps its view', async () => {
  const nearness = bench.bench.locator('.nearness');
  await bench.bench.getByRole('button', { name: 'Zoom in' }).click();
  const before = await nearness.textContent();
  const fix = bench.page.locator('.action-widget').getByText(/^Bridge this island/);
  await retry(async () => {
    await bench.bench.getByRole('button', { name: /Island, 272/ }).click();
    await bench.page.locator('.selected-text').first().waitFor();
    // The text has the focus a moment after it is selected; until then the bench would take the key.
    await bench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    await bench.page.keyboard.press('Control+.');
    await fix.waitFor({ timeout: 5000 });
  });
  await bench.shot('demo-5-lightbulb');
  await fix.click();
  await bench.problems.locator('.monaco-list-row', { hasText: 'Island, 272' }).waitFor({ state: 'detached' });
  await bench.bench.getByRole('button', { name: /Island, 272/ }).waitFor({ state: 'detached' });
  expect(await nearness.textContent()).toBe(before);
  await bench.shot('demo-6-bridged');
  await bench.save();
  expect(bench.onDisk(DEMO)).not.toBe(original);
});

test('undo brings back the text exactly, and its finding', async () => {
  await bench.page.locator('.editor-instance .view-lines').first().click();
  await bench.page.keyboard.press('Control+Z');
  await bench.bench.getByRole('button', { name: /Island, 272/ }).waitFor();
  await bench.save();
  expect(bench.onDisk(DEMO)).toBe(original);
});

test('typing is followed in text and bench', async () => {
  await bench.command('Go to Line/Column...');
  await bench.page.keyboard.type('28:41');
  await bench.page.keyboard.press('Enter');
  const row = bench.problems.locator('.monaco-list-row', { hasText: 'Island, 272' });
  await bench.page.keyboard.press('Shift+End');
  const typed = Date.now();
  await bench.page.keyboard.type('"/>');
  await row.waitFor({ state: 'detached' });
  console.log(`the finding went ${Date.now() - typed} ms after the first of three keystrokes`);
  await bench.bench.getByRole('button', { name: /Island, 272/ }).waitFor({ state: 'detached' });
});
