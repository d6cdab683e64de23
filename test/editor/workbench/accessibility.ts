/** What tells whether people can use the bench, whatever they see and however they work. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults, RunOptions } from 'axe-core';
import { expect } from 'vitest';
import { luminance, type Rgb } from '../../../src/preview/dom/badge-ink';
import type { Workbench } from './workbench';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The class of the bench's body in each theme. */
export const THEMES = [
  ['Default Light Modern', 'vscode-light', 'light'],
  ['Default Dark Modern', 'vscode-dark', 'dark'],
  ['Default High Contrast', 'vscode-high-contrast', 'contrast'],
  ['Default High Contrast Light', 'vscode-high-contrast-light', 'contrast-light'],
] as const;

/** Moderate, serious and critical findings, each with its elements. By the debugger: no policy of the page is loosened. */
export async function barriers(workbench: Workbench): Promise<string[]> {
  const body = await workbench.bench.locator('body').elementHandle();
  const frame = await body?.ownerFrame();
  if (!frame) throw new Error('The bench has no page.');
  await frame.evaluate(axeSource);
  const options: RunOptions = { resultTypes: ['violations'] };
  const results = await frame.evaluate(
    (given) =>
      (globalThis as unknown as { axe: { run(what: Document, how: object): Promise<AxeResults> } }).axe.run(
        document,
        given,
      ),
    options,
  );
  expect(results.passes.length, 'rules that axe tried').toBeGreaterThan(15);
  return results.violations
    .filter(({ impact }) => impact !== 'minor')
    .flatMap(({ id, nodes }) => nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ''}`));
}

/** For each severity, in list and picture: how much a number stands out from its badge, as WCAG 2.2 counts it. */
export async function badgeContrasts(workbench: Workbench): Promise<readonly [string, number][]> {
  const pairs = await workbench.bench.locator('body').evaluate((body) =>
    ['error', 'warning', 'info', 'hint'].flatMap((severity) => {
      const row = document.createElement('div');
      row.className = `finding ${severity}`;
      row.innerHTML = '<span class="badge">7</span>';
      const marks = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
      marks.innerHTML = `<g class="mark ${severity}"><path class="badge"/><text class="number">7</text></g>`;
      body.append(row, marks);
      const style = (element: Element | null) => getComputedStyle(element ?? body);
      const listed = style(row.firstElementChild);
      const [number, badge] = [style(marks.querySelector('text')), style(marks.querySelector('path'))];
      const found: [string, string, string][] = [
        [severity, listed.color, listed.backgroundColor],
        [`${severity} on the picture`, number.fill, badge.fill],
      ];
      row.remove();
      marks.remove();
      return found;
    }),
  );
  return pairs.map(([what, ink, tone]) => {
    const [a, b] = [luminance(channels(ink)), luminance(channels(tone))];
    return [`${what}: ${ink} on ${tone}`, (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)] as const;
  }) as readonly [string, number][];
}

const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map(Number) as unknown as Rgb;

/** What can be used, but is cut off at the side by the window or by its own width. */
export async function cutOffControls(workbench: Workbench): Promise<string[]> {
  return await workbench.bench.locator('body').evaluate((body) => {
    const name = (element: Element) => element.getAttribute('aria-label') ?? element.textContent ?? element.tagName;
    const scrolled = (element: Element) => element.closest('.list-column, .menu, .view-options') ?? body;
    return [...body.querySelectorAll<HTMLElement>('button, input, select, summary, vscode-button')]
      .filter((element) => element.checkVisibility() && !element.matches('.unseen *'))
      .filter((element) => {
        const [own, room] = [element.getBoundingClientRect(), scrolled(element).getBoundingClientRect()];
        const inside = own.left >= room.left - 1 && own.right <= room.right + 1 && own.width > 0;
        // What is shortened with dots says the rest when it is pointed at.
        const isShortened = getComputedStyle(element).textOverflow === 'ellipsis' && element.title !== '';
        const isCut = element.matches('button') && !isShortened && element.scrollWidth > element.clientWidth + 1;
        return !inside || isCut;
      })
      .map((element) => `${element.tagName} ${name(element).trim().slice(0, 40)}`);
  });
}

/** Where the keys go: into the text, into an input of the window, or into an element of the bench; never nowhere. */
export async function focusedPlace(workbench: Workbench): Promise<string> {
  const inWindow = await workbench.page.evaluate(() => document.activeElement?.tagName ?? 'BODY');
  if (inWindow !== 'IFRAME') return inWindow === 'BODY' ? 'nowhere in the window' : `window: ${inWindow}`;
  const inBench = await workbench.bench
    .locator('body')
    .evaluate(() =>
      document.activeElement === document.body
        ? ''
        : (document.activeElement?.getAttribute('class') ?? document.activeElement?.tagName ?? ''),
    );
  return inBench === '' ? 'nowhere in the bench' : `bench: ${inBench}`;
}
