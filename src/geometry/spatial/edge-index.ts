/**
 * The edges of rings in a spatial index. Edges that follow each other lie side by side, so a few of them share one box:
 * there are fewer boxes to sort, and what a box holds is looked through in the order in which it is stored.
 */

import Flatbush from 'flatbush';
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';

const BLOCK_SIZE = 8;

export class EdgeIndex {
  /**
   * Block b holds the edges from first[b] up to, not including, first[b + 1], and its last one ends at vertex last[b].
   */
  private readonly first: Int32Array;
  private readonly last: Int32Array;
  private readonly tree: Flatbush;
  private readonly visitBlock = (block: number): boolean => this.look(block);
  /** The search under way: numbers of this object, as thousands of searches would each make another. */
  private minX = Infinity;
  private minY = Infinity;
  private maxX = -Infinity;
  private maxY = -Infinity;
  private visit: (edge: number) => boolean = () => false;

  private readonly x: Float64Array;
  private readonly y: Float64Array;

  /**
   * @param ringStart ring k has the vertices from ringStart[k] up to, not including, ringStart[k + 1]; there is one
   * vertex at least. Edge i leads from vertex i to the next one of its ring.
   */
  constructor(x: Float64Array, y: Float64Array, ringStart: Int32Array) {
    this.x = x;
    this.y = y;

    const [first, last]: [number[], number[]] = [[], []];
    for (let ring = 0; ring + 1 < ringStart.length; ring += 1) {
      const [start, end] = [defined(ringStart[ring]), defined(ringStart[ring + 1])];
      for (let edge = start; edge < end; edge += BLOCK_SIZE) {
        first.push(edge);
        last.push(edge + BLOCK_SIZE < end ? edge + BLOCK_SIZE : start);
      }
    }
    this.first = Int32Array.from([...first, x.length]);
    this.last = Int32Array.from(last);
    this.tree = new Flatbush(last.length);
    for (let block = 0; block < last.length; block += 1) this.addBox(block);
    this.tree.finish();
  }

  private addBox(block: number): void {
    const { x, y, first, last } = this;
    let minX = defined(x[defined(last[block])]);
    let minY = defined(y[defined(last[block])]);
    let maxX = minX;
    let maxY = minY;
    for (let vertex = defined(first[block]); vertex < defined(first[block + 1]); vertex += 1) {
      if (defined(x[vertex]) < minX) minX = defined(x[vertex]);
      if (defined(x[vertex]) > maxX) maxX = defined(x[vertex]);
      if (defined(y[vertex]) < minY) minY = defined(y[vertex]);
      if (defined(y[vertex]) > maxY) maxY = defined(y[vertex]);
    }
    this.tree.add(minX, minY, maxX, maxY);
  }

  /** Calls back with the edges whose boxes touch the box until one answers true. The callback may search in turn. */
  search(minX: number, minY: number, maxX: number, maxY: number, visit: (edge: number) => boolean): void {
    const { minX: x0, minY: y0, maxX: x1, maxY: y1, visit: before } = this;
    this.ask(minX, minY, maxX, maxY, visit);
    this.tree.collides(minX, minY, maxX, maxY, this.visitBlock);
    this.ask(x0, y0, x1, y1, before);
  }

  private ask(minX: number, minY: number, maxX: number, maxY: number, visit: (edge: number) => boolean): void {
    this.minX = minX;
    this.minY = minY;
    this.maxX = maxX;
    this.maxY = maxY;
    this.visit = visit;
  }

  private look(block: number): boolean {
    checkpoint(4);
    const { x, y } = this;
    const { minX, minY, maxX, maxY, visit } = this;
    const end = defined(this.first[block + 1]);
    for (let edge = defined(this.first[block]); edge < end; edge += 1) {
      const to = edge + 1 < end ? edge + 1 : defined(this.last[block]);
      const ax = defined(x[edge]);
      const ay = defined(y[edge]);
      const bx = defined(x[to]);
      const by = defined(y[to]);
      if ((ax < minX && bx < minX) || (ax > maxX && bx > maxX)) continue;
      if ((ay < minY && by < minY) || (ay > maxY && by > maxY)) continue;
      if (visit(edge)) return true;
    }
    return false;
  }
}
