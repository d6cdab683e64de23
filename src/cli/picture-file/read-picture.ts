/** Pictures of files: what they are by their first bytes, how large they are before a pixel is decoded, then their pixels. */
import { readFile, stat } from 'node:fs/promises';
import type { Picture } from '../../separate/index';
import { Failure, failureAt } from '../failure';
import { decodeJpeg, isJpeg, jpegHeader } from './jpeg';
import { decodePng, isPng, pngHeader } from './png';

const MAX_BYTES = 100e6;
const MAX_SIDE = 20_000;

/** Pixels, with all that stands beside them while they are decoded, take no more bytes than this. */
const MAX_DECODED = 330e6;

/**
 * @param shownPath what the file is called in messages
 * @throws Failure of one line where it is no picture, or one that cannot be read
 */
export async function readPicture(path: string, shownPath = path): Promise<Picture> {
  const bytes = await bytesOf(path, shownPath);
  const fail = (reason: string, cause?: unknown): Failure => new Failure(`${shownPath}: ${reason}`, { cause });
  const header = isPng(bytes) ? pngHeader(bytes) : isJpeg(bytes) ? jpegHeader(bytes) : undefined;
  if (header === undefined) throw fail(unknownKind(bytes));
  if (header === 'damaged') throw fail('the picture is damaged or cut short');
  const { width, height, bytesPerPixel } = header;
  if (width < 2 || height < 2) throw fail(`a picture of ${width} × ${height} pixels has nothing to separate`);
  if (width > MAX_SIDE || height > MAX_SIDE || width * height * bytesPerPixel > MAX_DECODED) {
    const most = Math.floor(MAX_DECODED / bytesPerPixel / 1e6);
    throw fail(`${width} × ${height} pixels are too many; make it smaller than ${most} megapixels`);
  }
  try {
    return isPng(bytes) ? decodePng(bytes) : await decodeJpeg(bytes);
  } catch (error) {
    throw fail('the picture is damaged or cut short', error);
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

/** Other kinds by how they begin, as far as people have them. */
const OTHER_KINDS: readonly (readonly [kind: string, at: number, bytes: string])[] = [
  ['WebP', 8, 'WEBP'],
  ['HEIC', 4, 'ftyp'],
  ['GIF', 0, 'GIF8'],
  ['TIFF', 0, 'II*\0'],
  ['TIFF', 0, 'MM\0*'],
  ['BMP', 0, 'BM'],
  ['SVG', 0, '<'],
];

function unknownKind(bytes: Uint8Array): string {
  if (bytes.length === 0) return 'is empty';
  const text = String.fromCharCode(...bytes.subarray(0, 16));
  const kind = OTHER_KINDS.find(([, at, begins]) => text.startsWith(begins, at))?.[0];
  return kind === undefined
    ? 'is neither a PNG nor a JPEG picture'
    : `is a ${kind} picture; save it as PNG or JPEG first`;
}
