/** Set Up as Stencil… and New Stencil…, as a person answers their questions. */
import { expect, test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');

const input = () => bench.page.locator('.quick-input-widget input').first();
const rows = () => bench.page.locator('.quick-input-list .monaco-list-row');

test('asks for size, material and tool, and writes what was answered', async () => {
  await bench.openFile('sun.svg', 'beginning');
  await bench.command('Tombolo: Set Up as Stencil');
  await bench.page.getByText('Finished width of the artwork').waitFor();
  expect(await input().inputValue()).toBe('120mm');
  await input().fill('wide');
  await bench.page.getByText('Enter a length, such as 148mm or 6in.').waitFor();
  await bench.shot('begin-1-size');
  await input().fill('148');
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('(2 of 3): material').waitFor();
  await input().fill('vinyl');
  await rows().filter({ hasText: 'Vinyl' }).first().waitFor();
  await bench.shot('begin-2-material');
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('(3 of 3): tool').waitFor();
  await bench.shot('begin-3-tool');
  expect(await rows().first().textContent()).toContain('Knife');
  await bench.page.keyboard.press('Enter');
  await retry(async () => {
    await bench.page.waitForTimeout(500);
    expect(JSON.parse(bench.onDisk('beginning/tombolo.json'))).toEqual({
      material: 'vinyl-0.08',
      cutter: { tool: 'knife' },
    });
  });
  expect(await bench.page.getByRole('tab', { name: 'tombolo.json' }).count()).toBe(0);
  await bench.page.locator('.view-line', { hasText: 'width="148mm"' }).first().waitFor();
  await bench.shot('begin-4-written');
  await bench.save();
});

test('every drawing beside it is a stencil from then on, and is not offered to be set up', async () => {
  await bench.openFile('reeds.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
  await bench.openFile('sun.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
  await bench.page.keyboard.press('F1');
  await input().fill('>Tombolo: ');
  await rows().filter({ hasText: 'Tombolo: Check Again' }).waitFor();
  expect(await rows().filter({ hasText: 'Set Up as Stencil' }).count()).toBe(0);
  await bench.shot('begin-5-palette');
  await bench.page.keyboard.press('Escape');
});

test('a laser is asked for with its two cautions, which are not cut off, and for its kerf', async () => {
  await bench.page.setViewportSize({ width: 1400, height: 900 });
  await bench.openFile('plain.svg');
  await bench.command('Tombolo: Set Up as Stencil');
  await bench.page.getByText('Finished width of the artwork').waitFor();
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('(2 of 3): material').waitFor();
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('(3 of 3): tool').waitFor();
  for (const caution of ['Never leave it unattended', "Its manual and your workshop's rules decide what it may cut."]) {
    const line = rows().first().getByText(caution);
    expect(await line.evaluate(({ scrollWidth, clientWidth }) => scrollWidth <= clientWidth + 1)).toBe(true);
  }
  await bench.shot('begin-6-laser');
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('Who allows for it?').waitFor();
  await bench.shot('begin-7-kerf');
  await bench.page.keyboard.press('Escape');
  expect(await bench.page.locator('.tab.dirty').count()).toBe(0);
  await input().waitFor({ state: 'hidden' });
});

test('New Stencil… is among the files that the editor can make', async () => {
  await bench.command('New File...');
  await rows().filter({ hasText: 'New Stencil…' }).first().waitFor();
  await bench.shot('begin-8-new-file');
  await bench.page.keyboard.press('Escape');
});
