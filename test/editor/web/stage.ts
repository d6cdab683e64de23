/**
 * The stage of the workbench, on which our extension runs in the browser's own extension host: as it is packed, so that the server
 * is put together of the files that programs share.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { root } from '../../../src/build/bundles.mjs';
import { pack } from '../../../src/build/package.mjs';
import { raiseStage } from '../workbench/stage';

const WEB = { 'remote.extensionKind': { 'tombolo.tombolo-stencil': ['web'] } };

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const state = mkdtempSync(path.join(tmpdir(), 'tombolo-web-'));
  execFileSync('python3', ['-m', 'zipfile', '-e', pack(root, path.join(state, 'packed.vsix')), state]);
  const end = await raiseStage(project, { developmentPath: path.join(state, 'extension'), settings: WEB });
  return async () => {
    await end();
    rmSync(state, { recursive: true, force: true });
  };
}
