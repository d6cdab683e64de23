// Makes sure that the corpora of the wide tests are there which the tests do not bring themselves: the W3C SVG 1.1 test
// suite, the clip art of Open Clip Art and Python's libraries that draw, photos, as Debian packages them, and sets of pictures and faces from npm.
//   --install   fetches what is missing
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { installPackages, mayInstall } from './apt.mjs';

const DEBIAN = {
  'librsvg2-tests': '/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1',
  'openclipart-svg': '/usr/share/openclipart/svg',
  'poppler-utils': '/usr/bin/pdftocairo',
  'python3-ezdxf': '/usr/lib/python3/dist-packages/ezdxf/__init__.py',
  // Photos that are separated.
  'python3-skimage': '/usr/lib/python3/dist-packages/skimage/data/chelsea.png',
  // Programs that draw are traced with these.
  'python3-lxml': '/usr/lib/python3/dist-packages/lxml',
  'python3-svgwrite': '/usr/lib/python3/dist-packages/svgwrite',
};

/** Has a lockfile of its own: only the wide tests need what it lists. */
const sets = path.join(path.dirname(fileURLToPath(import.meta.url)), 'corpora');

const manifest = JSON.parse(readFileSync(path.join(sets, 'package.json'), 'utf8'));
// The validator of SARIF logs is a program for Linux.
const dependencies = { ...manifest.dependencies, ...(process.platform === 'linux' && manifest.optionalDependencies) };
const hasSets = () =>
  Object.keys(dependencies).every((name) => existsSync(path.join(sets, 'node_modules', name, 'package.json')));
const missing = Object.keys(DEBIAN).filter((name) => !existsSync(DEBIAN[name]));

if (mayInstall) {
  if (missing.length > 0) installPackages(missing);
  if (!hasSets()) {
    const words = ['ci', '--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund', '--loglevel=error'];
    execFileSync('npm', words, { cwd: sets, stdio: ['ignore', 'inherit', 'inherit'] });
  }
} else if (missing.length > 0 || !hasSets()) {
  const names = [...missing, ...(hasSets() ? [] : ['the sets of pictures and faces'])];
  console.error(`The wide tests need ${names.join(' and ')}: npm run setup installs them.`);
  process.exitCode = 1;
}
