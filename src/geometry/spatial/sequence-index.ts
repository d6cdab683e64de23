/**
 * Boxes in a row, and which of them come near each other. Boxes that follow each other mostly lie side by side, so a
 * few of them are sought together: an index holds the boxes round such blocks, and what it finds is looked through. A
 * block ends where the row leaps, as from one small outline to the next: else it would span all that lies between.
 */

import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Box } from '../base/polygon-types';

const MAX_BLOCK_SIZE = 8;

/** So many blocks are looked through one by one sooner than an index is made. */
const MAX_UNINDEXED_BLOCKS = 8;

/** What sums of sides may lose to rounding. */
const ROUNDING = 1 + 1e-9;

export class SequenceIndex {
  readonly count: number;
  /** Block b holds the boxes from first[b] up to, not including, first[b + 1]. */
  private readonly first: Int32Array;
  private readonly blockOf: Int32Array;
  private readonly around: Float64Array;
  /** Over the blocks; undefined where they are few. */
  private readonly tree: Flatbush | undefined;
  /** The block last asked about, and those that may hold boxes near to its own. */
  private block = -1;
  private blocks: readonly number[] = [];

  private readonly sides: Float64Array;
  private readonly reach: (box: number) => number;

  /**
   * @param sides four numbers a box, of one at least: its least x and y, its greatest x and y
   * @param reach how far round a box others are near
   */
  constructor(sides: Float64Array, reach: (box: number) => number = () => 0) {
    this.sides = sides;
    this.reach = reach;

    this.count = sides.length / 4;
    this.first = this.blockStarts();
    this.blockOf = new Int32Array(this.count);
    for (let block = 0; block < this.blockCount; block += 1) {
      this.blockOf.fill(block, this.first[block], this.first[block + 1]);
    }
    this.around = this.boxBlocks();
    this.tree = this.blockCount > MAX_UNINDEXED_BLOCKS ? this.indexBlocks() : undefined;
  }

  private get blockCount(): number {
    return this.first.length - 1;
  }

  private blockStarts(): Int32Array {
    const starts = [0];
    for (let start = 0; start < this.count; starts.push(start)) {
      checkpoint(8);
      start = this.endOfBlock(start);
    }
    return Int32Array.from(starts);
  }

  /** Boxes that touch, one the next, are no farther across together than one by one; beyond that, the row has leapt. */
  private endOfBlock(start: number): number {
    const { sides } = this;
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    let across = 0;
    let end = start;
    for (; end < Math.min(this.count, start + MAX_BLOCK_SIZE); end += 1) {
      minX = Math.min(minX, defined(sides[4 * end]));
      minY = Math.min(minY, defined(sides[4 * end + 1]));
      maxX = Math.max(maxX, defined(sides[4 * end + 2]));
      maxY = Math.max(maxY, defined(sides[4 * end + 3]));
      across +=
        defined(sides[4 * end + 2]) -
        defined(sides[4 * end]) +
        defined(sides[4 * end + 3]) -
        defined(sides[4 * end + 1]);
      if (end > start && maxX - minX + maxY - minY > ROUNDING * across) break;
    }
    return end;
  }

  /** Round each block: four numbers a box. */
  private boxBlocks(): Float64Array {
    const { sides } = this;
    const around = new Float64Array(4 * this.blockCount);
    checkpoint(this.count);
    for (let block = 0; block < this.blockCount; block += 1) {
      let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
      for (let i = defined(this.first[block]); i < defined(this.first[block + 1]); i += 1) {
        minX = Math.min(minX, defined(sides[4 * i]));
        minY = Math.min(minY, defined(sides[4 * i + 1]));
        maxX = Math.max(maxX, defined(sides[4 * i + 2]));
        maxY = Math.max(maxY, defined(sides[4 * i + 3]));
      }
      around[4 * block] = minX;
      around[4 * block + 1] = minY;
      around[4 * block + 2] = maxX;
      around[4 * block + 3] = maxY;
    }
    return around;
  }

  private indexBlocks(): Flatbush {
    const { around } = this;
    const tree = new Flatbush(this.blockCount);
    for (let at = 0; at < around.length; at += 4) {
      checkpoint(8);
      tree.add(defined(around[at]), defined(around[at + 1]), around[at + 2], around[at + 3]);
    }
    tree.finish();
    return tree;
  }

