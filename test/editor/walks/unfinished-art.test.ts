/**
 * An unfinished drawing of three colours, mended finding by finding with what the lightbulb and the bench offer, and
 * taken back step by step. Nothing is typed.
 */
import { Resvg } from '@resvg/resvg-js';
import { beforeAll, expect, test } from 'vitest';
import { choose, findings, fixOf, lightbulbAt } from '../workbench/lightbulb';
import { useWorkbench } from '../workbench/workbench';

const bench = useWorkbench('test/editor/unfinished');
const FILE = 'otter.svg';
let original: string;
/** What was chosen, in order. */
const taken: string[] = [];

beforeAll(async () => {
  original = bench.onDisk(FILE);
  await bench.openFile(FILE);
  await bench.command('Tombolo: Open Stencil Preview');
  await bench.bench.locator('.finding').nth(20).waitFor();
});

test('every finding has a fix in its lightbulb, and taken one after the other they leave none', async () => {
  await bench.shot('unfinished-1-before');
  for (let steps = 0; (await findings(bench).count()) > 0; steps += 1) {
    expect(steps, taken.join('\n')).toBeLessThan(40);
    const name = await findings(bench).first().textContent();
    const row = fixOf(await lightbulbAt(bench, 0));
    expect(row, `${name} after\n${taken.join('\n')}`).toBeDefined();
    await choose(bench, row as string);
    taken.push(row as string);
  }
  await bench.shot('unfinished-2-mended');
  console.log(taken.join('\n'));
});

test('the print keeps the mouth', async () => {
  await bench.save();
  const before = inkAtMouth(original);
  expect(before).toBeGreaterThan(100);
  expect(inkAtMouth(bench.onDisk(FILE))).toBeGreaterThan(0.9 * before);
});

test('undo takes back one step after the other, to the last byte', async () => {
  await bench.page.locator('.editor-instance .view-lines').first().click();
  for (const _ of taken) await bench.page.keyboard.press('Control+Z');
  await bench.save();
  const text = bench.onDisk(FILE);
  // No comparison of the texts themselves: to tell two of them apart line by line takes more memory than there is.
  expect(firstDifference(text, original), `${text.length} characters for ${original.length}`).toBe(-1);
});

/** Where two texts begin to differ; -1 where they are the same. */
function firstDifference(a: string, b: string): number {
  if (a === b) return -1;
  let i = 0;
  while (a[i] === b[i]) i += 1;
  return i;
}

/** How many pixels of the mouth the drawing paints in ink: in user units, 36 to 54 across and 51.5 to 55.5 down. */
function inkAtMouth(text: string): number {
  // Each look at `pixels` copies all of them.
  const { pixels, width } = new Resvg(text, { fitTo: { mode: 'width', value: 900 } }).render();
  let count = 0;
  for (let y = 515; y < 555; y += 1) {
    for (let x = 360; x < 540; x += 1) {
      const [red = 0, , , alpha = 0] = pixels.subarray(4 * (y * width + x));
      if (alpha > 128 && red < 60) count += 1;
    }
  }
  return count;
}
