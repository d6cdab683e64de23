/** Bundles the server and its worker as they are shipped, into a folder of their own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { writeBundles } from '../bundles';

export async function buildServer(): Promise<{ file: string; remove(): void }> {
  const outdir = mkdtempSync(path.join(tmpdir(), 'tombolo-server-'));
  await writeBundles(['server', 'worker'], { outdir, minify: true });
  return { file: path.join(outdir, 'server.cjs'), remove: () => rmSync(outdir, { recursive: true, force: true }) };
}
