/**
 * Clean-up at true size. What no disc of the least width covers is given to its neighbours, for all colours at once: a
 * pixel keeps its place in a label where the disc round the nearest pixel that lies deep enough in some label is of that
 * label. So two distance transforms a round serve however many colours.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Disc } from '../layers/discs';
import type { LabelMap } from '../raster';
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
  const labels = nearestCores(map, core, radius);
  if (keepsCorners) keptCorners(map, labels, radius);
  let changed = 0;
  for (let at = 0; at < labels.length; at += 1) if (labels[at] !== map.labels[at]) changed += 1;
  return { labels, changed };
}

/**
 * 1 where a disc of the radius round the pixel lies within its label; the frame is an edge like others, for what it cuts off
 * is as hard to cut as anything. Undefined where there is none.
 */
export function coresOf(map: LabelMap, radius: number): Uint8Array | undefined {
  const core = new Uint8Array(map.labels.length).fill(1);
  // From the pixel on the rim the border itself is half a pixel away.
  const reach = Math.max(0, radius - 0.5);
  const disc = new Disc(map, reach);
  const visit = (pixel: number, squared: number): void => {
    if (squared < reach * reach) core[pixel] = 0;
  };
  for (const at of rimOf(map)) disc.stamp(at, visit);
  return core.includes(1) ? core : undefined;
}

/** The pixels that have a neighbour of another label, or none at some side. */
function rimOf({ width, height, labels }: LabelMap): number[] {
  const rim: number[] = [];
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    const atEdge = y === 0 || y + 1 === height;
    for (let x = 0, at = y * width; x < width; x += 1, at += 1) {
      const label = labels[at];
      if (
        atEdge ||
        x === 0 ||
        x + 1 === width ||
        labels[at + 1] !== label ||
        labels[at - 1] !== label ||
        labels[at + width] !== label ||
        labels[at - width] !== label
      ) {
        rim.push(at);
      }
    }
  }
  return rim;
}

/** So many radii round the cores the nearest one is sought by discs; where some pixel is farther away, for all at once. */
const NEAR_CORES = 1.6;

/** Pixels that discs may visit for each one that there is: exact distances for all take about as long. */
const FEW_STAMPS = 1;

/** Gives each pixel the label of its nearest core. */
function nearestCores(map: LabelMap, core: Uint8Array, radius: number): Uint8Array {
  const { labels: before } = map;
  const reach = NEAR_CORES * radius + 1;
  const rim = rimOfCores(map, core);
  if (rim.length * reach * reach > FEW_STAMPS * core.length) return byDistances(map, core);
  const labels = before.slice();
  const disc = new Disc(map, reach);
  const least = new Float32Array(before.length).fill(Infinity);
  let open = 0;
  for (const value of core) open += 1 - value;
  for (const at of rim) {
    const label = defined(before[at]);
    disc.stamp(at, (pixel, squared) => {
      const known = defined(least[pixel]);
      if (core[pixel] === 1 || squared >= known) return;
      if (known === Infinity) open -= 1;
      least[pixel] = squared;
      labels[pixel] = label;
    });
  }
  return open === 0 ? labels : byDistances(map, core);
}

function byDistances(map: LabelMap, core: Uint8Array): Uint8Array {
  const { nearest } = distancesTo(core, map);
  return map.labels.map((_, at) => defined(map.labels[defined(nearest[at])]));
}

function rimOfCores({ width, height, labels }: LabelMap, core: Uint8Array): number[] {
  const rim: number[] = [];
  const last = labels.length - width;
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let x = 0, at = y * width; x < width; x += 1, at += 1) {
      if (core[at] === 0) continue;
      const isRim =
        (x > 0 && core[at - 1] === 0) ||
        (x + 1 < width && core[at + 1] === 0) ||
        (at >= width && core[at - width] === 0) ||
        (at < last && core[at + width] === 0);
      if (isRim) rim.push(at);
    }
  }
  return rim;
}
