/** Each way of looking in light, dark and both high-contrast themes. */
import { beforeAll, describe, expect, test } from 'vitest';
import { badgeContrasts, THEMES } from './accessibility';
import { useDemo } from './workbench';

const WRITTEN = [
  '.layers label span',
  '.figures',
  '.paint-code',
  '.finding .message',
  '.finding .title',
  'h2',
  '.tool:not(.icon-tool)',
];
const workbench = useDemo();
const inBench = (selector: string) => workbench.bench.locator(selector);

beforeAll(async () => {
  await workbench.widenBench();
  await inBench('.slip summary').click();
});

/** The contrast of an element's text with what is behind it, as WCAG 2.2 counts it. */
const contrastOf = (selector: string) =>
  inBench(selector)
    .first()
    .evaluate((element) => {
      const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
      const luminance = ([red = 0, green = 0, blue = 0]: number[]) => {
        const [r, g, b] = [red, green, blue]
          .map((value) => value / 255)
          .map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4)) as [
          number,
          number,
          number,
        ];
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      let behind: Element | null = element;
      while (behind && (channels(getComputedStyle(behind).backgroundColor)[3] ?? 1) === 0)
        behind = behind.parentElement;
      const text = luminance(channels(getComputedStyle(element).color));
      const ground = luminance(channels(getComputedStyle(behind ?? document.body).backgroundColor));
      return (Math.max(text, ground) + 0.05) / (Math.min(text, ground) + 0.05);
    });

describe.each(THEMES)('%s', (theme, bodyClass, name) => {
  beforeAll(async () => {
    workbench.chooseTheme(theme);
    await inBench(`body.${bodyClass}`).waitFor();
  });

  test('shows each way of looking', async () => {
    await workbench.bench.getByRole('radio', { name: 'Print' }).check();
    await workbench.shot(`theme-${name}-print`);
    await workbench.bench.getByRole('radio', { name: 'Single sheet' }).check();
    await workbench.bench.getByRole('radio', { name: 'Heron' }).check();
    await inBench('.note.dimension').first().waitFor();
    await workbench.shot(`theme-${name}-sheet`);
    await workbench.bench.getByRole('radio', { name: 'All sheets' }).check();
    await workbench.shot(`theme-${name}-sheets`);
  });

  test('has numbers that stand out from their badges, however serious', async () => {
    await workbench.bench.getByRole('radio', { name: 'Print' }).check();
    const contrasts = await badgeContrasts(workbench);
    expect(contrasts).toHaveLength(8);
    for (const [what, contrast] of contrasts) expect(contrast, what).toBeGreaterThan(4.5);
  });

  test('has a border round what can be pressed, in high contrast', async () => {
    if (!name.startsWith('contrast')) return;
    const borders = await inBench('.tool:visible').evaluateAll((tools) =>
      tools.map((tool) => [tool.textContent || tool.getAttribute('aria-label'), getComputedStyle(tool).borderTopColor]),
    );
    expect(borders.length).toBeGreaterThan(10);
    expect(borders.filter(([, colour]) => colour === 'rgba(0, 0, 0, 0)')).toEqual([]);
  });

  test('has text that stands out from its ground', async () => {
    for (const selector of WRITTEN) {
      expect(await contrastOf(selector), selector).toBeGreaterThan(4.5);
    }
  });
});
