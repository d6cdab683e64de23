// npm run package: packs the extension as tombolo-stencil.vsix. Needs no network once the host is installed.
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './bundles.mjs';
import { ensureHost, vsce } from './ensure-host.mjs';

export const packed = path.join(root, 'tombolo-stencil.vsix');

/** Builds small bundles and packs them; gives the path of the package. */
export function pack() {
  ensureHost();
  // What it needs at run time is in the bundles.
  const words = [
    vsce,
    'package',
    '--no-dependencies',
    '--allow-missing-repository',
    '--no-rewrite-relative-links',
    '--out',
    packed,
  ];
  const { status } = spawnSync(process.execPath, words, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  if (status !== 0) throw new Error(`Packing failed with ${status}.`);
  return packed;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    pack();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
