/** Which colours a picture is separated into. */
import { defined } from '../../base/defined';
import type { Picture, Rgb } from '../raster';
import { clusterColours } from './clusters';
import { colourDifference, labOf } from './difference';
import { isOfEvenColours } from './even-blocks';
import { ALIKE, flatColours } from './flat-colours';
import { type Bin, histogramOf } from './histogram';
import { nearestOf, oklabOf } from './oklab';

export interface Palette {
  /** Those that were fixed come first. */
  readonly colours: readonly Rgb[];
  /** Whether the picture is drawn in flat colours: then its borders are sharp, and shades between two colours are mixtures. */
  readonly isDrawing: boolean;
  /** Mean CIEDE2000 between the picture's pixels and the nearest of the colours. */
  readonly difference: number;
}

/** What is found in a picture before anybody says how many colours there are to be. */
export interface ColourFacts {
  readonly histogram: readonly Bin[];
  /** Of a flat drawing. */
  readonly flat: readonly Bin[] | undefined;
  readonly isDrawing: boolean;
}

export function coloursIn(picture: Picture): ColourFacts {
  const histogram = histogramOf(picture);
  const flat = flatColours(picture);
  return { histogram, flat, isDrawing: flat !== undefined || isOfEvenColours(picture) };
}

/**
 * @param count of all colours together; fewer are given where the picture has fewer
 * @param fixed paints of the artist, which never move
 */
export function choosePalette(
  { histogram, flat, isDrawing }: ColourFacts,
  count: number,
  fixed: readonly Rgb[],
): Palette {
  const colours = flat ? ofFlatColours(flat, count, fixed) : clusterColours(histogram, count, fixed);
  const distinct = withoutRepeats(isDrawing && !flat ? snapped(colours, histogram, fixed.length) : colours);
  return { colours: distinct, isDrawing, difference: meanDifference(histogram, distinct) };
}

/** The drawing's own colours; where it has more than are wanted, of those that look alike the commonest. */
function ofFlatColours(flat: readonly Bin[], count: number, fixed: readonly Rgb[]): Rgb[] {
  const others = flat.filter(({ colour }) =>
    fixed.every((paint) => colourDifference(labOf(paint), labOf(colour)) > ALIKE),
  );
  if (fixed.length + others.length <= count) return [...fixed, ...others.map(({ colour }) => colour)];
  const centres = clusterColours(flat, count, fixed, true);
  return snapped(centres, flat, fixed.length);
}

/** Each colour as the commonest one of those that it stands for: means are colours that nobody used. */
function snapped(colours: readonly Rgb[], bins: readonly Bin[], fixed: number): Rgb[] {
  const places = colours.map(oklabOf);
  const commonest: (Bin | undefined)[] = colours.map(() => undefined);
  for (const bin of bins) {
    const nearest = nearestOf(places, oklabOf(bin.colour));
    if (bin.count > (commonest[nearest]?.count ?? 0)) commonest[nearest] = bin;
  }
  return colours.map((colour, i) => (i < fixed ? colour : (commonest[i]?.colour ?? colour)));
}

function withoutRepeats(colours: readonly Rgb[]): Rgb[] {
  return colours.filter((colour, i) => colours.findIndex((other) => String(other) === String(colour)) === i);
}

function meanDifference(histogram: readonly Bin[], colours: readonly Rgb[]): number {
  const places = colours.map(oklabOf);
  const labs = colours.map(labOf);
  let sum = 0;
  let all = 0;
  for (const { colour, count } of histogram) {
    const nearest = nearestOf(places, oklabOf(colour));
    sum += count * colourDifference(labOf(colour), defined(labs[nearest]));
    all += count;
  }
  return sum / all;
}
