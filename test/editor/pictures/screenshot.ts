/** Screenshots for the pages: of 256 colours, a third of the size of what the browser writes, which every user would download. */
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

/** @param file within `media/` */
export async function savePicture(page: Page, file: string): Promise<void> {
  await writeFile(path.join(media, file), withPalette(await page.screenshot()));
}

/** @param png opaque, as screenshots are */
export function withPalette(png: Uint8Array): Uint8Array {
  const { data, width, height } = pixelsOf(png);
  const palette = quantize(data, 256);
  return encode({ width, height, depth: 8, channels: 1, data: applyPalette(data, palette), palette });
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
