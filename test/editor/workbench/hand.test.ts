/** What the artist does on the picture itself: picks, measures and bridges, by mouse and by keyboard. */
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEMO, useDemo } from './workbench';

const bench = useDemo();
let original: string;
let allFindings: string[];

const findings = (): Promise<string[]> => bench.bench.locator('.finding').allTextContents();

beforeAll(async () => {
  original = bench.onDisk(DEMO);
  allFindings = await findings();
});

const canvas = (): Locator => bench.bench.locator('.canvas');
const card = (): Locator => bench.bench.locator('.part-card');
const status = (): Locator => bench.bench.locator('.unseen[role=status]');

/** A place of the print in canvas pixels, from mm. */
async function place(x: number, y: number): Promise<{ x: number; y: number }> {
  return canvas().evaluate(
    (element: SVGSVGElement, point) => {
      const picture = element.querySelector(':scope > g[transform^="matrix"]') as SVGGElement;
      const at = new DOMPoint(point.x, point.y).matrixTransform(picture.getScreenCTM() ?? undefined);
      const { left, top } = element.getBoundingClientRect();
      return { x: at.x - left, y: at.y - top };
    },
    { x, y },
  );
}

const click = async (x: number, y: number): Promise<void> => canvas().click({ position: await place(x, y) });
const hover = async (x: number, y: number): Promise<void> => canvas().hover({ position: await place(x, y) });
const chooseTool = (tool: string): Promise<void> => bench.bench.getByRole('radio', { name: tool, exact: true }).check();
const selection = (pattern: RegExp): Promise<void> => bench.page.getByText(pattern).waitFor();

/** One step of undo in the text, saved. Before and after it, the bench must have heard of what is in the text. */
async function takeBack(): Promise<void> {
  await expect.poll(findings).not.toEqual(allFindings);
  await bench.command('View: Focus First Editor Group');
  await bench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
  await bench.page.keyboard.press('Control+Z');
  await expect.poll(findings).toEqual(allFindings);
  await bench.save();
}

/** The next part, as it is told. */
async function nextPart(): Promise<string | null> {
  const before = await status().textContent();
  await bench.page.keyboard.press('.');
  await expect.poll(() => status().textContent()).not.toBe(before);
  return status().textContent();
}

describe('picking', () => {
  it('a rest of the pointer shows size, area, layer and paint of what is there', async () => {
    await hover(80, 40);
    await expect
      .poll(() => card().textContent())
      .toMatch(/Opening, part \d+ of \d+, Sun.*30\.80 × 30\.80 mm.*74\d\.\d mm².*layerSun.*#f0b13c/);
    await bench.shot('hand-1-card');
    await hover(3, 3);
    await expect.poll(() => card().isHidden()).toBe(true);
  });

  it('a click selects the text that draws it', async () => {
    await click(80, 40);
    await selection(/Ln 25, Col \d+ \(\d+ selected\)/);
    await click(88.9, 43);
    await selection(/Ln 27, Col \d+ \(\d+ selected\)/);
    expect(await bench.page.locator('.selected-text').count()).toBeGreaterThan(0);
  });

  it('a drag moves the picture and picks nothing', async () => {
    const before = await place(70, 38);
    const box = await canvas().boundingBox();
    if (!box) throw new Error('no canvas');
    await bench.page.mouse.move(box.x + before.x, box.y + before.y);
    await bench.page.mouse.down();
    await bench.page.mouse.move(box.x + before.x + 40, box.y + before.y + 20, { steps: 4 });
    await bench.page.mouse.up();
    const after = await place(70, 38);
    expect(Math.round(after.x - before.x)).toBe(40);
    expect(Math.round(after.y - before.y)).toBe(20);
    await canvas().focus();
    await bench.page.keyboard.press('0');
  });

  it('the keyboard goes from part to part, is told what they are, and selects their text', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('.');
    await expect.poll(() => status().textContent()).toMatch(/^(Opening|Island|Narrow).*part \d+ of \d+/);
    const first = await status().textContent();
    await bench.page.keyboard.press('.');
    await expect.poll(() => status().textContent()).not.toBe(first);
    await bench.page.keyboard.press(',');
    await expect.poll(() => status().textContent()).toBe(first);
    await bench.shot('hand-2-keyboard');
    await bench.page.keyboard.press('Enter');
    await bench.page.locator('.selected-text').first().waitFor();
    await bench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
  });

  it('the crosshair moves with Shift and arrow keys, and goes with Escape', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('Escape');
    const cross = bench.bench.locator('.cross');
    expect(await cross.getAttribute('d')).toBe('');
    await bench.page.keyboard.press('Enter');
    const middle = await cross.getAttribute('d');
    expect(middle).toMatch(/^M/);
    await bench.page.keyboard.press('Shift+ArrowRight');
    expect(await cross.getAttribute('d')).not.toBe(middle);
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('Escape');
    await expect.poll(() => cross.getAttribute('d')).toBe('');
  });
});

