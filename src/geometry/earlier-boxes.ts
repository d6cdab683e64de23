/**
 * Of boxes in a row, those before each one that come near it. Boxes that follow each other mostly lie side by side, so a
 * few of them are sought together: an index holds the boxes round so many, and what it finds is looked through.
 */
import Flatbush from 'flatbush';
import type { Box } from './region';

const BOXES_IN_BLOCK = 8;

export class EarlierBoxes {
  /** Four numbers a box: the least x and y, the greatest x and y. */
  private readonly sides: Float64Array;
  private readonly tree: Flatbush;
  /** The block last asked about, and those that may hold boxes near to its own. */
  private block = -1;
  private blocks: readonly number[] = [];
  private readonly found: number[] = [];

  /** @param reach mm: how far round a box others are near; at least one box */
  constructor(boxes: readonly Box[], private readonly reach: (box: number) => number) {
    this.sides = new Float64Array(4 * boxes.length);
    boxes.forEach(({ minX, minY, maxX, maxY }, i) => {
      this.sides[4 * i] = minX;
      this.sides[4 * i + 1] = minY;
      this.sides[4 * i + 2] = maxX;
      this.sides[4 * i + 3] = maxY;
    });
    const blocks = Math.ceil(boxes.length / BOXES_IN_BLOCK);
    this.tree = new Flatbush(blocks);
    for (let block = 0; block < blocks; block += 1) {
      const { minX, minY, maxX, maxY } = this.boxOf(block, () => 0);
      this.tree.add(minX, minY, maxX, maxY);
    }
    this.tree.finish();
  }

  private boxOf(block: number, margin: (box: number) => number): Box {
    const { sides } = this;
    const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
    const end = Math.min(sides.length / 4, (block + 1) * BOXES_IN_BLOCK);
    for (let i = block * BOXES_IN_BLOCK; i < end; i += 1) {
      const far = margin(i);
      box.minX = Math.min(box.minX, sides[4 * i]! - far);
      box.minY = Math.min(box.minY, sides[4 * i + 1]! - far);
      box.maxX = Math.max(box.maxX, sides[4 * i + 2]! + far);
      box.maxY = Math.max(box.maxY, sides[4 * i + 3]! + far);
    }
    return box;
  }

  /** The numbers of those boxes, ascending. Quick when boxes are asked about in their order; good until the next call. */
  before(number: number): readonly number[] {
    const { sides, found } = this;
    this.enter(Math.floor(number / BOXES_IN_BLOCK));
    const far = this.reach(number);
    const minX = sides[4 * number]! - far;
    const minY = sides[4 * number + 1]! - far;
    const maxX = sides[4 * number + 2]! + far;
    const maxY = sides[4 * number + 3]! + far;
    let count = 0;
    for (const block of this.blocks) {
      const end = Math.min(number, (block + 1) * BOXES_IN_BLOCK);
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
    const { minX, minY, maxX, maxY } = this.boxOf(block, this.reach);
    this.blocks = this.tree.search(minX, minY, maxX, maxY, (other) => other <= block).sort((a, b) => a - b);
  }
}
