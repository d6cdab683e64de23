/** The bridges of a whole layer are planned on the bench: seen in a style, dragged with what is alike, put in, taken back. */
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { focusedPlace } from './accessibility';
import { DEMO, useDemo } from './workbench';

const bench = useDemo();
let original: string;

interface Place {
  readonly x: number;
  readonly y: number;
}

const canvas = (): Locator => bench.bench.locator('.canvas');
const bar = (): Locator => bench.bench.locator('.plan-bar');
const sentence = (): Promise<string> =>
  bar()
    .locator('p')
    .textContent()
    .then((text) => text ?? '');
const strips = (look?: string): Locator =>
  bench.bench.locator(look === undefined ? '.ghost-strip' : `.ghost-strip[data-look=${look}]`);
const button = (name: string): Locator => bench.bench.getByRole('button', { name, exact: true });
const style = (name: string): Locator => bar().getByRole('radio', { name });
const isDirty = async (): Promise<boolean> => (await bench.page.locator('.tab.dirty').count()) > 0;
const isOnPicture = (): Promise<boolean> => canvas().evaluate((element) => document.activeElement === element);
const ready = () => expect.poll(sentence, { timeout: 20_000 }).toMatch(/^Bridge every island in layer/);

/** The middles of the strips that are drawn, in the order of their numbers, in the window. */
async function middles(look?: string): Promise<Place[]> {
  const boxes = await Promise.all((await strips(look).all()).map((strip) => strip.boundingBox()));
  return boxes.map((box) => ({ x: (box?.x ?? 0) + (box?.width ?? 0) / 2, y: (box?.y ?? 0) + (box?.height ?? 0) / 2 }));
}

async function choose(name: string): Promise<void> {
  await style(name).check();
  await ready();
}

async function drag({ x, y }: Place, by: Place): Promise<void> {
  await bench.page.mouse.move(x, y, { steps: 2 });
  await bench.page.mouse.down();
  await bench.page.mouse.move(x + by.x, y + by.y, { steps: 6 });
}

async function openPlan(): Promise<void> {
  await bench.showList('Layers');
  await bench.bench.getByRole('button', { name: 'Bridge "Sun"…' }).click();
  await ready();
}

beforeAll(async () => {
  original = bench.onDisk(DEMO);
});

describe('the plan of a layer', () => {
  it('is seen as a ghost before anything is written; its style is chosen beside it', async () => {
    await openPlan();
    expect(await sentence()).toBe('Bridge every island in layer "Sun" (2 bridges of 0.80 mm)');
    expect(await strips('planned').count()).toBe(2);
    expect(await style('Auto').isChecked()).toBe(true);
    // Arrow keys choose a style at once, and Enter puts the bridges in.
    expect(await style('Auto').evaluate((element) => document.activeElement === element)).toBe(true);
    expect(await isDirty()).toBe(false);
    await bench.shot('plan-1-ghost');
  });

  it('is another in another style, by key or click', async () => {
    await bench.page.keyboard.press('ArrowRight');
    await expect.poll(() => style('Upright').isChecked()).toBe(true);
    await ready();
    const [a, b] = await middles();
    if (!a || !b) throw new Error('no bridges');
    expect(Math.abs(a.y - b.y)).toBeGreaterThan(Math.abs(a.x - b.x));
    await choose('Level');
    const [left, right] = await middles();
    if (!left || !right) throw new Error('no bridges');
    expect(Math.abs(left.x - right.x)).toBeGreaterThan(100);
    expect(Math.abs(left.y - right.y)).toBeLessThan(2);
    await bench.shot('plan-2-level');
  });
});