describe('measuring', () => {
  it('from point to point by mouse, snapping to the points of the outline', async () => {
    await chooseTool('Measure');
    await click(54.7, 38.2);
    await hover(80, 38);
    await click(85.3, 37.9);
    await expect
      .poll(() => bench.bench.locator('.tape .tape-label').textContent())
      .toMatch(/^30\.80 mm \(30\.80 across, 0\.00 down\)/);
    await expect.poll(() => status().textContent()).toMatch(/^30\.80 mm/);
    await bench.shot('hand-3-measure');
  });

  it('and by keyboard', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('f');
    await bench.page.keyboard.press('m');
    expect(await bench.bench.getByRole('radio', { name: 'Measure' }).isChecked()).toBe(true);
    await bench.page.keyboard.press('Enter');
    await bench.page.keyboard.press('Enter');
    await expect.poll(() => status().textContent()).toMatch(/^First point/);
    for (let i = 0; i < 5; i += 1) await bench.page.keyboard.press('Shift+ArrowDown');
    await bench.page.keyboard.press('Enter');
    await expect.poll(() => status().textContent()).toMatch(/^\d+\.\d\d mm \(/);
    await bench.page.keyboard.press('Escape');
    await expect.poll(() => bench.bench.locator('.tape').getAttribute('visibility')).toBe('hidden');
  });
});

describe('bridging', () => {
  const bar = (): Locator => bench.bench.locator('.ghost-bar');
  const strips = (): Locator => bench.bench.locator('.ghost-strip');

  it('a click in a gap shows the bridge as a ghost; Escape drops it, and the text is as it was', async () => {
    await chooseTool('Bridge');
    await click(70, 18.8);
    await bar().waitFor();
    expect(await strips().count()).toBeGreaterThan(0);
    await bench.shot('hand-4-ghost');
    await canvas().focus();
    await bench.page.keyboard.press('Escape');
    await bar().waitFor({ state: 'hidden' });
    expect(await strips().count()).toBe(0);
    expect(await bench.page.locator('.tab.dirty').count()).toBe(0);
  });

  it('a click where there is no gap is told so', async () => {
    await click(3, 3);
    await expect.poll(() => bar().textContent()).toMatch(/no gap/i);
    await bench.bench.getByRole('button', { name: 'Close', exact: true }).click();
    await bar().waitFor({ state: 'hidden' });
  });

  it('it is put in on confirm, and one undo takes it out', async () => {
    await click(70, 18.8);
    await bench.bench.getByRole('button', { name: 'Add bridge' }).click();
    await expect.poll(() => bar().textContent()).toMatch(/^Bridges? added\. Ctrl\+Z takes it back\./);
    await bench.bench.getByRole('button', { name: /Island, 272/ }).waitFor({ state: 'detached' });
    await bench.shot('hand-5-bridged');
    await takeBack();
    expect(bench.onDisk(DEMO) === original, 'the text is as it was').toBe(true);
  });

  it('by keyboard: from part to part, Enter for the ghost, Enter again to put it in', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('b');
    await expect.poll(nextPart).toMatch(/^Island/);
    await bench.page.keyboard.press('Enter');
    await bar().waitFor();
    await bench.page.keyboard.press('Enter');
    await bench.page.locator('.tab.dirty').waitFor();
    await takeBack();
    expect(bench.onDisk(DEMO) === original, 'the text is as it was').toBe(true);
  });

  it('choosing an island shows the bridges that its lightbulb prefers', async () => {
    await bench.bench.getByRole('button', { name: /Island, 272/ }).click();
    await bar().waitFor();
    expect(await bar().textContent()).toMatch(/Bridge this island/);
    expect(await strips().count()).toBeGreaterThan(0);
    await bench.shot('hand-6-plan');
    await bench.bench.getByRole('button', { name: 'Cancel' }).click();
  });
});

describe('true size', () => {
  it('follows the screen that the artist has measured with a ruler', async () => {
    await bench.chooseMore('Calibrate screen…');
    const dialog = bench.bench.getByRole('dialog', { name: 'Calibrate screen' });
    await dialog.waitFor();
    const length = bench.bench.getByRole('spinbutton', { name: 'Length of the line in mm' });
    const line = (await bench.bench.locator('.measured-line').boundingBox())?.width ?? 0;
    expect(await length.inputValue()).toBe(((line / 96) * 25.4).toFixed(1));
    await length.fill('2');
    expect(await bench.bench.getByRole('button', { name: 'Keep' }).isDisabled()).toBe(true);
    await length.fill(((line / 120) * 25.4).toFixed(2));
    await bench.shot('hand-7-screen');
    await bench.bench.getByRole('button', { name: 'Keep' }).click();
    await bench.bench.getByRole('button', { name: 'Actual size' }).click();
    const [from, to] = [await place(0, 0), await place(10, 0)];
    expect(to.x - from.x).toBeCloseTo(1200 / 25.4, 3);
    expect(await bench.bench.locator('.nearness').textContent()).toBe('100 %');
    await expect.poll(() => bench.userSettings()['tombolo.bench.pixelsPerInch']).toBe(120);
    await bench.chooseMore('Calibrate screen…');
    await length.fill(((line / 96) * 25.4).toFixed(2));
    await bench.bench.getByRole('button', { name: 'Keep' }).click();
    await expect.poll(() => bench.userSettings()['tombolo.bench.pixelsPerInch']).toBe(96);
  });
});

describe('the cutting area', () => {
  it('is drawn around the sheet at its own size, and is in sight', async () => {
    await bench.chooseMore('Cutting area');
    await bench.bench.getByRole('button', { name: 'Fit to window' }).click();
    const area = await bench.bench.locator('.cutting-area rect').boundingBox();
    const [left, right] = [await place(0, 0), await place(148, 105)];
    const scale = (right.x - left.x) / 148;
    expect(((area?.width ?? 0) - 1) / scale).toBeCloseTo(200, 0);
    expect(await bench.bench.locator('.cutting-area text').textContent()).toBe('Cutting area, 200 × 200 mm');
    await bench.shot('hand-8-cutting-area');
    await bench.chooseMore('Cutting area');
  });
});
