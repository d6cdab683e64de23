/** An artist's first minutes with the demo, in windows of several widths and in each theme. */
import type { CDPSession, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test as it, test } from 'vitest';
import { badgeContrasts, barriers, cutOffControls, focusedPlace, THEMES } from '../workbench/accessibility';
import { DEMO, retry, useWorkbench } from '../workbench/workbench';

const workbench = useWorkbench('media/demo', { 'workbench.colorTheme': THEMES[0][0] });
const inBench = (selector: string): Locator => workbench.bench.locator(selector);
const button = (name: string | RegExp): Locator => workbench.bench.getByRole('button', { name });
const look = (name: string): Locator => workbench.bench.getByRole('radio', { name, exact: true });
const ISLAND = /Island, 272/;
/** In the ring of the sun, mm: where a bridge goes. */
const GAP = { x: 70, y: 18.8 };

let screen: CDPSession;

beforeAll(async () => {
  screen = await workbench.page.context().newCDPSession(workbench.page);
});

afterAll(() => show(1440, 900, 1));

/** @param width CSS pixels, as `height`; of 1400 × 900 at 200 % half is left, each of two device pixels */
async function show(width: number, height: number, deviceScaleFactor: number): Promise<void> {
  await workbench.page.setViewportSize({ width, height });
  await screen.send('Emulation.setDeviceMetricsOverride', { width, height, deviceScaleFactor, mobile: false });
  await workbench.page.waitForTimeout(400);
}

async function press(...keys: string[]): Promise<void> {
  for (const key of keys) {
    await workbench.page.keyboard.press(key);
    // On its way from the bench to the text, or back, it may be nowhere for a moment.
    await expect
      .poll(() => focusedPlace(workbench), { message: `after ${key}`, timeout: 3000 })
      .not.toMatch(/^nowhere/);
  }
}

/** A place of the print in pixels of the canvas. */
async function onCanvas({ x, y }: { readonly x: number; readonly y: number }): Promise<{ x: number; y: number }> {
  return inBench('.canvas').evaluate(
    (element: SVGSVGElement, point) => {
      const sheet = element.querySelector<SVGGElement>('.targets')?.getScreenCTM() ?? undefined;
      const at = new DOMPoint(point.x, point.y).matrixTransform(sheet);
      const { left, top } = element.getBoundingClientRect();
      return { x: at.x - left, y: at.y - top };
    },
    { x, y },
  );
}

async function boxOf(selector: string) {
  const box = await inBench(selector).first().boundingBox();
  if (!box) throw new Error(`${selector} does not show.`);
  return box;
}

/** Of the first findings: how many are in sight without scrolling, as a whole or at least with their first lines. */
async function findingsInSight(): Promise<{ whole: number; begun: number }> {
  return inBench('.finding').evaluateAll((rows) => {
    const reaches = (row: Element, height: number) => {
      const room = row.closest('.list-column')?.getBoundingClientRect();
      const own = row.getBoundingClientRect();
      const lowest = Math.min(room?.bottom ?? 0, innerHeight) + 1;
      return own.height > 0 && own.top >= (room?.top ?? 0) && own.top + Math.min(own.height, height) <= lowest;
    };
    return {
      whole: rows.filter((row) => reaches(row, Number.POSITIVE_INFINITY)).length,
      begun: rows.filter((row) => reaches(row, 40)).length,
    };
  });
}

describe('the bench', () => {
  it('opens beside the text by its command', async () => {
    await show(1400, 900, 1);
    await workbench.openFile(DEMO);
    await workbench.command('Tombolo: Open Stencil Preview (Bench)');
    await inBench('.finding').nth(4).waitFor();
  });

  it('and by the icon above the text', async () => {
    await workbench.page.locator('.tab', { hasText: 'Stencil Preview' }).locator('.tab-actions a').click();
    await workbench.page.locator('iframe.webview').waitFor({ state: 'detached' });
    const icon = workbench.page
      .locator('.editor-actions')
      .getByRole('button', { name: 'Open Stencil Preview (Bench)' });
    await icon.click();
    await inBench('.finding').nth(4).waitFor();
  });
});

