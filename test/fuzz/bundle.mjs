// Bundles programs of the tests as the programs that ship are bundled: nothing is translated or asserted while they run.
import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { build } from 'esbuild';
import { define, root } from '../../src/build/bundles.mjs';

/**
 * @param {string} entry from the repository's root
 * @param {Record<string, string>} [defines] what else is put in for names
 * @returns {Promise<{ file: string, remove: () => void }>} the bundled program, and what removes it when it is done with
 */
export async function bundled(entry, defines = {}) {
  const name = path.basename(entry, '.ts');
  const folder = path.join(root, 'node_modules/.cache', `tombolo-${name}-${process.pid}`);
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, `${name}.mjs`);
  await build({
    entryPoints: [path.join(root, entry)],
    outfile: file,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    external: ['@resvg/resvg-js'],
    absWorkingDir: root,
    define: { ...define, ...defines },
  });
  return { file, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
