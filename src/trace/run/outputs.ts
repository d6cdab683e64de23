/** Finds the files that a program has written. */
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { OUTPUTS_NOTE, type TraceSettings } from '../settings';

/** Folders that hold no drawings of the user's. What programs write there all the same they note themselves. */
const PASSED_OVER = /^(?:node_modules|\.git|\.hg|\.svn|\.venv|venv|__pycache__)$/;

/** Entries of folders that are looked at, at most: beyond, somebody runs this in the root of a disk. */
const MOST_ENTRIES = 200_000;

/** Milliseconds that the clock of a file system may be behind ours. */
const CLOCK_GRAIN = 20;

/** @param since when the program began, in milliseconds since 1970 */
export async function filesWritten({ root, folder }: TraceSettings, since: number): Promise<string[]> {
  const found = new Set<string>(await notedFiles(folder));
  await lookThrough(root, since, found);
  return [...found].sort();
}

async function notedFiles(folder: string): Promise<string[]> {
  const text = await readFile(path.join(folder, OUTPUTS_NOTE), 'utf8').catch(() => '');
  return text.split('\n').filter(Boolean);
}

async function lookThrough(root: string, since: number, found: Set<string>): Promise<void> {
  const waiting = [root];
  let left = MOST_ENTRIES;
  for (let folder = waiting.pop(); folder !== undefined && left > 0; folder = waiting.pop()) {
    const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
    left -= entries.length;
    for (const entry of entries) {
      const file = path.join(folder, entry.name);
      if (entry.isDirectory() && !PASSED_OVER.test(entry.name)) waiting.push(file);
      else if (entry.isFile() && (await changedSince(file, since))) found.add(file);
    }
  }
}

async function changedSince(file: string, since: number): Promise<boolean> {
  const stats = await stat(file).catch(() => undefined);
  return stats !== undefined && stats.ctimeMs >= since - CLOCK_GRAIN;
}
