/**
 * Where a print differs from the picture, each pixel of which was given the nearest of its paints; and how much of that the
 * clean-up does not account for. By pixels of a general renderer (@resvg/resvg-js) and of the picture; nothing of the clean-up
 * is used here.
 */
import { layersAsSvg, type Picture, PictureSource, type Separation } from '../../../src/separate/index';
import { nearestLabels } from '../../../src/separate/labels/nearest';
import type { Rgb } from '../../../src/separate/raster';
import { rendered } from '../../separate/pictures';
import { squaredDepths } from './pixels';

export interface BesidePicture {
  /** Of the picture, 0..1. */
  readonly differs: number;
  /** Of the picture: what lies in the middle of a disc of one colour that is wide enough, and has another one in the print. */
  readonly lost: number;
  /** What is lost of discs that are only a quarter wider than the least detail: beside necks that were widened. */
  readonly beside: number;
}

/** Pixels across at the most: a tenth of a millimetre at 148 mm. */
const FINE_ENOUGH = 1500;

/**
 * Of the least detail, and so many times what curves may stray besides: discs that are as wide, of one colour in the picture, keep it
 * in the middle. The clean-up itself takes what discs of the least detail do not cover; but a neck is widened by such discs
 * along its middle, which reach as far beyond its edge.
 */
const KEPT = 2;
const STRAYS = 2;

/** Of the least detail: what is wider and still changes is told. */
const TOLD = 1.25;

/** The print before bridges. */
export function besidePicture(separation: Separation, picture: Picture): BesidePicture {
  const { width, detail, follow } = separation;
  const paints = separation.layers.map(({ paint }) => paint);
  const { text } = layersAsSvg(separation);
  const widths = [KEPT, TOLD].map((times) => times * detail + STRAYS * follow);
  const { differs, lost } = besideQuantised(text, picture, paints, { width, widths });
  const [kept = NaN, beside = NaN] = lost;
  return { differs, lost: kept, beside };
}

/**
 * @param svg the print
 * @param width mm of the print
 * @param widths mm: discs of one colour of each of these are looked at; the frame is an edge
 * @returns what differs, and of that what lies in the middle of such discs, for each width
 */
function besideQuantised(
  svg: string,
  picture: Picture,
  paints: readonly string[],
  { width, widths }: { readonly width: number; readonly widths: readonly number[] },
): { readonly differs: number; readonly lost: readonly number[] } {
  const print = rendered(svg, Math.min(picture.width, FINE_ENOUGH), true);
  const source = new PictureSource(picture);
  const colours = paints.map((paint) => [1, 3, 5].map((at) => Number.parseInt(paint.slice(at, at + 2), 16)));
  const { labels } = nearestLabels(
    source.over(source.groundOf(undefined)).at(print.width),
    colours as unknown as Rgb[],
  );
  const radii = widths.map((wide) => (wide / 2 / width) * print.width);
  const lost = radii.map(() => 0);
  let differs = 0;
  colours.forEach((colour, label) => {
    const isIn = (at: number): boolean => labels[at] === label;
    const depth = squaredDepths({ width: print.width, height: print.height, on: labels }, isIn);
    for (let at = 0; at < labels.length; at += 1) {
      if (!isIn(at) || [0, 1, 2].every((channel) => print.data[4 * at + channel] === colour[channel])) continue;
      differs += 1;
      const [x, y] = [at % print.width, Math.floor(at / print.width)];
      const frame = Math.min(x + 1, print.width - x, y + 1, print.height - y);
      const clear = Math.min(frame, Math.sqrt(depth[at]!)) - 0.5;
      radii.forEach((radius, of) => {
        if (clear >= radius) lost[of]! += 1;
      });
    }
  });
  return { differs: differs / labels.length, lost: lost.map((count) => count / labels.length) };
}
