/** Connected parts of a set of pixels, by runs in rows: most pixels are looked at once. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Grid } from '../labels/box-blur';
import { Joined } from '../layers/components';

/**
 * A number for each pixel, the same for all of one part. What touches in a corner is one, for pixels make corners of what is
 * straight.
 * @param set 1 where a pixel is in it
 * @param none the number of the others
 */
export function partNumbers({ width, height }: Grid, set: Uint8Array, none: number): Int32Array {
  const runs = new Runs();
  let above = 0;
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    const first = runs.count;
    const end = (y + 1) * width;
    for (let at = set.indexOf(1, y * width); at >= 0 && at < end; at = set.indexOf(1, at)) {
      const gap = set.indexOf(0, at);
      const stop = gap < 0 || gap > end ? end : gap;
      runs.add(at, stop);
      at = stop;
    }
    runs.joinRows(above, first, width);
    above = first;
  }
  return runs.numbers(new Int32Array(set.length).fill(none));
}

class Runs {
  private readonly starts: number[] = [];
  private readonly ends: number[] = [];
  private readonly joined = new Joined();

  get count(): number {
    return this.starts.length;
  }

  add(start: number, end: number): void {
    this.starts.push(start);
    this.ends.push(end);
    this.joined.add();
  }

  /** Joins the runs of a row to those of the row above that they touch. */
  joinRows(above: number, first: number, width: number): void {
    let upper = above;
    for (let run = first; run < this.count; run += 1) {
      const [start, end] = [defined(this.starts[run]) - width, defined(this.ends[run]) - width];
      while (upper < first && defined(this.ends[upper]) < start) upper += 1;
      for (let other = upper; other < first && defined(this.starts[other]) <= end; other += 1) {
        this.joined.join(run, other);
      }
    }
  }

  numbers(into: Int32Array): Int32Array {
    this.starts.forEach((start, run) => {
      into.fill(this.joined.rootOf(run), start, this.ends[run]);
    });
    return into;
  }
}
