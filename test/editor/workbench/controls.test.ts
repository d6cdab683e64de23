/** Each control of the bench does by key what it does by mouse. What a control is for stands in the other files. */
import type { Locator } from 'playwright-core';
import { beforeAll, describe, expect, it, test } from 'vitest';
import { useDemo } from './workbench';

const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);
const press = async (...keys: string[]) => {
  for (const key of keys) await workbench.page.keyboard.press(key);
};
type Role = 'radio' | 'checkbox' | 'slider' | 'button';
const control = (role: Role, name: string) => workbench.bench.getByRole(role, { name });
/** A control that stands in the panel below "Display options" is opened first. */
const option = async (role: Role, name: string) => {
  if (!(await control(role, name).isVisible())) await control('button', 'Display options').click();
  return control(role, name);
};
/** A row of the menu at the end of the toolbar. */
const row = (name: string) => workbench.bench.getByRole('menu').getByText(name, { exact: true });
const isChecked = (role: Role, name: string) => control(role, name).isChecked();

beforeAll(() => workbench.widenBench());

interface Use {
  readonly by: Locator;
  /** From the control that has the focus. */
  readonly keys: readonly string[];
  /** Where on the control the mouse clicks, if not in its middle. */
  readonly at?: 'left end';
  /** The control that has the focus first, where it is another one: of radios it is the one that is chosen. */
  readonly from?: Locator;
  /** Brings about what is before the use. */
  readonly before: () => Promise<unknown>;
  readonly state: () => Promise<unknown>;
}

/** By mouse and by key the state changes, and to the same. */
async function bothWays({ by, keys, at, from, before, state }: Use): Promise<void> {
  await before();
  const first = await state();
  await by.click(at && { position: { x: 2, y: 8 } });
  await expect.poll(state).not.toEqual(first);
  const changed = await state();
  await before();
  await expect.poll(state).toEqual(first);
  await (from ?? by).focus();
  await press(...keys);
  await expect.poll(state).toEqual(changed);
  await before();
}

const nearness = () => inBench('.nearness').textContent();
const showWhole = () => control('button', 'Fit to window').click();
const places = () =>
  inBench('[data-layer]').evaluateAll((plates) =>
    plates.map((plate) => [plate.getAttribute('data-layer'), plate.getAttribute('transform')]),
  );
const inRegister = () => control('button', 'Reset').click();
const dialog = () => workbench.bench.getByRole('dialog').isVisible();

test('Tab comes to every control', async () => {
  const { canvas, controls } = await inBench('body').evaluate((body) => {
    const wanted = 'button:not([tabindex="-1"]), input, select, summary, vscode-button, .canvas';
    const shown = [...body.querySelectorAll<HTMLElement>(wanted)].filter(
      (element) => element.checkVisibility() && !element.matches(':disabled, input[type=radio]:not(:checked)'),
    );
    shown.forEach((element, index) => element.setAttribute('data-stop', String(index)));
    return { canvas: shown.some((element) => element.matches('.canvas')), controls: shown.length };
  });
  expect(canvas).toBe(true);
  expect(controls).toBeGreaterThan(15);
  const stops = new Set<string | null>();
  await inBench('[data-stop="0"]').focus();
  for (let stop = 0; stop < controls; stop += 1) {
    stops.add(await inBench(':focus').first().getAttribute('data-stop'));
    await press('Tab');
  }
  expect([...stops].map(Number)).toEqual(Array.from({ length: controls }, (_, index) => index));
});

