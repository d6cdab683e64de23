/**
 * Where borders cross the lines between the centres of neighbouring pixels. Coordinates are pixels from the picture's upper
 * left corner: the first pixel covers 0..1. Round the picture lies a rim of pixels that belong to nobody.
 *
 * A cell is the square between four centres, known by the number of its upper left pixel. Its pixels are counted clockwise
 * from there, its sides clockwise from the top; an edge is a side of two cells.
 */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';
import type { SoftLabels } from '../raster';

/** The label of what lies outside the frame. */
export const OUTSIDE = 255;

/** A crossing lies no nearer to a pixel's centre than this, so that borders do not meet there. */
const CLEAR = 0.02;

export class CrossingGrid {
  /** Pixels in a row, the rim's two included. */
  readonly across: number;
  /** Label of each pixel, rim included: what the borders lie between. */
  readonly regions: Uint8Array;
  private readonly soft: SoftLabels;

  constructor(soft: SoftLabels) {
    this.soft = soft;
    this.across = soft.width + 2;
    this.regions = new Uint8Array(this.across * (soft.height + 2)).fill(OUTSIDE);
    for (let y = 0; y < soft.height; y += 1) {
      const row = soft.labels.subarray(y * soft.width, (y + 1) * soft.width);
      this.regions.set(row, (y + 1) * this.across + 1);
    }
  }

  /** The number of a pixel in the picture; -1 on the rim. */
  pixelOf(at: number): number {
    const x = (at % this.across) - 1;
    const y = Math.floor(at / this.across) - 1;
    return x < 0 || y < 0 || x >= this.soft.width || y >= this.soft.height ? -1 : y * this.soft.width + x;
  }

  /** The number on the grid of a pixel in the picture. */
  private atOf(pixel: number): number {
    const x = pixel % this.soft.width;
    return (Math.floor(pixel / this.soft.width) + 1) * this.across + x + 1;
  }

  /**
   * Gives pixels of the picture to a region of their own.
   * @returns what they were
   */
  mark(pixels: readonly number[], region: number): Uint8Array {
    const before = Uint8Array.from(pixels, (pixel) => defined(this.regions[this.atOf(pixel)]));
    for (const pixel of pixels) this.regions[this.atOf(pixel)] = region;
    return before;
  }

  unmark(pixels: readonly number[], before: Uint8Array): void {
    pixels.forEach((pixel, i) => {
      this.regions[this.atOf(pixel)] = defined(before[i]);
    });
  }

  /** The edges between a pixel of the picture and its neighbours. */
  forEdgesRound(pixel: number, visit: (edge: number) => void): void {
    const at = this.atOf(pixel);
    visit(2 * at);
    visit(2 * at + 1);
    visit(2 * (at - 1));
    visit(2 * (at - this.across) + 1);
  }

  regionBefore(edge: number): number {
    return defined(this.regions[edge >> 1]);
  }

  regionAfter(edge: number): number {
    const at = edge >> 1;
    return defined(this.regions[edge & 1 ? at + this.across : at + 1]);
  }

  isCrossed(edge: number): boolean {
    const at = edge >> 1;
    return this.regions[at] !== this.regions[edge & 1 ? at + this.across : at + 1];
  }

  edgeOf(cell: number, side: number): number {
    if (side === 0) return 2 * cell;
    if (side === 1) return 2 * (cell + 1) + 1;
    return side === 2 ? 2 * (cell + this.across) : 2 * cell + 1;
  }

  /** The cell beyond a side. */
  beyond(cell: number, side: number): number {
    if (side === 0) return cell - this.across;
    if (side === 1) return cell + 1;
    return side === 2 ? cell + this.across : cell - 1;
  }

  /** The pixel at a corner of a cell, 0..3. */
  pixelAt(cell: number, corner: number): number {
    if (corner === 0) return cell;
    if (corner === 1) return cell + 1;
    return corner === 2 ? cell + this.across + 1 : cell + this.across;
  }

  regionAt(cell: number, corner: number): number {
    return defined(this.regions[this.pixelAt(cell, corner)]);
  }

  x(edge: number): number {
    const at = edge >> 1;
    return (at % this.across) - 0.5 + (edge & 1 ? 0 : this.along(edge));
  }

  y(edge: number): number {
    const at = edge >> 1;
    return Math.floor(at / this.across) - 0.5 + (edge & 1 ? this.along(edge) : 0);
  }

  /** How far between the two centres the border crosses: where both labels have the same share. */
  private along(edge: number): number {
    const at = edge >> 1;
    const from = this.pixelOf(at);
    const to = this.pixelOf(edge & 1 ? at + this.across : at + 1);
    if (from < 0 || to < 0) return 0.5;
    const [first, second] = [defined(this.soft.labels[from]), defined(this.soft.labels[to])];
    if (first === second) return 0.5;
    const before = this.shareOf(from, first) - this.shareOf(from, second);
    const after = this.shareOf(to, first) - this.shareOf(to, second);
    if (before - after < 1e-9) return 0.5;
    return Math.max(CLEAR, Math.min(1 - CLEAR, before / (before - after)));
  }

  private shareOf(pixel: number, label: number): number {
    const share = defined(this.soft.share[pixel]);
    if (this.soft.labels[pixel] === label) return share;
    return this.soft.other[pixel] === label ? 1 - share : 0;
  }

  isFrameCorner(cell: number): boolean {
    return this.column(cell) !== undefined && this.row(cell) !== undefined;
  }

  /** The frame's own x where the cell lies on its left or right side. */
  private column(cell: number): number | undefined {
    const x = cell % this.across;
    return x === 0 ? 0 : x === this.soft.width ? this.soft.width : undefined;
  }

  private row(cell: number): number | undefined {
    const y = Math.floor(cell / this.across);
    return y === 0 ? 0 : y === this.soft.height ? this.soft.height : undefined;
  }

  /** The middle of the crossings; on the frame, where the border from within meets it. */
  placeOf(cell: number): Point {
    const [column, row] = [this.column(cell), this.row(cell)];
    let [sumX, sumY, count] = [0, 0, 0];
    let inner: Point | undefined;
    for (let side = 0; side < 4; side += 1) {
      const edge = this.edgeOf(cell, side);
      if (!this.isCrossed(edge)) continue;
      const place = { x: this.x(edge), y: this.y(edge) };
      sumX += place.x;
      sumY += place.y;
      count += 1;
      if (this.isWithin(cell, side)) inner = place;
    }
    const within = inner ?? { x: sumX / count, y: sumY / count };
    if (column !== undefined || row !== undefined) return { x: column ?? within.x, y: row ?? within.y };
    return { x: sumX / count, y: sumY / count };
  }

  /** Whether neither pixel of the side lies outside. */
  private isWithin(cell: number, side: number): boolean {
    return this.regionAt(cell, side) !== OUTSIDE && this.regionAt(cell, (side + 1) % 4) !== OUTSIDE;
  }

  /** Whether the upper left and lower right pixels of a cell have more in common than the other two. */
  joinsFirstDiagonal(cell: number): boolean {
    const [a, b, c, d] = [0, 1, 2, 3].map((corner) => this.pixelOf(this.pixelAt(cell, corner))) as [
      number,
      number,
      number,
      number,
    ];
    if (a < 0 || b < 0 || c < 0 || d < 0) return true;
    const own = this.shareOf(a, defined(this.soft.labels[a])) + this.shareOf(c, defined(this.soft.labels[c]));
    return own >= this.shareOf(b, defined(this.soft.labels[b])) + this.shareOf(d, defined(this.soft.labels[d]));
  }
}
