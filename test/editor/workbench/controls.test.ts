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
const showWhole = () => control('button', 'Fit').click();
const places = () =>
  inBench('[data-layer]').evaluateAll((plates) =>
    plates.map((plate) => [plate.getAttribute('data-layer'), plate.getAttribute('transform')]),
  );
const inRegister = () => control('button', 'Back in register').click();
const dialog = () => workbench.bench.getByRole('dialog').isVisible();

test('Tab comes to every control', async () => {
  const { canvas, controls } = await inBench('body').evaluate((body) => {
    const wanted = 'button, input, select, summary, vscode-button, .canvas';
    const shown = [...body.querySelectorAll<HTMLElement>(wanted)].filter(
      (element) => element.checkVisibility() && !element.matches(':disabled, input[type=radio]:not(:checked)'),
    );
    shown.forEach((element, index) => element.setAttribute('data-stop', String(index)));
    return { canvas: shown.some((element) => element.matches('.canvas')), controls: shown.length };
  });
  expect(canvas).toBe(true);
  expect(controls).toBeGreaterThan(25);
  const stops = new Set<string | null>();
  await inBench('[data-stop="0"]').focus();
  for (let stop = 0; stop < controls; stop += 1) {
    stops.add(await inBench(':focus').first().getAttribute('data-stop'));
    await press('Tab');
  }
  expect([...stops].map(Number)).toEqual(Array.from({ length: controls }, (_, index) => index));
});

describe('the toolbar', () => {
  it.each(['Nearer', 'Farther', '1:1'])('%s', (name) =>
    bothWays({ by: control('button', name), keys: ['Enter'], before: showWhole, state: nearness }),
  );

  it('Fit', () =>
    bothWays({
      by: control('button', 'Fit'),
      keys: ['Space'],
      state: nearness,
      before: async () => {
        await showWhole();
        await control('button', 'Nearer').click();
      },
    }));

  it('ways of looking', () =>
    bothWays({
      by: control('radio', 'All sheets'),
      from: control('radio', 'The print'),
      keys: ['ArrowRight', 'ArrowRight'],
      before: () => control('radio', 'The print').click(),
      state: places,
    }));

  it('Pin', async () => {
    const pin = control('button', 'Stay with this file');
    const state = () => pin.getAttribute('aria-pressed');
    const before = async () => {
      if ((await state()) === 'true') await pin.click();
    };
    await bothWays({ by: pin, keys: ['Space'], before, state });
  });

  it('tools', async () => {
    const told = () => inBench('.unseen[role=status]').textContent();
    const pick = control('radio', 'Pick');
    const before = () => pick.click();
    for (const [name, keys] of [
      ['Measure', ['ArrowRight']],
      ['Bridge', ['ArrowLeft']],
    ] as const) {
      const state = async () => [await isChecked('radio', name), await told()];
      await bothWays({ by: control('radio', name), from: pick, keys, before, state });
    }
  });

  it('Bed', async () => {
    const bed = control('checkbox', 'Bed');
    const state = () => inBench('.bed').getAttribute('visibility');
    await bothWays({ by: bed, keys: ['Space'], before: () => bed.uncheck(), state });
  });

  it('Save picture…, by key', async () => {
    await control('button', 'Save picture…').focus();
    await press('Enter');
    const name = workbench.page.locator('.quick-input-widget input').first();
    await expect.poll(() => name.inputValue()).toMatch(/waymarker-picture\.png$/);
    await press('Escape');
    await name.waitFor({ state: 'hidden' });
  });
});

