/** A folder in which programs run, plain and traced, with what the build puts into them. */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { mkdir, mkdtemp, realpath, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { text as textOf } from 'node:stream/consumers';
import { type ProgramRun, runProgram } from '../../src/trace/run/run-program';
import { writePreloads } from '../bundles';

const ROOT = path.resolve(import.meta.dirname, '../..');

/** Tools of the project by their name; others are sought where the system has its programs. */
function commandPath(name: string): string {
  const tool = path.join(ROOT, 'node_modules/.bin', name);
  return existsSync(tool) ? tool : name;
}

export interface TracedRun extends ProgramRun {
  readonly stdout: string;
  readonly stderr: string;
}

export interface PlainRun {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export class TraceWorkshop {
  readonly folder: string;
  private readonly place: string;

  private constructor(place: string, folder: string) {
    this.place = place;
    this.folder = folder;
  }

  static async create(): Promise<TraceWorkshop> {
    const place = await realpath(await mkdtemp(path.join(tmpdir(), 'tombolo trace-')));
    await writePreloads({ outdir: place, minify: true });
    const folder = path.join(place, 'work');
    await mkdir(folder);
    await symlink(path.join(ROOT, 'node_modules'), path.join(place, 'node_modules'));
    return new TraceWorkshop(place, folder);
  }

  dispose(): Promise<void> {
    return rm(this.place, { recursive: true, force: true });
  }

  async empty(): Promise<void> {
    await rm(this.folder, { recursive: true });
    await mkdir(this.folder);
  }

  async file(name: string, text: string): Promise<string> {
    await mkdir(path.dirname(path.join(this.folder, name)), { recursive: true });
    await writeFile(path.join(this.folder, name), text);
    return name;
  }

  read(name: string): string {
    return readFileSync(path.join(this.folder, name), 'utf8');
  }

  has(name: string): boolean {
    return existsSync(path.join(this.folder, name));
  }

  /** Names of all files, but those of Python's cache. */
  files(): string[] {
    const all = readdirSync(this.folder, { recursive: true, encoding: 'utf8', withFileTypes: true });
    return all
      .filter((each) => each.isFile() && !each.parentPath.includes('__pycache__'))
      .map(({ name }) => name)
      .sort();
  }

  async traced([name = '', ...words]: readonly string[], signal?: AbortSignal): Promise<TracedRun> {
    const stdout = new PassThrough();
    const stderr = new PassThrough();
    const texts = Promise.all([textOf(stdout), textOf(stderr)]);
    const preloads = path.join(this.place, 'trace');
    const run = await runProgram({
      command: [commandPath(name), ...words],
      preloads,
      cwd: this.folder,
      stdout,
      stderr,
      ...(signal && { signal }),
    });
    stdout.end();
    stderr.end();
    const [out, err] = await texts;
    return { ...run, stdout: out, stderr: err };
  }

  plain([name = '', ...words]: readonly string[]): Promise<PlainRun> {
    const child = spawn(commandPath(name), words, { cwd: this.folder, stdio: ['ignore', 'pipe', 'pipe'] });
    const ended = new Promise<number | null>((settle, reject) => child.on('close', settle).on('error', reject));
    return Promise.all([ended, textOf(child.stdout), textOf(child.stderr)]).then(([code, stdout, stderr]) => ({
      code,
      stdout,
      stderr,
    }));
  }
}

/** Node.js names a file by its path where a source map leads to it, else by its URL, and leaves a line free there. */
export const asPath = (stack: string): string =>
  stack
    .replace(/file:\/\/\S*/g, (url) => decodeURI(url.slice('file://'.length)))
    .replace(/<anonymous> \((.*)\)/g, '$1')
    .replace(/\n+/g, '\n');
