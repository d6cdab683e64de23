/** A picture becomes sheets: in a panel of its own, by mouse and by keys, in each theme. */
import { existsSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test as it, test } from 'vitest';
import { barriers, cutOffControls, THEMES } from './accessibility';
import { retry, useWorkbench } from './workbench';

/** With the painted marsh of the README. */
const workbench = useWorkbench('test/editor/picture');
const panel = () => workbench.bench;
const paints = () => panel().locator('.paints li');
const names = () => panel().locator('.paints .name').allTextContents();
const button = (name: string | RegExp) => panel().getByRole('button', { name, exact: true });
const field = (name: string) => panel().getByRole('spinbutton', { name });
const press = (keys: string) => workbench.page.keyboard.press(keys);

beforeAll(async () => {
  await workbench.chooseFromFile('marsh.jpg', 'Tombolo: Turn Picture into Sheets');
  await paints().nth(3).waitFor();
  await press('Control+B');
  await drawn();
});

/** Until the sheets are drawn, and not only sketched. */
async function drawn(): Promise<void> {
  await panel()
    .locator('.dials .state', { hasText: /^\d+ sheets?, / })
    .waitFor();
}

/** Until so many paints are there, and drawn. */
async function paintsAre(count: number): Promise<void> {
  await retry(async () => {
    await workbench.page.waitForTimeout(300);
    expect(await paints().count()).toBe(count);
  }, 20);
  await drawn();
}

async function fromMenuOf(paint: string, item: string | RegExp): Promise<void> {
  await button(`More for ${paint}`).click();
  await panel().getByRole('menuitem', { name: item }).first().click();
}

describe('picture and print', () => {
  it('stand side by side, with the paints and what comes of it', async () => {
    expect(await names()).toHaveLength(4);
    expect(await panel().locator('.figure-list').textContent()).toMatch(/Islands\d+ in this order, \d+ if each/);
    expect(await panel().locator('.hatch').isVisible()).toBe(true);
    expect(await cutOffControls(workbench)).toEqual([]);
    await workbench.shot('separating-1');
  });

  it('are parted by a wipe that keys move', async () => {
    const wipe = panel().getByRole('slider', { name: 'Wipe' });
    await wipe.focus();
    await press('End');
    expect(await wipe.getAttribute('aria-valuenow')).toBe('100');
    await press('PageDown');
    await press('ArrowLeft');
    expect(await wipe.getAttribute('aria-valuetext')).toBe('88 % picture');
    await press('Home');
    const seen = await panel()
      .locator('.picture')
      .evaluate((element) => getComputedStyle(element).clipPath);
    expect(seen).toBe('inset(0px 100% 0px 0px)');
  });

  it('are looked at from near', async () => {
    const width = () =>
      panel()
        .locator('.frame')
        .evaluate((element) => element.clientWidth);
    const before = await width();
    await button('Zoom in').click();
    await button('Zoom in').click();
    expect((await width()) / before).toBeCloseTo(2, 1);
    await button('Zoom out').click();
    await button('Zoom out').click();
    expect(await width()).toBe(before);
  });
});

describe('the dials', () => {
  it('change the print while they are moved', async () => {
    await panel().getByRole('slider', { name: 'Number of paints' }).focus();
    await press('ArrowRight');
    await press('ArrowRight');
    await paintsAre(6);
    await field('Least detail').fill('3');
    await press('Enter');
    await drawn();
    await retry(async () => {
      await workbench.page.waitForTimeout(300);
      expect(await panel().locator('.figure-list').textContent()).toMatch(/Too fine[1-9][\d.]* %/);
    });
    await workbench.shot('separating-2-coarse');
    await button('Least detail: as usual').click();
    await drawn();
    expect(await field('Least detail').inputValue()).toBe('1.2');
  });

  it('are taken back and done again by keys', async () => {
    await press('Control+Z');
    await retry(async () => {
      await workbench.page.waitForTimeout(200);
      expect(await field('Least detail').inputValue()).toBe('3');
    });
    await press('Control+Shift+Z');
    await retry(async () => {
      await workbench.page.waitForTimeout(200);
      expect(await field('Least detail').inputValue()).toBe('1.2');
    });
    await drawn();
  });
});

