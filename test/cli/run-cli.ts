/** Runs the bundled command line as people do: as a process of its own. */
import { spawn } from 'node:child_process';
import { mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { writeBundles, writePreloads } from '../bundles';

const ROOT = resolve(import.meta.dirname, '../..');

/** The very bundle that is shipped. */
async function bundleCli(outdir: string): Promise<string> {
  const place = { outdir, minify: true };
  await Promise.all([writeBundles(['cli'], place), writePreloads(place)]);
  return join(outdir, 'cli.cjs');
}

export interface Outcome {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
  readonly bytes: Buffer;
}

export interface RunOptions {
  readonly input?: string | Buffer;
  readonly environment?: Record<string, string>;
}

/** A bundle and an empty folder to work in, both in one temporary place. */
export class CliWorkshop {
  readonly folder: string;
  readonly bundle: string;
  private readonly place: string;

  private constructor(folder: string, bundle: string, place: string) {
    this.folder = folder;
    this.bundle = bundle;
    this.place = place;
  }

  static async create(): Promise<CliWorkshop> {
    const place = await mkdtemp(join(tmpdir(), 'tombolo-cli-'));
    const bundle = await bundleCli(place);
    await symlink(join(ROOT, 'node_modules'), join(place, 'node_modules'));
    const folder = await mkdtemp(join(place, 'work-'));
    return new CliWorkshop(folder, bundle, place);
  }

  dispose(): Promise<void> {
    return rm(this.place, { recursive: true, force: true });
  }

  path(name: string): string {
    return join(this.folder, name);
  }

  async file(name: string, content: string | Buffer): Promise<string> {
    await writeFile(this.path(name), content);
    return name;
  }

  run(words: readonly string[], { input, environment }: RunOptions = {}): Promise<Outcome> {
    const { NO_COLOR: _none, FORCE_COLOR: _forced, TOMBOLO_DEBUG: _debug, ...inherited } = process.env;
    const child = spawn(process.execPath, [this.bundle, ...words], {
      cwd: this.folder,
      env: { ...inherited, ...environment },
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
    child.stdin.on('error', () => undefined);
    child.stdin.end(input ?? '');
    return new Promise((settle, reject) => {
      child.on('error', reject);
      child.on('close', (code) => {
        const bytes = Buffer.concat(out);
        settle({ code, stdout: bytes.toString('utf8'), stderr: Buffer.concat(err).toString('utf8'), bytes });
      });
    });
  }
}
