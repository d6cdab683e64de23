/** Connected parts of a set of pixels, by runs in rows. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Joined } from '../layers/components';
import type { Bitmap } from './bitmap';
import { forRunsInRow } from './runs';

/** The pixels of a part, row by row, in runs: the number of the first pixel of each, and that of the one behind its last. */
export interface Part {
  readonly starts: number[];
  readonly stops: number[];
}

/** The parts of a set, and which of them each of its pixels is in. */
export class Parts {
  readonly list: readonly Part[];
  /** Where the runs of all parts begin, ascending, and the number of the part of each. */
  private readonly starts: readonly number[];
  private readonly numbers: Int32Array;

  constructor({ starts, stops }: Part, joined: Joined) {
    const list: Part[] = [];
    const byRoot = new Map<number, number>();
    this.numbers = new Int32Array(starts.length);
    for (let run = 0; run < starts.length; run += 1) {
      const root = joined.rootOf(run);
      const number = byRoot.get(root) ?? list.push({ starts: [], stops: [] }) - 1;
      byRoot.set(root, number);
      this.numbers[run] = number;
      list[number]?.starts.push(defined(starts[run]));
      list[number]?.stops.push(defined(stops[run]));
    }
    this.list = list;
    this.starts = starts;
  }

  /** The number of the part of a pixel of the set. */
  numberAt(pixel: number): number {
    let [first, last] = [0, this.starts.length - 1];
    while (first < last) {
      const middle = (first + last + 1) >> 1;
      if (defined(this.starts[middle]) <= pixel) first = middle;
      else last = middle - 1;
    }
    return defined(this.numbers[first]);
  }
}

/** What touches in a corner is one part, for pixels make corners of what is straight. */
export function partsOf(set: Bitmap): Parts {
  const { width, height } = set;
  const all: Part = { starts: [], stops: [] };
  const joined = new Joined();
  let above = 0;
  for (let y = 0; y < height; y += 1) {
    const first = joined.count;
    forRunsInRow(set, y, (start, stop) => {
      all.starts.push(start);
      all.stops.push(stop);
      joined.add();
    });
    joinRows(all, joined, above, first, width);
    above = first;
  }
  return new Parts(all, joined);
}

/** Joins the runs of a row to those of the row above that they touch. */
function joinRows({ starts, stops }: Part, joined: Joined, above: number, first: number, width: number): void {
  let upper = above;
  for (let run = first; run < joined.count; run += 1) {
    checkpoint();
    const start = defined(starts[run]) - width;
    const stop = defined(stops[run]) - width;
    while (upper < first && defined(stops[upper]) < start) upper += 1;
    for (let other = upper; other < first && defined(starts[other]) <= stop; other += 1) joined.join(run, other);
  }
}
