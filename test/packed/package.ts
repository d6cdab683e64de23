/** The library's package, packed from what a clone of the repository has, and installed into an empty project. */
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

export const root = path.resolve(__dirname, '../..');

export interface InstalledPackage {
  /** All that is made here; to be removed. */
  readonly folder: string;
  /** The empty project. */
  readonly project: string;
  /** The package as npm installed it. */
  readonly installed: string;
  readonly tarball: Uint8Array;
  /** What npm says of it. */
  readonly facts: { readonly unpackedSize: number; readonly files: readonly { readonly path: string }[] };
}

export function installPackage(): InstalledPackage {
  const folder = mkdtempSync(path.join(tmpdir(), 'tombolo-packed-'));
  const [clone, project] = ['clone', 'project'].map((name) => path.join(folder, name)) as [string, string];
  copyRepository(clone);
  const [facts] = JSON.parse(npm(clone, 'pack', '--json', '--silent', '--pack-destination', folder));
  const tarball = path.join(folder, facts.filename);
  mkdirSync(project);
  writeFileSync(path.join(project, 'package.json'), JSON.stringify({ name: 'marsh', private: true }));
  // Nothing is fetched: the library needs no other package, and the renderer is left out.
  npm(project, 'install', tarball, '--offline', '--omit=optional', '--no-audit', '--no-fund');
  const installed = path.join(project, 'node_modules', facts.name);
  return { folder, project, installed, tarball: readFileSync(tarball), facts };
}

/** With the packages that are installed already. */
function copyRepository(clone: string): void {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], { cwd: root });
  for (const file of listed.toString().split('\0')) {
    if (file === '' || /^(?:test|docs)\//.test(file)) continue;
    cpSync(path.join(root, file), path.join(clone, file), { force: true });
  }
  symlinkSync(path.join(root, 'node_modules'), path.join(clone, 'node_modules'));
}

export function npm(cwd: string, ...words: string[]): string {
  return execFileSync('npm', words, { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}
