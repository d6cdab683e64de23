// Makes sure that the generator of the pages is there, which has a lockfile of its own: only few build them.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const here = path.dirname(fileURLToPath(import.meta.url));

const { dependencies } = JSON.parse(readFileSync(path.join(here, 'package.json'), 'utf8'));

/** Whether all that the pages are built with is installed. */
export const hasSite = () =>
  Object.keys(dependencies).every((name) => existsSync(path.join(here, 'node_modules', name, 'package.json')));

/** Installs what is missing. Throws, with npm's own words on stderr, where it cannot. */
export function ensureSite() {
  if (hasSite()) return;
  const words = ['ci', '--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund', '--loglevel=error'];
  execFileSync('npm', words, { cwd: here, stdio: ['ignore', 'inherit', 'inherit'] });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) ensureSite();
