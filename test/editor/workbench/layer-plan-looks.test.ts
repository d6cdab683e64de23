/** The plan of a layer in each theme and in little room: whole, reachable, and told to those who do not see it. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it, it as test } from 'vitest';
import { barriers, cutOffControls, THEMES } from './accessibility';
import { useDemo } from './workbench';

/** One island in a wide opening, which no bridge reaches, and one in a narrow gap. */
const POND = `<svg xmlns="http://www.w3.org/2000/svg" width="148mm" height="105mm" viewBox="0 0 148 105"
  data-tombolo-reading="openings" fill-rule="evenodd">
  <g id="pond" fill="#3d6f8e"><title>Pond</title>
    <path d="M8 8h90v89h-90z M50 48h8v8h-8z"/>
    <path d="M106 10h30v30h-30z M109 13h24v24h-24z"/>
  </g>
</svg>
`;

/** One whose bridges must be longer than is good. */
const MERE = `<svg xmlns="http://www.w3.org/2000/svg" width="148mm" height="105mm" viewBox="0 0 148 105"
  data-tombolo-reading="openings" fill-rule="evenodd">
  <g id="mere" fill="#3d6f8e"><title>Mere</title><path d="M20 8h90v89h-90z M33 21h64v63h-64z"/></g>
</svg>
`;

const bench = useDemo();
const bar = () => bench.bench.locator('.plan-bar');

beforeAll(async () => {
  await bench.showList('Layers');
  await bench.bench.locator('.layers li', { hasText: 'Numeral' }).click();
  await bench.chooseMore('Bridge layer by style…');
  await bar()
    .getByText(/^Bridge every island in layer/)
    .waitFor();
});

describe.each(THEMES)('%s', (theme, bodyClass, name) => {
  beforeAll(async () => {
    bench.chooseTheme(theme);
    await bench.bench.locator(`body.${bodyClass}`).waitFor();
  });

  test('keeps nobody out', async () => {
    expect(await barriers(bench)).toEqual([]);
    expect(await cutOffControls(bench)).toEqual([]);
    await bench.shot(`plan-look-${name}`);
  });
});

describe('in much room and in little', () => {
  it.each([
    [1920, 1000],
    [1000, 700],
    [760, 560],
  ])('%s × %s', async (width, height) => {
    await bench.page.setViewportSize({ width, height });
    await bench.page.waitForTimeout(300);
    expect(await cutOffControls(bench)).toEqual([]);
    await bench.shot(`plan-room-${width}`);
  });
});

describe('islands that stay loose', () => {
  beforeAll(async () => {
    await bench.page.setViewportSize({ width: 1440, height: 900 });
    bench.chooseTheme('Default Light Modern');
    await bench.bench.locator('body.vscode-light').waitFor();
    writeFileSync(path.join(bench.folder, 'pond.svg'), POND);
    await bench.openFile('pond.svg');
    await bench.bench.locator('.layers li', { hasText: 'Pond' }).waitFor({ state: 'attached' });
  });

  it('are lettered on the picture and named with their reasons; what can be bridged can be had', async () => {
    await bench.bench.locator('.canvas').focus();
    await bench.page.keyboard.press('l');
    await bench.bench.locator('.plan-bar .left-islands:not([hidden])').waitFor();
    expect(await bench.bench.locator('.left-islands summary').textContent()).toBe('1 island left loose');
    const told = await bench.bench.locator('.left-why').textContent();
    expect(told).toMatch(/^No bridge fits the island at 54\.0, 52\.0 mm: .* over \d+\.\d+ mm away\. Remove it/);
    expect(await bench.bench.locator('.ghost-left').count()).toBe(1);
    const letters = bench.bench.locator('.left-mark, .left-letter');
    expect(new Set(await letters.allTextContents()).size).toBe(1);
    expect(await letters.first().textContent()).toMatch(/^[bc]$/);
    expect(await bench.bench.locator('.ghost-strip').count()).toBeGreaterThan(0);
    expect(await bench.bench.getByRole('button', { name: /^Add bridges?$/ }).getAttribute('aria-disabled')).toBe(
      'false',
    );
    expect(await barriers(bench)).toEqual([]);
    expect(await cutOffControls(bench)).toEqual([]);
    await bench.shot('plan-look-loose');
  });
});

describe('bridges that hold less well than they ought to', () => {
  it('are told of with what would do instead, and can be had', async () => {
    writeFileSync(path.join(bench.folder, 'mere.svg'), MERE);
    await bench.openFile('mere.svg');
    await bench.bench.locator('.layers li', { hasText: 'Mere' }).waitFor({ state: 'attached' });
    await bench.bench.locator('.canvas').focus();
    await bench.page.keyboard.press('l');
    const told = bench.bench.locator('.plan-told li').filter({ hasText: 'bends easily' });
    await told.waitFor();
    expect(await told.textContent()).toMatch(/^Bridge at [\d., ]+ mm and \d more: 13\.00 mm long; over 12\.00 mm/);
    expect(await barriers(bench)).toEqual([]);
    expect(await cutOffControls(bench)).toEqual([]);
    await bench.shot('plan-look-told');
  });
});
