/** The ways of looking: the print on its ground, one sheet, all sheets; by mouse and by keyboard. */
import { beforeAll, describe, expect, it } from 'vitest';
import { useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const control = (role: 'radio' | 'checkbox' | 'slider' | 'button', name: string | RegExp) =>
  workbench.bench.getByRole(role, { name });

beforeAll(() => workbench.widenBench());

describe('the print', () => {
  it('is painted in order on the ground', async () => {
    expect(await inBench('.ground').getAttribute('fill')).toBe('#f5f0e4');
    const paints = await inBench('.paint').evaluateAll((paths) => paths.map((path) => path.getAttribute('fill')));
    expect(paints).toEqual(['#f0b13c', '#6b8a4e', '#2f4654', '#b4472c']);
    await workbench.shot('look-1-print');
    // Bare ground at the edge, the frame's left side, the arrow's shaft, the bird's body.
    const seen = async () =>
      await Promise.all(
        [[2, 2] as const, [7.6, 40] as const, [114, 78] as const, [64, 58] as const].map(([x, y]) =>
          workbench.paintedAt(x, y),
        ),
      );
    await expect.poll(seen).toEqual(['#f5f0e4', '#b4472c', '#b4472c', '#2f4654']);
  });

  it('on a ground of another colour, and back on the usual one', async () => {
    await control('button', 'Display options').click();
    await inBench('input[type=color]').fill('#556b2f');
    expect(await inBench('.ground').getAttribute('fill')).toBe('#556b2f');
    await control('button', 'Reset ground').click();
    expect(await inBench('.ground').getAttribute('fill')).toBe('#f5f0e4');
  });

  it('with thinner paint, by keyboard', async () => {
    if (!(await control('slider', 'Opacity').isVisible())) await control('button', 'Display options').click();
    await control('slider', 'Opacity').focus();
    await workbench.page.keyboard.press('Home');
    expect(await inBench('.paint').first().getAttribute('fill-opacity')).toBe('0.1');
    await workbench.page.keyboard.press('End');
    expect(await inBench('.paint').first().getAttribute('fill-opacity')).toBe('1');
  });
});

describe('one sheet', () => {
  it('has its islands out of their places, lettered, and its necks measured', async () => {
    await control('radio', 'Print').focus();
    await workbench.page.keyboard.press('ArrowRight');
    await workbench.page.keyboard.press('Enter');
    await control('radio', 'Numeral').check();
    expect(await inBench('.fallen').count()).toBe(2);
    expect(await inBench('.note.letter').allTextContents()).toEqual(['a', 'b', 'c']);
    await workbench.shot('look-2-one-sheet');
    await control('radio', 'Heron').check();
    await inBench('.note.dimension').first().waitFor({ state: 'attached' });
    const measures = await inBench('.note.dimension').allTextContents();
    expect(
      measures.every((text) => /^\d\.\d\d$/.test(text)),
      measures.join(),
    ).toBe(true);
    await workbench.shot('look-2-one-sheet-necks');
  });

  it('lets islands fall, but not where motion is not wanted', async () => {
    const painting = inBench('.painting');
    // The sheet that was looked at before has come to rest.
    await expect.poll(() => painting.getAttribute('class')).toBe('painting');
    await painting.evaluate((canvas) => {
      const seen = new MutationObserver(() => {
        if (canvas.classList.contains('falling')) canvas.setAttribute('data-fell', '');
      });
      seen.observe(canvas, { attributeFilter: ['class'] });
    });
    const hasFallen = () => painting.getAttribute('data-fell');
    await control('radio', 'Sun').check();
    await expect.poll(hasFallen).toBe('');
    await expect.poll(() => painting.getAttribute('class')).toBe('painting');
    await painting.evaluate((canvas) => canvas.removeAttribute('data-fell'));
    await workbench.page.emulateMedia({ reducedMotion: 'reduce' });
    await control('radio', 'Numeral').check();
    expect(await inBench('.fallen').count()).toBe(2);
    expect(await hasFallen()).toBeNull();
    await workbench.page.emulateMedia({ reducedMotion: null });
  });
});

describe('all sheets', () => {
  it('lie side by side, each with its name', async () => {
    await control('radio', 'All sheets').check();
    expect(await inBench('.card').count()).toBe(4);
    expect(await inBench('.note.caption').allTextContents()).toEqual(['1  Sun', '2  Reeds', '3  Heron', '4  Numeral']);
    await workbench.shot('look-3-all-sheets');
    await control('checkbox', 'Reeds').uncheck();
    expect(await inBench('.card').count()).toBe(3);
    await control('checkbox', 'Reeds').check();
  });

  it('or a step beside each other, by keyboard', async () => {
    const places = () =>
      inBench('[data-layer]').evaluateAll((plates) => plates.map((plate) => plate.getAttribute('transform')));
    const aside = await places();
    await control('button', 'Display options').click();
    await control('checkbox', 'Stagger in spray order').focus();
    await workbench.page.keyboard.press('Space');
    const spread = await places();
    expect(spread).not.toEqual(aside);
    await workbench.shot('look-4-spread');
    await control('slider', 'Offset').focus();
    await workbench.page.keyboard.press('Home');
    // In register all lie in one place.
    expect(new Set(await places()).size).toBe(1);
  });

  it('a mark of a finding lies on the sheet that it is about', async () => {
    if (!(await control('checkbox', 'Stagger in spray order').isVisible()))
      await control('button', 'Display options').click();
    await control('checkbox', 'Stagger in spray order').uncheck();
    const box = (selector: string) => inBench(selector).first().boundingBox();
    const mark = await box('.mark[data-finding="2"] .badge');
    const sheet = await box('[data-layer="3"] .card');
    expect(mark && sheet).toBeTruthy();
    expect(mark!.x).toBeGreaterThan(sheet!.x);
    expect(mark!.y).toBeGreaterThan(sheet!.y);
    expect(mark!.x).toBeLessThan(sheet!.x + sheet!.width);
  });
});
