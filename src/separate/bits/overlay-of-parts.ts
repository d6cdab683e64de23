/** Where discs round the pixels of parts lie, and where those of several parts lie over each other. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Grid } from '../labels/box-blur';
import { Bitmap } from './bitmap';
import type { DiscShape } from './disc-shape';
import type { Part } from './parts';

export interface Overlay {
  /** Pixels in discs of one part or more. */
  readonly some: Bitmap;
  /** Pixels in discs of several. */
  readonly several: Bitmap;
}

export function overlayOf(grid: Grid, parts: readonly Part[], disc: DiscShape): Overlay {
  const some = new Bitmap(grid);
  const several = new Bitmap(grid);
  const own = new Bitmap(grid);
  for (const part of parts) {
    const { from, to } = addDiscs(own, part, disc);
    checkpoint((to - from) >> 2);
    for (let i = from; i < to; i += 1) {
      const bits = defined(own.words[i]);
      if (bits === 0) continue;
      several.words[i] = defined(several.words[i]) | (bits & defined(some.words[i]));
      some.words[i] = defined(some.words[i]) | bits;
      own.words[i] = 0;
    }
  }
  return { some, several };
}

/** @returns the words among which some were changed */
function addDiscs(into: Bitmap, { starts, stops }: Part, { reaches }: DiscShape): { from: number; to: number } {
  const { width, height, stride } = into;
  const rows = reaches.length - 1;
  for (let run = 0; run < starts.length; run += 1) {
    const y = Math.floor(defined(starts[run]) / width);
    const start = defined(starts[run]) - y * width;
    const stop = defined(stops[run]) - y * width;
    for (let line = Math.max(0, y - rows); line <= Math.min(height - 1, y + rows); line += 1) {
      const reach = defined(reaches[Math.abs(line - y)]);
      fill(into, line, Math.max(0, start - reach), Math.min(width, stop + reach));
    }
  }
  const first = Math.floor(defined(starts[0]) / width) - rows;
  const last = Math.floor(defined(starts.at(-1)) / width) + rows;
  return { from: Math.max(0, first) * stride, to: (Math.min(height - 1, last) + 1) * stride };
}

/** Adds the pixels of a row from one column to before another. */
function fill({ words, stride }: Bitmap, row: number, start: number, stop: number): void {
  const base = row * stride;
  const first = base + (start >> 5);
  const last = base + ((stop - 1) >> 5);
  checkpoint((last - first) >> 3);
  const head = -1 << (start & 31);
  const tail = -1 >>> (31 - ((stop - 1) & 31));
  if (first === last) {
    words[first] = defined(words[first]) | (head & tail);
    return;
  }
  words[first] = defined(words[first]) | head;
  words.fill(-1, first + 1, last);
  words[last] = defined(words[last]) | tail;
}
