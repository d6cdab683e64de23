/** A drawing that means harm: scripts, event attributes, foreignObject, outside references, javascript: links. */
import type { Dialog, Page, Request } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { useWorkbench } from './workbench';

const bench = useWorkbench('test/editor/workspace');
/** Addresses that were asked for, windows that were opened, boxes that were shown. */
const asked: string[] = [];
const opened: string[] = [];
const noteRequest = (request: Request) => {
  asked.push(request.url());
};
const notePopup = (page: Page) => {
  opened.push(page.url());
};
const noteDialog = (dialog: Dialog) => {
  opened.push(dialog.message());
  void dialog.dismiss();
};

beforeAll(async () => {
  bench.chooseTheme('Default Dark Modern');
  bench.page.on('request', noteRequest).on('popup', notePopup).on('dialog', noteDialog);
  await bench.openFile('hostile.svg', 'hostile');
  await bench.command('Tombolo: Open Stencil Preview (Bench)');
  await bench.bench.locator('.canvas[aria-label*="Stencil, 60 by 60"]').waitFor();
  await bench.bench.locator('.layers li').nth(1).waitFor({ state: 'attached' });
});
afterAll(() => {
  bench.page.off('request', noteRequest).off('popup', notePopup).off('dialog', noteDialog);
});

/** Elements that could load or run something, attributes that could, and references that leave the page. */
async function strangers(): Promise<string[]> {
  return bench.bench.locator('body').evaluate((body) =>
    [...body.querySelectorAll('*')].flatMap((element) => {
      const tag = element.localName;
      const loads = [
        'foreignobject',
        'image',
        'iframe',
        'img',
        'object',
        'embed',
        'a',
        'use',
        'set',
        'animate',
        'style',
        'link',
      ];
      const found = loads.includes(tag.toLowerCase()) ? [`<${tag}>`] : [];
      if (tag === 'script' && !element.hasAttribute('nonce')) found.push('<script>');
      for (const { name, value } of element.attributes) {
        if (/^on|href$|^src$/i.test(name) && tag !== 'script') found.push(`${tag} ${name}="${value}"`);
        const isSpoken = /^(aria-|title$)/.test(name);
        if (/javascript:|outside\.invalid/i.test(value) && !isSpoken) found.push(`${tag} ${name}="${value}"`);
        if (/url\((?!["']?#hatch)/.test(value)) found.push(`${tag} ${name}="${value}"`);
      }
      return found;
    }),
  );
}

const LOOKS = ['Print', 'Single sheet', 'All sheets'];

test.each(LOOKS)('%s shows bare geometry: nothing of the markup is in the page', async (look) => {
  await bench.bench.getByRole('radio', { name: look }).check();
  expect(await bench.bench.locator('.canvas path').count()).toBeGreaterThan(3);
  expect(await strangers()).toEqual([]);
  expect(await bench.bench.locator('body script').count()).toBe(1);
  await bench.shot(`hostile-${look.replace(/\W+/g, '-').toLowerCase()}`);
});

test('its names are shown as the text that they are, where the pointer rests and where the keyboard goes', async () => {
  await bench.bench.getByRole('radio', { name: 'Print' }).check();
  const canvas = bench.bench.locator('.canvas');
  await canvas.focus();
  const seen = new Set<string>();
  for (let i = 0; i < 6; i += 1) {
    await bench.page.keyboard.press('.');
    await bench.bench.locator('.part-card').waitFor();
    seen.add((await bench.bench.locator('.part-card').textContent()) ?? '');
  }
  expect([...seen].join('\n')).toContain('"><img src=x onerror="top.hacked = 4">');
  expect(await strangers()).toEqual([]);
  await bench.shot('hostile-card');
});

test('picking it, and a caret in its script, change nothing of that', async () => {
  await bench.page.keyboard.press('Enter');
  await bench.page.locator('.selected-text').first().waitFor();
  await bench.command('Go to Line/Column...');
  await bench.page.keyboard.type('7:15');
  await bench.page.keyboard.press('Enter');
  await bench.page.waitForTimeout(300);
  expect(await strangers()).toEqual([]);
});

test('nothing ran in any frame, nothing was opened, nothing asked for outside', async () => {
  await bench.page.waitForTimeout(1000);
  for (const frame of bench.page.frames()) {
    expect(await frame.evaluate('typeof hacked'), frame.url()).toBe('undefined');
  }
  expect(opened).toEqual([]);
  expect(asked.filter((url) => url.includes('outside.invalid'))).toEqual([]);
  expect(bench.complaints.filter((text) => /Content Security Policy/i.test(text))).toEqual([]);
});
