/** Photos and drawings that are separated: skimage's, in Debian's python3-skimage (CC0), and those of @twemoji/svg (CC-BY 4.0). */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import jpeg from 'jpeg-js';
import type { Picture } from '../../../src/separate/index';
import { decodePng } from '../../../src/separator/file/png';
import { rendered } from '../../separate/pictures';

const PHOTOS = process.env.TOMBOLO_PHOTOS ?? '/usr/lib/python3/dist-packages/skimage/data';

export const photosAreThere = (): boolean => existsSync(path.join(PHOTOS, 'chelsea.png'));

const PHOTO_NAMES = [
  'astronaut.png',
  'camera.png',
  'chelsea.png',
  'clock_motion.png',
  'coffee.png',
  'coins.png',
  'hubble_deep_field.jpg',
  'ihc.png',
  'moon.png',
  'motorcycle_left.png',
  'retina.jpg',
  'rocket.jpg',
];

const DRAWING_CODES = {
  owl: '1f989',
  duck: '1f986',
  fox: '1f98a',
  turtle: '1f422',
  sunflower: '1f33b',
  fish: '1f41f',
  eagle: '1f985',
  dragon: '1f409',
  rocket: '1f680',
  mountain: '1f3d4',
  butterfly: '1f98b',
  snail: '1f40c',
} as const;

/** Pixels across. */
const DRAWN_AT = 1000;

export interface NamedPicture {
  readonly name: string;
  read(): Picture;
}

export const NAMED_PICTURES: readonly NamedPicture[] = [
  ...PHOTO_NAMES.map((name) => ({ name, read: () => photoOf(name) })),
  ...Object.entries(DRAWING_CODES).map(([name, code]) => ({
    name: `${name} (drawn)`,
    read: () => rendered(emoji(code), DRAWN_AT),
  })),
];

export function photoOf(name: string): Picture {
  const file = path.join(PHOTOS, name);
  const bytes = readFileSync(file);
  return file.endsWith('.png') ? decodePng(bytes) : jpeg.decode(bytes, { useTArray: true });
}

function emoji(code: string): string {
  return readFileSync(createRequire(import.meta.url).resolve(`@twemoji/svg/${code}.svg`), 'utf8');
}