describe.each([
  ['1400', 1400, 900, 1],
  ['1000', 1000, 800, 1],
  ['1920', 1920, 1080, 1],
  ['1400 at 200 %', 700, 450, 2],
] as const)('a window %s pixels wide', (name, width, height, density) => {
  const shot = (step: string) => workbench.shot(`minutes ${name} ${step}`);

  beforeAll(async () => {
    await show(width, height, density);
    await workbench.showList('Findings');
  });

  test('shows picture, buttons and findings whole', async () => {
    await shot('1 opened');
    const bar = await boxOf('.toolbar');
    const rows = await inBench('.toolbar button:visible').evaluateAll((all) =>
      all.filter((each) => !each.closest('[popover]')).map((each) => each.getBoundingClientRect().y),
    );
    expect(new Set(rows).size, 'rows of buttons').toBe(1);
    expect(bar.height).toBeLessThan(40);
    const [surface, print] = [await boxOf('.surface'), await boxOf('.ground')];
    expect(Math.max(print.width / surface.width, print.height / surface.height)).toBeGreaterThan(0.55);
    const { whole, begun } = await findingsInSight();
    expect(begun).toBeGreaterThanOrEqual(1);
    if (width >= 1400) expect(whole).toBeGreaterThanOrEqual(2);
    expect(await cutOffControls(workbench)).toEqual([]);
  });

  test('the first finding leads to its text, and the lightbulb to its fixes', async () => {
    const fixes = workbench.page.locator('.action-widget').getByText(/^Bridge this island/);
    await retry(async () => {
      await button(ISLAND).click();
      await workbench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
      await workbench.page.keyboard.press('Control+.');
      await fixes.first().waitFor({ timeout: 8000 });
    });
    await shot('2 lightbulb');
    await press('Escape');
    await inBench('.ghost-bar').waitFor();
    await shot('3 planned');
    expect(await cutOffControls(workbench)).toEqual([]);
    await button('Cancel').focus();
    await press('Enter');
    await inBench('.ghost-bar').waitFor({ state: 'hidden' });
  });

  test('each look is chosen by key, and keeps nobody out', async () => {
    await look('Print').focus();
    for (const [step, key] of [
      ['Single sheet', 'ArrowRight'],
      ['All sheets', 'ArrowRight'],
    ] as const) {
      await press(key, 'Enter');
      await expect.poll(() => look(step).isChecked()).toBe(true);
      await shot(`4 ${step}`);
      expect(await cutOffControls(workbench)).toEqual([]);
      expect(await barriers(workbench)).toEqual([]);
    }
    await press('ArrowLeft', 'ArrowLeft', 'Enter');
    expect(await barriers(workbench)).toEqual([]);
  });

  test('a sheet out of register, and back', async () => {
    const sheet = workbench.bench.getByRole('combobox', { name: 'Sheet out of register' });
    const summary = inBench('.slip summary');
    await workbench.showList('Misregistration');
    if (!(await sheet.isVisible())) await summary.click();
    await sheet.focus();
    await press('ArrowUp');
    await workbench.bench.getByRole('slider', { name: 'Shift down in mm' }).focus();
    for (let step = 0; step < 8; step += 1) await press('ArrowUp');
    await expect.poll(() => inBench('.slip .told').textContent()).toMatch(/^Bare ground/);
    await shot('5 misregistration');
    expect(await cutOffControls(workbench)).toEqual([]);
    await sheet.focus();
    await press('ArrowDown');
    if (await summary.isVisible()) await summary.click();
    else await workbench.showList('Findings');
    await inBench('.register-chip').waitFor();
    await shot('5 out of register');
    await inBench('.register-chip').getByRole('button', { name: 'Reset' }).focus();
    await press('Enter');
    await inBench('.register-chip').waitFor({ state: 'hidden' });
  });

  test('a bridge is put in, picked, and taken back', async () => {
    await inBench('.canvas').focus();
    await press('b');
    // Where a gap is narrower than a pointer is exact, a bridge is put in from the list.
    if (density === 1) await inBench('.canvas').click({ position: await onCanvas(GAP) });
    else await button(ISLAND).click();
    await button('Add bridge').focus();
    await press('Enter');
    await workbench.page.locator('.tab.dirty').waitFor();
    await button(ISLAND).waitFor({ state: 'detached' });
    await shot('6 bridged');
    const handles = inBench('.bridge-handles');
    await retry(async () => {
      await inBench('.canvas').hover({ position: await onCanvas({ x: 20, y: 20 }) });
      await inBench('.canvas').click({ position: await onCanvas(GAP) });
      await expect.poll(() => handles.getAttribute('data-state'), { timeout: 5000 }).toBe('selected');
    });
    await shot('7 picked');
    expect(await cutOffControls(workbench)).toEqual([]);
    await press('Escape', 'f', 'Control+z');
    await button(ISLAND).waitFor();
    await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  });

  test('the picture is saved from the menu', async () => {
    await button(/^More$/).focus();
    await press('Enter');
    await shot('8 menu');
    expect(await cutOffControls(workbench)).toEqual([]);
    await press('End', 'Enter');
    const file = workbench.page.locator('.quick-input-widget input').first();
    await expect.poll(() => file.inputValue()).toMatch(/waymarker-picture\.png$/);
    await shot('9 save picture');
    await press('Escape');
    await file.waitFor({ state: 'hidden' });
  });
});

describe('a theme', () => {
  beforeAll(async () => {
    await show(1400, 900, 1);
    await workbench.command('View: Reset Editor Group Sizes');
  });

  describe.each(THEMES)('%s', (theme, bodyClass, name) => {
    it('has badges that can be read', async () => {
      await workbench.showList('Findings');
      workbench.chooseTheme(theme);
      await inBench(`body.${bodyClass}`).waitFor();
      const contrasts = await badgeContrasts(workbench);
      expect(contrasts).toHaveLength(8);
      expect(contrasts.filter(([, contrast]) => contrast < 4.5)).toEqual([]);
      expect(await barriers(workbench)).toEqual([]);
      await button(ISLAND).click();
      await inBench('.ghost-bar').waitFor();
      await workbench.shot(`minutes theme ${name} 1 planned`);
      await button('Cancel').click();
      await look('Single sheet').click();
      await workbench.shot(`minutes theme ${name} 2 sheet`);
      await look('Print').click();
    });
  });
});
