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
  // What is typed before that would be typed into the drawing.
  await expect.poll(() => bench.page.locator('.quick-input-widget input').inputValue()).toMatch(/^:/);
  await bench.page.keyboard.type('7:15');
  await bench.page.keyboard.press('Enter');
  await bench.page.waitForTimeout(300);
  expect(await strangers()).toEqual([]);
});

/** What a stranger's frame could say to the page. */
const FORGED_TO_PAGE = [
  { type: 'gone', name: 'forged' },
  { type: 'stack', stack: { layers: [] } },
  { type: 'screen', pixelsPerInch: 1 },
  { type: 'draw', format: 'svg' },
  { type: 'no such thing' },
];

const FORGED_TO_EXTENSION = [
  { type: 'reveal', uri: 'file:///etc/hostname', from: 0, to: 5 },
  { type: 'begin', uri: 'file:///etc/hostname' },
  { type: 'ask', id: 900, question: { kind: 'necks', layer: '#0', uri: 'file:///etc/hostname' } },
  { type: 'ask', id: 901, question: { kind: 'putIn', edits: [{ span: { from: 0, to: 9 }, text: 'forged' }] } },
  { type: 'ask', id: 902, question: { kind: 'standingBridges', uri: 'file:///etc/hostname' } },
  { type: 'screen', pixelsPerInch: -1 },
  { type: 'picture', bytes: 'forged' },
  { type: 'reorder', uri: 'file:///etc/hostname', version: 1, layer: '#0', to: '#1', edits: [] },
  { type: 'executeCommand', command: 'workbench.action.closeWindow' },
  // As the page says it: when it is answered, all before it has been heard.
  { type: 'ask', id: 999, question: { kind: 'standingBridges' } },
];

/** To every frame of the window, out of a frame of no origin beside the editor's own. */
async function forgeToPage(): Promise<void> {
  const stranger = await bench.page.evaluateHandle(() => {
    const frame = document.createElement('iframe');
    frame.setAttribute('sandbox', 'allow-scripts');
    return document.body.appendChild(frame);
  });
  await (await stranger.asElement()?.contentFrame())?.evaluate((messages) => {
    const within = (frame: Window): Window[] => Array.from({ length: frame.length }, (_, i) => frame[i] as Window);
    const tell = (frame: Window): void => {
      for (const message of messages) frame.postMessage(message, '*');
      for (const inner of within(frame)) tell(inner);
    };
    for (const frame of within(window.top as Window)) tell(frame);
  }, FORGED_TO_PAGE);
  await stranger.evaluate((frame) => frame.remove());
}

/**
 * As a script in the page would, if one ever ran there: by what the editor gives the page to speak with.
 * Returns the numbers of the questions that were answered.
 */
async function forgeToExtension(): Promise<number[]> {
  const body = bench.bench.locator('body');
  await body.evaluate(() => {
    const answered: number[] = [];
    Object.assign(window, { answered });
    window.addEventListener(
      'message',
      ({ data }) => data.type === 'answer' && data.id >= 900 && answered.push(data.id),
    );
  });
  const around = bench.page.frames().find((frame) => frame.parentFrame() && frame.childFrames().length > 0);
  await around?.evaluate((messages) => {
    const say = (window as unknown as Record<string, (channel: string, data: object) => void>).__vscode_post_message__;
    for (const message of messages) say?.('onmessage', { message });
  }, FORGED_TO_EXTENSION);
  const answered = () => body.evaluate(() => (window as unknown as { answered: number[] }).answered);
  await expect.poll(answered, { timeout: 20_000 }).toContain(999);
  return answered();
}

test('forged messages do nothing: the page shows what it showed, no text changes, nothing is opened', async () => {
  const canvas = bench.bench.locator('.canvas');
  const [label, tabs] = [await canvas.getAttribute('aria-label'), await bench.page.getByRole('tab').count()];
  const [text, settings] = [bench.onDisk('hostile/hostile.svg'), bench.userSettings()];
  await forgeToPage();
  expect(await forgeToExtension()).toEqual([999]);
  await bench.page.waitForTimeout(500);
  expect(await canvas.getAttribute('aria-label')).toBe(label);
  expect(await bench.bench.getByText('forged').count()).toBe(0);
  expect(await bench.page.getByRole('tab').count()).toBe(tabs);
  expect(await bench.page.locator('.tab.dirty').count()).toBe(0);
  expect(bench.onDisk('hostile/hostile.svg')).toBe(text);
  expect(bench.userSettings()).toEqual(settings);
  await bench.shot('hostile-forged');
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
