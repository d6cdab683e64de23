/** The layers list: another painting order by mouse and keyboard, undone in the editor; pictures that are saved. */
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { DEMO, retry, useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const button = (name: string) => workbench.bench.getByRole('button', { name });
const names = () => inBench('.layers label span').allTextContents();

describe('the layers list', () => {
  beforeAll(() => workbench.showList('Layers'));

  it('shows order, paint, reading, openings, islands and the length of the cut', async () => {
    const sun = await inBench('.layers li').first().textContent();
    expect(sun).toMatch(/^1Sun#f0b13c18 openings · 1 island · cut 541 mm · filled\s=\scut\sout$/);
  });

  it('a button paints a layer earlier; undo in the editor brings the order back', async () => {
    const before = workbench.onDisk(DEMO);
    await button('Move Numeral up in the spray order').focus();
    await workbench.page.keyboard.press('Enter');
    await expect.poll(names, { timeout: 15_000 }).toEqual(['Sun', 'Reeds', 'Numeral', 'Heron']);
    await workbench.shot('layers-1-reordered');
    await workbench.page.locator('.editor-instance .view-lines').first().click();
    await workbench.save();
    const moved = workbench.onDisk(DEMO);
    expect(moved.indexOf('<title>Numeral')).toBeLessThan(moved.indexOf('<title>Heron'));
    expect(moved.match(/\S+/g)?.sort()).toEqual(before.match(/\S+/g)?.sort());
    await workbench.page.keyboard.press('Control+Z');
    await expect.poll(names, { timeout: 15_000 }).toEqual(['Sun', 'Reeds', 'Heron', 'Numeral']);
    await workbench.save();
    expect(workbench.onDisk(DEMO)).toBe(before);
  });

  it('a layer is dragged to another place', async () => {
    const rows = inBench('.layers li');
    await rows.nth(0).dragTo(rows.nth(2), { targetPosition: { x: 60, y: 8 } });
    await expect.poll(names, { timeout: 15_000 }).toEqual(['Reeds', 'Heron', 'Sun', 'Numeral']);
    await workbench.page.locator('.editor-instance .view-lines').first().click();
    await workbench.page.keyboard.press('Control+Z');
    await expect.poll(names, { timeout: 15_000 }).toEqual(['Sun', 'Reeds', 'Heron', 'Numeral']);
  });
});

/** The sun and the reeds lie in rings of layers that are sprayed after them. */
const LATE = `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="60mm" viewBox="0 0 90 60" data-tombolo-reading="openings">
  <g id="sun" fill="#f0b13c"><circle cx="25" cy="25" r="9"/></g>
  <g id="sky" fill="#8fb7c9"><path fill-rule="evenodd" d="M8 8h34v34H8z M25 16a9 9 0 1 0 .01 0z"/></g>
  <g id="reeds" fill="#6b8a4e"><path d="M56 14h6v26h-6z M68 14h6v26h-6z"/></g>
  <g id="marsh" fill="#3b4a54"><path fill-rule="evenodd" d="M48 8h34v38H48z M56 14v26h6V14z M68 14v26h6V14z"/></g>
</svg>
`;

describe('the order with the fewest islands', () => {
  const find = () => button('Fewest islands…');
  const told = () => inBench('.order-panel .order-told').textContent();

  it('is told to be there already', async () => {
    await find().click();
    await expect.poll(told, { timeout: 15_000 }).toBe('This order is the best already: 3 islands to bridge.');
    expect(await find().getAttribute('aria-disabled')).toBe('true');
    await workbench.shot('layers-2-best-already');
  });

  it('is told with its counts, made in one step, and taken back by Ctrl+Z on the bench', async () => {
    writeFileSync(path.join(workbench.folder, 'late.svg'), LATE);
    await workbench.openFile('late.svg');
    await expect.poll(names, { timeout: 20_000 }).toEqual(['sun', 'sky', 'reeds', 'marsh']);
    await workbench.showList('Layers');
    await find().focus();
    await workbench.page.keyboard.press('Enter');
    await expect.poll(told, { timeout: 15_000 }).toMatch(/^0 islands to bridge in this order, 3 as it is now\./);
    expect(await inBench('.best-order li').allTextContents()).toEqual(['sky', 'sun (now 1)', 'marsh', 'reeds (now 3)']);
    await workbench.shot('layers-3-fewest-islands');
    // The focus is on the button that makes it.
    await workbench.page.keyboard.press('Enter');
    await expect.poll(names, { timeout: 15_000 }).toEqual(['sky', 'sun', 'marsh', 'reeds']);
    await find().click();
    await expect.poll(told, { timeout: 15_000 }).toBe('This order is the best already: 0 islands to bridge.');
    await workbench.shot('layers-4-reordered');
    await workbench.page.keyboard.press('Control+Z');
    await expect.poll(names, { timeout: 15_000 }).toEqual(['sun', 'sky', 'reeds', 'marsh']);
    await workbench.page.locator('.editor-instance .view-lines').first().click();
    await workbench.save();
    expect(workbench.onDisk('late.svg')).toBe(LATE);
  });

  it('is offered by the command too', async () => {
    await workbench.command('Tombolo: Fewest Islands…');
    const message = workbench.page.locator('.monaco-dialog-box');
    await expect
      .poll(() => message.textContent(), { timeout: 15_000 })
      .toMatch(/0 islands .*1\. sky\s*2\. sun \(now 1\)/s);
    await workbench.shot('layers-5-command');
    await message.getByRole('button', { name: 'Reorder Layers' }).click();
    await expect.poll(names, { timeout: 15_000 }).toEqual(['sky', 'sun', 'marsh', 'reeds']);
    await workbench.page.locator('.editor-instance .view-lines').first().click();
    await workbench.page.keyboard.press('Control+Z');
    await expect.poll(names, { timeout: 15_000 }).toEqual(['sun', 'sky', 'reeds', 'marsh']);
    await workbench.save();
  });

  it('is nothing to look for in a file of one layer', async () => {
    await workbench.openFile('sun.svg');
    await expect.poll(() => inBench('.layers li').count(), { timeout: 15_000 }).toBe(1);
    expect(await told()).toBe('There is only one layer.');
    await workbench.openFile(DEMO);
    await expect.poll(() => inBench('.layers li').count(), { timeout: 15_000 }).toBe(4);
  });
});

describe('the picture', () => {
  async function saveAs(name: string): Promise<string> {
    await workbench.chooseMore('Save picture…');
    const input = workbench.page.locator('.quick-input-widget input').first();
    await input.waitFor();
    const target = path.join(workbench.folder, name);
    // The name that is offered is selected, without its folder.
    await expect.poll(() => input.inputValue()).toMatch(/waymarker-picture\.png$/);
    await workbench.page.keyboard.press('Control+A');
    await workbench.page.keyboard.type(target);
    await retry(async () => {
      await workbench.page.keyboard.press('Enter');
      await input.waitFor({ state: 'hidden', timeout: 3000 });
    });
    await expect.poll(() => existsSync(target) && statSync(target).size > 0, { timeout: 15_000 }).toBe(true);
    return target;
  }

  it('is saved as SVG, in the way it is looked at', async () => {
    await workbench.bench.getByRole('radio', { name: 'All sheets' }).check();
    const text = readFileSync(await saveAs('sheets.svg'), 'utf8');
    expect(text).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" [^>]*width="[\d.]+mm"/);
    expect(text).toContain('4  Numeral');
  });

  it('is saved as PNG at ten pixels to the millimetre', async () => {
    await workbench.bench.getByRole('radio', { name: 'Print' }).check();
    const bytes = readFileSync(await saveAs('print.png'));
    expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([1480, 1050]);
  });
});
