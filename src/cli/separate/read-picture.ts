/** Pictures of files. */
import { readFile, stat } from 'node:fs/promises';
import type { Picture } from '../../separate/index';
import { decodePicture, MAX_BYTES } from '../../separator/file/decode';
import { UnreadablePicture } from '../../separator/file/header';
import { Failure, failureAt } from '../failure';

/**
 * @param shownPath what the file is called in messages
 * @throws Failure of one line where it is no picture, or one that cannot be read
 */
export async function readPicture(path: string, shownPath = path): Promise<Picture> {
  const bytes = await bytesOf(path, shownPath);
  try {
    return await decodePicture(bytes);
  } catch (error) {
    if (error instanceof UnreadablePicture) throw new Failure(`${shownPath}: ${error.message}`, { cause: error });
    throw error;
  }
}

async function bytesOf(path: string, shownPath: string): Promise<Uint8Array> {
  try {
    const stats = await stat(path);
    if (stats.isDirectory()) throw new Failure(`${shownPath}: is a folder; name the picture in it`);
    if (!stats.isFile()) throw new Failure(`${shownPath}: is no plain file and was not read`);
    if (stats.size > MAX_BYTES) throw new Failure(`${shownPath}: is larger than ${MAX_BYTES / 1e6} MB`);
    return await readFile(path);
  } catch (error) {
    throw failureAt(shownPath, error);
  }
}
