/** Writes what was separated: all or nothing, and never over what somebody edited. */
import { mkdir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { hashOfText } from '../../text/hash';
import { Failure, failureAt } from '../failure';
import { writeAtomically } from '../files/write-output';

/** The text of a file, undefined where there is none. */
export async function textAt(path: string): Promise<string | undefined> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw failureAt(path, error);
  }
}

/**
 * Whether a file is no longer as it was written.
 * @param written the stand-in for what was written; undefined where nothing is known of it
 */
export async function isEdited(path: string, written: string | undefined): Promise<boolean> {
  const text = await textAt(path);
  return text !== undefined && hashOfText(text) !== written;
}

/**
 * Writes files into a folder. Where one cannot be written, the others are put back as they were, and folders that were
 * made for them are removed.
 * @throws Failure that names what could not be written
 */
export async function writeAll(folder: string, files: ReadonlyMap<string, string>): Promise<void> {
  const made = await makeFolder(folder);
  const before = new Map<string, string | undefined>();
  try {
    for (const [name, text] of files) {
      const path = join(folder, name);
      const old = await textAt(path);
      await writeAtomically(path, text);
      before.set(path, old);
    }
  } catch (error) {
    for (const [path, old] of before)
      await (old === undefined ? rm(path, { force: true }) : writeAtomically(path, old));
    if (made !== undefined) await rm(made, { recursive: true, force: true });
    throw error;
  }
}

/** @returns the outermost folder that had to be made */
async function makeFolder(folder: string): Promise<string | undefined> {
  try {
    const made = await mkdir(folder, { recursive: true });
    if (!(await stat(folder)).isDirectory()) throw new Failure(`${folder}: is no folder`);
    return made;
  } catch (error) {
    throw failureAt(folder, error);
  }
}
