/** What the measurements in the real editor do alike: a folder of their own, a page, commands, the caret. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { root } from '../../src/build/bundles.mjs';
import { launchBrowser } from '../../src/build/host/browser.mjs';
import { startHost, workbenchAddress } from '../../src/build/host/host.mjs';

/** @param files texts by their names; SVG opens as text @returns a folder that the caller removes */
function makeFolder(files) {
  const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-editor-'));
  const settings = { 'workbench.editorAssociations': { '*.svg': 'default' } };
  mkdirSync(path.join(folder, '.vscode'));
  writeFileSync(path.join(folder, '.vscode/settings.json'), JSON.stringify(settings));
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
  return folder;
}

/** Runs something on a page of the editor that has opened a folder of these files. */
export async function inEditor(files, run) {
  const folder = makeFolder(files);
  const host = await startHost();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(workbenchAddress(host, { folder, developmentPath: root }));
    await run(page);
  } finally {
    await browser.close();
    await host.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function openFile(page, name) {
  await page.getByRole('treeitem', { name }).dblclick();
  await page.getByRole('tab', { name }).waitFor();
}

export async function command(page, title) {
  await page.keyboard.press('F1');
  await page.locator('.quick-input-widget input').fill(`>${title}`);
  await page.locator('.quick-input-list .monaco-list-row', { hasText: title }).first().click();
}

/** Puts the caret at an offset of the text that the active editor shows. */
export async function placeCaret(page, text, offset) {
  const before = text.slice(0, offset);
  await page.keyboard.press('Control+G');
  await page.keyboard.type(`${before.split('\n').length}:${offset - before.lastIndexOf('\n')}`);
  await page.keyboard.press('Enter');
}

/** @param part of the values, 0.95 for the 95th percentile */
export const share = (values, part) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))];

/** The median, the 95th percentile and the most of some milliseconds. */
export const figures = (values) => [0.5, 0.95, 1].map((part) => share(values, part).toFixed(0).padStart(7)).join('');
