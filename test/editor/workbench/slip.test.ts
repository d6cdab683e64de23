/** Sheets out of register: by hand, by slider, by key; bare ground told; the sweep to every side. */
import { beforeAll, expect, test } from 'vitest';
import { useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const control = (role: 'radio' | 'checkbox' | 'slider' | 'button', name: string | RegExp) =>
  workbench.bench.getByRole(role, { name });
const told = () => inBench('.slip .told').textContent();
const placeOf = (layer: number) => inBench(`[data-layer="${layer}"]`).getAttribute('transform');

/** mm to the right and down that a layer has been shifted, from the figures beside the sliders. */
async function slip(): Promise<number[]> {
  const figures = await inBench('.slider output').allTextContents();
  return figures.map((figure) => Number.parseFloat(figure));
}

beforeAll(async () => {
  await workbench.widenBench();
  await inBench('.slip summary').click();
});

test('a slider shifts the sheet that is chosen, and the ground that comes bare is shown and told', async () => {
  expect(await told()).toBe('All sheets lie in register.');
  await workbench.bench.getByRole('combobox', { name: 'Sheet out of register' }).selectOption('Heron');
  await control('slider', 'Shift down in mm').fill('1');
  expect(await placeOf(2)).toMatch(/^matrix\(1 0 0 1 0 1\)$/);
  expect(await placeOf(1)).toBe('');
  await expect.poll(told).toMatch(/Bare ground between colours: \d+\.\d\d mm² in \d+ place.* uncovered in all/);
  expect(await inBench('path.bare').getAttribute('d')).toMatch(/^M[\d.]/);
  await workbench.shot('slip-1-sliders');
  await control('slider', 'Turn clockwise in degrees').fill('0.5');
  expect(await placeOf(2)).toMatch(/^matrix\(0\.99996/);
});

test('back in register nothing is bare', async () => {
  await control('button', 'Reset').click();
  expect(await placeOf(2)).toBe('');
  await expect.poll(told).toBe('All sheets lie in register.');
  await expect.poll(() => inBench('path.bare').count()).toBe(0);
});

test('a layer is dragged by its paint, and the view stays where it is', async () => {
  const sheet = () => inBench('.ground').boundingBox();
  const before = await sheet();
  await control('checkbox', 'Drag a sheet').check();
  const arrow = await inBench('[data-layer="3"] .paint').boundingBox();
  if (!arrow) throw new Error('The numeral has no place.');
  // The left border of the frame, halfway down, belongs to the numeral's sheet.
  const [x, y] = [arrow.x + arrow.width - 3, arrow.y + arrow.height * 0.3];
  await workbench.page.mouse.move(x, y);
  await workbench.page.mouse.down();
  await workbench.page.mouse.move(x + 12, y + 6, { steps: 4 });
  await workbench.page.mouse.up();
  const [right, down] = await slip();
  expect(right).toBeGreaterThan(0.5);
  expect(right! / down!).toBeCloseTo(2, 0);
  expect(await sheet()).toEqual(before);
  expect(await workbench.bench.getByRole('combobox', { name: 'Sheet out of register' }).inputValue()).toBe('Numeral');
  await workbench.shot('slip-2-dragged');
});

test('the keys of the picture shift and turn it', async () => {
  await control('button', 'Reset').click();
  await inBench('.canvas').focus();
  await workbench.page.keyboard.press('ArrowRight');
  await workbench.page.keyboard.press('Shift+ArrowUp');
  await workbench.page.keyboard.press('.');
  expect(await slip()).toEqual([0.05, -0.5, 0.05]);
});

test('a drag with Alt shifts without the mode; without it the view moves', async () => {
  await control('button', 'Reset').click();
  await control('checkbox', 'Drag a sheet').uncheck();
  const drag = async () => {
    const arrow = await inBench('[data-layer="3"] .paint').boundingBox();
    if (!arrow) throw new Error('The numeral has no place.');
    const [x, y] = [arrow.x + arrow.width - 3, arrow.y + arrow.height * 0.3];
    await workbench.page.mouse.move(x, y);
    await workbench.page.mouse.down();
    await workbench.page.mouse.move(x + 8, y, { steps: 3 });
    await workbench.page.mouse.up();
  };
  await drag();
  expect(await slip()).toEqual([0, 0, 0]);
  await workbench.page.keyboard.down('Alt');
  await drag();
  await workbench.page.keyboard.up('Alt');
  expect((await slip())[0]).toBeGreaterThan(0.3);
});

test('the sweep tells for each sheet what it bears; its worst side can be looked at', async () => {
  await control('button', 'Reset').click();
  await inBench('.slip').getByText('Test all directions (0.5 mm)').click();
  await expect.poll(() => inBench('.sweep').count(), { timeout: 30_000 }).toBe(4);
  const heron = inBench('.sweep').filter({ hasText: 'Heron' });
  expect(await heron.textContent()).toMatch(/Heron: tolerates 0\.\d\d mm\. Moved 0\.5 mm .*, \d+\.\d\d mm² stay bare/);
  expect(await inBench('.sweep').filter({ hasText: 'Reeds' }).textContent()).toBe(
    'Reeds: tolerates 0.5 mm in any direction.',
  );
  await workbench.shot('slip-3-sweep');
  await heron.focus();
  await workbench.page.keyboard.press('Enter');
  await expect.poll(told).toMatch(/Bare ground between colours/);
  const [right, down] = await slip();
  expect(Math.hypot(right!, down!)).toBeCloseTo(0.5, 2);
});
