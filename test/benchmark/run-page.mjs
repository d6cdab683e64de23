/**
 * `npm run bench:editor`: the bench's page alone in headless Chromium, painted by the processor, under the policy that
 * it has in the editor. All times are the browser's own: performance.now(), requestAnimationFrame. Ratios hold from
 * machine to machine; times do not.
 */
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { bundle, root } from '../../src/build/bundles.mjs';
import { launchBrowser } from '../../src/build/host/browser.mjs';
import { moveAbout, watchMessages } from './in-page.mjs';
import { loadStacks } from './load-stacks.mjs';

const folder = path.join(root, 'node_modules/.cache/tombolo-bench-page');
const address = 'http://bench.test/';
const KEYSTROKES = 40;
const REDRAWS = 7;

async function openPage(browser) {
  const page = await browser.newPage({ viewport: { width: 1200, height: 800 } });
  const [script, style] = [await bundle('preview', { outdir: folder }), await bundle('style', { outdir: folder })];
  const files = new Map([
    ['preview.js', { contentType: 'text/javascript', body: readFileSync(script, 'utf8') }],
    ['preview.css', { contentType: 'text/css', body: readFileSync(style, 'utf8') }],
    [
      '',
      {
        contentType: 'text/html',
        body:
          '<!DOCTYPE html><meta http-equiv="Content-Security-Policy" content="default-src \'none\'; ' +
          `script-src 'nonce-bench'; worker-src blob:; style-src ${address}"><link rel="stylesheet" href="preview.css">` +
          '<body><script nonce="bench" src="preview.js"></script>',
      },
    ],
  ]);
  await page.route('**/*', (route) => {
    const file = files.get(new URL(route.request().url()).pathname.slice(1));
    return file ? route.fulfill(file) : route.abort();
  });
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.addInitScript(watchMessages);
  await page.goto(address);
  return page;
}

const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];
const of = (laps, key) => median(laps.map((lap) => lap[key]));
const row = (name, laps) =>
  console.log(
    `${name.padEnd(26)}${['message', 'work', 'layout'].map((key) => of(laps, key).toFixed(1).padStart(10)).join('')}` +
      `${Math.max(...laps.map(({ work }) => work))
        .toFixed(1)
        .padStart(12)}`,
  );

async function measureTyping(browser, { layeredDrawing, stackFor, typedStacks, segmentsOf }) {
  const text = layeredDrawing(10_000);
  const first = stackFor(text);
  console.log(`typing in a drawing of ${segmentsOf(first)} segments, ${KEYSTROKES} keystrokes, medians in ms`);
  console.log('                             message      work    layout   most work');
  const redraws = [];
  let page;
  for (let i = 0; i < REDRAWS; i += 1) {
    await page?.close();
    page = await openPage(browser);
    redraws.push(await page.evaluate((sent) => globalThis.showStack(sent), first));
  }
  const before = await page.evaluate(() => globalThis.whereIsIt());
  const laps = [];
  for (const stack of typedStacks(text, KEYSTROKES)) {
    laps.push(await page.evaluate((sent) => globalThis.showStack(sent), stack));
  }
  row('update', laps);
  row('full redraw, a new page', redraws);
  const stayed = before === (await page.evaluate(() => globalThis.whereIsIt()));
  console.log(`the view stayed where it was: ${stayed ? 'yes' : 'NO'}`);
  await page.close();
}

async function measureMoves(browser, { layeredDrawing, stackFor, segmentsOf }) {
  const stack = stackFor(layeredDrawing(100_000));
  const marks = stack.findings.length;
  console.log(`\nmoving a stack of ${segmentsOf(stack)} segments and ${marks} marks;`);
  console.log('frames as requestAnimationFrame gives them, lowest/s over any half second');
  console.log('way of looking   movement     frames/s   lowest/s   median ms   slowest ms   over 33.4 ms   script ms');
  for (const name of ['Print', 'Single sheet', 'All sheets']) {
    const page = await openPage(browser);
    await page.evaluate((sent) => globalThis.showStack(sent), stack);
    await page.getByRole('radio', { name }).check();
    await page.waitForTimeout(1500);
    for (const [movement, figures] of Object.entries(await page.evaluate(moveAbout))) {
      console.log(name.padEnd(17) + movement.padEnd(11) + moveColumns(figures));
    }
    const whole = await processorTime(browser, page);
    console.log(`${name.padEnd(17)}all of it: ${whole.toFixed(1)} ms of processor time a frame`);
    await page.close();
  }
}

function moveColumns({ rate, lowest, middle, slowest, late, frames, script }) {
  const column = (value, width) => value.toFixed(1).padStart(width);
  return (
    column(rate, 10) +
    column(lowest, 11) +
    column(middle, 12) +
    column(slowest, 13) +
    `${late} of ${frames}`.padStart(15) +
    column(script, 12)
  );
}

/** Milliseconds that the browser's threads together work on one frame; other work on the machine does not count. */
async function processorTime(browser, page) {
  await browser.startTracing(page, { categories: ['toplevel'] });
  const movements = Object.values(await page.evaluate(moveAbout));
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString());
  const microseconds = traceEvents.reduce(
    (sum, { ph, name, tdur }) => (ph === 'X' && name.includes('RunTask') && tdur ? sum + tdur : sum),
    0,
  );
  return microseconds / 1000 / movements.reduce((sum, { frames }) => sum + frames, 0);
}

mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
try {
  const stacks = await loadStacks(folder);
  await measureTyping(browser, stacks);
  await measureMoves(browser, stacks);
} finally {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
}
