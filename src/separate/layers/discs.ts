/** Discs of pixels, stamped round those that lie on a border: cheap where borders are short beside areas. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Grid } from '../labels/box-blur';

/** Calls back for each pixel of the grid within the radius of one, the nearest first, with the squared distance. */
export class Disc {
  private readonly dx: Int32Array;
  private readonly dy: Int32Array;
  private readonly squared: Float64Array;
  /** What the steps add to the number of a pixel. */
  private readonly steps: Int32Array;
  private readonly reach: number;
  private readonly grid: Grid;

  /** @param radius pixels */
  constructor(grid: Grid, radius: number) {
    const reach = Math.floor(radius);
    const steps: [number, number][] = [];
    for (let y = -reach; y <= reach; y += 1) {
      for (let x = -reach; x <= reach; x += 1) if (x * x + y * y <= radius * radius) steps.push([x, y]);
    }
    steps.sort(([x1, y1], [x2, y2]) => x1 * x1 + y1 * y1 - x2 * x2 - y2 * y2);
    this.grid = grid;
    this.reach = reach;
    this.steps = Int32Array.from(steps, ([x, y]) => y * grid.width + x);
    this.dx = Int32Array.from(steps, ([x]) => x);
    this.dy = Int32Array.from(steps, ([, y]) => y);
    this.squared = Float64Array.from(steps, ([x, y]) => x * x + y * y);
  }

  stamp(at: number, visit: (pixel: number, squared: number) => void): void {
    const { dx, dy, squared } = this;
    const { width, height } = this.grid;
    const x = at % width;
    const y = (at - x) / width;
    checkpoint(dx.length >> 2);
    if (this.isInside(x, y)) {
      for (let i = 0; i < dx.length; i += 1) visit(at + defined(this.steps[i]), defined(squared[i]));
      return;
    }
    for (let i = 0; i < dx.length; i += 1) {
      const u = x + defined(dx[i]);
      const v = y + defined(dy[i]);
      if (u >= 0 && v >= 0 && u < width && v < height) visit(v * width + u, defined(squared[i]));
    }
  }

  /** Whether the frame cuts nothing of the disc off. */
  private isInside(x: number, y: number): boolean {
    const { reach, grid } = this;
    return x >= reach && y >= reach && x + reach < grid.width && y + reach < grid.height;
  }
}

/** Whether some pixel beside one, at its four sides, is what is asked for. */
export function hasNeighbour({ width, height }: Grid, at: number, isWanted: (pixel: number) => boolean): boolean {
  const x = at % width;
  return (
    (x > 0 && isWanted(at - 1)) ||
    (x + 1 < width && isWanted(at + 1)) ||
    (at >= width && isWanted(at - width)) ||
    (at + width < width * height && isWanted(at + width))
  );
}
