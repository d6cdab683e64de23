// Bundles the benchmark as the programs are bundled, and runs it: nothing is translated while the clock is running.
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { root } from '../../src/build/bundles.mjs';

const folder = path.join(root, 'node_modules/.cache/tombolo-bench');
mkdirSync(folder, { recursive: true });
await build({
  entryPoints: ['bench', 'largest', 'project', 'reading', 'reading-memory'].map((name) => path.join(root, `test/bench/${name}.ts`)), outdir: folder,
  outExtension: { '.js': '.mjs' }, bundle: true, format: 'esm', platform: 'node', target: 'node20',
  mainFields: ['module', 'main'], external: ['@resvg/resvg-js', 'clipper2-wasm'],
});
for (const name of ['bench', 'project', 'reading']) await import(pathToFileURL(path.join(folder, `${name}.mjs`)).href);
rmSync(folder, { recursive: true, force: true });
