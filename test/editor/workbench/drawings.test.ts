/** Drawings that are no stencils yet. */
import { beforeAll, describe, expect, it } from 'vitest';
import { useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');

beforeAll(() => bench.chooseTheme('Default Dark Modern'));

describe('a drawing that nobody called a stencil', () => {
  it('has no underlines; the bench says so and offers to begin', async () => {
    await bench.openFile('plain.svg');
    await bench.command('Tombolo: Open Stencil Preview (Bench)');
    await bench.bench.getByText('Not set up as a stencil yet').waitFor();
    expect(await bench.page.locator('.squiggly-error').count()).toBe(0);
    await bench.shot('plain-1-left-in-peace');
  });

  const begin = () => bench.bench.locator('vscode-button', { hasText: 'Set Up as Stencil…' });

  it.each([
    ['a click', () => begin().click()],
    ['Enter', () => begin().press('Enter')],
  ])('is asked about after %s; Escape leaves it as it is', async (_, use) => {
    const before = bench.onDisk('plain.svg');
    await use();
    await bench.page.getByText('Finished width of the artwork').waitFor();
    await bench.page.keyboard.press('Escape');
    await bench.page.getByText('Finished width of the artwork').waitFor({ state: 'hidden' });
    await bench.bench.getByText('Not set up as a stencil yet').waitFor();
    expect(await bench.page.locator('.tab.dirty').count()).toBe(0);
    expect(bench.onDisk('plain.svg')).toBe(before);
  });
});
