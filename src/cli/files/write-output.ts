/** Writes files whole or not at all. */
import { access, constants, realpath, stat, writeFile } from 'node:fs/promises';
import writeFileAtomic from 'write-file-atomic';
import { Failure, failureAt } from '../failure';
import { encodeText, readInput } from './read-input';

/**
 * Replaces the file at `path` in one step; whoever reads it sees the old bytes or the new, never half of them. The
 * file keeps its mode and owner; where `path` is a symbolic link, the file it leads to is replaced.
 * @throws Failure that names the path; the old file is then untouched
 */
export async function writeAtomically(path: string, bytes: Buffer | string): Promise<void> {
  try {
    await refuseUnwritable(path);
    // A single write call, which the library would make, may stop short on a full disk without an error.
    await failingAtLimit(() =>
      writeFileAtomic(path, '', { tmpfileCreated: (temporary) => writeFile(temporary, bytes) }),
    );
  } catch (error) {
    throw failureAt(path, error);
  }
}

/**
 * What can be made anew at any time: nobody waits until it is on the disk, and who reads it heeds that it may be spoilt.
 * @throws Failure that names the path
 */
export async function writeDispensable(path: string, text: string): Promise<void> {
  try {
    await writeFileAtomic(path, text, { fsync: false });
  } catch (error) {
    throw failureAt(path, error);
  }
}

const ignore = (): void => undefined;

/** Where files may not grow so large (`ulimit -f`), the write shall fail, not the program end with a file half made beside. */
export async function failingAtLimit(write: () => Promise<void>): Promise<void> {
  process.on('SIGXFSZ', ignore);
  try {
    await write();
  } finally {
    process.off('SIGXFSZ', ignore);
  }
}

/**
 * Puts another text in the place of the one that was read, in the same encoding.
 * @param name what the file is called in messages
 * @throws Failure when the file no longer holds what was read; it is then left as it is
 */
export async function replaceText(path: string, before: string, after: string, name = path): Promise<void> {
  if (after === before) return;
  const now = await readInput(path, name);
  if (now.text !== before) throw new Failure(`${name}: the file has changed meanwhile; nothing was written`);
  await writeAtomically(path, encodeText(after, now.encoding));
}

/** Renaming would put a plain file in the place of a device, and would pass over a file's own write protection. */
async function refuseUnwritable(path: string): Promise<void> {
  const existing = await stat(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  });
  if (!existing) return;
  if (existing.isDirectory()) throw new Failure(`${path}: is a folder`);
  if (!existing.isFile()) throw new Failure(`${path}: is not a regular file`);
  await access(path, constants.W_OK);
}

/** Whether two paths lead to the same file, links followed. */
export async function isSameFile(first: string, second: string): Promise<boolean> {
  try {
    return (await realpath(first)) === (await realpath(second));
  } catch {
    return false;
  }
}
