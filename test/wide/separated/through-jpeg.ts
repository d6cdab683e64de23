/** Pictures as they come back from JPEG files, written by two general encoders at quality 60. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import decode, { init as initDecoder } from '@jsquash/jpeg/decode.js';
import encode, { init as initEncoder } from '@jsquash/jpeg/encode.js';
import jpegJs from 'jpeg-js';
import type { Picture } from '../../../src/separate/index';

const QUALITY = 60;

const codec = (file: string): Promise<WebAssembly.Module> =>
  WebAssembly.compile(readFileSync(createRequire(import.meta.url).resolve(`@jsquash/jpeg/codec/${file}`)));

/** The codecs make one of these, which only pages have. */
class Pixels {
  readonly data: Picture['data'];
  readonly width: number;
  readonly height: number;
  readonly colorSpace = 'srgb';

  constructor(data: Picture['data'], width: number, height: number) {
    this.data = data;
    this.width = width;
    this.height = height;
  }
}

/** By mozjpeg as most programs write it, with one colour for 2 × 2 pixels (4:2:0), and read by the codec that reads artists' pictures. */
export async function throughMozjpeg({ width, height, data }: Picture): Promise<Picture> {
  Object.assign(globalThis, { ImageData: Pixels });
  await initEncoder((await codec('enc/mozjpeg_enc.wasm')) as never);
  await initDecoder((await codec('dec/mozjpeg_dec.wasm')) as never);
  const subsampled = { quality: QUALITY, auto_subsample: false, chroma_subsample: 2 };
  return decode(await encode(new Pixels(data, width, height) as never, subsampled));
}

/** By jpeg-js, which keeps the colour of each pixel (4:4:4) in coarser steps. */
export async function throughJpegJs({ width, height, data }: Picture): Promise<Picture> {
  const { data: bytes } = jpegJs.encode({ width, height, data: Buffer.from(data) }, QUALITY);
  return jpegJs.decode(bytes, { useTArray: true });
}
