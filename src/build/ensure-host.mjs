// Makes sure that the embedded VS Code is installed, and with `withBrowser` a Chromium to drive it. Both are only
// fetched when they are missing, through npm and apt-get.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium } from '../../test/editor/host/browser.mjs';
import { hostFolder, hostNode, serverMain } from '../../test/editor/host/host.mjs';
import { installPackages } from './apt.mjs';

/** Packs the extension; it comes with the host because only few need it. */
export const vsce = path.join(hostFolder, 'node_modules/@vscode/vsce/vsce');

const run = (command, words, folder = hostFolder) =>
  execFileSync(command, words, { cwd: folder, stdio: ['ignore', 'inherit', 'inherit'] });

function installServer() {
  const inner = path.join(path.dirname(serverMain), '..');
  if (![serverMain, hostNode, vsce].every((file) => existsSync(file))) {
    console.log('Installing the embedded VS Code (about 1 GB, once) …');
    // Its own install script would compile modules that are not needed here.
    run('npm', ['ci', '--ignore-scripts', '--prefer-offline', '--no-audit', '--no-fund', '--loglevel=error']);
  }
  if (existsSync(path.join(inner, 'node_modules'))) return;
  // `npm ci` fails in this folder: the lockfile that the package brings is out of step with its package.json.
  run('npm', ['install', '--no-save', '--omit=dev', '--ignore-scripts', '--prefer-offline', '--loglevel=error'], inner);
}

function installChromium() {
  if (findChromium()) return;
  installPackages(['chromium', 'fonts-dejavu-core']);
}

/** Throws when something cannot be installed, with the installer's own words on stderr. */
export function ensureHost({ withBrowser = false } = {}) {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('The embedded VS Code runs on Linux x64 only; use a desktop VS Code (set TOMBOLO_VSCODE).');
  }
  installServer();
  if (withBrowser) installChromium();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) ensureHost({ withBrowser: true });
