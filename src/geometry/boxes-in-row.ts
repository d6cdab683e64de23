/**
 * Boxes in a row, and which of them come near each other. Boxes that follow each other mostly lie side by side, so a few
 * of them are sought together: an index holds the boxes round so many, and what it finds is looked through.
 */
import Flatbush from 'flatbush';
import type { Box } from './region';

const BOXES_IN_BLOCK = 8;

/** So many blocks are looked through one by one sooner than an index is made. */
const FEW_BLOCKS = 8;

export class BoxesInRow {
  private readonly count: number;
  private readonly blockCount: number;
  /** Over the blocks; undefined where they are few. */
  private readonly tree: Flatbush | undefined;
  /** The block last asked about, and those that may hold boxes near to its own. */
  private block = -1;
  private blocks: readonly number[] = [];
  private readonly found: number[] = [];

  /**
   * @param sides four numbers a box, of one at least: its least x and y, its greatest x and y
   * @param reach how far round a box others are near
   */
  constructor(private readonly sides: Float64Array, private readonly reach: (box: number) => number = () => 0) {
    this.count = sides.length / 4;
    this.blockCount = Math.ceil(this.count / BOXES_IN_BLOCK);
    this.tree = this.blockCount > FEW_BLOCKS ? this.indexBlocks() : undefined;
  }

  private indexBlocks(): Flatbush {
    const tree = new Flatbush(this.blockCount);
    for (let block = 0; block < this.blockCount; block += 1) {
      const { minX, minY, maxX, maxY } = this.boxOf(block, () => 0);
      tree.add(minX, minY, maxX, maxY);
    }
    tree.finish();
    return tree;
  }

  private boxOf(block: number, margin: (box: number) => number): Box {
    const { sides } = this;
    const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    const end = Math.min(this.count, (block + 1) * BOXES_IN_BLOCK);
    for (let i = block * BOXES_IN_BLOCK; i < end; i += 1) {
      const far = margin(i);
      box.minX = Math.min(box.minX, sides[4 * i]! - far);
      box.minY = Math.min(box.minY, sides[4 * i + 1]! - far);
      box.maxX = Math.max(box.maxX, sides[4 * i + 2]! + far);
      box.maxY = Math.max(box.maxY, sides[4 * i + 3]! + far);
    }
    return box;
  }

  /**
   * The numbers of all boxes near to one of them, itself among them, ascending. Quick when boxes are asked about in their
   * order; good until the next call.
   */
  near(number: number): readonly number[] {
    return this.collect(number, this.count);
  }

  /** The same, of those before it. */
  before(number: number): readonly number[] {
    return this.collect(number, number);
  }

  private collect(number: number, limit: number): readonly number[] {
    const { sides, found } = this;
    this.enter(Math.floor(number / BOXES_IN_BLOCK));
    const far = this.reach(number);
    const minX = sides[4 * number]! - far;
    const minY = sides[4 * number + 1]! - far;
    const maxX = sides[4 * number + 2]! + far;
    const maxY = sides[4 * number + 3]! + far;
    let count = 0;
    for (const block of this.blocks) {
      const end = Math.min(limit, (block + 1) * BOXES_IN_BLOCK);
      for (let i = block * BOXES_IN_BLOCK; i < end; i += 1) {
        if (sides[4 * i]! > maxX || sides[4 * i + 2]! < minX) continue;
        if (sides[4 * i + 1]! > maxY || sides[4 * i + 3]! < minY) continue;
        found[count] = i;
        count += 1;
      }
    }
    found.length = count;
    return found;
  }

  private enter(block: number): void {
    if (block === this.block) return;
    this.block = block;
    if (!this.tree) {
      if (this.blocks.length === 0) this.blocks = Array.from({ length: this.blockCount }, (_, i) => i);
      return;
    }
    const { minX, minY, maxX, maxY } = this.boxOf(block, this.reach);
    this.blocks = this.tree.search(minX, minY, maxX, maxY).sort((a, b) => a - b);
  }

  /** Calls back with the boxes that touch the box until one answers true. */
  search(minX: number, minY: number, maxX: number, maxY: number, visit: (box: number) => boolean): void {
    const { sides } = this;
    const look = (from: number, to: number): boolean => {
      for (let i = from; i < to; i += 1) {
        if (sides[4 * i]! > maxX || sides[4 * i + 2]! < minX) continue;
        if (sides[4 * i + 1]! <= maxY && sides[4 * i + 3]! >= minY && visit(i)) return true;
      }
      return false;
    };
    if (!this.tree) look(0, this.count);
    else {
      this.tree.collides(minX, minY, maxX, maxY, (block) =>
        look(block * BOXES_IN_BLOCK, Math.min(this.count, (block + 1) * BOXES_IN_BLOCK)));
    }
  }
}

/** Four numbers a box, as `BoxesInRow` takes them. */
export function sidesOf(boxes: readonly Box[]): Float64Array {
  const sides = new Float64Array(4 * boxes.length);
  boxes.forEach(({ minX, minY, maxX, maxY }, i) => {
    sides[4 * i] = minX;
    sides[4 * i + 1] = minY;
    sides[4 * i + 2] = maxX;
    sides[4 * i + 3] = maxY;
  });
  return sides;
}
