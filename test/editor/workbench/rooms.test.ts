/** Picture and lists share the room of the bench: in windows of several widths, and at a zoom of 200 %. */
import { afterAll, describe, expect, test } from 'vitest';
import { useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);

afterAll(() => workbench.page.setViewportSize({ width: 1440, height: 900 }));

async function boxOf(selector: string): Promise<{ x: number; y: number; width: number; height: number }> {
  const box = await inBench(selector).first().boundingBox();
  if (!box) throw new Error(`${selector} does not show.`);
  return box;
}

/** Of 1400 × 900 at 200 % half is left of each pixel, and half the pixels. */
describe.each([
  ['1000', 1000, 800],
  ['1400', 1400, 900],
  ['1920', 1920, 1080],
  ['1400 at 200 %', 700, 450],
] as const)('a window %s pixels wide', (name, width, height) => {
  test('has one row of buttons, all of them in it or in its menu', async () => {
    await workbench.page.setViewportSize({ width, height });
    await workbench.page.waitForTimeout(300);
    const bar = await boxOf('.toolbar');
    expect(bar.height).toBeLessThanOrEqual(37);
    const buttons = inBench('.toolbar > .tool-group button:visible');
    const boxes = await buttons.evaluateAll((all) => all.map((button) => button.getBoundingClientRect().toJSON()));
    expect(new Set(boxes.map(({ y }) => y)).size).toBe(1);
    expect(Math.max(...boxes.map(({ right }) => right))).toBeLessThanOrEqual(bar.width);
    const shown = await buttons.evaluateAll((all) => all.map((button) => button.getAttribute('aria-label')));
    await workbench.bench.getByRole('button', { name: 'More', exact: true }).click();
    const rows = await inBench('.menu button span:nth-child(2)').allTextContents();
    await workbench.page.keyboard.press('Escape');
    for (const command of ['Print', 'Measure', 'Zoom in', 'Fit to window', 'Marks', 'Save picture…']) {
      expect(
        [...shown, ...rows].filter((each) => each === command),
        command,
      ).toHaveLength(1);
    }
  });

  test('the print fills the room beside or above the lists', async () => {
    const surface = await boxOf('.surface');
    const print = await boxOf('.ground');
    const share = Math.max((print.width + 24) / surface.width, (print.height + 44) / surface.height);
    expect(share).toBeGreaterThan(0.97);
    expect(print.width).toBeLessThan(surface.width);
    expect(print.height).toBeLessThan(surface.height);
    await workbench.shot(`room ${name}`);
  });

  test('the first finding is in sight, and no list is squeezed', async () => {
    const list = await boxOf('.finding');
    const room = await boxOf('.lists');
    expect(list.y + Math.min(list.height, 60)).toBeLessThanOrEqual(room.y + room.height + 1);
    if (width >= 1400) expect(list.width).toBeGreaterThanOrEqual(260);
  });
});

test('tabs say whole words, and none is cut off, from a narrow bench to a wide one', async () => {
  const tabs = inBench('[role="tab"]:visible');
  for (const width of [700, 740, 780, 820, 860, 900, 960, 1040]) {
    await workbench.page.setViewportSize({ width, height: 450 });
    await workbench.page.waitForTimeout(300);
    if (width === 700) {
      await workbench.shot('room with tabs');
      const words = [expect.stringMatching(/^Findings/), expect.stringMatching(/^Layers/), 'Slip', 'Cutting'];
      expect(await tabs.allInnerTexts()).toEqual(words);
    }
    const cut = await tabs.evaluateAll((all) => all.filter((tab) => tab.scrollWidth > tab.clientWidth).length);
    const ends = await tabs.evaluateAll((all) => all.map((tab) => tab.getBoundingClientRect().right));
    expect(cut, `at ${width}`).toBe(0);
    expect(Math.max(...ends), `at ${width}`).toBeLessThanOrEqual((await boxOf('.lists')).width);
  }
});

test('a larger window never shows a smaller print', async () => {
  const widths: number[] = [];
  for (const [width, height] of [
    [1000, 800],
    [1400, 900],
    [1920, 1080],
  ] as const) {
    await workbench.page.setViewportSize({ width, height });
    await workbench.page.waitForTimeout(300);
    widths.push((await boxOf('.ground')).width);
  }
  expect(widths).toEqual([...widths].sort((a, b) => a - b));
});
