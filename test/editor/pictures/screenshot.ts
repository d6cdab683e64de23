/** Screenshots for the pages: of few colours, a third of the size of what the browser writes or less, which every user would download. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { decode, encode } from 'fast-png';
import { applyPalette, quantize } from 'gifenc';
import type { Page } from 'playwright-core';

const media = path.resolve(__dirname, '../../../media');

/** Four bytes a pixel: red, green, blue and how opaque. */
export interface Pixels {
  readonly data: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** A part of the window, in pixels of the page. */
export interface Part {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Of what the extension's package brings along: text and flat areas look the same in them. */
const FEW_COLOURS = 64;

/** @param file within `media/` */
export async function savePicture(page: Page, file: string): Promise<void> {
  await writeFile(path.join(media, file), withPalette(await page.screenshot()));
}

/** A small one for the extension's package. @param file within `media/` */
export async function saveSmallPicture(page: Page, file: string, part: Part): Promise<void> {
  await writeFile(path.join(media, file), withPalette(await page.screenshot({ clip: part }), FEW_COLOURS));
}

/** @param png opaque, as screenshots are */
export function withPalette(png: Uint8Array, colours = 256): Uint8Array {
  const { data, width, height } = pixelsOf(png);
  const palette = quantize(data, colours);
  const image = { width, height, depth: 8, channels: 1, data: applyPalette(data, palette), palette } as const;
  return encode(image, { zlib: { level: 9 } });
}

/** @param part within the pixels */
export function partOf({ data, width }: Pixels, part: Part): Pixels {
  const rows = Array.from({ length: part.height }, (_, y) => {
    const start = 4 * ((part.y + y) * width + part.x);
    return data.subarray(start, start + 4 * part.width);
  });
  return { data: Uint8Array.from(rows.flatMap((row) => [...row])), width: part.width, height: part.height };
}

export function pixelsOf(png: Uint8Array): Pixels {
  const { data, channels, width, height } = decode(png);
  if (channels === 4) return { data: Uint8Array.from(data), width, height };
  const filled = new Uint8Array(width * height * 4).fill(255);
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    for (let part = 0; part < 3; part += 1) filled[4 * pixel + part] = data[3 * pixel + part] ?? 0;
  }
  return { data: filled, width, height };
}
