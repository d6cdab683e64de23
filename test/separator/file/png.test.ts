import { describe, expect, it, it as test } from 'vitest';
import { PictureSource } from '../../../src/separate/index';
import { decodeAnyPng, decodePng } from '../../../src/separator/file/png';
import { madePng } from './made-png';

const [WIDTH, HEIGHT] = [13, 11];

/** The pixels of a picture, as red, green, blue, alpha. */
async function pixelsOf(bytes: Uint8Array): Promise<number[][]> {
  const { width, height, data } = await decodeAnyPng(bytes);
  expect([width, height]).toEqual([WIDTH, HEIGHT]);
  return Array.from({ length: width * height }, (_, at) => [...data.subarray(4 * at, 4 * at + 4)]);
}

function expected(colourAt: (x: number, y: number) => readonly number[]): number[][] {
  return Array.from({ length: WIDTH * HEIGHT }, (_, at) => [...colourAt(at % WIDTH, Math.floor(at / WIDTH))]);
}

const COLOURS = Array.from({ length: 256 }, (_, i) => [i, 255 - i, (7 * i) % 256] as const);

const DEPTHS = [1, 2, 4, 8, 16] as const;

describe.each([false, true])('PNG (interlaced: %s)', (isInterlaced) => {
  test.each(DEPTHS.filter((depth) => depth <= 8))('of a palette of %d bits', async (depth) => {
    const count = 2 ** depth;
    const numberAt = (x: number, y: number) => (3 * x + 5 * y) % count;
    const palette = COLOURS.slice(0, count);
    const kind = { depth, colourType: 3, isInterlaced, palette, transparency: [0, 128] } as const;
    const bytes = madePng(WIDTH, HEIGHT, kind, (x, y) => [numberAt(x, y)]);
    const alphas = [0, 128];
    expect(await pixelsOf(bytes)).toEqual(
      expected((x, y) => [...palette[numberAt(x, y)]!, alphas[numberAt(x, y)] ?? 255]),
    );
  });

  test.each(DEPTHS)('of grey of %d bits', async (depth) => {
    const most = 2 ** depth - 1;
    const sampleAt = (x: number, y: number) => (x + 29 * y) % (most + 1);
    const bytes = madePng(WIDTH, HEIGHT, { depth, colourType: 0, isInterlaced }, (x, y) => [sampleAt(x, y)]);
    expect(await pixelsOf(bytes)).toEqual(
      expected((x, y) => {
        const grey = Math.round((255 * sampleAt(x, y)) / most);
        return [grey, grey, grey, 255];
      }),
    );
  });

  test.each([8, 16] as const)('of colour of %d bits, without and with alpha', async (depth) => {
    const scale = depth === 16 ? 257 : 1;
    const colourAt = (x: number, y: number) => [20 * x, 23 * y, (x * y) % 256];
    const plain = madePng(WIDTH, HEIGHT, { depth, colourType: 2, isInterlaced }, (x, y) =>
      colourAt(x, y).map((value) => scale * value),
    );
    expect(await pixelsOf(plain)).toEqual(expected((x, y) => [...colourAt(x, y), 255]));
    const clear = madePng(WIDTH, HEIGHT, { depth, colourType: 6, isInterlaced }, (x, y) =>
      [...colourAt(x, y), 10 * x].map((value) => scale * value),
    );
    expect(await pixelsOf(clear)).toEqual(expected((x, y) => [...colourAt(x, y), 10 * x]));
  });
});

describe('PNG', () => {
  it('of colours of which one is clear', async () => {
    const kind = { depth: 8, colourType: 2, transparency: [0, 9, 0, 8, 0, 7] } as const;
    const bytes = madePng(WIDTH, HEIGHT, kind, (x) => (x < 5 ? [9, 8, 7] : [9, 8, 6]));
    expect(await pixelsOf(bytes)).toEqual(expected((x) => (x < 5 ? [9, 8, 7, 0] : [9, 8, 6, 255])));
  });

  it('of grey with alpha', async () => {
    const bytes = madePng(WIDTH, HEIGHT, { depth: 8, colourType: 4 }, (x, y) => [10 * x, 20 * y]);
    expect(await pixelsOf(bytes)).toEqual(expected((x, y) => [10 * x, 10 * x, 10 * x, 20 * y]));
  });

  it('that is half clear lets the ground through', () => {
    const kind = { depth: 8, colourType: 6 } as const;
    const bytes = madePng(WIDTH, HEIGHT, kind, (x) => [200, 100, 0, [0, 102, 255][x % 3]!]);
    const { data } = new PictureSource(decodePng(bytes)).over('#00c832').at(WIDTH);
    // 0.4 of the colour and 0.6 of the ground.
    expect([...data.subarray(0, 12)]).toEqual([0, 200, 50, 255, 80, 160, 30, 255, 200, 100, 0, 255]);
  });

  it('interlaced and of bits is refused where its pixels are damaged', async () => {
    const kind = { depth: 2, colourType: 0, isInterlaced: true } as const;
    const whole = madePng(WIDTH, HEIGHT, kind, (x, y) => [(x + y) % 4]);
    const pixels = Buffer.from(whole).indexOf('IDAT') + 4;
    for (const at of [pixels, pixels + 4]) {
      const damaged = whole.slice();
      damaged[at]! ^= 0xff;
      await expect(decodeAnyPng(damaged)).rejects.toThrow();
    }
    await expect(decodeAnyPng(whole.subarray(0, pixels + 6))).rejects.toThrow();
  });
});
