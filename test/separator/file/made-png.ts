/** PNG files made by hand, of any depth and kind, whole or interlaced (W3C, "Portable Network Graphics (PNG) Specification", third edition). */
import { crc32, deflateSync } from 'node:zlib';

export interface PngKind {
  readonly depth: 1 | 2 | 4 | 8 | 16;
  /** 0 grey, 2 colour, 3 palette, 4 grey with alpha, 6 colour with alpha. */
  readonly colourType: 0 | 2 | 3 | 4 | 6;
  readonly isInterlaced?: boolean;
  readonly palette?: readonly (readonly [number, number, number])[];
  /** The bytes of the chunk tRNS. */
  readonly transparency?: readonly number[];
}

/** Where and how far apart the pixels of the seven passes lie: x, y, step across, step down (section 8.1). */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** @param samplesAt the channels of a pixel, each up to 2 ** depth - 1 */
export function madePng(
  width: number,
  height: number,
  kind: PngKind,
  samplesAt: (x: number, y: number) => readonly number[],
): Uint8Array {
  const { depth, colourType, isInterlaced = false, palette, transparency } = kind;
  const passes = isInterlaced ? PASSES : ([[0, 0, 1, 1]] as const);
  const rows = passes.flatMap(([left, top, across, down]) => {
    const columns = steps(left, width, across);
    if (columns.length === 0) return [];
    return steps(top, height, down).flatMap((y) => [
      0,
      ...packed(
        columns.flatMap((x) => samplesAt(x, y)),
        depth,
      ),
    ]);
  });
  return Uint8Array.from([
    ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    ...chunk('IHDR', [...long(width), ...long(height), depth, colourType, 0, 0, isInterlaced ? 1 : 0]),
    ...(palette ? chunk('PLTE', palette.flat()) : []),
    ...(transparency ? chunk('tRNS', transparency) : []),
    ...chunk('IDAT', [...deflateSync(Uint8Array.from(rows))]),
    ...chunk('IEND', []),
  ]);
}

function steps(from: number, to: number, by: number): number[] {
  const places: number[] = [];
  for (let at = from; at < to; at += by) places.push(at);
  return places;
}

function packed(samples: readonly number[], depth: number): number[] {
  const bits = samples.map((sample) => sample.toString(2).padStart(depth, '0')).join('');
  return (bits.padEnd(8 * Math.ceil(bits.length / 8), '0').match(/.{8}/g) ?? []).map((each) =>
    Number.parseInt(each, 2),
  );
}

function chunk(type: string, data: readonly number[]): number[] {
  const body = [...Buffer.from(type), ...data];
  return [...long(data.length), ...body, ...long(crc32(Uint8Array.from(body)))];
}

function long(value: number): number[] {
  return [(value >>> 24) & 255, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
}
