// Bundles the benchmark as the programs are bundled, and runs each part in a process of its own: nothing is translated
// while the clock is running, and no part finds the memory of another.
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { bundle, bundleCommandLine, define, root } from '../../src/build/bundles.mjs';

const folder = path.join(root, 'node_modules/.cache/tombolo-bench');
mkdirSync(folder, { recursive: true });
await build({
  entryPoints: [
    'bench',
    'largest',
    'bridges',
    'clip-art',
    'files',
    'offsets',
    'programs',
    'project',
    'reading',
    'reading-memory',
    'separate-once',
    'separating',
    'server',
    'strokes',
    'travel',
  ].map((name) => path.join(root, `test/benchmark/${name}.ts`)),
  outdir: folder,
  outExtension: { '.js': '.mjs' },
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  mainFields: ['module', 'main'],
  loader: { '.wasm': 'binary' },
  external: ['@resvg/resvg-js', 'clipper2-wasm'],
  define,
  // What the protocol's library requires are parts of Node.js.
  banner: {
    js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
  },
});
const [server, worker, cli] = await Promise.all([
  bundle('server', { outdir: folder }),
  bundle('worker', { outdir: folder }),
  bundleCommandLine({ outdir: folder }),
]);
for (const [name, ...args] of [
  ['bench'],
  ['bridges'],
  ['clip-art'],
  ['offsets', 'traced'],
  ['offsets', 'smooth'],
  ['project'],
  ['reading'],
  ['separating'],
  ['strokes'],
  ['travel'],
  ['files', cli],
  ['programs', server, cli],
  ['server', server, worker],
]) {
  execFileSync(process.execPath, [path.join(folder, `${name}.mjs`), ...args], { stdio: 'inherit' });
}
rmSync(folder, { recursive: true, force: true });