describe('a paint', () => {
  it('is fixed', async () => {
    const [first = ''] = await names();
    await button(`Keep ${first}`).click();
    await panel()
      .getByRole('button', { name: `Keep ${first}`, exact: true, pressed: true })
      .waitFor();
    await drawn();
  });

  it('is sprayed earlier or later by keys', async () => {
    await drawn();
    const before = await names();
    await button(`More for ${before[1] ?? ''}`).focus();
    await press('Alt+ArrowUp');
    await retry(async () => {
      await workbench.page.waitForTimeout(300);
      expect((await names()).slice(0, 2)).toEqual([before[1], before[0]]);
    });
    await drawn();
    await button('Best order').click();
    await retry(async () => {
      await workbench.page.waitForTimeout(300);
      expect(await names()).toEqual(before);
    });
  });

  it('is merged into another one, and parted again', async () => {
    const [, second = '', third = ''] = await names();
    await button(`More for ${second}`).click();
    await workbench.shot('separating-3-menu');
    await panel()
      .getByRole('menuitem', { name: `Merge into ${third}`, exact: true })
      .click();
    await paintsAre(5);
    await workbench.shot('separating-4-merged');
    await button(/^Part #/).click();
    await paintsAre(6);
  });

  it('is left unpainted, and painted again', async () => {
    const [first = ''] = await names();
    await fromMenuOf(first, 'Leave unpainted');
    await paintsAre(5);
    await workbench.shot('separating-5-unpainted');
    await button(/^Paint #.* again/).click();
    await paintsAre(6);
  });

  it('is picked from the picture by keys', async () => {
    await button('Add a paint…').click();
    await panel().getByText('Click a place in the picture').waitFor();
    await press('Shift+ArrowUp');
    await press('ArrowLeft');
    await workbench.shot('separating-6-pick');
    await press('Enter');
    await paintsAre(7);
    expect(
      await panel()
        .getByRole('button', { name: /^Keep /, pressed: true })
        .count(),
    ).toBeGreaterThan(0);
    await press('Control+Z');
    await paintsAre(6);
  });
});

test('a part of the picture is left out, by pointer, and its sides are set in mm', async () => {
  await button('Leave a part out…').click();
  const box = await panel().locator('.frame').boundingBox();
  if (!box) throw new Error('The picture does not show.');
  const { mouse } = workbench.page;
  await mouse.move(box.x + 0.7 * box.width, box.y + 0.1 * box.height);
  await mouse.down();
  await mouse.move(box.x + 0.9 * box.width, box.y + 0.3 * box.height, { steps: 4 });
  await mouse.up();
  const width = field('Part 1: width in mm');
  await width.waitFor();
  expect(Number(await width.inputValue())).toBeCloseTo(0.2 * 148, 0);
  await width.fill('20');
  await press('Enter');
  await drawn();
  await workbench.shot('separating-7-part');
  await button('Paint part 1 again').click();
  await width.waitFor({ state: 'detached' });
  await drawn();
});

describe.each(THEMES)('%s', (theme, bodyClass, name) => {
  test('keeps nobody out', async () => {
    workbench.chooseTheme(theme);
    await panel().locator(`body.${bodyClass}`).waitFor();
    expect(await barriers(workbench)).toEqual([]);
    await workbench.shot(`separating-theme-${name}`);
  });
});

test('in a narrow window the dials stand below, and nothing is cut off', async () => {
  await workbench.page.setViewportSize({ width: 620, height: 900 });
  await workbench.page.waitForTimeout(400);
  expect(await cutOffControls(workbench)).toEqual([]);
  await workbench.shot('separating-narrow');
  await workbench.page.setViewportSize({ width: 1440, height: 900 });
});

/** The bench, which opens last, may still take the place of the panel: then it is brought forward again. */
async function writeAgain(): Promise<void> {
  await retry(async () => {
    await workbench.page.getByRole('tab', { name: 'Sheets of marsh.jpg' }).click();
    await workbench.page.waitForTimeout(700);
    const panels = await workbench.page.locator('iframe.webview:visible').all();
    const buttons = panels.map((each) =>
      each.contentFrame().frameLocator('iframe#active-frame').getByRole('button', { name: 'Write the sheets' }),
    );
    const there = await Promise.all(buttons.map((each) => each.isVisible()));
    const write = buttons[there.indexOf(true)];
    if (!write) throw new Error('The panel is not in front.');
    await write.click({ timeout: 3000 });
  });
}

describe('Write the sheets', () => {
  it('makes the files and opens the bench', async () => {
    await button('Write the sheets').click();
    await workbench.page.getByRole('tab', { name: 'marsh.svg' }).first().waitFor({ timeout: 60_000 });
    const config = JSON.parse(workbench.onDisk('marsh/tombolo.json'));
    expect(config).toMatchObject({
      size: { width: '148mm' },
      layers: [{ from: 'marsh.svg' }],
      separate: { picture: '../marsh.jpg', colours: 6 },
    });
    expect(workbench.onDisk('marsh/marsh.svg').match(/<g /g)).toHaveLength(6);
    await workbench.page.getByRole('tab', { name: 'Stencil Preview (Bench): marsh.svg' }).waitFor();
    await workbench.shot('separating-8-written');
  });

  it('leaves an edited drawing alone, and shows both side by side', async () => {
    const drawing = path.join(workbench.folder, 'marsh/marsh.svg');
    const edited = workbench.onDisk('marsh/marsh.svg').replace('</svg>', '<!-- mine -->\n</svg>');
    writeFileSync(drawing, edited);
    await writeAgain();
    const dialog = workbench.page.locator('.monaco-dialog-box', { hasText: 'was edited since' });
    await dialog.waitFor({ timeout: 60_000 });
    await workbench.shot('separating-9-edited');
    await dialog.getByRole('button', { name: 'Write Beside and Compare' }).click();
    await workbench.page.getByRole('tab', { name: /edited and separated again/ }).waitFor();
    expect(workbench.onDisk('marsh/marsh.svg')).toBe(edited);
    expect(existsSync(path.join(workbench.folder, 'marsh/marsh.new.svg'))).toBe(true);
    await workbench.shot('separating-10-compared');
  });
});
