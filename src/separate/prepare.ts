/** From a picture to pixels of the size that the sheets need, and to its palette. */
import { hexOf, rgbOf } from './colour/hex';
import { nearestOf, oklabOf } from './colour/oklab';
import type { Palette } from './colour/palette';
import type { Dials } from './dials';
import type { Picture, Rgb } from './raster';
import type { OpaquePicture, PictureSource } from './source';

export interface Prepared {
  /** Opaque, with as many pixels as the sheets need. */
  readonly picture: Picture;
  /** mm of a pixel. */
  readonly pitch: number;
  readonly palette: Palette;
  /** mm: nothing finer is cut or left standing. */
  readonly detail: number;
  /** mm: how far a curve may run beside the border that it stands for. */
  readonly follow: number;
  /** mm: so wide areas are in pixels, so that they are wide enough when curves have taken their part. */
  readonly clear: number;
  /** Labels of the palette that are left unpainted. */
  readonly unpainted: ReadonlySet<number>;
  /** Labels that are sprayed in the paint of another one. */
  readonly merged: ReadonlyMap<number, number>;
}

/** A pixel is no larger than this part of the least detail, where the picture has so many. */
const PIXELS_OF_DETAIL = 10;

/**
 * Small pictures are enlarged until a detail has so many pixels, by no more than four times. Photos are smooth, and have no
 * soft edges that tell where between two pixels a border runs.
 */
const LEAST_OF_DETAIL = { drawing: 4, photo: 7 };
const MOST_ENLARGED = 4;
const ENLARGED_TO = 1600;

/** Photos have no detail that was meant: what is half as coarse again as it must be looks like a stencil. */
const COARSER = 1.5;

/** Pixels that curves may run beside borders: drawings have clean ones, the pixels of photos are less to be believed. */
const FOLLOW_DRAWING = 0.5;
const FOLLOW_PHOTO = 1;

/** Pixels that a width may be less than it is counted. */
const UNSURE = 1;

/** @param across how many pixels are enough, for an answer that is rough and soon there */
export function prepare(source: PictureSource, dials: Dials, across = Infinity): Prepared {
  const ground = source.groundOf(dials.ground);
  const opaque = source.over(ground);
  const bare = [ground, ...dials.leaveOut].filter((each) => typeof each === 'string').map(rgbOf);
  const palette = paletteFor(opaque, dials, bare);
  const hexes = palette.colours.map(hexOf);
  const detail = dials.detail ?? Math.max(dials.bridge, dials.opening) * (palette.isDrawing ? 1 : COARSER);
  const full = pixelsFor(source.picture.width, dials.width / detail, palette.isDrawing);
  const pixels = Math.min(across, full);
  const pitch = dials.width / pixels;
  const inPixels = palette.isDrawing ? FOLLOW_DRAWING : FOLLOW_PHOTO;
  const least = Math.max(dials.bridge, dials.opening) + leeway(dials.follow, dials.width / full, inPixels);
  return {
    picture: opaque.at(pixels),
    pitch,
    follow: dials.follow ?? inPixels * pitch,
    clear: Math.max(detail, least),
    palette,
    unpainted: new Set(bare.map((colour) => hexes.indexOf(hexOf(colour)))),
    detail,
    merged: mergedLabels(palette.colours, dials.merged ?? []),
  };
}

/** What curves may take from a width at both its sides, and pixels. A rough answer takes as much as the full one. */
function leeway(follow: number | undefined, pitch: number, inPixels: number): number {
  return 2 * (follow ?? inPixels * pitch) + UNSURE * pitch;
}

/** Colours that are left unpainted, or sprayed as another one, are found like paints, and are no paints. */
function paletteFor(picture: OpaquePicture, dials: Dials, bare: readonly Rgb[]): Palette {
  const paints = dials.paints.map(rgbOf);
  const merged = (dials.merged ?? []).map(([from]) => rgbOf(from));
  const count = Math.max(dials.colours, paints.length) + bare.length + merged.length;
  return picture.palette(count, [...paints, ...bare, ...merged]);
}

function mergedLabels(
  colours: readonly Rgb[],
  merged: readonly (readonly [from: string, into: string])[],
): Map<number, number> {
  const hexes = colours.map(hexOf);
  const froms = new Set(merged.map(([from]) => hexOf(rgbOf(from))));
  // What is merged stands for none: it is no paint any more.
  const places = colours.map((colour, label) =>
    froms.has(hexes[label] ?? '') ? ([Infinity, 0, 0] as const) : oklabOf(colour),
  );
  return new Map(
    merged.map(([from, into]) => [hexes.indexOf(hexOf(rgbOf(from))), nearestOf(places, oklabOf(rgbOf(into)))]),
  );
}

/** @param details how many of the least details there are side by side */
function pixelsFor(width: number, details: number, isDrawing: boolean): number {
  const enough = Math.ceil(PIXELS_OF_DETAIL * details);
  const least = Math.ceil((isDrawing ? LEAST_OF_DETAIL.drawing : LEAST_OF_DETAIL.photo) * details);
  if (width >= least) return Math.min(width, enough);
  return Math.max(width, Math.min(least, MOST_ENLARGED * width, ENLARGED_TO));
}
