/**
 * Where borders cross the lines between the centres of neighbouring pixels. Coordinates are pixels from the picture's upper
 * left corner: the first pixel covers 0..1. Round the picture lies a rim of pixels that belong to nobody.
 *
 * A cell is the square between four centres, known by the number of its upper left pixel. Its pixels are counted clockwise
 * from there, its sides clockwise from the top; an edge is a side of two cells.
 */
import { defined } from '../../base/defined';
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

  /** @param regions another label for each pixel, finer than the labels themselves */
  constructor(soft: SoftLabels, regions: Uint8Array = soft.labels) {
    this.soft = soft;
    this.across = soft.width + 2;
    this.regions = new Uint8Array(this.across * (soft.height + 2)).fill(OUTSIDE);
    for (let y = 0; y < soft.height; y += 1) {
      const row = regions.subarray(y * soft.width, (y + 1) * soft.width);
      this.regions.set(row, (y + 1) * this.across + 1);
    }
  }

  /** The number of a pixel in the picture; -1 on the rim. */
  pixelOf(at: number): number {
    const x = (at % this.across) - 1;
    const y = Math.floor(at / this.across) - 1;
    return x < 0 || y < 0 || x >= this.soft.width || y >= this.soft.height ? -1 : y * this.soft.width + x;
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
