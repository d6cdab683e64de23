/** A drawing that means harm: scripts, event attributes, foreignObject, references to the outside, javascript: links. */
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { picturesOfFailures, root, Workbench } from './workbench';

let bench: Workbench;
/** Addresses that were asked for, windows that were opened, boxes that were shown. */
const asked: string[] = [];
const opened: string[] = [];

beforeAll(async () => {
  bench = await Workbench.open(path.join(root, 'test/editor/workspace'), {
    'workbench.colorTheme': 'Default Dark Modern',
  });
  bench.page.on('request', (request) => asked.push(request.url()));
  bench.page.on('popup', (page) => opened.push(page.url()));
  bench.page.on('dialog', (dialog) => {
    opened.push(dialog.message());
    void dialog.dismiss();
  });
  await bench.page.getByRole('treeitem', { name: 'hostile' }).first().click();
  await bench.openFile('hostile.svg');
  await bench.command('Tombolo: Open the Bench');
  await bench.bench.locator('.canvas[aria-label*="Stencil, 60 by 60"]').waitFor();
  await bench.bench.locator('.layers li').nth(1).waitFor();
});
afterAll(async () => { await bench?.close(); });
picturesOfFailures(() => bench);

/** Elements that could load or run something, attributes that could, and references that leave the page. */
async function strangers(): Promise<string[]> {
  return bench.bench.locator('body').evaluate((body) => [...body.querySelectorAll('*')].flatMap((element) => {
    const tag = element.localName;
    const loads = ['foreignobject', 'image', 'iframe', 'img', 'object', 'embed', 'a', 'use', 'set', 'animate', 'style', 'link'];
    const found = loads.includes(tag.toLowerCase()) ? [`<${tag}>`] : [];
    if (tag === 'script' && !element.hasAttribute('nonce')) found.push('<script>');
    for (const { name, value } of element.attributes) {
      if (/^on|href$|^src$/i.test(name) && tag !== 'script') found.push(`${tag} ${name}="${value}"`);
      if (/javascript:|outside\.invalid/i.test(value) && !/^(aria-|title$)/.test(name)) found.push(`${tag} ${name}="${value}"`);
      if (/url\((?!["']?#hatch)/.test(value)) found.push(`${tag} ${name}="${value}"`);
    }
    return found;
  }));
}

test.each(['The print', 'One sheet', 'All sheets'])('%s shows bare geometry: nothing of the markup is in the page', async (look) => {
  await bench.bench.getByRole('radio', { name: look }).check();
  expect(await bench.bench.locator('.canvas path').count()).toBeGreaterThan(3);
  expect(await strangers()).toEqual([]);
  expect(await bench.bench.locator('body script').count()).toBe(1);
  await bench.shot(`hostile-${look.replace(/\W+/g, '-').toLowerCase()}`);
});

test('its names are shown as the text that they are, where the pointer rests and where the keyboard goes', async () => {
  await bench.bench.getByRole('radio', { name: 'The print' }).check();
  const canvas = bench.bench.locator('.canvas');
  await canvas.focus();
  const seen = new Set<string>();
  for (let i = 0; i < 6; i++) {
    await bench.page.keyboard.press('.');
    await bench.bench.locator('.part-card').waitFor();
    seen.add(await bench.bench.locator('.part-card').textContent() ?? '');
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
