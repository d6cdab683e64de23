/** Sets of pixels, row by row, by where they begin and end. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Bitmap } from './bitmap';

/** Calls back for each run of pixels in a row: the number of its first pixel, and that of the one behind its last. */
export function forRunsInRow(set: Bitmap, y: number, visit: (start: number, stop: number) => void): void {
  const { words, stride, width } = set;
  checkpoint(stride);
  const row = y * width;
  let start = -1;
  for (let column = 0; column < stride; column += 1) {
    const bits = defined(words[y * stride + column]);
    const first = row + 32 * column;
    for (let place = 0; place < 32; ) {
      // Where a run is open its end is sought, else the next beginning.
      const rest = (start < 0 ? bits : ~bits) >>> place;
      if (rest === 0) break;
      place += 31 - Math.clz32(rest & -rest);
      if (start < 0) start = first + place;
      else {
        visit(start, first + place);
        start = -1;
      }
    }
  }
  if (start >= 0) visit(start, row + width);
}