describe('a bridge of it', () => {
  it('is dragged along its gap, and its mirror image follows', async () => {
    const [left, right] = await middles();
    if (!left || !right) throw new Error('no bridges');
    await drag(left, { x: 4, y: 30 });
    await expect.poll(() => strips('moving').count(), { timeout: 10_000 }).toBe(2);
    await expect.poll(sentence).toBe('2 bridges that are alike. Hold Alt to move this one alone.');
    const farthestOff = async () => Math.max(...(await middles('moving')).map(({ y }) => Math.abs(y - left.y - 30)));
    await expect.poll(farthestOff, { timeout: 10_000 }).toBeLessThan(5);
    await bench.shot('plan-3-dragged');
    await bench.page.mouse.up();
    await ready();
    expect(await strips('was').count()).toBe(0);
    expect(await isDirty()).toBe(false);
  });

  it('goes back with Ctrl+Z, which leaves the text alone', async () => {
    const [before] = await middles();
    expect(await isOnPicture()).toBe(true);
    await bench.page.keyboard.press('Control+z');
    await ready();
    const [after] = await middles();
    expect((before?.y ?? 0) - (after?.y ?? 0)).toBeCloseTo(30, -1);
    expect(await isDirty()).toBe(false);
    expect(await button('Reset').isHidden()).toBe(true);
  });

  it('goes alone while Alt is held, even where the pointer rests', async () => {
    const [left] = await middles();
    if (!left) throw new Error('no bridges');
    await drag(left, { x: 4, y: 24 });
    await expect.poll(() => strips('moving').count(), { timeout: 10_000 }).toBe(2);
    await bench.page.keyboard.down('Alt');
    await expect.poll(() => strips('moving').count(), { timeout: 10_000 }).toBe(1);
    expect(await sentence()).toBe('This bridge alone.');
    await bench.page.keyboard.up('Alt');
    await expect.poll(() => strips('moving').count(), { timeout: 10_000 }).toBe(2);
    await bench.page.keyboard.press('Escape');
    await expect.poll(() => strips('moving').count()).toBe(0);
    await bench.page.mouse.up();
    await ready();
  });

  it('is red where it cannot stand, says why, and goes back', async () => {
    const [left] = await middles();
    if (!left) throw new Error('no bridges');
    // Where the ring is steep no level bridge leads across it.
    await drag(left, { x: 60, y: 180 });
    await expect.poll(() => strips('refused').count(), { timeout: 10_000 }).toBeGreaterThan(0);
    expect(await sentence()).toMatch(/^No (straight )?bridge/);
    await bench.shot('plan-4-refused');
    await bench.page.mouse.up();
    await expect.poll(() => strips('refused').count(), { timeout: 10_000 }).toBe(0);
    expect(await sentence()).toMatch(/It went back\.$/);
    await bench.shot('plan-5-went-back');
  });

  it('is gone to and moved by keys', async () => {
    await choose('Upright');
    await canvas().focus();
    await bench.page.keyboard.press('b');
    await expect
      .poll(() => bench.bench.locator('.unseen[role=status]').textContent())
      .toMatch(/^Planned bridge 1 of 2: 0\.80 mm wide/);
    expect(await strips('selected').count()).toBe(1);
    const [before] = await middles('selected');
    await bench.page.keyboard.press('Shift+ArrowRight');
    await ready();
    const [after] = await middles('selected');
    expect(after?.x ?? 0).toBeGreaterThan((before?.x ?? 0) + 2);
    await button('Reset').click();
    await ready();
    expect((await middles('selected'))[0]?.x).toBeCloseTo(before?.x ?? 0, 0);
    expect(await isDirty()).toBe(false);
  });
});

describe('what is planned', () => {
  it('is put in by Enter as one change, and the style is kept where that is wanted', async () => {
    await choose('Level');
    await bench.bench.getByRole('checkbox', { name: 'Keep style for "Sun" in tombolo.json' }).check();
    await bench.shot('plan-6-keep');
    await bench.page.keyboard.press('Enter');
    const told = bench.bench.locator('.ghost-bar');
    await expect
      .poll(() => told.textContent(), { timeout: 20_000 })
      .toMatch(/^Bridges added, style kept in tombolo\.json\. Ctrl\+Z takes the bridges back\./);
    expect(await bar().isHidden()).toBe(true);
    await expect.poll(isOnPicture).toBe(true);
    await bench.bench.locator('.finding', { hasText: '272' }).waitFor({ state: 'detached' });
    await expect.poll(() => strips().count()).toBe(0);
    await bench.shot('plan-7-added');
    await bench.page.keyboard.press('Control+s');
    await expect
      .poll(() => JSON.parse(bench.onDisk('tombolo.json')), { timeout: 10_000 })
      .toMatchObject({ bridges: { layers: { Sun: 'level' } } });
    expect(bench.onDisk(DEMO)).not.toBe(original);
  });

  it('is taken back to the byte by one Ctrl+Z; the next plan begins in the style that was kept', async () => {
    await canvas().focus();
    await bench.page.keyboard.press('Control+z');
    await bench.bench.locator('.finding', { hasText: '272' }).waitFor({ state: 'attached' });
    await bench.page.keyboard.press('Control+s');
    await expect.poll(() => bench.onDisk(DEMO) === original, { timeout: 10_000 }).toBe(true);
    await openPlan();
    expect(await style('Level').isChecked()).toBe(true);
    expect(await bar().getByRole('checkbox').isHidden()).toBe(true);
  });

  it('is dropped by Escape, and the focus goes back to where it was asked for', async () => {
    await style('Level').focus();
    await bench.page.keyboard.press('Escape');
    expect(await bar().isHidden()).toBe(true);
    expect(await strips().count()).toBe(0);
    expect(await focusedPlace(bench)).toMatch(/bridge-layer/);
    expect(await isDirty()).toBe(false);
  });
});
