/**
 * Interlaced PNG pictures of fewer than eight bits. The decoder does not know them, but each of their seven passes is a picture of its
 * own that it does (W3C, "Portable Network Graphics (PNG) Specification", third edition, 8.1). Samples are grey, or of a palette.
 */
import type { Picture } from '../../separate/index';

/** Where and how far apart the pixels of each pass lie: x, y, step across, step down. */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** Of a chunk: its length, its name, and the check sum behind its data. */
const CHUNK_BYTES = 12;
/** The first bytes of each file. */
export const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const HEADER_BYTES = 13;

/**
 * @param decodePass decodes a picture that is not interlaced, without looking at its check sums
 * @throws Error where it is damaged
 */
export async function decodeInterlaced(
  bytes: Uint8Array,
  decodePass: (bytes: Uint8Array) => Picture,
): Promise<Picture> {
  const { header, shared, pixels } = chunksOf(bytes);
  const view = new DataView(header.buffer, header.byteOffset);
  const [width, height, depth] = [view.getUint32(0), view.getUint32(4), view.getUint8(8)];
  const passes = PASSES.map(([x, y, across, down]) => {
    const [columns, rows] = [Math.ceil((width - x) / across), Math.ceil((height - y) / down)];
    return { x, y, across, down, columns, rows, size: rows * (1 + Math.ceil((columns * depth) / 8)) };
  }).filter(({ columns, rows }) => columns > 0 && rows > 0);
  const lines = await inflated(
    pixels,
    passes.reduce((sum, { size }) => sum + size, 0),
  );
  const into = new Uint32Array(width * height);
  let from = 0;
  for (const { x, y, across, down, columns, rows, size } of passes) {
    const data = await piped(new CompressionStream('deflate'), lines.subarray(from, from + size), Infinity);
    from += size;
    const pass = decodePass(pngOf(headerOf(header, columns, rows), shared, data));
    const colours = new Uint32Array(pass.data.slice().buffer);
    for (let row = 0; row < rows; row += 1) {
      for (let column = 0; column < columns; column += 1) {
        into[(y + row * down) * width + x + column * across] = colours[row * columns + column] ?? 0;
      }
    }
  }
  return { width, height, data: new Uint8ClampedArray(into.buffer) };
}

/** The data of IHDR, PLTE and tRNS as they stand, and the data of all IDAT. */
function chunksOf(bytes: Uint8Array): { header: Uint8Array; shared: Uint8Array[]; pixels: Uint8Array } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const shared: Uint8Array[] = [];
  const pixels: Uint8Array[] = [];
  for (let at = SIGNATURE.length; at + CHUNK_BYTES <= bytes.length; ) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const end = at + CHUNK_BYTES + length;
    if (end > bytes.length) throw new Error('A chunk is cut short.');
    if (name === 'PLTE' || name === 'tRNS') shared.push(bytes.subarray(at, end));
    if (name === 'IDAT') pixels.push(bytes.subarray(at + 8, at + 8 + length));
    at = end;
  }
  const start = SIGNATURE.length + 8;
  return { header: bytes.subarray(start, start + HEADER_BYTES), shared, pixels: joined(pixels) };
}

async function inflated(data: Uint8Array, size: number): Promise<Uint8Array> {
  const lines = await piped(new DecompressionStream('deflate'), data, size);
  if (lines.length < size) throw new Error('Pixels are missing.');
  return lines;
}

/** @param most bytes: more are not waited for */
async function piped(
  through: CompressionStream | DecompressionStream,
  data: Uint8Array,
  most: number,
): Promise<Uint8Array> {
  const reader = new Blob([Uint8Array.from(data)]).stream().pipeThrough(through).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  while (size < most) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    size += value.length;
  }
  await reader.cancel();
  return joined(parts);
}

function headerOf(header: Uint8Array, width: number, height: number): Uint8Array {
  const own = Uint8Array.from(header);
  const view = new DataView(own.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  own[HEADER_BYTES - 1] = 0;
  return own;
}

function pngOf(header: Uint8Array, shared: readonly Uint8Array[], data: Uint8Array): Uint8Array {
  return joined([
    Uint8Array.from(SIGNATURE),
    chunk('IHDR', header),
    ...shared,
    chunk('IDAT', data),
    chunk('IEND', new Uint8Array()),
  ]);
}

/** Without its check sum. */
function chunk(name: string, data: Uint8Array): Uint8Array {
  const made = new Uint8Array(CHUNK_BYTES + data.length);
  new DataView(made.buffer).setUint32(0, data.length);
  made.set(
    [...name].map((letter) => letter.charCodeAt(0)),
    4,
  );
  made.set(data, 8);
  return made;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
