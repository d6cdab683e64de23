// Bundles the benchmark as the programs are bundled, and runs it: nothing is translated while the clock is running.
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { root } from '../../src/build/bundles.mjs';

const folder = path.join(root, 'node_modules/.cache/tombolo-bench');
const outfile = path.join(folder, 'bench.mjs');
mkdirSync(folder, { recursive: true });
await build({
  entryPoints: [path.join(root, 'test/bench/bench.ts')], outfile, bundle: true, format: 'esm', platform: 'node',
  target: 'node20', mainFields: ['module', 'main'], external: ['@resvg/resvg-js'],
});
await import(pathToFileURL(outfile).href);
rmSync(folder, { recursive: true, force: true });
