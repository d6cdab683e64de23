/** Programs that are killed, or find the disk full, at each of the steps by which they write files. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

export type Fault = 'kill' | 'full';

export interface Interrupted {
  readonly step: number;
  readonly code: number | null;
  readonly stderr: string;
}

/** Steps that no program here needs: one that goes on and on would be told by this. */
const MOST_STEPS = 100;

/**
 * Runs a program again and again, each time with the fault one step later, until it comes through without one.
 * @param words what Node.js is called with
 * @param before each run puts all files back as they were
 */
export function* interruptions(words: readonly string[], fault: Fault, cwd: string, before: () => void) {
  for (let step = 1; step < MOST_STEPS; step += 1) {
    before();
    const { status, signal, stderr } = spawnSync(
      process.execPath,
      ['--import', join(import.meta.dirname, 'interrupt.mjs'), ...words],
      { cwd, encoding: 'utf8', env: { ...process.env, TOMBOLO_STEP: String(step), TOMBOLO_FAULT: fault } },
    );
    const met = fault === 'kill' ? signal === 'SIGKILL' : status !== 0;
    const outcome: Interrupted = { step, code: status, stderr };
    if (!met) return;
    yield outcome;
  }
  throw new Error(`${words.join(' ')}: more than ${MOST_STEPS} steps`);
}

/** Runs a program that may write no file larger than some blocks of 512 bytes. */
export function withFileLimit(words: readonly string[], blocks: number, cwd: string): Interrupted {
  const { status, stderr } = spawnSync(
    '/bin/sh',
    ['-c', `ulimit -f ${blocks} && exec "$@"`, 'sh', process.execPath, ...words],
    { cwd, encoding: 'utf8' },
  );
  return { step: 0, code: status, stderr };
}
