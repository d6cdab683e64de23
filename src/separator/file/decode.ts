/** Pictures by their bytes: what they are, how large they are before a pixel is decoded, then their pixels. */
import type { Picture } from '../../separate/index';
import { UnreadablePicture } from './header';
import { decodeJpeg, isJpeg, jpegHeader } from './jpeg';
import { decodeAnyPng, isPng, pngHeader } from './png';

/** Of a file. */
export const MAX_BYTES = 100e6;
const MAX_SIDE = 20_000;

/** Pixels, with all that stands beside them while they are decoded, take no more bytes than this. */
const MAX_DECODED = 330e6;

/** @throws UnreadablePicture */
export async function decodePicture(bytes: Uint8Array): Promise<Picture> {
  const header = isPng(bytes) ? pngHeader(bytes) : isJpeg(bytes) ? jpegHeader(bytes) : undefined;
  if (header === undefined) throw new UnreadablePicture(unknownKind(bytes));
  if (header === 'damaged') throw new UnreadablePicture('the picture is damaged or cut short');
  const { width, height, bytesPerPixel } = header;
  if (width < 2 || height < 2) {
    throw new UnreadablePicture(`a picture of ${width} × ${height} pixels has nothing to separate`);
  }
  if (width > MAX_SIDE || height > MAX_SIDE || width * height * bytesPerPixel > MAX_DECODED) {
    const most = Math.floor(MAX_DECODED / bytesPerPixel / 1e6);
    throw new UnreadablePicture(`${width} × ${height} pixels are too many; make it smaller than ${most} megapixels`);
  }
  try {
    return await (isPng(bytes) ? decodeAnyPng(bytes) : decodeJpeg(bytes));
  } catch (error) {
    throw new UnreadablePicture('the picture is damaged or cut short', { cause: error });
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
