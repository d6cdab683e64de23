/** The documentation: built as for its host, read link by link, and opened in a browser as its readers do. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, it as test } from 'vitest';
import { schemaText } from '../../src/build/check-docs';
import { findChromium, launchBrowser } from '../../src/build/host/browser.mjs';
import { ALL_METAS } from '../../src/engine/check/known-checks';
import { readConfig } from '../../src/engine/index';
import { ServedFolder } from './served-folder';

const ROOT = path.resolve(import.meta.dirname, '../..');
const SHOTS = path.join(ROOT, 'test/editor/shots');
const require = createRequire(path.join(ROOT, 'src/site/package.json'));

let folder: string;
let pages: readonly string[];
const textOf = (page: string) => readFileSync(path.join(folder, page), 'utf8');

beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'tombolo-site-'));
  execFileSync(process.execPath, ['src/site/build.mjs', folder], { cwd: ROOT, stdio: ['ignore', 'ignore', 'inherit'] });
  pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The pages that people land on. */
const MAIN = [
  'index.html',
  'first-steps/index.html',
  'layers/index.html',
  'checks/index.html',
  'checks/floating-island/index.html',
  'config/index.html',
  'numbers/index.html',
  'editors/index.html',
  'json/index.html',
];

describe('the pages', () => {
  it('are there, one for each check besides', () => {
    expect(pages).toEqual(expect.arrayContaining(MAIN));
    const shown = ALL_METAS.filter(({ row }) => row).map(({ id }) => `checks/${id}/index.html`);
    expect(shown.length).toBeGreaterThan(20);
    expect(pages).toEqual(expect.arrayContaining(shown));
    for (const page of shown) {
      expect(existsSync(path.join(folder, path.dirname(page), 'before.svg')), page).toBe(true);
      expect(textOf(page)).toContain('--only');
    }
  });

  it('have links that lead somewhere, to the very heading', () => {
    const dead = pages.flatMap((page) =>
      [...textOf(page).matchAll(/(?:href|src)="([^"]*)"/g)].flatMap(([, target = '']) => {
        if (/^(?:https?|data):/.test(target)) return [];
        const [file = '', anchor = ''] = target.replaceAll('&amp;', '&').split('#');
        const whole = path.join(folder, path.dirname(page), decodeURIComponent(file));
        const there = file === '' ? path.join(folder, page) : whole;
        if (!existsSync(there) || target.startsWith('/')) return [`${page}: ${target}`];
        return anchor === '' || readFileSync(there, 'utf8').includes(`id="${anchor}"`) ? [] : [`${page}: ${target}`];
      }),
    );
    expect(dead).toEqual([]);
  });

  it('name keys that the schema and the reader of tombolo.json know', () => {
    const { default: Ajv } = require('ajv') as {
      default: new (how: object) => { compile(schema: object): (value: unknown) => boolean };
    };
    const known = closed(JSON.parse(schemaText()));
    const valid = new Ajv({ strict: false, validateFormats: false }).compile(known);
    const sources = [
      ...readdirSync(path.join(ROOT, 'src/site/pages')).map((name) => `src/site/pages/${name}`),
      'README.md',
    ];
    const blocks = sources.flatMap((name) =>
      [...readFileSync(path.join(ROOT, name), 'utf8').matchAll(/```json\n([\s\S]*?)```/g)].map(([, text = '']) => text),
    );
    expect(blocks.length).toBeGreaterThan(1);
    for (const text of blocks.filter((each) => !each.includes('"languageserver"'))) {
      expect(valid(JSON.parse(text)), text).toBe(true);
      expect(readConfig(text).problems).toEqual([]);
    }
    expect(valid({ materiel: 'card-0.3' })).toBe(false);
  });
});

/** The schema leaves room for what is yet to be written; what our pages show is to be known to it. */
function closed(schema: Record<string, unknown>): Record<string, unknown> {
  return { ...schema, additionalProperties: false };
}

describe.skipIf(!findChromium())('in a browser', () => {
  let served: ServedFolder;
  let browser: Browser;

  beforeAll(async () => {
    served = await ServedFolder.start(folder, '/docs');
    browser = await launchBrowser();
    mkdirSync(SHOTS, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    served?.stop();
  });

  async function open(
    page: string,
    colorScheme: 'light' | 'dark',
    width = 1280,
  ): Promise<{ view: Page; asked: string[] }> {
    const context = await browser.newContext({ colorScheme, viewport: { width, height: 900 }, bypassCSP: true });
    const view = await context.newPage();
    const asked: string[] = [];
    view.on('request', (request) => asked.push(request.url()));
    view.on('requestfailed', (request) => asked.push(`failed: ${request.url()}`));
    view.on(
      'response',
      (response) => response.status() >= 400 && asked.push(`${response.status()}: ${response.url()}`),
    );
    view.on('console', (message) => message.type() === 'error' && asked.push(`said: ${message.text()}`));
    await view.goto(`${served.address}/docs/${page}`, { waitUntil: 'load' });
    await view.evaluate(() => document.fonts.ready.then(() => undefined));
    return { view, asked };
  }

  test.each(MAIN.flatMap((page) => (['light', 'dark'] as const).map((scheme) => ({ page, scheme }))))(
    '$page has no barriers and asks nobody else ($scheme)',
    async ({ page, scheme }) => {
      const { view, asked } = await open(page, scheme);
      expect(asked.filter((url) => !url.startsWith(`${served.address}/docs/`))).toEqual([]);
      await view.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core/axe.min.js') });
      const results = await view.evaluate(() =>
        (globalThis as unknown as { axe: { run(): Promise<AxeResults> } }).axe.run(),
      );
      expect(results.passes.length).toBeGreaterThan(15);
      expect(results.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html} ${nodes[0]?.failureSummary}`)).toEqual(
        [],
      );
      await view.screenshot({
        path: path.join(SHOTS, `site-${page.split('/').slice(0, -1).join('-') || 'index'}-${scheme}.png`),
      });
      await view.context().close();
    },
  );

  test.each(MAIN)('%s needs no moving sideways on a telephone', async (page) => {
    const { view } = await open(page, 'light', 390);
    const [whole, seen] = await view.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
    expect(whole).toBeLessThanOrEqual(seen ?? 0);
    await view.screenshot({
      path: path.join(SHOTS, `site-${page.split('/').slice(0, -1).join('-') || 'index'}-narrow.png`),
    });
    await view.context().close();
  });

  test('holds from a disk as well', async () => {
    const view = await browser.newPage();
    await view.goto(`file://${path.join(folder, 'index.html')}`);
    await view.getByRole('link', { name: 'You draw' }).click();
    expect(await view.getByRole('heading', { level: 1 }).textContent()).toBe('First steps');
    await view.close();
  });
});
