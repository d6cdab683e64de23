/** The nearest others of each point, by a grid of square cells. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';

/** @returns for each point its `most` nearest others, the nearest first; fewer where there are not so many */
export function nearestOthers(xs: ArrayLike<number>, ys: ArrayLike<number>, most: number): Int32Array[] {
  const grid = new PointGrid(xs, ys);
  return Array.from({ length: xs.length }, (_, i) => grid.nearest(i, most));
}

class PointGrid {
  private readonly xs: ArrayLike<number>;
  private readonly ys: ArrayLike<number>;
  private readonly minX: number;
  private readonly minY: number;
  /** The side of a cell: two points lie in one, if they are spread evenly. */
  private readonly side: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly cells: number[][];

  constructor(xs: ArrayLike<number>, ys: ArrayLike<number>) {
    [this.xs, this.ys] = [xs, ys];
    const [x, y] = [Array.from(xs), Array.from(ys)];
    const least = (values: number[]) => values.reduce((low, value) => Math.min(low, value), Infinity);
    const most = (values: number[]) => values.reduce((high, value) => Math.max(high, value), -Infinity);
    [this.minX, this.minY] = [least(x), least(y)];
    const [width, height] = [most(x) - this.minX, most(y) - this.minY];
    this.side = Math.max(Math.sqrt((2 * width * height) / xs.length), Math.max(width, height) / (2 * xs.length)) || 1;
    this.columns = Math.floor(width / this.side) + 1;
    this.rows = Math.floor(height / this.side) + 1;
    this.cells = Array.from({ length: this.columns * this.rows }, () => []);
    for (let i = 0; i < xs.length; i += 1) this.cells[this.row(i) * this.columns + this.column(i)]?.push(i);
  }

  nearest(of: number, most: number): Int32Array {
    const [column, row] = [this.column(of), this.row(of)];
    const found: { readonly point: number; readonly square: number }[] = [];
    for (let reach = 0; reach <= Math.max(this.columns, this.rows); reach += 1) {
      checkpoint(8 * reach + 1);
      this.onRing(column, row, reach, (point) => {
        if (point !== of) found.push({ point, square: this.square(of, point) });
      });
      found.sort((a, b) => a.square - b.square || a.point - b.point);
      const last = found[most - 1];
      if (last && last.square <= (reach * this.side) ** 2) break;
    }
    return Int32Array.from(found.slice(0, most), ({ point }) => point);
  }

  private onRing(column: number, row: number, reach: number, visit: (point: number) => void): void {
    for (let y = Math.max(0, row - reach); y <= Math.min(this.rows - 1, row + reach); y += 1) {
      const whole = Math.abs(y - row) === reach;
      const step = whole || reach === 0 ? 1 : 2 * reach;
      for (let x = column - reach; x <= column + reach; x += step) {
        if (x < 0 || x >= this.columns) continue;
        for (const point of defined(this.cells[y * this.columns + x])) visit(point);
      }
    }
  }

  private square(a: number, b: number): number {
    return (
      ((this.xs[a] as number) - (this.xs[b] as number)) ** 2 + ((this.ys[a] as number) - (this.ys[b] as number)) ** 2
    );
  }

  private column(point: number): number {
    return Math.floor(((this.xs[point] as number) - this.minX) / this.side);
  }

  private row(point: number): number {
    return Math.floor(((this.ys[point] as number) - this.minY) / this.side);
  }
}
