// npm run test:editor: the extension in the real editor. What cannot run on this machine is named and left out; with
// CI=true what is missing is installed instead.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { mayInstall } from './apt.mjs';
import { root } from './bundles.mjs';
import { ensureHost, runsHere, whatIsMissing } from './ensure-host.mjs';

/** Where the run fails, this process fails at once. */
function run(...words) {
  const { status } = spawnSync(process.execPath, words, { cwd: root, stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}

if (mayInstall && runsHere) ensureHost({ withBrowser: true });
const missing = whatIsMissing();

if (!missing || process.env.TOMBOLO_VSCODE) run(path.join(root, 'test/editor/run-suite.mjs'));
else
  console.log(`Skipped: the suite in the extension host: ${missing}. A desktop VS Code runs it, too: TOMBOLO_VSCODE.`);

if (!missing) run(path.join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--config', 'test/editor/vitest.config.ts');
else console.log(`Skipped: the workbench, by mouse and keyboard: ${missing}.`);