describe('the toolbar', () => {
  it.each(['Zoom in', 'Zoom out', 'Actual size'])('%s', (name) =>
    bothWays({ by: control('button', name), keys: ['Enter'], before: showWhole, state: nearness }),
  );

  it('Fit to window', () =>
    bothWays({
      by: control('button', 'Fit to window'),
      keys: ['Space'],
      state: nearness,
      before: async () => {
        await showWhole();
        await control('button', 'Zoom in').click();
      },
    }));

  it('ways of looking', () =>
    bothWays({
      by: control('radio', 'All sheets'),
      from: control('radio', 'Print'),
      keys: ['ArrowRight', 'ArrowRight', 'Enter'],
      before: () => control('radio', 'Print').click(),
      state: places,
    }));

  it('is one tab stop; arrow keys, Home and End go through it', async () => {
    await control('radio', 'Print').focus();
    const name = () => inBench(':focus').getAttribute('aria-label');
    const seen: (string | null)[] = [];
    for (let i = 0; i < 4; i += 1) {
      seen.push(await name());
      await press('ArrowRight');
    }
    expect(seen).toEqual(['Print', 'Single sheet', 'All sheets', 'Find in text']);
    await press('End');
    expect(await name()).toBe('More');
    await press('ArrowRight');
    expect(await name()).toBe('Print');
    await press('ArrowLeft', 'Tab');
    expect(await inBench(':focus').evaluate((element) => element.closest('[role=toolbar]'))).toBeNull();
    await press('Shift+Tab');
    expect(await name()).toBe('More');
  });

  it('Keep showing this file, from the menu', async () => {
    const state = async () => {
      await control('button', 'More').click();
      const on = await workbench.bench
        .getByRole('menuitemcheckbox', { name: 'Keep showing this file' })
        .getAttribute('aria-checked');
      await press('Escape');
      return on;
    };
    expect(await state()).toBe('false');
    await workbench.chooseMore('Keep showing this file');
    expect(await state()).toBe('true');
    await control('button', 'More').focus();
    await press('Enter', 'End', 'ArrowUp', 'Enter');
    expect(await state()).toBe('false');
  });

  it('the menu closes on Escape and gives the focus back', async () => {
    await control('button', 'More').focus();
    await press('Enter');
    await row('Save picture…').waitFor();
    expect(await control('button', 'More').getAttribute('aria-expanded')).toBe('true');
    await press('Escape');
    await row('Save picture…').waitFor({ state: 'hidden' });
    expect(await inBench(':focus').getAttribute('aria-label')).toBe('More');
  });

  it('Marks', () =>
    bothWays({
      by: control('button', 'Marks'),
      keys: ['Enter'],
      before: async () => {
        if ((await control('button', 'Marks').getAttribute('aria-pressed')) === 'false')
          await control('button', 'Marks').click();
      },
      state: () => inBench('.mark').count(),
    }));

  it('Marks, by the key of the picture', async () => {
    await inBench('.canvas').focus();
    await press('h');
    await expect.poll(() => inBench('.mark').count()).toBe(0);
    await press('h');
    await expect.poll(() => inBench('.mark').count()).toBeGreaterThan(0);
  });

  it('tools', async () => {
    const told = () => inBench('.unseen[role=status]').textContent();
    const pick = control('radio', 'Find in text');
    const before = () => pick.click();
    for (const [name, keys] of [
      ['Measure', ['ArrowRight', 'Enter']],
      ['Bridge', ['ArrowRight', 'ArrowRight', 'Enter']],
    ] as const) {
      const state = async () => [await isChecked('radio', name), await told()];
      await bothWays({ by: control('radio', name), from: pick, keys, before, state });
    }
  });

  it('Cutting area', async () => {
    const state = () => inBench('.cutting-area').getAttribute('visibility');
    expect(await state()).toBe('hidden');
    await workbench.chooseMore('Cutting area');
    expect(await state()).toBe('visible');
    await control('button', 'More').focus();
    await press('Enter', 'Enter');
    expect(await state()).toBe('hidden');
  });

  it('Save picture…, by key', async () => {
    await control('button', 'More').focus();
    await press('Enter', 'End', 'Enter');
    const name = workbench.page.locator('.quick-input-widget input').first();
    await expect.poll(() => name.inputValue()).toMatch(/waymarker-picture\.png$/);
    await press('Escape');
    await name.waitFor({ state: 'hidden' });
  });
});

describe('display options', () => {
  it('open and close below their button', () =>
    bothWays({
      by: control('button', 'Display options'),
      keys: ['Enter'],
      before: () => press('Escape'),
      state: () => inBench('.view-options').isVisible(),
    }));

  it('Reset ground', async () => {
    await option('button', 'Reset ground');
    await bothWays({
      by: control('button', 'Reset ground'),
      keys: ['Enter'],
      before: () => inBench('input[type=color]').fill('#556b2f'),
      state: () => inBench('.ground').getAttribute('fill'),
    });
    await control('button', 'Reset ground').click();
  });

  it('Opacity', async () => {
    await option('slider', 'Opacity');
    await bothWays({
      by: control('slider', 'Opacity'),
      keys: ['Home'],
      at: 'left end',
      before: () => control('slider', 'Opacity').fill('100'),
      state: () => inBench('.paint').first().getAttribute('fill-opacity'),
    });
  });

  it('staggered sheets, and their offset', async () => {
    await control('radio', 'All sheets').click();
    const stagger = await option('checkbox', 'Stagger in spray order');
    await bothWays({ by: stagger, keys: ['Space'], before: () => stagger.uncheck(), state: places });
    await stagger.check();
    const offset = control('slider', 'Offset');
    await bothWays({ by: offset, keys: ['Home'], at: 'left end', before: () => offset.fill('60'), state: places });
    await stagger.uncheck();
    await control('radio', 'Print').click();
  });
});

