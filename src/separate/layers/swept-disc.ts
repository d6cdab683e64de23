/** The union of discs round many pixels: round one beside another only what the other's disc lacks is gone through. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Grid } from '../labels/box-blur';

/** Pixels beside one that come before it, row by row: to the left, above, and above at either side. */
const BEFORE = [
  [-1, 0],
  [0, -1],
  [-1, -1],
  [1, -1],
] as const;

/** Steps from the middle of a disc. */
interface Part {
  readonly dx: readonly number[];
  readonly dy: readonly number[];
  /** What the steps add to the number of a pixel. */
  readonly steps: Int32Array;
  /** What the frame leaves of them, by how near it is on each side. */
  readonly clipped: Map<number, Int32Array>;
}

export class SweptDisc {
  private readonly grid: Grid;
  private readonly reach: number;
  private readonly whole: Part;
  /** What a disc has that the one round each of the pixels before it lacks. */
  private readonly fresh: readonly Part[];

  /** @param radius pixels */
  constructor(grid: Grid, radius: number) {
    this.grid = grid;
    this.reach = Math.floor(radius);
    const isIn = (x: number, y: number): boolean => x * x + y * y <= radius * radius;
    this.whole = this.part(isIn);
    this.fresh = BEFORE.map(([u, v]) => this.part((x, y) => isIn(x, y) && !isIn(x - u, y - v)));
  }

  /**
   * Gives a value to each pixel within the radius of some of those listed.
   * @param middles ascending
   */
  mark(middles: readonly number[], into: Uint8Array, value: number): void {
    this.sweep(middles, (middle, steps) => {
      for (const step of steps) into[middle + step] = value;
    });
  }

  /**
   * Calls back for the pixels within the radius of each of those listed, but for those within the radius of a listed pixel
   * beside it that came before.
   * @param middles ascending
   */
  visit(middles: readonly number[], visit: (pixel: number, middle: number) => void): void {
    this.sweep(middles, (middle, steps) => {
      for (const step of steps) visit(middle + step, middle);
    });
  }

  private sweep(middles: readonly number[], go: (middle: number, steps: Int32Array) => void): void {
    const { reach } = this;
    const { width, height } = this.grid;
    const [atLeft, above, aboveLeft, aboveRight] = this.fresh as readonly [Part, Part, Part, Part];
    let [row, upper] = [0, 0];
    for (let i = 0; i < middles.length; i += 1) {
      const at = defined(middles[i]);
      while (at >= row + width) row += width;
      const x = at - row;
      while (defined(middles[upper]) < at - width - 1) upper += 1;
      let next = upper;
      let part = this.whole;
      if (x > 0 && i > 0 && middles[i - 1] === at - 1) part = atLeft;
      else {
        if (middles[next] === at - width - 1) {
          if (x > 0) part = aboveLeft;
          next += 1;
        }
        if (middles[next] === at - width) part = above;
        else if (part === this.whole && x + 1 < width && middles[next] === at - width + 1) part = aboveRight;
      }
      checkpoint(part.steps.length >> 4);
      const isInside = x >= reach && at >= reach * width && x + reach < width && row + reach * width < width * height;
      go(at, isInside ? part.steps : this.clipped(part, x, row / width));
    }
  }

  private part(isIn: (x: number, y: number) => boolean): Part {
    const [dx, dy]: [number[], number[]] = [[], []];
    for (let y = -this.reach; y <= this.reach; y += 1) {
      for (let x = -this.reach; x <= this.reach; x += 1) {
        if (!isIn(x, y)) continue;
        dx.push(x);
        dy.push(y);
      }
    }
    return { dx, dy, steps: this.stepsOf(dx, dy), clipped: new Map() };
  }

  /** The steps that stay within the frame. */
  private clipped({ dx, dy, clipped }: Part, x: number, y: number): Int32Array {
    const { width, height } = this.grid;
    const room = [x, width - 1 - x, y, height - 1 - y].map((pixels) => Math.min(pixels, this.reach));
    const key = room.reduce((sum, pixels) => sum * (this.reach + 1) + pixels, 0);
    const known = clipped.get(key);
    if (known) return known;
    const isInside = (i: number): boolean => {
      const [u, v] = [x + defined(dx[i]), y + defined(dy[i])];
      return u >= 0 && v >= 0 && u < width && v < height;
    };
    const steps = this.stepsOf(
      dx.filter((_, i) => isInside(i)),
      dy.filter((_, i) => isInside(i)),
    );
    clipped.set(key, steps);
    return steps;
  }

  private stepsOf(dx: readonly number[], dy: readonly number[]): Int32Array {
    return Int32Array.from(dx, (x, i) => defined(dy[i]) * this.grid.width + x);
  }
}
