/** Bundles the server and its worker as they stand in the sources, into a folder of their own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { bundle } from '../../src/build/bundles.mjs';

export async function buildServer(): Promise<{ file: string; remove(): void }> {
  const outdir = mkdtempSync(path.join(tmpdir(), 'tombolo-server-'));
  const [file] = await Promise.all(['server', 'worker'].map((name) => bundle(name, { outdir })));
  return { file: file ?? '', remove: () => rmSync(outdir, { recursive: true, force: true }) };
}
