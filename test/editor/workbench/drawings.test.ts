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
  ])('is one after %s, its questions declined; undo takes that back', async (_, use) => {
    await use();
    await bench.page.getByText('How wide is the artwork cut?').waitFor();
    await bench.page.keyboard.press('Escape');
    await bench.page.locator('.squiggly-error').first().waitFor();
    await begin().waitFor({ state: 'hidden' });
    await bench.shot('plain-2-begun');
    // A click would scroll so short a text out of sight.
    await bench.command('View: Focus First Editor Group');
    await bench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    await bench.page.keyboard.press('Control+Z');
    await bench.page.locator('.squiggly-error').first().waitFor({ state: 'detached' });
    await bench.bench.getByText('Not set up as a stencil yet').waitFor();
  });
});
