// npm start: checks the demo in the terminal, then opens it in an editor with the extension in it.
//   --no-editor   stops after the check
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { dist, root } from './bundles.mjs';
import { findDesktopEditor } from './desktop-editor.mjs';
import { ensureHost } from './ensure-host.mjs';

const demo = path.join(root, 'media/demo');
const stencil = path.join(demo, 'waymarker.svg');

function newestIn(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((newest, entry) => Math.max(newest, statSync(path.join(entry.parentPath, entry.name)).mtimeMs), 0);
}

function buildIfNeeded() {
  const last = path.join(dist, 'library/index.d.ts');
  if (existsSync(last) && statSync(last).mtimeMs > newestIn(path.join(root, 'src'))) return;
  console.log('Building …');
  const { status } = spawnSync(process.execPath, [path.join(root, 'src/build/bundle.mjs')], { stdio: 'inherit' });
  if (status !== 0) process.exit(1);
}

/** Findings are what the demo is for; only a check that could not run ends the start. */
function checkDemo() {
  const checked = [stencil, path.join(demo, 'trail')].map((each) => path.relative(root, each));
  console.log(`$ tombolo check ${checked.join(' ')}`);
  const words = [path.join(dist, 'cli.cjs'), 'check', ...checked];
  const { status } = spawnSync(process.execPath, words, { stdio: 'inherit', cwd: root });
  if (status !== 0 && status !== 1) process.exit(status ?? 1);
}

function openDesktop(editor) {
  console.log('Opening the demo in VS Code …');
  const child = spawn(editor, [`--extensionDevelopmentPath=${root}`, demo, stencil], { stdio: 'inherit' });
  child.once('error', (error) => {
    console.error(`${editor} could not be started: ${error.message}`);
    process.exitCode = 1;
  });
}

async function openEmbedded() {
  const { startHost, workbenchAddress } = await import('./host/host.mjs');
  ensureHost();
  const host = await startHost({ settings: { 'workbench.editorAssociations': { '*.svg': 'default' } } });
  const stop = () => host.stop().then(() => process.exit(0));
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, stop);
  const address = workbenchAddress(host, { folder: demo, file: stencil, developmentPath: root });
  console.log(`\nNo VS Code was found on this machine; one is served to your browser instead, from this machine alone:

  ${address}

The layers button at the upper right of the text opens the bench. Ctrl-C here ends it.`);
}

buildIfNeeded();
checkDemo();
if (!process.argv.includes('--no-editor')) {
  const editor = findDesktopEditor();
  if (editor) openDesktop(editor);
  else await openEmbedded();
}
