/** Several benches: one that stays with its file, one that follows; each keeps its view through a reload. */
import type { FrameLocator } from 'playwright-core';
import { expect, test } from 'vitest';
import { DEMO, useDemo } from './workbench';

// A setting of its own keeps its page, whose groups have changed places, from other files.
const workbench = useDemo({ 'window.title': 'Benches' });
const tab = (name: string) => workbench.page.getByRole('tab', { name });

test('unpinned it follows the active drawing; pinned it stays', async () => {
  await workbench.openFile('sun.svg');
  await tab('Stencil Preview (Bench): sun.svg').waitFor();
  await workbench.openFile(DEMO);
  await tab('Stencil Preview (Bench): waymarker.svg').waitFor();
  await workbench.bench.locator('.layers li').nth(3).waitFor({ state: 'attached' });
  const more = workbench.bench.getByRole('button', { name: 'More', exact: true });
  await more.focus();
  await workbench.page.keyboard.press('Enter');
  await workbench.page.keyboard.press('End');
  await workbench.page.keyboard.press('ArrowUp');
  await workbench.page.keyboard.press('Enter');
  expect(await isPinned(workbench.bench)).toBe('true');
  await workbench.openFile('sun.svg');
  await workbench.page.waitForTimeout(500);
  expect(await tab('Stencil Preview (Bench): waymarker.svg').count()).toBe(1);
});

test('another bench opens beside it, for the drawing that is active', async () => {
  await workbench.command('Tombolo: Open Stencil Preview (Bench)');
  await tab('Stencil Preview (Bench): sun.svg').waitFor();
  expect(await tab('Stencil Preview (Bench): waymarker.svg').count()).toBe(1);
  await workbench.openFile('sun.svg');
  await workbench.command('Tombolo: Open Another Stencil Preview (Bench)');
  await expect.poll(() => tab('Stencil Preview (Bench): sun.svg').count()).toBe(2);
  await workbench.shot('panels-1');
});

test('after a reload each shows what it showed, pinned or not, in its own view', async () => {
  await tab('Stencil Preview (Bench): waymarker.svg').click();
  const shown = await shownBench();
  await shown.getByRole('radio', { name: 'All sheets' }).check();
  await shown.getByRole('tab', { name: 'Layers' }).click();
  await shown.getByRole('checkbox', { name: 'Reeds' }).uncheck();
  await shown.getByRole('button', { name: 'Zoom in' }).click();
  const nearness = await shown.locator('.nearness').textContent();
  await workbench.command('Developer: Reload Window');
  await workbench.page.locator('iframe.webview').first().waitFor({ state: 'detached' });
  await tab('Stencil Preview (Bench): waymarker.svg').waitFor();
  expect(await tab('Stencil Preview (Bench): sun.svg').count()).toBe(2);
  const again = await shownBench();
  expect(await again.getByRole('radio', { name: 'All sheets' }).isChecked()).toBe(true);
  await again.getByRole('tab', { name: 'Layers' }).click();
  expect(await again.getByRole('checkbox', { name: 'Reeds' }).isChecked()).toBe(false);
  expect(await again.getByRole('checkbox', { name: 'Sun' }).isChecked()).toBe(true);
  expect(await again.locator('.nearness').textContent()).toBe(nearness);
  expect(await isPinned(again)).toBe('true');
});

/** Whether the menu has a tick at "Keep showing this file". */
async function isPinned(bench: FrameLocator): Promise<string | null> {
  await bench.getByRole('button', { name: 'More', exact: true }).click();
  const row = bench.getByRole('menuitemcheckbox', { name: 'Keep showing this file' });
  const on = await row.getAttribute('aria-checked');
  await row.press('Escape');
  return on;
}

/** The page of the bench that is not hidden behind another. */
async function shownBench(): Promise<FrameLocator> {
  let found: FrameLocator | undefined;
  await expect
    .poll(
      async () => {
        for (const outer of await workbench.page.locator('iframe.webview').all()) {
          const page = outer.contentFrame().frameLocator('iframe#active-frame');
          const isFull = () =>
            page
              .locator('.finding')
              .nth(2)
              .isVisible()
              .catch(() => false);
          if ((await outer.isVisible()) && (await isFull())) found = page;
        }
        return found !== undefined;
      },
      { timeout: 30_000 },
    )
    .toBe(true);
  return found as FrameLocator;
}
