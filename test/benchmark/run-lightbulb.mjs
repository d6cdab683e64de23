/**
 * `npm run bench:lightbulb`: how long the real editor takes from Ctrl+. to the titles of the fixes at each finding of the
 * demo, and from its refactoring key to the whole list of a standing bridge's changes. Times are of this machine: run
 * it where nothing else runs.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from '../../src/build/bundles.mjs';
import { figures, inEditor, openFile, placeCaret } from './editor-page.mjs';

const ROUNDS = 5;
const NAME = 'waymarker.svg';
const demo = (name) => readFileSync(path.join(root, 'media/demo', name), 'utf8');

/** Where the findings are, and the bridges that stand: offsets into the text. */
async function places(text) {
  const { check } = await import(pathToFileURL(path.join(root, 'dist/library/index.js')).href);
  const { findings } = check(text);
  const necks = findings.filter((finding) => finding.check === 'thin-bridge');
  return { findings: findings.map(({ span }) => span.from), bridges: necks.map(({ span }) => span.from) };
}

/** Milliseconds from a key to the first row of the list, painted. */
async function untilListed(page, key) {
  await page.evaluate(() => {
    globalThis.listed = new Promise((resolve) => {
      let pressed;
      addEventListener('keydown', (event) => !event.repeat && (pressed ??= event.timeStamp), { capture: true });
      const look = () => {
        const isShown = document.querySelector('.action-widget .monaco-list-row.action');
        if (!pressed || !isShown) return requestAnimationFrame(look);
        return requestAnimationFrame((time) => resolve(time - pressed));
      };
      look();
    });
  });
  await page.keyboard.press(key);
  await page.locator('.action-widget .monaco-list-row.action').first().waitFor({ timeout: 10_000 });
  const time = await page.evaluate(() => globalThis.listed);
  await closeList(page);
  return time;
}

/** A list that has just come up may miss the key. */
async function closeList(page) {
  const list = page.locator('.action-widget').first();
  for (let tries = 0; tries < 20 && (await list.isVisible()); tries += 1) {
    await page.keyboard.press('Escape');
    await page.waitForTimeout(200);
  }
}

/** A panel that opens meanwhile can take the key away. */
async function again(attempt) {
  for (let tries = 1; ; tries += 1) {
    try {
      return await attempt();
    } catch (error) {
      if (tries === 3) throw error;
    }
  }
}

async function measure(page, text, offsets, key) {
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const offset of offsets) {
      times.push(
        await again(async () => {
          await placeCaret(page, text, offset);
          await page.waitForTimeout(600);
          return untilListed(page, key);
        }),
      );
    }
  }
  return times;
}

const text = demo(NAME);
const { findings, bridges } = await places(text);
await inEditor({ [NAME]: text, 'tombolo.json': demo('tombolo.json') }, async (page) => {
  await openFile(page, NAME);
  await page.locator('.squiggly-error').first().waitFor();
  await page.waitForTimeout(5000);
  console.log('ms from key to rows painted: p50, p95, most');
  console.log(`fixes at ${findings.length} findings   ${figures(await measure(page, text, findings, 'Control+.'))}`);
  console.log(
    `changes of ${bridges.length} bridge     ${figures(await measure(page, text, bridges, 'Control+Shift+R'))}`,
  );
});
