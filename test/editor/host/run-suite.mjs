// Runs a suite's exported run() inside the extension host of the embedded workbench.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { launchBrowser } from '../../../src/build/host/browser.mjs';
import { startHost, workbenchAddress } from '../../../src/build/host/host.mjs';

function passed(code, state) {
  const verdict = path.join(state, 'suite-verdict');
  if (!existsSync(verdict)) {
    console.error('The extension host ended before the suite did.');
    return false;
  }
  return code === 0 && readFileSync(verdict, 'utf8') === 'passed';
}

/** The workbench itself calls these two functions of the page when it runs extension tests. */
async function suiteEnd(page, timeoutMs) {
  let exit = () => {};
  const ended = new Promise((resolve) => {
    exit = resolve;
  });
  await page.exposeFunction('codeAutomationExit', (code) => exit(code));
  await page.exposeFunction('codeAutomationLog', (_level, words) => {
    const text = words.join(' ');
    if (text.startsWith('[suite] ')) console.log(text.slice('[suite] '.length));
    else if (process.env.VERBOSE) console.log(text);
  });
  return () => {
    let timer;
    const late = new Promise((_, reject) => {
      timer = setTimeout(() => reject(new Error(`The suite gave no result within ${timeoutMs} ms.`)), timeoutMs);
    });
    return Promise.race([ended, late]).finally(() => clearTimeout(timer));
  };
}

/** Resolves to 0 when every test of the suite passed, else to 1. */
export async function runSuite({ folder, developmentPath, testsPath, timeoutMs = 180_000 }) {
  const host = await startHost({
    env: { SUITE_PATH: path.resolve(testsPath) },
    settings: { 'workbench.editorAssociations': { '*.svg': 'default' } },
  });
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    const result = await suiteEnd(page, timeoutMs);
    await page.goto(
      workbenchAddress(host, {
        folder,
        developmentPath,
        testsPath: path.join(import.meta.dirname, 'suite-entry.cjs'),
      }),
    );
    return passed(await result(), host.state) ? 0 : 1;
  } finally {
    await browser.close();
    await host.stop();
  }
}
