/** A print in several files, as a person works on it. */
import { describe, expect, it } from 'vitest';
import { retry, useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');

const files = ['stack/disc.svg', 'stack/post.svg'];

describe('a print in several files', () => {
  it('has its findings listed under each file, open or not', async () => {
    await bench.openFile('post.svg', 'stack');
    await bench.page.keyboard.press('Control+Shift+M');
    await bench.problems.getByText('disc.svg').first().waitFor();
    await bench.problems
      .getByText(/it will fall out/)
      .first()
      .waitFor();
    await bench.problems
      .getByText(/No readable file/)
      .first()
      .waitFor();
    await bench.shot('project-1-problems');
  });

  it('gets register marks in every sheet by one choice, and loses them by one undo', async () => {
    const before = files.map((name) => bench.onDisk(name));
    await bench.openFile('post.svg');
    await bench.page
      .locator('.view-line', { hasText: '<svg' })
      .first()
      .click({ position: { x: 20, y: 5 } });
    await retry(async () => {
      await bench.page.keyboard.press('Control+.');
      await bench.page.getByText('Add register marks to every sheet').click({ timeout: 4000 });
    });
    // The editor itself saves what a refactoring changed in files that were not dirty before.
    await expect
      .poll(() => files.map((name) => bench.onDisk(name).includes('cross-hair')), { timeout: 20_000 })
      .toEqual([true, true]);
    await bench.shot('project-2-marks');
    await bench.page
      .locator('.view-line', { hasText: '<svg' })
      .first()
      .click({ position: { x: 20, y: 5 } });
    await bench.page.keyboard.press('Control+Z');
    await bench.page.getByRole('tab', { name: 'disc.svg' }).first().waitFor();
    await bench.command('File: Save All Files');
    await expect.poll(() => files.map((name) => bench.onDisk(name)), { timeout: 20_000 }).toEqual(before);
  });
});