  /** Round what lies near to any box of the block. */
  private reachOf(block: number): Box {
    const { sides } = this;
    const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    for (let i = defined(this.first[block]); i < defined(this.first[block + 1]); i += 1) {
      const far = this.reach(i);
      box.minX = Math.min(box.minX, defined(sides[4 * i]) - far);
      box.minY = Math.min(box.minY, defined(sides[4 * i + 1]) - far);
      box.maxX = Math.max(box.maxX, defined(sides[4 * i + 2]) + far);
      box.maxY = Math.max(box.maxY, defined(sides[4 * i + 3]) + far);
    }
    return box;
  }

  /**
   * The numbers of all boxes near to one of them, itself among them, ascending. Quick when boxes are asked about in their
   * order.
   * @param found is overwritten: the numbers stand at its beginning
   * @returns how many
   */
  near(number: number, found: number[]): number {
    return this.collect(number, 0, this.count, found);
  }

  /** The same, of those before it. */
  nearBefore(number: number, found: number[]): number {
    return this.collect(number, 0, number, found);
  }

  /** The same, of those after it. */
  nearAfter(number: number, found: number[]): number {
    return this.collect(number, number + 1, this.count, found);
  }

  /** Numbers from `from` up to, not including, `limit`. */
  private collect(number: number, from: number, limit: number, found: number[]): number {
    const { sides, around } = this;
    this.enter(defined(this.blockOf[number]));
    const far = this.reach(number);
    const minX = defined(sides[4 * number]) - far;
    const minY = defined(sides[4 * number + 1]) - far;
    const maxX = defined(sides[4 * number + 2]) + far;
    const maxY = defined(sides[4 * number + 3]) + far;
    let count = 0;
    checkpoint(1 + this.blocks.length / 4);
    for (const block of this.blocks) {
      if (defined(this.first[block + 1]) <= from) continue;
      if (defined(around[4 * block]) > maxX || defined(around[4 * block + 2]) < minX) continue;
      if (defined(around[4 * block + 1]) > maxY || defined(around[4 * block + 3]) < minY) continue;
      const end = Math.min(limit, defined(this.first[block + 1]));
      for (let i = Math.max(from, defined(this.first[block])); i < end; i += 1) {
        if (defined(sides[4 * i]) > maxX || defined(sides[4 * i + 2]) < minX) continue;
        if (defined(sides[4 * i + 1]) > maxY || defined(sides[4 * i + 3]) < minY) continue;
        found[count] = i;
        count += 1;
      }
    }
    return count;
  }

  private enter(block: number): void {
    if (block === this.block) return;
    this.block = block;
    if (!this.tree) {
      if (this.blocks.length === 0) this.blocks = Array.from({ length: this.blockCount }, (_, i) => i);
      return;
    }
    const { minX, minY, maxX, maxY } = this.reachOf(block);
    this.blocks = sortAscending(this.tree.search(minX, minY, maxX, maxY));
  }

  /** Calls back with the boxes that touch the box until one answers true. */
  search(minX: number, minY: number, maxX: number, maxY: number, visit: (box: number) => boolean): void {
    const { sides } = this;
    const look = (from: number, to: number): boolean => {
      checkpoint(to - from);
      for (let i = from; i < to; i += 1) {
        if (defined(sides[4 * i]) > maxX || defined(sides[4 * i + 2]) < minX) continue;
        if (defined(sides[4 * i + 1]) <= maxY && defined(sides[4 * i + 3]) >= minY && visit(i)) return true;
      }
      return false;
    };
    if (!this.tree) look(0, this.count);
    else
      this.tree.collides(minX, minY, maxX, maxY, (block) =>
        look(defined(this.first[block]), defined(this.first[block + 1])),
      );
  }
}

/** So many are put in order one by one: `sort` makes arrays for each list, and most lists are short. */
const FEW = 24;

function sortAscending(numbers: number[]): number[] {
  if (numbers.length > FEW) return numbers.sort((a, b) => a - b);
  for (let place = 1; place < numbers.length; place += 1) {
    const moved = defined(numbers[place]);
    let free = place;
    for (; free > 0 && defined(numbers[free - 1]) > moved; free -= 1) numbers[free] = defined(numbers[free - 1]);
    numbers[free] = moved;
  }
  return numbers;
}

/** Four numbers a box, as `SequenceIndex` takes them. */
export function packBoxes(boxes: readonly Box[]): Float64Array {
  const sides = new Float64Array(4 * boxes.length);
  boxes.forEach(({ minX, minY, maxX, maxY }, i) => {
    sides[4 * i] = minX;
    sides[4 * i + 1] = minY;
    sides[4 * i + 2] = maxX;
    sides[4 * i + 3] = maxY;
  });
  return sides;
}
