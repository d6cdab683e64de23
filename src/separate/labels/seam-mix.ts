/**
 * Pixels at a seam, where two shapes of a drawing end in one line. A renderer blends each shape by its coverage c, one
 * after the other: over the ground g the lower shape's b gives (1 − c) g + c b, over that the upper one's a gives
 * (1 − c)² g + c (1 − c) b + c a. So b shines through along the seam though it is nowhere seen.
 * T. Porter, T. Duff, "Compositing digital images", SIGGRAPH 1984: the operator "over", which takes edges for unrelated.
 */
import { defined } from '../../base/defined';
import type { Rgb } from '../raster';

export interface SeamMix {
  /** Of the upper colour, 0..1. */
  share: number;
  /** Squared, in steps of the channels. */
  residual: number;
}

/** Shares that are tried, before the best one is found between them. */
const TRIED = 8;
const ROUNDS = 3;

/** The share of `upper` over `ground` with which some third colour between them comes nearest to a pixel. */
export function mixAtSeam(pixel: Rgb, upper: Rgb, ground: Rgb, colours: readonly Rgb[]): SeamMix {
  const best: SeamMix = { share: 1, residual: Infinity };
  for (const lower of colours) {
    if (lower === upper || lower === ground) continue;
    for (let i = 0; i <= TRIED; i += 1) tryShare(i / TRIED, pixel, upper, ground, lower, best);
    for (let round = 0, step = 1 / TRIED; round < ROUNDS; round += 1) {
      step /= 3;
      const { share } = best;
      for (const by of [-2, -1, 1, 2]) tryShare(share + by * step, pixel, upper, ground, lower, best);
    }
  }
  return best;
}

function tryShare(share: number, pixel: Rgb, upper: Rgb, ground: Rgb, lower: Rgb, best: SeamMix): void {
  if (share < 0 || share > 1) return;
  const rest = 1 - share;
  let residual = 0;
  for (const channel of [0, 1, 2] as const) {
    const below = rest * ground[channel] + share * lower[channel];
    residual += (defined(pixel[channel]) - rest * below - share * upper[channel]) ** 2;
  }
  if (residual >= best.residual) return;
  best.residual = residual;
  best.share = share;
}
