/** Drawings in flat colours that were compressed: their areas are even, and of few colours that are far from each other. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Picture } from '../raster';

/** Pixels: the blocks of JPEG, which are compressed each by itself. */
const SIDE = 8;

/** A block is even where no channel varies by more. */
const EVEN = 24;

/** Of a drawing's blocks so many are even, */
const MOSTLY = 0.5;
/** and of those so many have one of a few colours. */
const NEARLY_ALL = 0.9;
const FEW = 16;

/** Channel by channel: the means of blocks of one colour differ by no more, and colours that somebody drew with by more than the second. */
const ALIKE = 3;
const APART = 9;

/** More blocks than these tell nothing more: every so many rows of them are passed over. */
const ENOUGH = 30_000;

/** Photos of few tones are smooth too, but their tones go over into each other. */
export function isOfEvenColours({ width, height, data }: Picture): boolean {
  const counts = new Map<number, number>();
  const [across, down] = [Math.floor(width / SIDE), Math.floor(height / SIDE)];
  const step = Math.max(1, Math.floor((across * down) / ENOUGH));
  let [all, even] = [0, 0];
  for (let y = 0; y < down; y += step) {
    checkpoint(width * SIDE);
    for (let x = 0; x < across; x += 1) {
      all += 1;
      const colour = colourOfBlock(data, 4 * (y * SIDE * width + x * SIDE), 4 * width);
      if (colour < 0) continue;
      even += 1;
      counts.set(colour, (counts.get(colour) ?? 0) + 1);
    }
  }
  return even > MOSTLY * all && onPeaks(counts) > NEARLY_ALL * even;
}

/** The mean as 0xrrggbb; -1 where it varies. */
function colourOfBlock(data: Picture['data'], start: number, row: number): number {
  let colour = 0;
  for (let channel = 0; channel < 3; channel += 1) {
    let [sum, least, most] = [0, 255, 0];
    for (let y = 0; y < SIDE; y += 1) {
      for (let at = start + y * row + channel, x = 0; x < SIDE; x += 1, at += 4) {
        const value = defined(data[at]);
        sum += value;
        if (value < least) least = value;
        if (value > most) most = value;
      }
    }
    if (most - least > EVEN) return -1;
    colour = (colour << 8) | Math.round(sum / (SIDE * SIDE));
  }
  return colour;
}

/** How many blocks have one of the commonest colours that lie apart from each other. */
function onPeaks(counts: ReadonlyMap<number, number>): number {
  let left = [...counts].sort((a, b) => b[1] - a[1]);
  let on = 0;
  for (let peak = 0; peak < FEW; peak += 1) {
    const [first] = left;
    if (!first) break;
    checkpoint(left.length);
    for (const [colour, count] of left) if (distance(colour, first[0]) <= ALIKE) on += count;
    left = left.filter(([colour]) => distance(colour, first[0]) > APART);
  }
  return on;
}

function distance(one: number, other: number): number {
  return Math.max(
    Math.abs((one >> 16) - (other >> 16)),
    Math.abs(((one >> 8) & 255) - ((other >> 8) & 255)),
    Math.abs((one & 255) - (other & 255)),
  );
}
