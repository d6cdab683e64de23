/**
 * Pixels at a seam, where two shapes of a drawing end in one line. A renderer blends each shape by its coverage c, one
 * after the other: over the ground g the lower shape's b gives (1 − c) g + c b, over that the upper one's a gives
 * (1 − c)² g + c (1 − c) b + c a. So b shines through along the seam though it is seen nowhere else there.
 * T. Porter, T. Duff, "Compositing digital images", SIGGRAPH 1984: the operator "over" takes edges for unrelated.
 */
import type { Rgb } from '../raster';

/** A third colour is believed that explains all but so much of the squared distance from the mixture of two. */
const EXPLAINED = 0.1;

/** Shares that are tried, before the best one is found between them. */
const TRIED = 8;
const ROUNDS = 3;

/**
 * @param share of the first of two colours in the mixture that comes nearest to a pixel
 * @returns its share where a third colour between them explains the pixel; undefined where none does
 */
export function shareAtSeam(
  pixel: Rgb,
  [first, second]: readonly [Rgb, Rgb],
  share: number,
  colours: readonly Rgb[],
): number | undefined {
  const firstAbove = shareOver(pixel, first, second, colours);
  const secondAbove = shareOver(pixel, second, first, colours);
  const isFirst = firstAbove.residual <= secondAbove.residual;
  const best = isFirst ? firstAbove : secondAbove;
  if (best.residual > EXPLAINED * residualOf(pixel, share, first, second, second)) return undefined;
  return isFirst ? best.share : 1 - best.share;
}

/** The share of `upper` over `ground` with which some third colour between them comes nearest to a pixel. */
function shareOver(pixel: Rgb, upper: Rgb, ground: Rgb, colours: readonly Rgb[]): { share: number; residual: number } {
  let [best, least] = [1, Infinity];
  const attempt = (share: number, lower: Rgb): void => {
    if (share < 0 || share > 1) return;
    const residual = residualOf(pixel, share, upper, lower, ground);
    if (residual >= least) return;
    least = residual;
    best = share;
  };
  for (const lower of colours) {
    if (lower === upper || lower === ground) continue;
    for (let i = 0; i <= TRIED; i += 1) attempt(i / TRIED, lower);
    for (let round = 1; round <= ROUNDS; round += 1) {
      const step = 1 / (TRIED * 3 ** round);
      const middle = best;
      for (const by of [-2, -1, 1, 2]) attempt(middle + by * step, lower);
    }
  }
  return { share: best, residual: least };
}

function residualOf(pixel: Rgb, share: number, upper: Rgb, lower: Rgb, ground: Rgb): number {
  const rest = 1 - share;
  let residual = 0;
  for (const channel of [0, 1, 2] as const) {
    const below = rest * ground[channel] + share * lower[channel];
    residual += (pixel[channel] - rest * below - share * upper[channel]) ** 2;
  }
  return residual;
}
