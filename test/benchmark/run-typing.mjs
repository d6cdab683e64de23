/**
 * `npm run bench:typing`: how long a key takes to be painted in the real editor, in a drawing of many segments, with
 * and without the bench beside the text. The browser's own Event Timing says it, in steps of 8 ms; the ratio holds from
 * machine to machine, times do not. Each round types with and without, so that both see the same load.
 */
import path from 'node:path';
import { root } from '../../src/build/bundles.mjs';
import { command, figures, inEditor, openFile, placeCaret, share } from './editor-page.mjs';
import { loadStacks } from './load-stacks.mjs';

const SEGMENTS = 20_700;
const KEYS = 40;
/** Milliseconds from key to key. */
const PACE = 120;
const ROUNDS = 3;

async function drawing() {
  const { layeredDrawing } = await loadStacks(path.join(root, 'node_modules/.cache/tombolo-typing'));
  return layeredDrawing(SEGMENTS);
}

/** Behind the first decimal of a number in the middle of the text. */
function middleOf(text) {
  const at = text.indexOf('<path', text.length / 2);
  const number = /-?\d+\.\d/.exec(text.slice(at));
  return at + number.index + number[0].length;
}

/** Durations of the keys, from the press to the frame that shows it, in ms. */
async function typed(page) {
  await page.evaluate(() => {
    globalThis.keyTimes = [];
    globalThis.keyWatch?.disconnect();
    globalThis.keyWatch = new PerformanceObserver((list) => {
      for (const { name, duration } of list.getEntries()) if (name === 'keydown') globalThis.keyTimes.push(duration);
    });
    globalThis.keyWatch.observe({ type: 'event', durationThreshold: 16 });
  });
  for (let i = 0; i < KEYS; i += 1) {
    await page.keyboard.press(String(i % 10));
    await page.waitForTimeout(PACE);
  }
  await page.waitForTimeout(1500);
  // What took less than the threshold is not told.
  const times = await page.evaluate(() => globalThis.keyTimes);
  return [...times, ...Array.from({ length: Math.max(KEYS - times.length, 0) }, () => 16)];
}

const text = await drawing();
await inEditor({ 'traced.svg': text, 'tombolo.json': '{}\n' }, async (page) => {
  await openFile(page, 'traced.svg');
  await page.waitForTimeout(8000);
  const all = { without: [], beside: [] };
  console.log(`${SEGMENTS} segments, ${KEYS} keys ${PACE} ms apart; ms from key to paint: p50, p95, most`);
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const way of ['without', 'beside']) {
      if (way === 'beside') {
        await command(page, process.env.TOMBOLO_OPEN_BENCH ?? 'Tombolo: Open Stencil Preview');
        await page.locator('iframe.webview').waitFor();
        await page.waitForTimeout(5000);
        await page.getByRole('tab', { name: 'traced.svg' }).first().click();
      }
      await placeCaret(page, text, middleOf(text));
      const times = await typed(page);
      all[way].push(...times);
      console.log(`${way === 'beside' ? 'bench beside the text' : 'without the bench    '}${figures(times)}`);
      if (way === 'beside')
        await page.screenshot({ path: path.join(root, 'node_modules/.cache/tombolo-typing/beside.png') });
      if (way === 'beside') {
        await page
          .getByRole('tab', { name: /^Bench|Stencil Preview/ })
          .first()
          .click();
        await command(page, 'View: Close Editor');
        await page.locator('iframe.webview').waitFor({ state: 'detached' });
      }
    }
  }
  const ratio = share(all.beside, 0.95) / share(all.without, 0.95);
  console.log(`p95 with the bench over p95 without: ${ratio.toFixed(2)}`);
});
