/** Pixels as mixtures of two colours. */
import { defined } from '../../base/defined';
import type { Picture, Rgb } from '../raster';

/** The best mixture found for one pixel. */
export interface Mixture {
  first: number;
  second: number;
  /** Of the first colour, 0..1. */
  share: number;
  /** How far the pixel is from the mixture, in steps of the channels, squared. */
  residual: number;
}

export function newMixture(): Mixture {
  return { first: 0, second: 0, share: 1, residual: Infinity };
}

/**
 * The pair of colours of which a mixture comes nearest to the pixel. Renderers mix the values of sRGB as they stand.
 * @param own a label that must be one of the pair, or -1
 */
export function mix(
  data: Picture['data'],
  at: number,
  colours: readonly Rgb[],
  near: readonly number[],
  own: number,
  into: Mixture,
): void {
  into.first = into.second = defined(near[0]);
  into.share = 1;
  into.residual = Infinity;
  for (let i = 0; i < near.length; i += 1) {
    for (let j = i + 1; j < near.length; j += 1) {
      const first = defined(near[i]);
      const second = defined(near[j]);
      if (own >= 0 && first !== own && second !== own) continue;
      const base = defined(colours[second]);
      const towards = defined(colours[first]);
      const dr = towards[0] - base[0];
      const dg = towards[1] - base[1];
      const db = towards[2] - base[2];
      const pr = defined(data[at]) - base[0];
      const pg = defined(data[at + 1]) - base[1];
      const pb = defined(data[at + 2]) - base[2];
      const along = (pr * dr + pg * dg + pb * db) / (dr * dr + dg * dg + db * db || 1);
      const share = Math.max(0, Math.min(1, along));
      const residual = (pr - share * dr) ** 2 + (pg - share * dg) ** 2 + (pb - share * db) ** 2;
      if (residual >= into.residual - 1e-9) continue;
      into.first = first;
      into.second = second;
      into.share = share;
      into.residual = residual;
    }
  }
}
