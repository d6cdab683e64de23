/** JPEG pictures, turned as their camera says. */

import wasm from '@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm';
import decodeWithWasm, { init } from '@jsquash/jpeg/decode.js';
import { orientation } from 'exifr/dist/mini.umd.js';
import jpegJs from 'jpeg-js';
import type { Picture } from '../../separate/index';
import type { PictureHeader } from './header';
import { turned } from './turn';

export function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
}

interface Frame extends PictureHeader {
  /** 1 for grey, 3 for colour, 4 for CMYK. */
  readonly components: number;
}

/** Of the frame header (ITU-T T.81, B.2.2), before which stand segments of stated length. */
export function jpegHeader(bytes: Uint8Array): Frame | 'damaged' {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  for (let at = 2; at + 9 < bytes.length; ) {
    if (view.getUint8(at) !== 0xff) return 'damaged';
    const marker = view.getUint8(at + 1);
    const isFill = marker === 0xff;
    if (isFrame(marker)) {
      const components = view.getUint8(at + 9);
      const [height, width] = [view.getUint16(at + 5), view.getUint16(at + 7)];
      return { width, height, components, bytesPerPixel: components === 4 ? CMYK_BYTES : WASM_BYTES };
    }
    at += isFill ? 1 : 2 + view.getUint16(at + 2);
  }
  return 'damaged';
}

/** Bytes for each pixel: the planes of the decoder in WebAssembly, its result and ours; those of the one for CMYK. */
const WASM_BYTES = 10;
const CMYK_BYTES = 24;

/** SOF0 to SOF15 without DHT, JPG and DAC, which stand among them. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

/** @throws Error where it is damaged */
export async function decodeJpeg(bytes: Uint8Array): Promise<Picture> {
  if (!isWhole(bytes)) throw new Error('The end of the picture is missing.');
  const header = jpegHeader(bytes);
  const isCmyk = header !== 'damaged' && header.components === 4;
  const picture = isCmyk ? withJpegJs(bytes) : await withWasm(bytes);
  return turned(picture, await orientationOf(bytes));
}

/** The decoder takes what is cut short for whole: only the marker at the end tells. Cameras may write on behind it. */
function isWhole(bytes: Uint8Array): boolean {
  for (let at = bytes.length - 2; at >= 0; at -= 1) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  return false;
}

async function orientationOf(bytes: Uint8Array): Promise<number> {
  try {
    return (await orientation(bytes)) ?? 1;
  } catch {
    return 1;
  }
}

async function withWasm(bytes: Uint8Array): Promise<Picture> {
  // The decoder makes one of these, which only pages have.
  const global = globalThis as { ImageData?: unknown };
  global.ImageData ??= class {
    readonly data: Uint8ClampedArray;
    readonly width: number;
    readonly height: number;

    constructor(data: Uint8ClampedArray, width: number, height: number) {
      this.data = data;
      this.width = width;
      this.height = height;
    }
  };
  await init((await WebAssembly.compile(wasm)) as never);
  return decodeWithWasm(Uint8Array.from(bytes).buffer);
}

function withJpegJs(bytes: Uint8Array): Picture {
  return jpegJs.decode(bytes, { useTArray: true, maxResolutionInMP: 40, maxMemoryUsageInMB: 400 });
}
