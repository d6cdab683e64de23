/** What is shipped: the packed extension, installed as users do, opens the demo and mends it. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { pack } from '../../../src/build/package.mjs';
import { hostNode, serverMain } from '../host/host.mjs';
import { root, Workbench } from '../workbench/workbench';

let bench: Workbench;
const state = mkdtempSync(path.join(tmpdir(), 'tombolo-packed-'));
const extensionsDir = path.join(state, 'extensions');

function code(...words: string[]): string {
  return execFileSync(hostNode, [
    serverMain, '--accept-server-license-terms', '--server-data-dir', path.join(state, 'server'),
    '--user-data-dir', path.join(state, 'user'), '--extensions-dir', extensionsDir, ...words,
  ], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
}

beforeAll(async () => {
  code('--install-extension', pack());
  bench = await Workbench.open(path.join(root, 'media/demo'), {}, extensionsDir);
}, 300_000);
afterAll(async () => {
  await bench?.close();
  rmSync(state, { recursive: true, force: true });
});

test('it is installed under its name', () => {
  expect(code('--list-extensions')).toMatch(/^tombolo\.tombolo-stencil$/m);
});

test('it underlines, shows the bench and bridges', async () => {
  await bench.openFile('waymarker.svg');
  await bench.page.locator('.squiggly-error').first().waitFor();
  await bench.command('Tombolo: Open the Bench');
  const island = bench.bench.getByRole('button', { name: /Island of 272/ });
  await island.waitFor();
  await bench.command('Tombolo: Bridge Every Island');
  await island.waitFor({ state: 'detached' });
  await bench.shot('packed');
});
