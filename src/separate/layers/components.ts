/** Connected parts of a label map. Neighbours share a side: what touches in a corner is not connected. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';

export interface Component {
  readonly label: number;
  /** Pixels. */
  size: number;
  touchesFrame: boolean;
  /** A pixel of it. */
  readonly pixel: number;
}

export interface Components {
  /** The component of each pixel. */
  readonly ids: Int32Array;
  readonly list: readonly Component[];
}

export function componentsOf({ width, height, labels }: LabelMap): Components {
  const runs = runsOf({ width, height, labels });
  const joined = joinedRuns(runs, width);
  const ids = new Int32Array(labels.length);
  const list: Component[] = [];
  const numbers = new Int32Array(runs.length).fill(-1);
  runs.forEach(({ start, stop, label }, run) => {
    checkpoint();
    const root = joined.rootOf(run);
    if (defined(numbers[root]) < 0)
      numbers[root] = list.push({ label, size: 0, touchesFrame: false, pixel: start }) - 1;
    const id = defined(numbers[root]);
    ids.fill(id, start, stop);
    const component = defined(list[id]);
    component.size += stop - start;
    const isOnFrame = start < width || start >= labels.length - width || start % width === 0 || stop % width === 0;
    if (isOnFrame) component.touchesFrame = true;
  });
  return { ids, list };
}

/** Pixels of one label side by side in a row. */
interface Run {
  readonly label: number;
  readonly start: number;
  readonly stop: number;
}

function runsOf({ width, height, labels }: LabelMap): Run[] {
  const runs: Run[] = [];
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    const end = (y + 1) * width;
    for (let start = y * width, stop = start; start < end; start = stop) {
      const label = defined(labels[start]);
      stop = start + 1;
      while (stop < end && labels[stop] === label) stop += 1;
      runs.push({ label, start, stop });
    }
  }
  return runs;
}

/** Joins each run to those of its label in the row above that it shares a side with. */
function joinedRuns(runs: readonly Run[], width: number): Joined {
  const joined = new Joined();
  let above = 0;
  runs.forEach(({ label, start, stop }, run) => {
    joined.add();
    checkpoint();
    while (above < run && defined(runs[above]).stop <= start - width) above += 1;
    for (let other = above; other < run; other += 1) {
      const { start: from, label: its } = defined(runs[other]);
      if (from >= stop - width) break;
      if (its === label) joined.join(run, other);
    }
  });
  return joined;
}

/** Numbers that are found to be one. */
export class Joined {
  private readonly parents: number[] = [];

  get count(): number {
    return this.parents.length;
  }

  add(): number {
    this.parents.push(this.parents.length);
    return this.parents.length - 1;
  }

  rootOf(number: number): number {
    let root = number;
    while (defined(this.parents[root]) !== root) root = defined(this.parents[root]);
    for (let at = number; at !== root; ) {
      const next = defined(this.parents[at]);
      this.parents[at] = root;
      at = next;
    }
    return root;
  }

  join(first: number, second: number): void {
    this.parents[this.rootOf(second)] = this.rootOf(first);
  }
}
