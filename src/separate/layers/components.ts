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
  const ids = new Int32Array(labels.length);
  const joined = new Joined();
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let at = y * width; at < (y + 1) * width; at += 1) {
      const label = labels[at];
      const left = at > y * width && labels[at - 1] === label ? defined(ids[at - 1]) : -1;
      const above = y > 0 && labels[at - width] === label ? defined(ids[at - width]) : -1;
      if (left >= 0 && above >= 0 && left !== above) joined.join(left, above);
      ids[at] = left >= 0 ? left : above >= 0 ? above : joined.add();
    }
  }
  const list: Component[] = [];
  const numbers = new Int32Array(joined.count).fill(-1);
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const root = joined.rootOf(defined(ids[at]));
      if (defined(numbers[root]) < 0) {
        numbers[root] = list.length;
        list.push({ label: defined(labels[at]), size: 0, touchesFrame: false, pixel: at });
      }
      const id = defined(numbers[root]);
      ids[at] = id;
      const component = defined(list[id]);
      component.size += 1;
      if (x === 0 || y === 0 || x + 1 === width || y + 1 === height) component.touchesFrame = true;
    }
  }
  return { ids, list };
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
