/** PNG pictures of any depth, as red, green, blue and alpha of eight bits. */
import { type DecodedPng, decode } from 'fast-png';
import type { Picture } from '../../separate/index';
import type { PictureHeader } from './header';
import { decodeInterlaced, SIGNATURE } from './interlaced';

/** Channels by colour type: grey, colour, palette, grey with alpha, colour with alpha. */
const CHANNELS: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

export function isPng(bytes: Uint8Array): boolean {
  return SIGNATURE.every((byte, i) => bytes[i] === byte);
}

/** Of the chunk IHDR, which comes first. */
export function pngHeader(bytes: Uint8Array): PictureHeader | 'damaged' {
  if (bytes.length < 33) return 'damaged';
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const [width, height, depth] = [view.getUint32(16), view.getUint32(20), view.getUint8(24)];
  const channels = CHANNELS[view.getUint8(25)];
  if (channels === undefined || ![1, 2, 4, 8, 16].includes(depth)) return 'damaged';
  // What was inflated, the samples made of it, and the pixels that we make of those.
  const bytesPerSample = depth === 16 ? 2 : 1;
  const bytesPerPixel = 2 * channels * bytesPerSample + (isInterlacedInBits(bytes) ? 2 : 1) * 4;
  return { width, height, bytesPerPixel };
}

/** The one kind that the decoder does not know. */
function isInterlacedInBits(bytes: Uint8Array): boolean {
  return (bytes[24] ?? 0) < 8 && bytes[28] === 1;
}

/** @throws Error where it is damaged */
export async function decodeAnyPng(bytes: Uint8Array): Promise<Picture> {
  return isInterlacedInBits(bytes) ? decodeInterlaced(bytes, (pass) => decodePng(pass, false)) : decodePng(bytes);
}

/** @throws Error where it is damaged */
export function decodePng(bytes: Uint8Array, checkCrc = true): Picture {
  const png = decode(bytes, { checkCrc });
  const { width, height, depth, channels, transparency } = png;
  if (depth === 8 && channels === 4) return { width, height, data: Uint8ClampedArray.from(png.data) };
  const data = new Uint8ClampedArray(4 * width * height);
  if (depth === 8 && channels === 3 && transparency === undefined) fromOpaque(png, data);
  else if (png.palette) fromPalette(png, png.palette, data);
  else fromChannels(png, data);
  return { width, height, data };
}

/** The n-th sample as it is written. */
function samplesOf({ data, depth, width, channels }: DecodedPng): (number: number) => number {
  if (depth >= 8) return (number) => data[number] ?? 0;
  const inRow = width * channels;
  const bytesInRow = Math.ceil((inRow * depth) / 8);
  const mask = (1 << depth) - 1;
  return (number) => {
    const row = Math.floor(number / inRow);
    const bit = (number - row * inRow) * depth;
    return ((data[row * bytesInRow + (bit >> 3)] ?? 0) >> (8 - depth - (bit & 7))) & mask;
  };
}

function fromOpaque({ data }: DecodedPng, into: Uint8ClampedArray): void {
  for (let from = 0, to = 0; to < into.length; from += 3, to += 4) {
    into[to] = data[from] ?? 0;
    into[to + 1] = data[from + 1] ?? 0;
    into[to + 2] = data[from + 2] ?? 0;
    into[to + 3] = 255;
  }
}

/** A number beyond the palette's end is black. */
function fromPalette(png: DecodedPng, palette: readonly (readonly number[])[], into: Uint8ClampedArray): void {
  const colours = new Uint8Array(4 * 256);
  for (let number = 0; number < 256; number += 1) {
    const [red = 0, green = 0, blue = 0, alpha = 255] = palette[number] ?? [];
    colours.set([red, green, blue, alpha], 4 * number);
  }
  // In the order of their bytes, whatever that is.
  const values = new Uint32Array(colours.buffer);
  const pixels = new Uint32Array(into.buffer);
  const sample = samplesOf(png);
  for (let pixel = 0; pixel < pixels.length; pixel += 1) pixels[pixel] = values[sample(pixel)] ?? 0;
}

function fromChannels(png: DecodedPng, into: Uint8ClampedArray): void {
  const { width, height, depth, channels, transparency } = png;
  const sample = samplesOf(png);
  const factor = 255 / (2 ** depth - 1);
  const colours = channels >= 3 ? 3 : 1;
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const at = channels * pixel;
    let isKeyed = transparency !== undefined && transparency.length >= colours;
    for (let channel = 0; channel < 3; channel += 1) {
      const own = Math.min(channel, colours - 1);
      const value = sample(at + own);
      into[4 * pixel + channel] = value * factor;
      if (isKeyed && transparency?.[own] !== value) isKeyed = false;
    }
    into[4 * pixel + 3] = isKeyed ? 0 : channels > colours ? sample(at + colours) * factor : 255;
  }
}
