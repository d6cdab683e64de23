/** The extension is packed and installed as users do; then one server and one browser are started with it. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { hostNode, serverMain } from '../../../src/build/host/host.mjs';
import { pack } from '../../../src/build/package.mjs';
import { raiseStage } from '../workbench/stage';

declare module 'vitest' {
  interface ProvidedContext {
    /** Names of the extensions that are installed, one a line. */
    readonly installed: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const state = mkdtempSync(path.join(tmpdir(), 'tombolo-packed-'));
  const extensionsDir = path.join(state, 'extensions');
  const code = (...words: string[]): string =>
    execFileSync(
      hostNode,
      [
        serverMain,
        '--accept-server-license-terms',
        '--server-data-dir',
        path.join(state, 'server'),
        '--user-data-dir',
        path.join(state, 'user'),
        '--extensions-dir',
        extensionsDir,
        ...words,
      ],
      { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
    );
  code('--install-extension', pack());
  project.provide('installed', code('--list-extensions'));
  const end = await raiseStage(project, { extensionsDir });
  return async () => {
    await end();
    rmSync(state, { recursive: true, force: true });
  };
}
