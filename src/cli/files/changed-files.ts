/** Which files git holds to be changed since the last commit. */
import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { Failure } from '../failure';

const run = promisify(execFile);

/** Changed, staged or new files in the current folder and below, relative to it. */
export async function changedFiles(): Promise<ReadonlySet<string>> {
  const lists = await Promise.all([
    git(['ls-files', '--modified', '--others', '--exclude-standard', '-z']),
    git(['diff', '--cached', '--name-only', '--relative', '-z']),
  ]);
  return new Set(lists.flatMap((list) => list.split('\0').filter((name) => name !== '')).map((name) => join(name)));
}

async function git(words: readonly string[]): Promise<string> {
  try {
    return (await run('git', [...words], { maxBuffer: 64e6 })).stdout;
  } catch (error) {
    throw new Failure('--changed: this folder is in no git repository, or git is not installed', { cause: error });
  }
}
