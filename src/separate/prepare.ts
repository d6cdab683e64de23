/** From a picture to pixels of the size that the sheets need, and to its palette. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import { rgbOf } from './colour/hex';
import { choosePalette, type Palette } from './colour/palette';
import { type Dials, NothingToSeparate } from './dials';
import type { Picture, Rgb } from './raster';
import { resized } from './shrink';

export interface Prepared {
  /** Opaque, with as many pixels as the sheets need. */
  readonly picture: Picture;
  /** mm of a pixel. */
  readonly pitch: number;
  readonly palette: Palette;
  /** mm: nothing finer is cut or left standing. */
  readonly detail: number;
  /** Labels of the palette that are left unpainted. */
  readonly unpainted: ReadonlySet<number>;
}

/** A pixel is no larger than this part of the least detail, where the picture has so many. */
const PIXELS_OF_DETAIL = 10;

/** Small pictures are enlarged until a detail has so many pixels, by no more than four times. */
const LEAST_OF_DETAIL = 4;
const MOST_ENLARGED = 4;
const ENLARGED_TO = 1600;

/** Of all pixels: a picture with more clear ones is meant to show the ground. */
const MEANT_CLEAR = 1e-3;

/** Photos have no detail that was meant: what is half as coarse again as it must be looks like a stencil. */
const COARSER = 1.5;

const PAPER = '#ffffff';

/**
 * @param across how many pixels are enough, for an answer that is rough and soon there
 * @throws NothingToSeparate where there is no picture
 */
export function prepare(picture: Picture, dials: Dials, across = Infinity): Prepared {
  const clear = shareOfClear(picture);
  if (clear === 1) throw new NothingToSeparate('is clear all over: there is nothing to paint');
  const ground = dials.ground ?? (clear > MEANT_CLEAR ? PAPER : undefined);
  const opaque = clear > 0 ? overGround(picture, rgbOf(ground ?? PAPER)) : picture;
  const paints = dials.paints.map(rgbOf);
  const bare = [ground, ...dials.leaveOut].filter((each) => typeof each === 'string').map(rgbOf);
  const palette = choosePalette(opaque, Math.max(dials.colours, paints.length) + bare.length, [...paints, ...bare]);
  const unpainted = new Set(bare.map((_, place) => paints.length + place));
  const detail = dials.detail ?? Math.max(dials.bridge, dials.opening) * (palette.isDrawing ? 1 : COARSER);
  const pixels = Math.min(across, pixelsFor(picture.width, dials.width / detail));
  return { picture: resized(opaque, pixels), pitch: dials.width / pixels, palette, unpainted, detail };
}

/** @param details how many of the least details there are side by side */
function pixelsFor(width: number, details: number): number {
  const enough = Math.ceil(PIXELS_OF_DETAIL * details);
  const least = Math.ceil(LEAST_OF_DETAIL * details);
  if (width >= least) return Math.min(width, enough);
  return Math.max(width, Math.min(least, MOST_ENLARGED * width, ENLARGED_TO));
}

/** 0..1; pixels that are more clear than not. */
function shareOfClear({ data }: Picture): number {
  let [clear, some] = [0, 0];
  for (let at = 3; at < data.length; at += 4) {
    const alpha = defined(data[at]);
    if (alpha < 128) clear += 1;
    if (alpha < 255) some += 1;
  }
  return clear === 0 && some > 0 ? Number.EPSILON : clear / (data.length / 4);
}

function overGround({ width, height, data }: Picture, ground: Rgb): Picture {
  const into = new Uint8ClampedArray(data.length);
  for (let at = 0; at < data.length; at += 4) {
    if (at % (4 * width) === 0) checkpoint(width);
    const alpha = defined(data[at + 3]) / 255;
    for (const channel of [0, 1, 2] as const) {
      into[at + channel] = alpha * defined(data[at + channel]) + (1 - alpha) * ground[channel];
    }
    into[at + 3] = 255;
  }
  return { width, height, data: into };
}
