/** Each way of looking in light, dark and both high-contrast themes. */
import { beforeAll, describe, expect, test } from 'vitest';
import { luminance, type Rgb } from '../../../src/preview/dom/badge-ink';
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

describe.each([
  ['Default Light Modern', 'vscode-light', 'light'],
  ['Default Dark Modern', 'vscode-dark', 'dark'],
  ['Default High Contrast', 'vscode-high-contrast', 'contrast'],
  ['Default High Contrast Light', 'vscode-high-contrast-light', 'contrast-light'],
])('%s', (theme, bodyClass, name) => {
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
    const pairs = await inBench('body').evaluate((body) => {
      const seen = ['error', 'warning', 'info', 'hint'].flatMap((severity) => {
        const row = document.createElement('div');
        row.className = `finding ${severity}`;
        row.innerHTML = '<span class="badge">7</span>';
        const marks = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
        marks.innerHTML = `<g class="mark ${severity}"><path class="badge"/><text class="number">7</text></g>`;
        body.append(row, marks);
        const style = (element: Element | null) => getComputedStyle(element ?? body);
        const listed = style(row.firstElementChild);
        const found = [
          [severity, listed.color, listed.backgroundColor],
          [
            `${severity} on the picture`,
            style(marks.querySelector('text')).fill,
            style(marks.querySelector('path')).fill,
          ],
        ];
        row.remove();
        marks.remove();
        return found;
      });
      return seen as [string, string, string][];
    });
    expect(pairs).toHaveLength(8);
    const rgb = (colour: string) => (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map(Number) as unknown as Rgb;
    for (const [what, ink, tone] of pairs) {
      const [a, b] = [luminance(rgb(ink)), luminance(rgb(tone))];
      expect((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05), `${what}: ${ink} on ${tone}`).toBeGreaterThan(4.5);
    }
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
