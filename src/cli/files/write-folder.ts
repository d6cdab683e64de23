/** Writes several files into a folder, all of them or none. */
import { lstat, mkdir, mkdtemp, open, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { Failure, failureAt } from '../failure';
import { failingAtLimit } from './write-output';

/** So much of a file is looked at to tell whose it is. */
const HEAD = 512;

/**
 * All files are written whole into a folder beside the others before the first one takes its place.
 * @param files the bytes by name
 * @param isOurs whether a file that is there, by its first characters, may be replaced
 * @throws Failure that names what was in the way; nothing has changed then
 */
export async function writeFolder(
  folder: string,
  files: ReadonlyMap<string, string | Buffer>,
  isOurs: (start: string) => boolean,
): Promise<void> {
  const made = await makeFolder(folder);
  try {
    for (const name of files.keys()) await refuseOthers(join(folder, name), isOurs);
    await failingAtLimit(() => writeAll(folder, files));
  } catch (error) {
    if (made !== undefined) await rm(made, { recursive: true, force: true });
    throw error;
  }
}

/**
 * Makes a folder and those above it; gives the outermost that had to be made. One after the other: asked for all at once, Node.js never ends where a file
 * system such as /proc refuses.
 * @throws Failure that names the folder
 */
export async function makeFolder(folder: string): Promise<string | undefined> {
  const absent: string[] = [];
  for (let path = resolve(folder); !(await isFolder(path)); path = dirname(path)) absent.push(path);
  try {
    for (const path of [...absent].reverse()) await mkdir(path);
  } catch (error) {
    throw failureAt(folder, error);
  }
  return absent.at(-1);
}

/** @throws Failure where something else is in its place */
async function isFolder(path: string): Promise<boolean> {
  try {
    if ((await stat(path)).isDirectory()) return true;
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return false;
    if (code !== 'ENOTDIR') throw failureAt(path, error);
  }
  throw new Failure(`${path}: is no folder`);
}

/** A drawing of the artist's, a link that may lead to one, or a folder stays what it is. */
async function refuseOthers(path: string, isOurs: (start: string) => boolean): Promise<void> {
  const found = await lstat(path).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return undefined;
    throw failureAt(path, error);
  });
  if (!found) return;
  if (found.isSymbolicLink()) throw new Failure(`${path}: is a symbolic link, which is not followed`);
  if (!found.isFile()) throw new Failure(`${path}: is in the way, and no file`);
  if (!isOurs(await headOf(path)))
    throw new Failure(`${path}: is there, and no file of this command; choose another folder`);
}

async function headOf(path: string): Promise<string> {
  try {
    const file = await open(path);
    try {
      const { buffer, bytesRead } = await file.read({ buffer: Buffer.alloc(HEAD), length: HEAD, position: 0 });
      return buffer.toString('latin1', 0, bytesRead);
    } finally {
      await file.close();
    }
  } catch (error) {
    throw failureAt(path, error);
  }
}

async function writeAll(folder: string, files: ReadonlyMap<string, string | Buffer>): Promise<void> {
  let staged: string | undefined;
  try {
    staged = await mkdtemp(join(folder, '.unfinished-'));
    for (const [name, bytes] of files) await writeFile(join(staged, name), bytes);
    for (const name of files.keys()) await rename(join(staged, name), join(folder, name));
  } catch (error) {
    throw failureAt(folder, error);
  } finally {
    if (staged !== undefined) await rm(staged, { recursive: true, force: true });
  }
}