describe('how it is shown', () => {
  it('Usual ground', () =>
    bothWays({
      by: control('button', 'Usual ground'),
      keys: ['Enter'],
      before: () => inBench('input[type=color]').fill('#556b2f'),
      state: () => inBench('.ground').getAttribute('fill'),
    }).then(() => control('button', 'Usual ground').click()));

  it('Opacity of the paint', () =>
    bothWays({
      by: control('slider', 'Opacity of the paint'),
      keys: ['Home'],
      at: 'left end',
      before: () => control('slider', 'Opacity of the paint').fill('100'),
      state: () => inBench('.paint').first().getAttribute('fill-opacity'),
    }));

  it('spread sheets, and their step', async () => {
    await control('radio', 'All sheets').click();
    const spread = control('checkbox', 'Spread apart in order');
    await bothWays({ by: spread, keys: ['Space'], before: () => spread.uncheck(), state: places });
    await spread.check();
    const step = control('slider', 'How far apart');
    await bothWays({ by: step, keys: ['Home'], at: 'left end', before: () => step.fill('60'), state: places });
    await control('radio', 'The print').click();
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
    await control('radio', 'One sheet').click();
    await bothWays({
      by: control('radio', 'Reeds'),
      from: control('radio', 'Sun'),
      keys: ['ArrowDown'],
      before: () => control('radio', 'Sun').click(),
      state: places,
    });
    await control('radio', 'The print').click();
  });

  it('are painted later by key, earlier by mouse', async () => {
    const names = () => inBench('.layers label span').allTextContents();
    await control('button', 'Paint Sun later').focus();
    await press('Enter');
    await expect.poll(names).toEqual(['Reeds', 'Sun', 'Heron', 'Numeral']);
    await control('button', 'Paint Sun earlier').click();
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
    const sheet = workbench.bench.getByRole('combobox', { name: 'Sheet that slips' });
    expect(await sheet.inputValue()).toBe('Numeral');
    await sheet.focus();
    await press('ArrowUp');
    expect(await sheet.inputValue()).toBe('Heron');
  });

  it.each(['Shift to the right in mm', 'Shift down in mm', 'Turn clockwise in degrees'])('%s', (name) =>
    bothWays({ by: control('slider', name), keys: ['Home'], at: 'left end', before: inRegister, state: places }),
  );

  it('Back in register', () =>
    bothWays({
      by: control('button', 'Back in register'),
      keys: ['Enter'],
      state: places,
      before: () => control('slider', 'Shift down in mm').fill('1'),
    }).then(inRegister));

  it('Shift by hand', async () => {
    const byHand = control('checkbox', 'Shift by hand');
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

describe('true size', () => {
  const close = async () => {
    if (await dialog()) await press('Escape');
  };
  const open = async () => {
    if (!(await dialog())) await control('button', 'Measure the screen…').click();
  };

  it('Measure the screen…', () =>
    bothWays({
      by: control('button', 'Measure the screen…'),
      keys: ['Enter'],
      before: close,
      state: dialog,
    }));

  it('Leave it', () =>
    bothWays({ by: control('button', 'Leave it'), keys: ['Enter'], before: open, state: dialog }).then(close));

  it('Keep, by key', async () => {
    for (const [key, kept] of [
      ['ArrowRight', 96.5],
      ['ArrowLeft', 96],
    ] as const) {
      await open();
      await press(key, 'Tab', 'Enter');
      expect(await dialog()).toBe(false);
      await expect.poll(() => workbench.userSettings()['tombolo.bench.pixelsPerInch']).toBe(kept);
    }
  });
});

describe('findings', () => {
  const island = () => control('button', 'Island of 272');
  const bar = () => inBench('.ghost-bar');

  it('are chosen by their mark, and by key in the list', async () => {
    const index = await island().getAttribute('data-index');
    // One for which no bridge is planned.
    const another = inBench('.finding.warning').first();
    const state = () => island().getAttribute('aria-current');
    await bothWays({
      by: inBench(`.mark[data-index="${index}"] .badge`),
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
      by: control('button', 'Drop'),
      keys: ['Enter'],
      state: () => bar().isVisible(),
      before: async () => {
        if (!(await bar().isVisible())) await island().click();
        await bar().waitFor();
      },
    }));

  it('and put in, by key', async () => {
    await control('button', 'Put it in').focus();
    await press('Enter');
    await island().waitFor({ state: 'detached' });
  });
});
