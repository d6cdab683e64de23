/** From pixels to areas that can be cut: one label for each pixel, none of them finer than the least detail. */
import { defined } from '../base/defined';
import type { Box } from '../geometry/base/polygon-types';
import { Bitmap } from './bits/bitmap';
import { DiscShape } from './bits/disc-shape';
import { onGround } from './clean/beyond-frame';
import { type CleanUp, cleanedUp } from './clean/clean-up';
import { type Dials, NothingToSeparate } from './dials';
import { evened } from './labels/evened';
import { nearestLabels } from './labels/nearest';
import { remixed } from './labels/remix';
import { smoothLabels } from './labels/smooth';
import { unmixed } from './labels/unmix';
import type { Prepared } from './prepare';
import type { LabelMap, SoftLabels } from './raster';

export interface Areas {
  readonly soft: SoftLabels;
  /** Labels that are left unpainted; that of rectangles left out follows those of the palette. */
  readonly unpainted: ReadonlySet<number>;
  /** Of all pixels: those that changed their colour as they were too fine to be cut. */
  readonly tooFine: number;
  /** 1 where a pixel did. */
  readonly fine: Uint8Array;
}

/** Photos are smoothed by so much of the least detail, and their borders evened by so much. */
const SMOOTHED = 0.3;
const EVENED = 0.15;

/** Pixels round what was mended in which borders are evened. */
const EVENED_ROUND = 3;

export function areasOf(prepared: Prepared, dials: Dials): Areas {
  const { palette, pitch, clear } = prepared;
  const width = clear / pitch;
  const hole = palette.colours.length;
  const boxes = dials.leaveOut.filter((each) => typeof each !== 'string');
  const soft = merged(palette.isDrawing ? drawingLabels(prepared) : photoLabels(prepared, width), prepared.merged);
  const before = boxes.length > 0 ? withoutBoxes(soft, boxes, pitch, hole) : soft;
  const after = palette.isDrawing
    ? cleanedDrawing(before, prepared, width)
    : cleanedPhoto(before, groundLabel(prepared), width);
  const [only] = after.labels;
  if (after.labels.every((label) => label === only)) {
    throw new NothingToSeparate('has one colour only at this size: there is nothing to separate');
  }
  const fine = new Uint8Array(after.labels.length);
  let changed = 0;
  for (let at = 0; at < fine.length; at += 1) {
    if (after.labels[at] === before.labels[at]) continue;
    fine[at] = 1;
    changed += 1;
  }
  const tooFine = changed / fine.length;
  const unpainted = new Set([...prepared.unpainted, ...(boxes.length > 0 ? [hole] : [])]);
  return { soft: after, unpainted, tooFine, fine };
}

/** One of the labels that are left unpainted. */
export function groundLabel({ unpainted }: Prepared): number | undefined {
  const [first] = unpainted;
  return first;
}

function drawingLabels({ picture, palette }: Prepared): SoftLabels {
  return unmixed(picture, palette.colours, nearestLabels(picture, palette.colours));
}

function photoLabels({ picture, palette }: Prepared, width: number): SoftLabels {
  const map = smoothLabels(picture, palette.colours, Math.max(1, Math.round((SMOOTHED * width) / 2)));
  return { ...map, other: map.labels, share: new Float32Array(map.labels.length).fill(1) };
}

function merged(soft: SoftLabels, into: ReadonlyMap<number, number>): SoftLabels {
  if (into.size === 0) return soft;
  const labelOf = (label: number): number => into.get(label) ?? label;
  const labels = soft.labels.map(labelOf);
  const other = soft.other.map(labelOf);
  return { ...soft, labels, other, share: soft.share.map((share, at) => (labels[at] === other[at] ? 1 : share)) };
}

function clean(map: LabelMap, ground: number | undefined, rule: CleanUp): LabelMap {
  const cleaned = onGround(map, ground, rule.width, (each) => cleanedUp(each, rule));
  if (!cleaned) throw new NothingToSeparate('is finer all over than the least detail: there is nothing to separate');
  return cleaned;
}

function cleanedDrawing(before: SoftLabels, prepared: Prepared, width: number): SoftLabels {
  const { picture, palette, merged: into } = prepared;
  const after = clean(before, groundLabel(prepared), { width, keepsCorners: true, rounds: 3 });
  // Pixels of a colour that is sprayed as another one tell nothing of how much of that they are.
  return into.size > 0 ? agreeing(before, after) : remixed(picture, palette.colours, before, after);
}

function cleanedPhoto(before: SoftLabels, ground: number | undefined, width: number): SoftLabels {
  const even = evened(clean(before, ground, { width, keepsCorners: false, rounds: 3 }), evenedBy(width));
  return agreeing(even, clean(even, ground, { width, keepsCorners: false, rounds: 2 }));
}

/** What has another label than before is no mixture. */
function agreeing(soft: SoftLabels, { labels }: LabelMap): SoftLabels {
  const share = soft.share.slice();
  for (let at = 0; at < labels.length; at += 1) if (labels[at] !== soft.labels[at]) share[at] = 1;
  return { ...soft, labels, share };
}

/** @param width pixels: the least one */
function evenedBy(width: number): number {
  return Math.max(1, Math.round(EVENED * width));
}

/**
 * Takes over what a mend has changed, with borders as smooth as those of other areas there.
 * @param width pixels: the least one
 */
export function mendedAreas(before: SoftLabels, after: LabelMap, width: number): SoftLabels {
  const { share } = agreeing(before, after);
  const labels = after.labels.slice();
  const other = before.other.slice();
  const changed = new Bitmap(before);
  for (let at = 0; at < labels.length; at += 1) if (after.labels[at] !== before.labels[at]) changed.add(at);
  const near = new DiscShape(EVENED_ROUND).dilated(changed);
  const even = evened(after, evenedBy(width), near);
  for (const pixel of near.pixels()) {
    labels[pixel] = defined(even.labels[pixel]);
    other[pixel] = defined(even.other[pixel]);
    share[pixel] = defined(even.share[pixel]);
  }
  return { ...before, labels, other, share };
}

function withoutBoxes(soft: SoftLabels, boxes: readonly Box[], pitch: number, hole: number): SoftLabels {
  const { width, height } = soft;
  const labels = soft.labels.slice();
  const share = soft.share.slice();
  for (const { minX, minY, maxX, maxY } of boxes) {
    const column = (x: number): number => Math.max(0, Math.min(width, Math.round(x / pitch)));
    for (let y = Math.max(0, Math.round(minY / pitch)); y < Math.min(height, Math.round(maxY / pitch)); y += 1) {
      labels.fill(hole, y * width + column(minX), y * width + column(maxX));
      share.fill(1, y * width + column(minX), y * width + column(maxX));
    }
  }
  return { ...soft, labels, share };
}

/** The label of the darkest colour that is painted. */
export function darkestOf(lightness: readonly number[], unpainted: ReadonlySet<number>): number | undefined {
  const painted = [...lightness.keys()].filter((label) => !unpainted.has(label));
  return painted.reduce<number | undefined>(
    (darkest, label) =>
      darkest === undefined || defined(lightness[label]) < defined(lightness[darkest]) ? label : darkest,
    undefined,
  );
}
