// npm run package: packs the extension as tombolo-stencil.vsix. Needs no network once the host is installed.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './bundles.mjs';
import { ensureHost, vsce } from './ensure-host.mjs';

export const packed = path.join(root, 'tombolo-stencil.vsix');

/** What the marketplace shows, from the root of a package. */
const PAGE = 'src/extension/page.md';

/**
 * The arguments of vsce. Links and pictures of the page lead to the repository, once package.json says where that is; until
 * then they are those of the package.
 * @param {{ repository?: unknown }} manifest
 */
export function words({ repository }, out = packed) {
  const unnamed = repository ? [] : ['--allow-missing-repository', '--no-rewrite-relative-links'];
  // What it needs at run time is in the bundles.
  return ['package', '--no-dependencies', '--readme-path', PAGE, ...unnamed, '--out', out];
}

/**
 * Builds small bundles and packs them; gives the path of the package.
 * @param folder another one with the same files
 */
export function pack(folder = root, out = packed) {
  ensureHost();
  const manifest = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'));
  const { status } = spawnSync(process.execPath, [vsce, ...words(manifest, out)], {
    cwd: folder,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (status !== 0) throw new Error(`Packing failed with ${status}.`);
  return out;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    pack();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    process.exitCode = 1;
  }
}