describe('the layers', () => {
  it('are switched off', () =>
    bothWays({
      by: control('checkbox', 'Sun'),
      keys: ['Space'],
      before: () => control('checkbox', 'Sun').check(),
      state: places,
    }));

  it('are chosen, where one is looked at', async () => {
    await control('radio', 'Single sheet').click();
    await bothWays({
      by: control('radio', 'Reeds'),
      from: control('radio', 'Sun'),
      keys: ['ArrowDown'],
      before: () => control('radio', 'Sun').click(),
      state: places,
    });
    await control('radio', 'Print').click();
  });

  it('are painted later by key, earlier by mouse', async () => {
    const names = () => inBench('.layers label span').allTextContents();
    await control('button', 'Move Sun down in the spray order').focus();
    await press('Enter');
    await expect.poll(names).toEqual(['Reeds', 'Sun', 'Heron', 'Numeral']);
    await control('button', 'Move Sun up in the spray order').click();
    await expect.poll(names).toEqual(['Sun', 'Reeds', 'Heron', 'Numeral']);
  });
});

describe('slip', () => {
  it('is opened', () => {
    const isOpen = () => inBench('.slip').evaluate((element) => (element as HTMLDetailsElement).open);
    const before = async () => {
      if (await isOpen()) await inBench('.slip summary').click();
    };
    return bothWays({ by: inBench('.slip summary'), keys: ['Enter'], before, state: isOpen });
  });

  it('its sheet, by key', async () => {
    await inBench('.slip summary').click();
    const sheet = workbench.bench.getByRole('combobox', { name: 'Sheet out of register' });
    expect(await sheet.inputValue()).toBe('Numeral');
    await sheet.focus();
    await press('ArrowUp');
    expect(await sheet.inputValue()).toBe('Heron');
  });

  it.each(['Shift to the right in mm', 'Shift down in mm', 'Turn clockwise in degrees'])('%s', (name) =>
    bothWays({ by: control('slider', name), keys: ['Home'], at: 'left end', before: inRegister, state: places }),
  );

  it('Reset', () =>
    bothWays({
      by: control('button', 'Reset'),
      keys: ['Enter'],
      state: places,
      before: () => control('slider', 'Shift down in mm').fill('1'),
    }).then(inRegister));

  it('Drag a sheet', async () => {
    const byHand = control('checkbox', 'Drag a sheet');
    const state = () => byHand.isChecked();
    await bothWays({ by: byHand, keys: ['Space'], before: () => byHand.uncheck(), state });
  });

  it('the sweep by key, its worst side by mouse', async () => {
    await inBench('.slip vscode-button').focus();
    await press('Enter');
    await expect.poll(() => inBench('.sweep').count(), { timeout: 30_000 }).toBe(4);
    await inBench('.sweep').filter({ hasText: 'Heron' }).click();
    expect(await inBench('[data-layer="2"]').getAttribute('transform')).toMatch(/^matrix/);
    await inRegister();
  });
});

describe('the size of the screen', () => {
  const open = () => workbench.chooseMore('Calibrate screen…');

  it('Cancel', () =>
    bothWays({
      by: control('button', 'Cancel'),
      keys: ['Enter'],
      state: dialog,
      before: async () => {
        if (!(await dialog())) await open();
      },
    }).then(() => press('Escape')));

  it('Keep, by key', async () => {
    const length = workbench.bench.getByRole('spinbutton', { name: 'Length of the line in mm' });
    for (const kept of [120, 96]) {
      await open();
      const line = (await inBench('.measured-line').boundingBox())?.width ?? 0;
      await length.fill(((line / kept) * 25.4).toFixed(2));
      await press('Enter');
      expect(await dialog()).toBe(false);
      await expect.poll(() => workbench.userSettings()['tombolo.bench.pixelsPerInch']).toBe(kept);
    }
  });
});

describe('findings', () => {
  const island = () => control('button', 'Island, 272');
  const bar = () => inBench('.ghost-bar');

  it('are chosen by their mark, and by key in the list', async () => {
    const number = await island().getAttribute('data-finding');
    // One for which no bridge is planned.
    const another = inBench('.finding.warning').first();
    const state = () => island().getAttribute('aria-current');
    await bothWays({
      by: inBench(`.mark[data-finding="${number}"] .badge`),
      from: island(),
      keys: ['Enter'],
      state,
      before: async () => {
        await another.click();
        await expect.poll(() => another.getAttribute('aria-current')).toBe('true');
      },
    });
  });

  it('a planned bridge is dropped', () =>
    bothWays({
      by: control('button', 'Cancel'),
      keys: ['Enter'],
      state: () => bar().isVisible(),
      before: async () => {
        if (!(await bar().isVisible())) await island().click();
        await bar().waitFor();
      },
    }));

  it('and put in, by key', async () => {
    await control('button', 'Add bridge').focus();
    await press('Enter');
    await island().waitFor({ state: 'detached' });
  });
});
