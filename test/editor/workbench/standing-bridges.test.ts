/** Bridges that stand are handled on the bench: picked, dragged, stretched, moved by keys, removed, and all taken back. */
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEMO, useDemo } from './workbench';

const bench = useDemo();
let original: string;

const canvas = (): Locator => bench.bench.locator('.canvas');
const handles = (): Locator => bench.bench.locator('.bridge-handles');
const state = (): Promise<string | null> => handles().getAttribute('data-state');
const measure = (): Promise<string | null> => handles().locator('.tape-label').textContent();
const bar = (): Locator => bench.bench.locator('.ghost-bar');
const spoken = (): Promise<string | null> => bench.bench.locator('.unseen[role=status]').textContent();
const button = (name: string): Locator => bench.bench.getByRole('button', { name, exact: true });
const isDirty = async (): Promise<boolean> => (await bench.page.locator('.tab.dirty').count()) > 0;
const isOnPicture = (): Promise<boolean> => canvas().evaluate((element) => document.activeElement === element);

/** In the ring of the sun: where its first bridge is put in, and a place farther along the ring. */
const BRIDGE = { x: 70, y: 18.8 };
const OPPOSITE = { x: 50.8, y: 38 };
const FARTHER = { x: 78, y: 20.5 };

/** A place of the print in the window, from mm. */
async function place({ x, y }: { readonly x: number; readonly y: number }): Promise<{ x: number; y: number }> {
  const box = await canvas().boundingBox();
  if (!box) throw new Error('no canvas');
  const at = await canvas().evaluate(
    (element: SVGSVGElement, point) => {
      const picture = element.querySelector(':scope > g[transform^="matrix"]') as SVGGElement;
      const { x: left, y: top } = new DOMPoint(point.x, point.y).matrixTransform(picture.getScreenCTM() ?? undefined);
      const own = element.getBoundingClientRect();
      return { x: left - own.left, y: top - own.top };
    },
    { x, y },
  );
  return { x: box.x + at.x, y: box.y + at.y };
}

async function pointAt(at: { readonly x: number; readonly y: number }): Promise<void> {
  const { x, y } = await place(at);
  await bench.page.mouse.move(x, y, { steps: 2 });
}

async function click(at: { readonly x: number; readonly y: number }): Promise<void> {
  await pointAt(at);
  await bench.page.mouse.down();
  await bench.page.mouse.up();
}

/** Saves, and reads what is in the file then. */
async function written(): Promise<string> {
  await bench.command('View: Focus First Editor Group');
  await bench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
  await bench.save();
  return bench.onDisk(DEMO);
}

/** The bridge is in hand where it was moved to, and nowhere else: so this tells which of the two texts the bench shows. */
const showsMoved = async (): Promise<boolean> => (await handles().getAttribute('visibility')) !== 'hidden';

async function undoOnBench(): Promise<void> {
  await canvas().focus();
  await bench.page.keyboard.press('Control+z');
}

beforeAll(async () => {
  await bench.bench.getByRole('radio', { name: 'Bridge', exact: true }).click();
  // Two of them: what hangs on one alone would be a tongue.
  for (const gap of [BRIDGE, OPPOSITE]) {
    await click(gap);
    await button('Add bridge').click();
    await bar().getByText(/added/).waitFor();
    await bench.bench.locator('.finding', { hasText: '272' }).waitFor({ state: 'detached' });
  }
  await bench.page.locator('.tab.dirty').waitFor();
  original = await written();
});

