// Bundles the fuzz as the programs are bundled, and runs it: hours are not spent on translating.
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { define, root } from '../../src/build/bundles.mjs';

const folder = path.join(root, 'node_modules/.cache', `tombolo-fuzz-${process.pid}`);
mkdirSync(folder, { recursive: true });
const program = path.join(folder, 'main.mjs');
await build({
  entryPoints: [path.join(root, 'test/fuzz/main.ts')],
  outfile: program,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  mainFields: ['module', 'main'],
  external: ['@resvg/resvg-js', 'jsdom'],
  define,
});
const { status } = spawnSync(process.execPath, [program, ...process.argv.slice(2)], { stdio: 'inherit', cwd: root });
rmSync(folder, { recursive: true, force: true });
process.exitCode = status ?? 1;
