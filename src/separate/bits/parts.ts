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

/** What touches in a corner is one part, for pixels make corners of what is straight. */
export function partsOf(set: Bitmap): Part[] {
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
  return parted(all, joined);
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

function parted({ starts, stops }: Part, joined: Joined): Part[] {
  const byRoot = new Map<number, Part>();
  for (let run = 0; run < starts.length; run += 1) {
    const root = joined.rootOf(run);
    let part = byRoot.get(root);
    if (!part) {
      part = { starts: [], stops: [] };
      byRoot.set(root, part);
    }
    part.starts.push(defined(starts[run]));
    part.stops.push(defined(stops[run]));
  }
  return [...byRoot.values()];
}
