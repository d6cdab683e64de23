/** A meadow in one line of 40,000 columns of path data, as some programs write it: the bench still leads to a finding. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, expect, test } from 'vitest';
import { findings } from '../workbench/lightbulb';
import { mendAll } from '../workbench/mend-all';
import { useWorkbench } from '../workbench/workbench';

const workbench = useWorkbench('test/editor/ways');
const FILE = 'meadow.svg';
const COLUMNS = 40_000;
let original: string;

/** Blades in rows, sheet mm; the last of them is too narrow to spray through. */
function meadow(): string {
  const blades: string[] = [];
  for (let length = 0; length < COLUMNS; length += blades.at(-1)?.length ?? 0) {
    const [column, row] = [blades.length % 60, Math.floor(blades.length / 60)];
    blades.push(`M${(8 + 2.2 * column).toFixed(1)} ${(4 + 4 * row).toFixed(1)}h1.2v2.5h-1.2Z`);
  }
  const rows = Math.ceil(blades.length / 60);
  const last = `M8 ${4 + 4 * rows}h.4v2.5h-.4Z`;
  const height = 12 + 4 * rows;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="148mm" height="${height}mm" viewBox="0 0 148 ${height}">
  <title>Marsh trail, post 9: meadow</title>
  <path d="${blades.join('')}${last}"/>
</svg>
`;
}

const pixels = (text: string): Buffer => new Resvg(text, { fitTo: { mode: 'width', value: 1480 } }).render().pixels;
const longest = (text: string): number => Math.max(...text.split('\n').map((line) => line.length));
/** The column that the status bar names for what is selected. */
async function selectedColumn(): Promise<number> {
  const place = workbench.page.getByText(/Ln \d+, Col \d+ \(\d+ selected\)/);
  await place.waitFor();
  return Number(/Col (\d+)/.exec((await place.textContent()) ?? '')?.[1]);
}

beforeAll(async () => {
  original = meadow();
  writeFileSync(path.join(workbench.folder, FILE), original);
  await workbench.openFile(FILE);
  await workbench.command('Tombolo: Open Stencil Preview');
  await findings(workbench).first().waitFor();
});

test('a finding at the end of the line is selected from the bench', async () => {
  expect(longest(original)).toBeGreaterThan(COLUMNS);
  expect(await findings(workbench).count()).toBe(1);
  await findings(workbench).first().click();
  expect(await selectedColumn()).toBeGreaterThan(COLUMNS - 100);
  await workbench.shot('long-line-1');
});

test('Wrap Path Data makes many lines of it and changes nothing but white space', async () => {
  await workbench.command('Tombolo: Wrap Path Data');
  await expect.poll(() => workbench.page.locator('.tab.dirty').count()).toBe(1);
  await workbench.save();
  const wrapped = workbench.onDisk(FILE);
  expect(longest(wrapped)).toBeLessThanOrEqual(110);
  expect(wrapped.split('\n').length).toBeGreaterThan(COLUMNS / 110);
  expect(wrapped.replace(/\s/g, '')).toBe(original.replace(/\s/g, ''));
  expect(pixels(wrapped).equals(pixels(original))).toBe(true);
});

test('then the finding is in sight, and mended in its own line', async () => {
  await findings(workbench).first().click();
  expect(await selectedColumn()).toBeLessThan(110);
  await workbench.page.locator('.editor-instance .selected-text').first().waitFor();
  await workbench.shot('long-line-2');
  const before = workbench.onDisk(FILE).split('\n');
  const steps = await mendAll(workbench, 'a blade of grass');
  expect(steps.map(({ taken }) => taken)).toEqual(['Widen this opening to 0.60 mm']);
  await workbench.page.locator('.editor-instance .view-lines').first().click();
  await workbench.save();
  const after = workbench.onDisk(FILE).split('\n');
  expect(after.filter((line, index) => line !== before[index])).toHaveLength(1);
  await workbench.shot('long-line-3');
});
