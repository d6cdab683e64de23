/** A picture that is separated more than once: what is found in it whatever the artist says is found only once. */
import { checkpoint } from '../base/checkpoint';
import { defined } from '../base/defined';
import { rgbOf } from './colour/hex';
import { type ColourFacts, choosePalette, coloursIn, type Palette } from './colour/palette';
import { NothingToSeparate } from './dials';
import type { Picture, Rgb } from './raster';
import { resized } from './shrink';

/** Of all pixels: a picture with more clear ones is meant to show the ground. */
const MEANT_CLEAR = 1e-3;

const PAPER = '#ffffff';

/** A rough answer and a full one in turns. */
const SIZES_KEPT = 2;
const PALETTES_KEPT = 16;

export class PictureSource {
  readonly picture: Picture;
  private readonly clear: number;
  private last: OpaquePicture | undefined;

  /** @throws NothingToSeparate where there is no picture */
  constructor(picture: Picture) {
    this.picture = picture;
    this.clear = shareOfClear(picture);
    if (this.clear === 1) throw new NothingToSeparate('is clear all over: there is nothing to paint');
  }

  /** What shows where the picture is clear, `#rrggbb`; undefined where nothing says that anything is left unpainted. */
  groundOf(stated: string | undefined): string | undefined {
    return stated ?? (this.clear > MEANT_CLEAR ? PAPER : undefined);
  }

  over(ground = PAPER): OpaquePicture {
    const key = this.clear > 0 ? ground : '';
    if (this.last?.ground !== key) {
      this.last = new OpaquePicture(key, key === '' ? this.picture : overGround(this.picture, rgbOf(ground)));
    }
    return this.last;
  }
}

/** A picture without clear pixels. */
export class OpaquePicture {
  readonly ground: string;
  private readonly picture: Picture;
  private facts: ColourFacts | undefined;
  private readonly sizes = new Map<number, Picture>();
  private readonly palettes = new Map<string, Palette>();

  constructor(ground: string, picture: Picture) {
    this.ground = ground;
    this.picture = picture;
  }

  private get colours(): ColourFacts {
    this.facts ??= coloursIn(this.picture);
    return this.facts;
  }

  /** As `choosePalette` gives it; the last few are remembered, for most dials say nothing of colours. */
  palette(count: number, fixed: readonly Rgb[]): Palette {
    const key = `${count} ${fixed.join(' ')}`;
    const known = this.palettes.get(key);
    if (known) return known;
    const made = choosePalette(this.colours, count, fixed);
    keepFew(this.palettes, PALETTES_KEPT);
    this.palettes.set(key, made);
    return made;
  }

  /** @param across pixels */
  at(across: number): Picture {
    const known = this.sizes.get(across);
    if (known) return known;
    const made = resized(this.picture, across);
    keepFew(this.sizes, SIZES_KEPT);
    this.sizes.set(across, made);
    return made;
  }
}

/** Leaves room for one more of so many. */
function keepFew(map: Map<unknown, unknown>, most: number): void {
  for (const key of [...map.keys()].slice(0, Math.max(0, map.size + 1 - most))) map.delete(key);
}

/** 0..1; pixels that are more clear than not. */
function shareOfClear({ data }: Picture): number {
  let [clear, some] = [0, 0];
  for (let at = 3; at < data.length; at += 4) {
    const alpha = defined(data[at]);
    if (alpha === 255) continue;
    some += 1;
    if (alpha < 128) clear += 1;
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
