// Makes sure that the embedded VS Code is there, and a Chromium to drive it.
//   --install   fetches what is missing, through npm and apt-get
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { installPackages, mayInstall } from './apt.mjs';
import { findChromium } from './host/browser.mjs';
import { hostFolder, hostNode, serverMain } from './host/host.mjs';

/** Packs the extension; it comes with the host because only few need it. */
export const vsce = path.join(hostFolder, 'node_modules/@vscode/vsce/vsce');

const inner = path.join(path.dirname(serverMain), '..');

const run = (command, words, folder = hostFolder) =>
  execFileSync(command, words, { cwd: folder, stdio: ['ignore', 'inherit', 'inherit'] });

const hasHost = () => [serverMain, hostNode, vsce].every((file) => existsSync(file));

/** Whether the embedded VS Code runs on this machine at all. */
export const runsHere = process.platform === 'linux' && process.arch === 'x64';

/** What keeps the embedded VS Code from being driven now, in one line; undefined where nothing does. */
export function whatIsMissing() {
  if (!runsHere) return 'the embedded VS Code runs on Linux x64 only';
  const missing = [];
  if (!hasHost() || !existsSync(path.join(inner, 'node_modules'))) missing.push('the embedded VS Code');
  if (!findChromium()) missing.push('a Chromium to drive it');
  return missing.length === 0 ? undefined : `${missing.join(' and ')} must be installed first: npm run setup`;
}

function installServer() {
  if (!hasHost()) {
    console.log('Installing the embedded VS Code (about 1 GB, once) …');
    // Its own install script would compile modules that are not needed here.
    run('npm', ['ci', '--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund', '--loglevel=error']);
  }
  if (existsSync(path.join(inner, 'node_modules'))) return;
  // `npm ci` fails in this folder: the lockfile that the package brings is out of step with its package.json.
  run('npm', ['install', '--no-save', '--omit=dev', '--ignore-scripts', '--prefer-offline', '--loglevel=error'], inner);
}

/**
 * Installs what is missing of the embedded VS Code, and with `withBrowser` of the browser. Throws when something cannot
 * be installed, with the installer's own words on stderr.
 */
export function ensureHost({ withBrowser = false } = {}) {
  if (!runsHere) {
    throw new Error('The embedded VS Code runs on Linux x64 only; use a desktop VS Code (set TOMBOLO_VSCODE).');
  }
  installServer();
  if (withBrowser && !findChromium()) installPackages(['chromium', 'fonts-dejavu-core']);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  if (mayInstall) ensureHost({ withBrowser: true });
  const missing = whatIsMissing();
  if (missing) {
    console.error(`This cannot run: ${missing}.`);
    process.exitCode = 1;
  }
}
