/** A layer cut as two sheets from the lightbulb: what the text, the layers and the picture become, and one undo. */
import { beforeAll, expect, test } from 'vitest';
import { choose, findings, lightbulbAt } from './lightbulb';
import { DEMO, useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const names = () => inBench('.layers label span').allTextContents();
const TITLE = /^Cut this layer as two sheets that cover each other's bridges/;

/** Within the stroke of the numeral, left of its upper island, mm. */
const BRIDGED = [111.8, 28.6] as const;
const RUST = '#b4472c';

let before = '';

beforeAll(() => {
  before = workbench.onDisk(DEMO);
});

test('an island offers it, and says how many bridges either sheet gets', async () => {
  const rows = await findings(workbench).allTextContents();
  const island = rows.findIndex((row) => /Island,/.test(row) && /Numeral/.test(row));
  expect(island).toBeGreaterThanOrEqual(0);
  const bulb = await lightbulbAt(workbench, island);
  await workbench.shot('two-sheets-1-lightbulb');
  const row = bulb.offered.find((each) => TITLE.test(each));
  expect(row).toBeDefined();
  await choose(workbench, row!);
});

test('the second sheet is a layer behind the first, and both are without an island', async () => {
  await workbench.showList('Layers');
  await expect.poll(names, { timeout: 15_000 }).toEqual(['Sun', 'Reeds', 'Heron', 'Numeral', 'Numeral (second sheet)']);
  const rows = await inBench('.layers li').allTextContents();
  expect(rows.slice(3).map((row) => /(\d+) islands?/.exec(row)?.[1] ?? '0')).toEqual(['0', '0']);
});

test('in the print neither set of bridges shows', async () => {
  // The outline of the opening at the caret would lie over them.
  await workbench.showList('Findings');
  await findings(workbench).first().click();
  await workbench.showList('Layers');
  await expect.poll(() => workbench.paintedAt(...BRIDGED), { timeout: 15_000 }).toBe(RUST);
  await workbench.shot('two-sheets-2-print');
});

test('each sheet is seen by itself, with its own bridges', async () => {
  // The bridge beside the upper island is one of the first sheet; the second paints its place.
  const paintedIn = async (layer: number) => {
    await inBench('.layers li').nth(layer).click();
    await workbench.page.waitForTimeout(1500);
    await workbench.shot(`two-sheets-3-sheet-${layer + 1}`);
    return workbench.paintedAt(...BRIDGED);
  };
  await workbench.bench.getByRole('radio', { name: 'Single sheet' }).check();
  expect(await paintedIn(3)).not.toBe(await paintedIn(4));
  await workbench.bench.getByRole('radio', { name: 'All sheets' }).check();
  await workbench.page.waitForTimeout(2500);
  await workbench.shot('two-sheets-4-all-sheets');
});

test('one undo takes it back', async () => {
  await workbench.page.locator('.editor-instance .view-lines').first().click();
  await workbench.page.keyboard.press('Control+Z');
  await expect.poll(names, { timeout: 15_000 }).toEqual(['Sun', 'Reeds', 'Heron', 'Numeral']);
  await workbench.save();
  expect(workbench.onDisk(DEMO)).toBe(before);
});
