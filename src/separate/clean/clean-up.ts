/**
 * Clean-up at true size. What no disc of the least width covers is given to its neighbours, for all colours at once: a
 * pixel keeps its place in a label where the disc round the nearest pixel that lies deep enough in some label is of that
 * label. So two looks round each border serve however many colours.
 */
import { defined } from '../../base/defined';
import type { Bitmap } from '../bits/bitmap';
import { DiscShape } from '../bits/disc-shape';
import { NearestPixel } from '../bits/nearest-pixel';
import type { LabelMap } from '../raster';
import { coresOf } from './cores';
import { keptCorners } from './corners';
import { distancesTo } from './distance';

export interface CleanUp {
  /** Pixels: the diameter of the disc. */
  readonly width: number;
  /** Whether corners stay that are as sharp as a cutter and the eye still take. In photos they would be fringes. */
  readonly keepsCorners: boolean;
  readonly rounds?: number;
}

/** A round that changes fewer of the pixels is the last. */
const AT_REST = 2e-5;

/** @returns undefined where nothing at all is so wide */
export function cleanedUp(map: LabelMap, { width, keepsCorners, rounds = 4 }: CleanUp): LabelMap | undefined {
  let now = map;
  for (let round = 0; round < rounds; round += 1) {
    const next = oneRound(now, width / 2, keepsCorners);
    if (!next) return round === 0 ? undefined : now;
    now = { ...map, labels: next.labels };
    if (next.changed < AT_REST * map.labels.length) break;
  }
  return now;
}

/** Undefined where nothing is so wide as the disc. */
function oneRound(
  map: LabelMap,
  radius: number,
  keepsCorners: boolean,
): { readonly labels: Uint8Array; readonly changed: number } | undefined {
  const core = coresOf(map, radius);
  if (core.isEmpty) return undefined;
  const open = uncovered(core, radius);
  const labels = map.labels.slice();
  giveToNearest(map, core, open, labels, radius);
  const changed = open.filter((at) => labels[at] !== map.labels[at]);
  if (keepsCorners) keptCorners(map, labels, changed, radius);
  return { labels, changed: changed.filter((at) => labels[at] !== map.labels[at]).length };
}

/**
 * The pixels that lie in no disc round a core. All others keep their label: their own core is nearer than the radius, and one of
 * another label is not, as the disc round it would reach them.
 */
function uncovered(core: Bitmap, radius: number): number[] {
  const reach = Math.max(0, radius - 0.5);
  // Squared distances are whole numbers; those that are as great as that of the reach do not count.
  const radius2 = Math.max(0, Math.ceil(reach * reach) - 0.5);
  return new DiscShape(Math.sqrt(radius2)).dilated(core).complement().pixels();
}

/** So many radii round a pixel its nearest core is sought at first, and so many where that is too little. */
const NEAR_CORES = 1.6;
const FARTHER = 8;

/** Of all pixels: where more have no core nearby, exact distances for all take less time than looking farther for each. */
const FEW = 1 / 32;

function giveToNearest(map: LabelMap, core: Bitmap, open: readonly number[], labels: Uint8Array, radius: number): void {
  let left = givenNearby(map, core, open, labels, NEAR_CORES * radius + 1);
  if (left.length < FEW * map.labels.length) left = givenNearby(map, core, left, labels, FARTHER * radius);
  if (left.length === 0) return;
  const { nearest } = distancesTo(core);
  for (const at of left) labels[at] = defined(map.labels[defined(nearest[at])]);
}

/** @returns what has no core nearby */
function givenNearby(
  map: LabelMap,
  core: Bitmap,
  open: readonly number[],
  labels: Uint8Array,
  reach: number,
): readonly number[] {
  const near = new NearestPixel(core, reach);
  return open.filter((at) => {
    const nearest = near.to(at);
    if (nearest >= 0) labels[at] = defined(map.labels[nearest]);
    return nearest < 0;
  });
}
