// Runs suite/ inside the extension host: of a desktop VS Code if TOMBOLO_VSCODE names one, else of the embedded one.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { build } from 'esbuild';

const here = path.dirname(fileURLToPath(import.meta.url));
const suite = path.join(here, 'dist/suite.cjs');

await build({
  entryPoints: [path.join(here, 'suite/index.ts')],
  outfile: suite,
  bundle: true,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  external: ['vscode'],
  sourcemap: 'inline',
  logLevel: 'warning',
});

const workspace = mkdtempSync(path.join(tmpdir(), 'tombolo-suite-'));
cpSync(path.join(here, 'workspace'), workspace, { recursive: true });
try {
  await runTests({
    vscodeExecutablePath: process.env.TOMBOLO_VSCODE ?? path.join(here, 'host/launcher.mjs'),
    extensionDevelopmentPath: path.join(here, '../..'),
    extensionTestsPath: suite,
    launchArgs: [workspace],
  });
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  rmSync(workspace, { recursive: true, force: true });
}
