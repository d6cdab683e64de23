/** The bench's side of cutting: what it takes, the order of the cuts, the files for the cutter, the page for the wall. */
import { existsSync, mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { barriers, THEMES } from './accessibility';
import { DEMO, retry, useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const button = (name: string) => workbench.bench.getByRole('button', { name, exact: true });
const panel = () => inBench('.cutting');
const told = () => panel().locator('.told').first().textContent();
const played = () => inBench('.cut-player .told').textContent();
const slider = () => workbench.bench.getByRole('slider', { name: 'Cuts that are done' });
const doneLines = () => inBench('.cut-done').getAttribute('d');
const press = (key: string) => workbench.page.keyboard.press(key);

beforeAll(async () => {
  await workbench.widenBench();
  await panel().locator('summary').click();
});

describe('what cutting takes', () => {
  it('is told for each sheet and in all', async () => {
    await expect.poll(told, { timeout: 20_000 }).toMatch(/^[\d.]+ m of ways between cuts. For the time, state "speed"/);
    const rows = await panel().locator('tbody tr').allTextContents();
    expect(rows).toHaveLength(4);
    expect(rows[0]).toMatch(/^1\. Sun\d+[\d.]+ m–$/);
    expect(await panel().locator('tfoot tr').textContent()).toMatch(/^All\d+[\d.]+ m–$/);
  });

  it('with the time, where the machine is described', async () => {
    const config = JSON.parse(workbench.onDisk('tombolo.json')) as { cutter: object };
    const cutter = { ...config.cutter, speed: '20mm/s', acceleration: '500mm/s²' };
    writeFileSync(path.join(workbench.folder, 'tombolo.json'), JSON.stringify({ ...config, cutter }));
    await expect
      .poll(told, { timeout: 20_000 })
      .toMatch(/^Cutting takes about \d+ min \d\d s in all, with [\d.]+ m of ways/);
    for (const row of await panel().locator('tr:not(:first-child)').allTextContents()) expect(row).toMatch(/\d s$/);
    await workbench.shot('cutting-1-times');
  });
});

describe('the order of the cuts', () => {
  it('is seen on the sheet in hand: the ways, and which cuts come first', async () => {
    await panel().getByRole('button', { name: '3. Heron' }).click();
    await button('Show cut order').click();
    expect(await workbench.bench.getByRole('radio', { name: 'Single sheet' }).isChecked()).toBe(true);
    await expect.poll(doneLines, { timeout: 20_000 }).toMatch(/^M[\d.]+/);
    expect(await inBench('.cut-way').getAttribute('d')).toMatch(/^M0 0L/);
    expect(await inBench('.cut-number').first().textContent()).toBe('1');
    expect(await played()).toMatch(/^Cut (\d+) of \1: the sheet's edge, 506 mm$/);
    await workbench.shot('cutting-2-order');
  });

  it('is followed by a slider, whose value is spoken', async () => {
    const all = (await doneLines())?.length ?? 0;
    await slider().fill('1');
    expect(await played()).toMatch(/^Cut 1 of \d+: opening, \d+ mm$/);
    expect(await slider().getAttribute('aria-valuetext')).toBe(await played());
    expect((await doneLines())?.length).toBeLessThan(all / 2);
    await slider().focus();
    await press('ArrowRight');
    expect(await played()).toMatch(/^Cut 2 of/);
    await press('Home');
    expect(await played()).toMatch(/^\d+ cuts, none done$/);
    expect(await doneLines()).toBe('');
  });

  it('is played, stopped, and played on to its end', async () => {
    await button('Play').click();
    await expect.poll(doneLines).not.toBe('');
    await button('Pause').click();
    const stopped = await doneLines();
    await workbench.shot('cutting-3-played');
    await workbench.page.waitForTimeout(400);
    expect(await doneLines()).toBe(stopped);
    await button('Play').focus();
    await press('Enter');
    await expect.poll(played, { timeout: 60_000 }).toMatch(/^Cut (\d+) of \1:/);
    await button('Play').waitFor();
  });

  it('moves cut by cut where motion is not wanted', async () => {
    await workbench.page.emulateMedia({ reducedMotion: 'reduce' });
    await slider().fill('0');
    await button('Next cut').click();
    expect(await played()).toMatch(/^Cut 1 of/);
    const still = await doneLines();
    await workbench.page.waitForTimeout(400);
    expect(await doneLines()).toBe(still);
    await button('Next cut').click();
    expect(await played()).toMatch(/^Cut 2 of/);
    expect(await inBench('[aria-live="polite"].unseen').textContent()).toMatch(/^Cut 2 of/);
    await workbench.page.emulateMedia({ reducedMotion: null });
  });

  it('goes when another way of looking is chosen', async () => {
    await workbench.bench.getByRole('radio', { name: 'Print' }).check();
    await inBench('.cut-lines').waitFor({ state: 'hidden' });
    expect(await button('Show cut order').getAttribute('aria-pressed')).toBe('false');
  });
});

describe.each(THEMES)('%s', (theme, bodyClass, name) => {
  test('the cut order, without barriers', async () => {
    workbench.chooseTheme(theme);
    await inBench(`body.${bodyClass}`).waitFor();
    if ((await button('Show cut order').getAttribute('aria-pressed')) === 'false')
      await button('Show cut order').click();
    await expect.poll(doneLines, { timeout: 20_000 }).toMatch(/^M/);
    await slider().fill('6');
    expect(await barriers(workbench)).toEqual([]);
    await workbench.shot(`cutting-theme-${name}`);
  });
});

const title = () => workbench.page.locator('.quick-input-title');
const input = () => workbench.page.locator('.quick-input-widget input[type="text"]').first();
const row = (text: string) => workbench.page.locator('.quick-input-list .monaco-list-row', { hasText: text });
const dialog = () => workbench.page.locator('.monaco-dialog-box');
const notice = () => workbench.page.locator('.notifications-center .notification-list-item-message').first();
const asked = (text: RegExp) => expect.poll(() => title().textContent(), { timeout: 20_000 }).toMatch(text);
const inFolder = () => {
  const folder = path.join(workbench.folder, 'cut');
  return existsSync(folder) ? readdirSync(folder).sort() : [];
};

async function anyway(): Promise<void> {
  await dialog().waitFor();
  await dialog().getByRole('button', { name: 'Write Anyway' }).click();
}

async function answer(kerf: string, marks: string): Promise<void> {
  await asked(/1 of 4/);
  await press('Enter');
  await asked(/2 of 4/);
  await input().fill(kerf);
  await press('Enter');
  await asked(/3 of 4/);
  await row(marks).click();
  await asked(/4 of 4/);
  await press('Enter');
}

/** What the last notice says; it is opened, as a toast goes by itself. */
async function noticed(text: RegExp | string): Promise<void> {
  const said = () =>
    retry(async () => {
      if (!(await notice().isVisible())) await workbench.command('Notifications: Show Notifications');
      return notice().textContent({ timeout: 2000 });
    });
  const wanted = expect.poll(said, { timeout: 30_000 });
  await (typeof text === 'string' ? wanted.toBe(text) : wanted.toMatch(text));
}

/** Asked for again where it had no effect: the palette may sort its list anew under the click. */
async function dismissNotices(): Promise<void> {
  await retry(async () => {
    await workbench.command('Notifications: Clear All Notifications');
    await notice().waitFor({ state: 'hidden', timeout: 4000 });
  });
}

describe('files for the cutter', () => {
  it('are not written while errors are left, unless that is wanted', async () => {
    await button('Write cut files…').click();
    await dialog().waitFor();
    await workbench.shot('cutting-4-errors');
    expect(await dialog().textContent()).toMatch(/\d+ errors are left\..*First: /s);
    await press('Escape');
    await dialog().waitFor({ state: 'hidden' });
    expect(inFolder()).toEqual([]);
  });

  it('are asked for step by step, and written', async () => {
    const before = workbench.onDisk(DEMO);
    await workbench.chooseMore('Write cut files…');
    await anyway();
    await asked(/1 of 4/);
    await row('DXF').click();
    await workbench.shot('cutting-5-formats');
    await press('Enter');
    await asked(/2 of 4/);
    expect(await input().inputValue()).toBe('0.1mm');
    await input().fill('9mm');
    await press('Enter');
    await asked(/2 of 4/);
    await input().fill('0,2');
    await press('Enter');
    await asked(/3 of 4/);
    await workbench.shot('cutting-6-marks');
    await row('Labels').click();
    await asked(/4 of 4/);
    await press('Enter');
    await noticed(/^8 cut files in cut\. Cutting takes about .*Never leave a laser/);
    await workbench.shot('cutting-7-written');
    const names = ['01-sun', '02-reeds', '03-heron', '04-numeral'];
    expect(inFolder()).toEqual(names.flatMap((name) => [`${name}.dxf`, `${name}.svg`]));
    expect(workbench.onDisk('cut/03-heron.svg')).toContain('width="148.2mm"');
    expect(workbench.onDisk('cut/03-heron.svg')).toContain('stroke="#0000ff"');
    expect(workbench.onDisk(DEMO)).toBe(before);
  });

  it('are written anew, but never over what is not theirs', async () => {
    await dismissNotices();
    const theirs = '<svg xmlns="http://www.w3.org/2000/svg"/>';
    const place = (name: string) => path.join(workbench.folder, 'cut', name);
    writeFileSync(place('02-reeds.svg'), theirs);
    const heron = workbench.onDisk('cut/03-heron.svg');
    await workbench.command('Tombolo: Write Cut Files…');
    await anyway();
    await answer('0', 'Nothing');
    await noticed('Nothing was written: 02-reeds.svg is there, and was not written here. Choose another folder.');
    expect(workbench.onDisk('cut/02-reeds.svg')).toBe(theirs);
    expect(workbench.onDisk('cut/03-heron.svg')).toBe(heron);
    expect(inFolder().filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('are not written through a link', async () => {
    await dismissNotices();
    const away = path.join(workbench.folder, 'away');
    mkdirSync(away);
    writeFileSync(path.join(away, 'page.html'), '<!-- tombolo cut -->');
    symlinkSync(path.join(away, 'page.html'), path.join(workbench.folder, 'cut/job.html'));
    await button('Page for the wall…').click();
    await asked(/Page for the wall/);
    await press('Enter');
    await noticed('Nothing was written: job.html is a symbolic link, which is not followed.');
    expect(workbench.onDisk('away/page.html')).toBe('<!-- tombolo cut -->');
    expect(inFolder()).not.toContain('job.pdf');
  });
});

test('the page for the wall goes into a folder of its own choice', async () => {
  await dismissNotices();
  await workbench.command('Tombolo: Write Page for the Wall…');
  await asked(/Page for the wall/);
  await row('Another folder').click();
  await expect.poll(() => input().inputValue(), { timeout: 20_000 }).toContain(workbench.folder);
  await input().fill(`${workbench.folder}/away/`);
  await workbench.page.waitForTimeout(500);
  await press('Enter');
  await noticed(/^The page for the wall is in away, as job.html and job.pdf\. Mind that \d+ errors are left\.$/);
  expect(workbench.onDisk('away/job.html')).toContain('<h1>waymarker</h1>');
  await dismissNotices();
});
