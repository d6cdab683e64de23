/**
 * Rims of anti-aliased drawings. A pixel on the border of two colours is a mixture of both, and often looks like a
 * third one (a grey rim between black and white). So only where a label fills a block of 2 × 2 pixels it is believed;
 * every other pixel is taken as a mixture of two believed colours nearby, and its share tells where in it the border runs.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap, Picture, Rgb, SoftLabels } from '../raster';

/** Pixels: as far are believed colours sought. */
const REACH = 2;

/** The best mixture found for one pixel. */
interface Mixture {
  first: number;
  second: number;
  /** Of the first colour, 0..1. */
  share: number;
  residual: number;
}

export function unmixed(picture: Picture, colours: readonly Rgb[], nearest: LabelMap): SoftLabels {
  const { width, height, labels: before } = nearest;
  const core = coresOf(nearest);
  const labels = before.slice();
  const other = new Uint8Array(labels.length);
  const share = new Float32Array(labels.length).fill(1);
  const isNear = new Uint8Array(colours.length);
  const near: number[] = [];
  const mixture: Mixture = { first: 0, second: 0, share: 1, residual: Infinity };
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      if (core[at] === 1 && !isOnRim(nearest, x, y)) continue;
      coreLabelsNear(nearest, core, x, y, isNear, near);
      if (near.length === 0) continue;
      const own = core[at] === 1 ? defined(before[at]) : -1;
      mix(picture.data, 4 * at, colours, near, own, mixture);
      const isFirst = mixture.share >= 0.5;
      labels[at] = isFirst ? mixture.first : mixture.second;
      other[at] = isFirst ? mixture.second : mixture.first;
      share[at] = isFirst ? mixture.share : 1 - mixture.share;
    }
  }
  return { width, height, labels, other, share };
}

/** 1 where a pixel belongs to a block of 2 × 2 pixels of one label. */
function coresOf({ width, height, labels }: LabelMap): Uint8Array {
  const core = new Uint8Array(labels.length);
  for (let y = 0; y + 1 < height; y += 1) {
    checkpoint(width);
    for (let x = 0; x + 1 < width; x += 1) {
      const at = y * width + x;
      const label = labels[at];
      if (labels[at + 1] !== label || labels[at + width] !== label || labels[at + width + 1] !== label) continue;
      core[at] = core[at + 1] = core[at + width] = core[at + width + 1] = 1;
    }
  }
  return core;
}

function isOnRim({ width, height, labels }: LabelMap, x: number, y: number): boolean {
  const at = y * width + x;
  const label = labels[at];
  return (
    (x > 0 && labels[at - 1] !== label) ||
    (x + 1 < width && labels[at + 1] !== label) ||
    (y > 0 && labels[at - width] !== label) ||
    (y + 1 < height && labels[at + width] !== label)
  );
}

/** Fills `near` with the labels of believed pixels round a place. */
function coreLabelsNear(
  { width, height, labels }: LabelMap,
  core: Uint8Array,
  x: number,
  y: number,
  isNear: Uint8Array,
  near: number[],
): void {
  isNear.fill(0);
  near.length = 0;
  for (let v = Math.max(0, y - REACH); v <= Math.min(height - 1, y + REACH); v += 1) {
    for (let u = Math.max(0, x - REACH); u <= Math.min(width - 1, x + REACH); u += 1) {
      const at = v * width + u;
      const label = defined(labels[at]);
      if (core[at] === 0 || isNear[label] === 1) continue;
      isNear[label] = 1;
      near.push(label);
    }
  }
}

/**
 * The pair of colours of which a mixture comes nearest to the pixel. Renderers mix the values of sRGB as they stand.
 * @param own a label that must be one of the pair, or -1
 */
function mix(
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
      const [first, second] = [defined(near[i]), defined(near[j])];
      if (own >= 0 && first !== own && second !== own) continue;
      const [red, green, blue] = defined(colours[second]);
      const [r, g, b] = defined(colours[first]);
      const [dr, dg, db] = [r - red, g - green, b - blue];
      const [pr, pg, pb] = [defined(data[at]) - red, defined(data[at + 1]) - green, defined(data[at + 2]) - blue];
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
