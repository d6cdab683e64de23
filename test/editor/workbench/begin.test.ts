/** Begin a Stencil Here, as a person answers its questions. */
import { expect, test } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');

const input = () => bench.page.locator('.quick-input-widget input').first();
const rows = () => bench.page.locator('.quick-input-list .monaco-list-row');

test('asks for size, material and tool, and writes what was answered', async () => {
  await bench.openFile('sun.svg', 'beginning');
  await bench.command('Begin a Stencil Here');
  await bench.page.getByText('How wide is the artwork cut? The drawing does not say.').waitFor();
  await input().fill('wide');
  await bench.page.getByText('A length with its unit, such as 148mm or 6in.').waitFor();
  await bench.shot('begin-1-size');
  await input().fill('148mm');
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('(2 of 3): material').waitFor();
  await input().fill('vinyl');
  await rows().filter({ hasText: 'vinyl' }).first().waitFor();
  await bench.shot('begin-2-material');
  await bench.page.keyboard.press('Enter');
  await bench.page.getByText('(3 of 3): tool').waitFor();
  await bench.shot('begin-3-tool');
  expect(await rows().first().textContent()).toContain('Knife');
  await bench.page.keyboard.press('Enter');
  await bench.page.getByRole('tab', { name: 'tombolo.json' }).waitFor();
  await retry(async () => {
    expect(JSON.parse(bench.onDisk('beginning/tombolo.json'))).toEqual({
      size: { width: '148mm' },
      material: 'vinyl-0.08',
      cutter: { tool: 'knife' },
    });
  });
  await bench.shot('begin-4-written');
});

test('every drawing beside it is a stencil from then on', async () => {
  await bench.openFile('reeds.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
  await bench.openFile('sun.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
});
