/**
 * Rims of anti-aliased drawings. A pixel on the border of two colours is a mixture of both, and often looks like a
 * third one (a grey rim between black and white). So only where a label fills a block of 2 × 2 pixels it is believed;
 * every other pixel is taken as a mixture of two believed colours nearby, and its share tells where in it the border runs.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { hardLabels, type LabelMap, type Picture, type Rgb, type SoftLabels } from '../raster';
import { mix, newMixture } from './mixture';
import { shareAtSeam } from './seam';

/** Pixels: as far are believed colours sought. */
const REACH = 2;

/**
 * Squared steps of the channels: a pixel that is farther from all mixtures of two colours nearby may lie on a seam. Where so many
 * of the mixed ones are that it is no exception, the picture was compressed, and nothing is known of a third colour.
 */
const UNLIKELY = 100;
const RARE = 0.25;

export function unmixed(picture: Picture, colours: readonly Rgb[], nearest: LabelMap): SoftLabels {
  const { width, height, labels: before } = nearest;
  const core = coresOf(nearest);
  const soft = hardLabels({ ...nearest, labels: before.slice() });
  const isNear = new Uint8Array(colours.length);
  const near: number[] = [];
  const mixture = newMixture();
  const odd: number[] = [];
  let mixed = 0;
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      if (core[at] === 1 && !isOnRim(nearest, x, y)) continue;
      coreLabelsNear(nearest, core, x, y, isNear, near);
      if (near.length === 0) continue;
      const own = core[at] === 1 ? defined(before[at]) : -1;
      mix(picture.data, 4 * at, colours, near, own, mixture);
      setShare(soft, at, mixture.first, mixture.second, mixture.share);
      mixed += 1;
      if (mixture.residual > UNLIKELY) odd.push(at);
    }
  }
  if (odd.length < RARE * mixed) for (const at of odd) unmixSeam(picture, colours, soft, at);
  return soft;
}

/** @param share of the first label */
function setShare(
  { labels, other, share: shares }: SoftLabels,
  at: number,
  first: number,
  second: number,
  share: number,
) {
  const isFirst = share >= 0.5;
  labels[at] = isFirst ? first : second;
  other[at] = isFirst ? second : first;
  shares[at] = isFirst ? share : 1 - share;
}

function unmixSeam({ data }: Picture, colours: readonly Rgb[], soft: SoftLabels, at: number): void {
  checkpoint(50 * colours.length);
  const pixel: Rgb = [defined(data[4 * at]), defined(data[4 * at + 1]), defined(data[4 * at + 2])];
  const [first, second] = [defined(soft.labels[at]), defined(soft.other[at])];
  const pair = [defined(colours[first]), defined(colours[second])] as const;
  const share = shareAtSeam(pixel, pair, defined(soft.share[at]), colours);
  if (share !== undefined) setShare(soft, at, first, second, share);
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

export function isOnRim({ width, height, labels }: LabelMap, x: number, y: number): boolean {
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
