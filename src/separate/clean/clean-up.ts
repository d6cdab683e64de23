/**
 * Clean-up at true size. What no disc of the least width covers is given to its neighbours, for all colours at once: a
 * pixel keeps its place in a label where the disc round the nearest pixel that lies deep enough in some label is of that
 * label. So two distance transforms a round serve however many colours.
 */
import { defined } from '../../base/defined';
import { Disc, edgeOf } from '../layers/discs';
import { SweptDisc } from '../layers/swept-disc';
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
  if (!core) return undefined;
  const open = uncovered(map, core, radius);
  const labels = map.labels.slice();
  if (!giveToCoresNearby(map, core, open, labels, radius)) giveByDistances(map, core, open, labels);
  const changed = open.filter((at) => labels[at] !== map.labels[at]);
  if (keepsCorners) keptCorners(map, labels, changed, radius);
  return { labels, changed: changed.filter((at) => labels[at] !== map.labels[at]).length };
}

/**
 * The pixels that lie in no disc round a core. All others keep their label: their own core is nearer than the radius, and one of
 * another label is not, as the disc round it would reach them.
 */
function uncovered(map: LabelMap, core: Uint8Array, radius: number): number[] {
  const covered = core.slice();
  const reach = Math.max(0, radius - 0.5);
  // Squared distances are whole numbers; those that are as great as that of the reach do not count.
  const radius2 = Math.max(0, Math.ceil(reach * reach) - 0.5);
  new SweptDisc(map, Math.sqrt(radius2)).mark(edgeOf(map, core, 1), covered, 1);
  const open: number[] = [];
  for (let at = 0; at < covered.length; at += 1) if (covered[at] === 0) open.push(at);
  return open;
}

/** So many radii round a pixel its nearest core is sought pixel by pixel. */
const NEAR_CORES = 1.6;

/** Pixels that are looked at for each one that there is: exact distances for all take about as long. */
const FEW_LOOKS = 1;

/** @returns whether all that are open had a core nearby */
function giveToCoresNearby(
  map: LabelMap,
  core: Uint8Array,
  open: readonly number[],
  labels: Uint8Array,
  radius: number,
): boolean {
  const reach = NEAR_CORES * radius + 1;
  if (open.length * reach * reach > FEW_LOOKS * core.length) return false;
  const disc = new Disc(map, reach);
  return open.every((at) => {
    const nearest = disc.nearest(at, core);
    if (nearest >= 0) labels[at] = defined(map.labels[nearest]);
    return nearest >= 0;
  });
}

function giveByDistances(map: LabelMap, core: Uint8Array, open: readonly number[], labels: Uint8Array): void {
  const { nearest } = distancesTo(core, map);
  for (const at of open) labels[at] = defined(map.labels[defined(nearest[at])]);
}
