/** Runs a program as it is, traced, and gives what it wrote as if it had not been. */
import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { mkdtemp, realpath, rm } from 'node:fs/promises';
import { constants, tmpdir } from 'node:os';
import path from 'node:path';
import type { Writable } from 'node:stream';
import { finished } from 'node:stream/promises';
import type { GeneratorMarks } from '../../report/generator';
import { MARK_PREFIX } from '../marks';
import type { TraceSettings } from '../settings';
import { tracedEnvironment } from './environment';
import { filesWritten } from './outputs';
import { MarkStripper, stripBytes } from './strip-bytes';
import { type Output, stripFile } from './strip-files';

export interface RunOptions {
  readonly command: readonly string[];
  /** Where the program runs, by default where we do: places are relative to it, and its outputs are looked for there. */
  readonly cwd?: string;
  /** The folder that the build puts the preloads into. */
  readonly preloads: string;
  /** Gets what the program prints, without marks, while it runs. */
  readonly stdout: Writable;
  readonly stderr: Writable;
  /** Ends the program. */
  readonly signal?: AbortSignal;
}

export interface ProgramRun {
  /** As a shell gives it: a program that a signal ended has 128 and the signal's number. */
  readonly code: number;
  /** SVG files that were written, and whatever else had marks. */
  readonly outputs: readonly Output[];
  /** What it printed on standard output, without marks; nothing where that was more than anybody checks. */
  readonly printed: { readonly bytes: Buffer; readonly marks: GeneratorMarks | undefined };
}

/** Bytes of standard output that are kept to be checked. */
const MOST_PRINTED = 100_000_000;

/** @throws the system's error where the command cannot be started */
export async function runProgram(options: RunOptions): Promise<ProgramRun> {
  const folder = await mkdtemp(path.join(tmpdir(), 'tombolo-trace-'));
  const attribute = MARK_PREFIX + randomBytes(4).toString('hex');
  const settings: TraceSettings = { attribute, root: await realpath(options.cwd ?? process.cwd()), folder };
  const since = Date.now();
  try {
    const { code, printed } = await runTraced(options, settings);
    const outputs: Output[] = [];
    for (const file of await filesWritten(settings, since)) {
      const output = await stripFile(file, settings);
      if (output?.marks || (output && path.extname(file).toLowerCase() === '.svg')) outputs.push(output);
    }
    return { code, outputs, printed };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function runTraced(
  { command: [name = '', ...words], preloads, stdout, stderr, signal }: RunOptions,
  settings: TraceSettings,
): Promise<Pick<ProgramRun, 'code' | 'printed'>> {
  const child = spawn(name, words, {
    cwd: settings.root,
    stdio: ['inherit', 'pipe', 'pipe'],
    env: tracedEnvironment(process.env, settings, preloads),
    shell: process.platform === 'win32',
    // A group of its own, so that what it starts ends with it.
    detached: process.platform !== 'win32',
  });
  const release = passSignals(child, signal);
  try {
    const printed = keep(child.stdout);
    const passed = [
      pass(child.stdout.pipe(new MarkStripper(settings.attribute)), stdout),
      pass(child.stderr.pipe(new MarkStripper(settings.attribute)), stderr),
    ];
    const code = await exitCodeOf(child);
    await Promise.all(passed);
    const bytes = printed();
    const { bytes: plain = bytes, marks } = stripBytes(bytes, settings.attribute) ?? {};
    return { code, printed: { bytes: plain, marks } };
  } finally {
    release();
  }
}

function pass(from: NodeJS.ReadableStream, to: Writable): Promise<void> {
  from.pipe(to, { end: false });
  return finished(from);
}

function keep(stream: NodeJS.ReadableStream): () => Buffer {
  const portions: Buffer[] = [];
  let size = 0;
  stream.on('data', (portion: Buffer) => {
    size += portion.length;
    if (size <= MOST_PRINTED) portions.push(portion);
  });
  return () => Buffer.concat(size <= MOST_PRINTED ? portions : []);
}

function exitCodeOf(child: ChildProcess): Promise<number> {
  return new Promise((settle, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => settle(code ?? 128 + (signal ? constants.signals[signal] : 0)));
  });
}

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Whoever ends us ends the program; what it wrote until then is stripped all the same. */
function passSignals(child: ChildProcess, ended: AbortSignal | undefined): () => void {
  const kill = (signal: NodeJS.Signals): void => {
    try {
      if (child.pid !== undefined && process.platform !== 'win32') process.kill(-child.pid, signal);
      else child.kill(signal);
    } catch {
      // It has ended by itself.
    }
  };
  const end = (): void => kill('SIGTERM');
  const handlers = SIGNALS.map((signal) => [signal, () => kill(signal)] as const);
  for (const [signal, handler] of handlers) process.on(signal, handler);
  if (ended?.aborted) end();
  ended?.addEventListener('abort', end);
  return () => {
    for (const [signal, handler] of handlers) process.off(signal, handler);
    ended?.removeEventListener('abort', end);
  };
}
