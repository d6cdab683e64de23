/** Marks and numbers of findings, the order of layers by key, and what is said of a shifted sheet. */
import { beforeAll, describe, expect, it } from 'vitest';
import { useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const button = (name: string) => workbench.bench.getByRole('button', { name, exact: true });
/** How many findings are marked, alone or in a count. */
const marked = async () => {
  const texts = await inBench('.mark .number').allTextContents();
  return texts.reduce((sum, text) => sum + (text.startsWith('×') ? Number(text.slice(1)) : 1), 0);
};
const numbers = () => inBench('.finding .badge').allTextContents();

beforeAll(() => workbench.widenBench());

describe('the number of a finding', () => {
  it('is the same in list and picture, and stays while others are mended', async () => {
    expect(await numbers()).toEqual(['1', '2', '3', '4', '5']);
    expect((await inBench('.mark .number').allTextContents()).sort()).toEqual(['1', '2', '3', '4', '5']);
    await inBench('.finding[data-finding="1"]').click();
    await inBench('.ghost-bar').waitFor();
    await inBench('.ghost-bar button').first().click();
    await expect.poll(numbers).toEqual(['2', '3', '4', '5']);
    await workbench.shot('marks-1-numbers');
  });

  it('comes back with its finding by undo', async () => {
    await workbench.command('View: Focus First Editor Group');
    await workbench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    await workbench.page.keyboard.press('Control+Z');
    await expect.poll(numbers).toEqual(['1', '2', '3', '4', '5']);
    await workbench.save();
  });

  it('is what stays chosen when text comes before it', async () => {
    await inBench('.finding[data-finding="4"]').click();
    await expect.poll(() => inBench('.finding[data-finding="4"]').getAttribute('aria-current')).toBe('true');
    await workbench.page.waitForFunction(() => document.activeElement?.closest('.monaco-editor'));
    await workbench.page.keyboard.press('Control+Home');
    await workbench.page.keyboard.press('End');
    await workbench.page.keyboard.press('Enter');
    await workbench.page.waitForTimeout(1500);
    expect(await inBench('.finding[data-finding="4"]').getAttribute('aria-current')).toBe('true');
    expect(await inBench('.mark.selected').getAttribute('data-finding')).toBe('4');
    await workbench.page.keyboard.press('Control+Z');
  });
});

describe('marks', () => {
  it('are left out by check and by layer, in list and picture', async () => {
    const row = (name: string) => workbench.bench.getByRole('menuitemcheckbox', { name });
    await button('Filter findings').click();
    await row('floating-island').click();
    expect(await numbers()).toEqual(['4', '5']);
    expect(await inBench('.mark').count()).toBe(2);
    await row('Reeds').focus();
    await workbench.page.keyboard.press('Enter');
    expect(await numbers()).toEqual(['5']);
    expect(await inBench('.list-head h2').textContent()).toBe('Findings: 1 of 5 shown');
    await workbench.shot('marks-2-filter');
    await workbench.bench.getByRole('menuitem', { name: 'Show all' }).click();
    expect(await numbers()).toHaveLength(5);
  });

  it('become one with their count where they would overlap, and come apart when it is clicked', async () => {
    for (let i = 0; i < 9; i += 1) await button('Zoom out').click();
    const cluster = inBench('.mark.cluster').first();
    await cluster.waitFor();
    expect(await cluster.locator('.number').textContent()).toMatch(/^×[2-5]$/);
    const before = await inBench('.mark').count();
    await workbench.shot('marks-3-cluster');
    await cluster.locator('.badge').click();
    await expect.poll(() => inBench('.mark').count()).not.toBe(before);
    await button('Fit to window').click();
    await expect.poll(() => inBench('.mark.cluster').count()).toBe(0);
  });

  it('of sheets that others cover are hidden', async () => {
    await workbench.bench.getByRole('radio', { name: 'All sheets' }).click();
    expect(await marked()).toBe(5);
    await button('Display options').click();
    await workbench.bench.getByRole('checkbox', { name: 'Stagger in spray order' }).check();
    await workbench.bench.getByRole('slider', { name: 'Offset' }).fill('5');
    // Of all sheets only the last is not covered.
    await expect.poll(marked).toBeLessThan(5);
    await workbench.bench.getByRole('slider', { name: 'Offset' }).fill('100');
    await expect.poll(marked).toBe(5);
    await workbench.bench.getByRole('checkbox', { name: 'Stagger in spray order' }).uncheck();
    await workbench.page.keyboard.press('Escape');
    await workbench.bench.getByRole('radio', { name: 'Print' }).click();
  });
});

describe('a layer moved by key', () => {
  const names = () => inBench('.layers label span').allTextContents();
  const focused = () =>
    inBench(':focus').evaluate((element) => element.closest('li')?.querySelector('label')?.textContent);

  it('takes the focus along, and its new place is told', async () => {
    await workbench.bench.getByRole('checkbox', { name: 'Sun' }).focus();
    await workbench.page.keyboard.press('Alt+ArrowDown');
    await expect.poll(names).toEqual(['Reeds', 'Sun', 'Heron', 'Numeral']);
    expect(await focused()).toBe('Sun');
    expect(await inBench('[aria-live]').first().textContent()).toBe('Sun: 2 of 4 in the spray order.');
    await workbench.page.keyboard.press('Alt+ArrowDown');
    await expect.poll(names).toEqual(['Reeds', 'Heron', 'Sun', 'Numeral']);
    expect(await focused()).toBe('Sun');
    await workbench.page.keyboard.press('Alt+ArrowUp');
    await expect.poll(names).toEqual(['Reeds', 'Sun', 'Heron', 'Numeral']);
    await button('Move Sun up in the spray order').focus();
    await workbench.page.keyboard.press('Enter');
    await expect.poll(names).toEqual(['Sun', 'Reeds', 'Heron', 'Numeral']);
    // That button has nothing more to do there; the one beside it has.
    expect(await inBench(':focus').getAttribute('aria-label')).toBe('Move Sun down in the spray order');
    await workbench.page.keyboard.press('Alt+ArrowUp');
    expect(await inBench('[aria-live]').first().textContent()).toBe('Sun is already first in the spray order.');
  });
});

describe('a print out of register', () => {
  it('is called so over the picture, and put back from there', async () => {
    await inBench('.slip summary').click();
    await workbench.bench.getByRole('slider', { name: 'Shift down in mm' }).fill('0.4');
    await inBench('.slip summary').click();
    const chip = inBench('.register-chip');
    expect(await chip.locator('span').textContent()).toBe('Print shown with Numeral 0.4 mm out of register');
    await workbench.shot('marks-4-register');
    await chip.getByRole('button', { name: 'Reset' }).click();
    await chip.waitFor({ state: 'hidden' });
    expect(await inBench('[data-layer="3"]').getAttribute('transform')).toBe('');
  });
});
