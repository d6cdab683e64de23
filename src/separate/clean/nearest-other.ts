/** How far pixels are from what is not of their set. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Grid } from '../labels/box-blur';

export class NearestOther {
  private readonly grid: Grid;
  private readonly isOther: (pixel: number) => boolean;
  private readonly reach: number;
  /** Steps within reach, the nearest first; of those as near row by row. */
  private readonly dx: Int32Array;
  private readonly dy: Int32Array;

  /** @param reach pixels; what is as far away as that is not looked at */
  constructor(grid: Grid, isOther: (pixel: number) => boolean, reach: number) {
    this.grid = grid;
    this.isOther = isOther;
    this.reach = reach;
    const steps: [number, number][] = [];
    for (let y = -reach; y <= reach; y += 1) {
      for (let x = -reach; x <= reach; x += 1) if (x * x + y * y < reach * reach) steps.push([x, y]);
    }
    steps.sort(([x1, y1], [x2, y2]) => x1 * x1 + y1 * y1 - x2 * x2 - y2 * y2);
    this.dx = Int32Array.from(steps, ([x]) => x);
    this.dy = Int32Array.from(steps, ([, y]) => y);
  }

  /** The nearest pixel that is not in the set, none where it is the frame, and how far away it is, in pixels. */
  of(at: number): { readonly distance: number; readonly pixel: number | undefined } {
    const { width, height } = this.grid;
    const x = at % width;
    const y = (at - x) / width;
    for (let i = 0; i < this.dx.length; i += 1) {
      const [u, v] = [defined(this.dx[i]), defined(this.dy[i])];
      const isInside = x + u >= 0 && x + u < width && y + v >= 0 && y + v < height;
      const other = at + v * width + u;
      if (isInside && !this.isOther(other)) continue;
      checkpoint(i >> 3);
      return { distance: Math.sqrt(u * u + v * v), pixel: isInside ? other : undefined };
    }
    return { distance: this.reach, pixel: undefined };
  }
}
