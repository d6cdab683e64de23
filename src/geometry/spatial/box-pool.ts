/**
 * Boxes that are found once: whatever a search finds is taken out. So each of many boxes on one place is met once, where
 * an index that stays as it is would meet every pair of them.
 */
import { checkpoint } from '../../base/checkpoint';
import type { Box } from '../base/polygon-types';
import { joinBoxes } from '../base/ring';

/** Bits for each coordinate of a place along the curve that the boxes are ordered by. */
const BITS = 13;

export class BoxPool {
  /** Node 1 holds all, node i what 2i and 2i + 1 hold; leaf k is node `leaves` + k. An empty box has minX above maxX. */
  private readonly minX: Float64Array;
  private readonly minY: Float64Array;
  private readonly maxX: Float64Array;
  private readonly maxY: Float64Array;
  private readonly leaves: number;
  /** Which box a leaf holds. */
  private readonly order: Uint32Array;

  constructor(boxes: readonly Box[]) {
    this.order = orderAlongCurve(boxes);
    this.leaves = 2 ** Math.ceil(Math.log2(Math.max(1, boxes.length)));
    this.minX = new Float64Array(2 * this.leaves).fill(Infinity);
    this.minY = new Float64Array(2 * this.leaves).fill(Infinity);
    this.maxX = new Float64Array(2 * this.leaves).fill(-Infinity);
    this.maxY = new Float64Array(2 * this.leaves).fill(-Infinity);
    this.order.forEach((box, leaf) => this.fill(this.leaves + leaf, boxes[box]!));
    for (let node = this.leaves - 1; node > 0; node -= 1) this.join(node);
  }

  private fill(node: number, { minX, minY, maxX, maxY }: Box): void {
    this.minX[node] = minX;
    this.minY[node] = minY;
    this.maxX[node] = maxX;
    this.maxY[node] = maxY;
  }

  private join(node: number): void {
    const { minX, minY, maxX, maxY } = this;
    const [one, other] = [2 * node, 2 * node + 1];
    minX[node] = Math.min(minX[one]!, minX[other]!);
    minY[node] = Math.min(minY[one]!, minY[other]!);
    maxX[node] = Math.max(maxX[one]!, maxX[other]!);
    maxY[node] = Math.max(maxY[one]!, maxY[other]!);
  }

  /** Takes out the boxes that touch the box, and calls back with the number of each. */
  take(box: Box, visit: (number: number) => void): void {
    this.takeFrom(1, box, visit);
  }

  private takeFrom(node: number, box: Box, visit: (number: number) => void): void {
    checkpoint();
    if (!(this.minX[node]! <= box.maxX && this.maxX[node]! >= box.minX)) return;
    if (!(this.minY[node]! <= box.maxY && this.maxY[node]! >= box.minY)) return;
    if (node >= this.leaves) {
      this.fill(node, NOWHERE);
      visit(this.order[node - this.leaves]!);
      return;
    }
    this.takeFrom(2 * node, box, visit);
    this.takeFrom(2 * node + 1, box, visit);
    this.join(node);
  }
}

const NOWHERE: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** By the Z-order curve (Morton, 1966) through the boxes' middles, so that neighbours in the order lie side by side. */
function orderAlongCurve(boxes: readonly Box[]): Uint32Array {
  const whole = joinBoxes(boxes);
  const [across, down] = [whole.maxX - whole.minX, whole.maxY - whole.minY];
  const keys = Float64Array.from(boxes, ({ minX, minY, maxX, maxY }, number) => {
    checkpoint();
    const x = step((minX + maxX) / 2 - whole.minX, across);
    const y = step((minY + maxY) / 2 - whole.minY, down);
    return interleave(x, y) * boxes.length + number;
  }).sort();
  return Uint32Array.from(keys, (key) => key % boxes.length);
}

function step(place: number, length: number): number {
  const share = place / length;
  return share > 0 ? Math.min(2 ** BITS - 1, Math.floor(share * 2 ** BITS)) : 0;
}

function interleave(x: number, y: number): number {
  let key = 0;
  for (let bit = BITS - 1; bit >= 0; bit -= 1) key = 4 * key + 2 * ((y >> bit) & 1) + ((x >> bit) & 1);
  return key;
}