describe('by mouse', () => {
  it('a bridge under the pointer is lit up with its measure', async () => {
    await pointAt({ x: 20, y: 20 });
    await pointAt(BRIDGE);
    await expect.poll(state, { timeout: 10_000 }).toBe('hovered');
    expect(await measure()).toBe('0.80 × 2.40 mm');
    await bench.shot('bridges-1-hovered');
  });

  it('a click selects it, and says what it is', async () => {
    await click(BRIDGE);
    await expect.poll(state).toBe('selected');
    expect(await spoken()).toMatch(/^Bridge 1 of \d+: 0\.80 mm wide, 2\.4 mm long, in layer Sun\./);
    expect(await bench.bench.locator('.bridge-handle[visibility=inherit]').count()).toBe(2);
    await bench.shot('bridges-2-selected');
  });

  it('a drag takes its ghost along the gap; nothing is written before it is applied', async () => {
    await pointAt(BRIDGE);
    await bench.page.mouse.down();
    const { x, y } = await place(FARTHER);
    await bench.page.mouse.move(x, y, { steps: 8 });
    await expect.poll(state).toBe('moved');
    await expect.poll(() => bar().textContent()).toMatch(/Move this bridge 8\.\d\d mm to the right/);
    await bench.shot('bridges-3-dragged');
    await bench.page.mouse.up();
    await button('Apply').waitFor();
    expect(await isDirty()).toBe(false);
  });

  it('a handle stretches the ghost, and shows how wide', async () => {
    const box = await bench.bench.locator('.bridge-handle').first().boundingBox();
    const other = await bench.bench.locator('.bridge-handle').last().boundingBox();
    if (!box || !other) throw new Error('no handle');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await bench.page.mouse.move(x, y, { steps: 2 });
    await bench.page.mouse.down();
    await bench.page.mouse.move(x + (x - other.x) / 4, y + (y - other.y) / 4, { steps: 4 });
    await expect.poll(measure).not.toMatch(/^0\.80/);
    await bench.page.mouse.up();
    expect(Number.parseFloat((await measure()) ?? '')).toBeGreaterThan(1);
    await bench.shot('bridges-4-stretched');
  });

  it('Apply writes both as one change, and Ctrl+Z on the bench gives the text back byte for byte', async () => {
    await button('Apply').click();
    await expect
      .poll(() => bar().textContent(), { timeout: 20_000 })
      .toMatch(/^Bridge changed\. Ctrl\+Z takes it back\./);
    await expect.poll(isDirty).toBe(true);
    expect(await isOnPicture()).toBe(true);
    // It stays in hand where it stands now.
    await expect.poll(state, { timeout: 20_000 }).toBe('selected');
    expect(await measure()).not.toMatch(/^0\.80/);
    await bench.shot('bridges-5-applied');
    await undoOnBench();
    await expect.poll(isDirty).toBe(false);
    expect(bench.onDisk(DEMO) === original).toBe(true);
    await expect.poll(isOnPicture).toBe(true);
    await expect.poll(showsMoved).toBe(false);
  });

  it('and again with Ctrl+Shift+Z, and back', async () => {
    await bench.page.keyboard.press('Control+Shift+z');
    await expect.poll(isDirty).toBe(true);
    await expect.poll(isOnPicture).toBe(true);
    await expect.poll(showsMoved).toBe(true);
    await undoOnBench();
    await expect.poll(isDirty).toBe(false);
    await expect.poll(showsMoved).toBe(false);
  });

  it('Escape drops the ghost, then the selection', async () => {
    await expect.poll(isOnPicture).toBe(true);
    await click(BRIDGE);
    await expect.poll(state).toBe('selected');
    await bench.page.keyboard.press('ArrowRight');
    await expect.poll(state).toBe('moved');
    await bench.page.keyboard.press('Escape');
    await expect.poll(state).toBe('selected');
    expect(await bar().isHidden()).toBe(true);
    await bench.page.keyboard.press('Escape');
    await expect.poll(() => handles().getAttribute('visibility')).toBe('hidden');
  });
});

describe('by keyboard', () => {
  it('B goes from bridge to bridge; arrow keys, brackets and Enter change one', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('b');
    await expect.poll(spoken).toMatch(/^Bridge 1 of/);
    await bench.page.keyboard.press('b');
    await expect.poll(spoken).toMatch(/^Bridge 2 of/);
    await bench.page.keyboard.press('Shift+B');
    await expect.poll(spoken).toMatch(/^Bridge 1 of/);
    await bench.page.keyboard.press('Shift+ArrowRight');
    await bench.page.keyboard.press('ArrowRight');
    await bench.page.keyboard.press(']');
    await expect
      .poll(() => bar().textContent(), { timeout: 10_000 })
      .toMatch(/Move this bridge 1\.\d\d mm to the right, 0\.90 mm wide/);
    await bench.page.keyboard.press('Enter');
    await expect.poll(() => bar().textContent(), { timeout: 20_000 }).toMatch(/^Bridge changed/);
    await expect.poll(isOnPicture).toBe(true);
    expect((await written()) === original).toBe(false);
    await undoOnBench();
    await expect.poll(isDirty).toBe(true);
    expect((await written()) === original).toBe(true);
  });

  it('Delete strikes it out, Enter removes it, and undo brings it back', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('Escape');
    await bench.page.keyboard.press('b');
    await expect.poll(spoken).toMatch(/^Bridge 1 of/);
    await bench.page.keyboard.press('Delete');
    await expect.poll(state).toBe('removed');
    await expect.poll(() => bar().textContent()).toMatch(/^Remove this bridge/);
    await button('Remove bridge').waitFor();
    await bench.shot('bridges-6-removed');
    await bench.page.keyboard.press('Enter');
    await expect.poll(() => bar().textContent(), { timeout: 20_000 }).toMatch(/^Bridge removed/);
    await expect.poll(isDirty).toBe(true);
    await button('Undo').click();
    await expect.poll(isDirty).toBe(false);
    expect(bench.onDisk(DEMO) === original).toBe(true);
  });
});
