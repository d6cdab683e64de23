// The drawings and stacks that are measured in pages, bundled for Node.js.
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { root } from '../../src/build/bundles.mjs';

/** @param folder that the bundle is written to */
export async function loadStacks(folder) {
  const outfile = path.join(folder, 'stacks.mjs');
  await build({
    entryPoints: [path.join(root, 'test/benchmark/page-stacks.ts')],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
  });
  return import(pathToFileURL(outfile).href);
}
