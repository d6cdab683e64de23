/** Drawings that are no stencils yet, and one whose island lies under a later layer. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { findings } from './lightbulb';
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

describe('an island that a later layer paints over', () => {
  const MARSH =
    '<svg xmlns="http://www.w3.org/2000/svg" data-tombolo-reading="openings" width="80mm" height="60mm" ' +
    'viewBox="0 0 80 60">\n<g id="Water" fill="#4a90b8">\n  <path d="M10 10h60v40h-60z M28 20v20h24v-20z"/>\n</g>\n' +
    '<g id="Heron" fill="#3b4a54">\n  <path d="M26 18h28v24h-28z"/>\n</g>\n</svg>\n';

  it('is cut away from the bench, which shows what goes', async () => {
    writeFileSync(path.join(bench.folder, 'marsh.svg'), MARSH);
    await bench.openFile('marsh.svg');
    await bench.command('Tombolo: Open Stencil Preview (Bench)');
    await findings(bench).first().click();
    const bar = bench.bench.locator('.ghost-bar p');
    await expect.poll(() => bar.textContent()).toBe('Cut it away: "Heron" is painted over it');
    expect(await bench.bench.locator('.ghost-cut').count()).toBe(1);
    await bench.shot('covered-1-cut-away');
    await bench.bench.getByRole('button', { name: 'Cut away' }).click();
    await expect.poll(() => findings(bench).count()).toBe(0);
    await bench.command('View: Focus First Editor Group');
    await bench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    await bench.save();
    expect(bench.onDisk('marsh.svg')).toBe(MARSH.replace(' M28 20v20h24v-20z', ''));
  });
});
