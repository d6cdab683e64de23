/** How far each pixel is from the nearest site, and which site that is. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Bitmap } from '../bits/bitmap';
import { forRunsInRow } from '../bits/runs';

export interface Distances {
  /** Squared, in pixels; infinite where there is no site. */
  readonly squared: Float32Array;
  /** The pixel's number; -1 where there is none. */
  readonly nearest: Int32Array;
}

/**
 * Exact Euclidean distances in a time that goes with the pixels alone.
 * P. F. Felzenszwalb, D. P. Huttenlocher, "Distance transforms of sampled functions", Theory of Computing 8, 2012.
 */
export function distancesTo(sites: Bitmap): Distances {
  const { width, height } = sites;
  const inColumn = new Int32Array(width * height).fill(-1);
  nearestInColumns(sites, inColumn);
  const squared = new Float32Array(inColumn.length);
  const nearest = new Int32Array(inColumn.length).fill(-1);
  const row = new LowerEnvelope(width);
  for (let y = 0; y < height; y += 1) {
    checkpoint(4 * width);
    row.clear();
    for (let x = 0; x < width; x += 1) {
      const site = defined(inColumn[y * width + x]);
      if (site >= 0) row.add(x, (site - y) * (site - y));
    }
    row.read(y * width, inColumn, squared, nearest);
  }
  return { squared, nearest };
}

/** For each pixel the row of the nearest site in its own column, or -1. */
function nearestInColumns(sites: Bitmap, into: Int32Array): void {
  const { width, height } = sites;
  for (let y = 0; y < height; y += 1) {
    checkpoint(width);
    if (y > 0) into.copyWithin(y * width, (y - 1) * width, y * width);
    forRunsInRow(sites, y, (start, stop) => into.fill(y, start, stop));
  }
  for (let y = height - 2; y >= 0; y -= 1) {
    checkpoint(width);
    for (let at = y * width; at < (y + 1) * width; at += 1) {
      const below = defined(into[at + width]);
      const own = defined(into[at]);
      if (below >= 0 && (own < 0 || Math.abs(below - y) < y - own)) into[at] = below;
    }
  }
}

/** The parabolas (x − place)² + height that are lowest somewhere in a row. */
class LowerEnvelope {
  private readonly places: Int32Array;
  private readonly heights: Float64Array;
  /** From where on each is the lowest. */
  private readonly starts: Float64Array;
  private readonly width: number;
  private last = -1;

  constructor(width: number) {
    this.width = width;
    this.places = new Int32Array(width);
    this.heights = new Float64Array(width);
    this.starts = new Float64Array(width + 1);
  }

  clear(): void {
    this.last = -1;
  }

  /** Places ascend. */
  add(place: number, height: number): void {
    let start = -Infinity;
    while (this.last >= 0) {
      const other = defined(this.places[this.last]);
      const rise = height + place * place - defined(this.heights[this.last]) - other * other;
      start = rise / (2 * (place - other));
      if (start > defined(this.starts[this.last])) break;
      this.last -= 1;
      start = -Infinity;
    }
    this.last += 1;
    this.places[this.last] = place;
    this.heights[this.last] = height;
    this.starts[this.last] = start;
  }

  read(row: number, inColumn: Int32Array, squared: Float32Array, nearest: Int32Array): void {
    if (this.last < 0) {
      squared.fill(Infinity, row, row + this.width);
      return;
    }
    let lowest = 0;
    for (let x = 0; x < this.width; x += 1) {
      while (lowest < this.last && defined(this.starts[lowest + 1]) < x) lowest += 1;
      const place = defined(this.places[lowest]);
      squared[row + x] = (x - place) * (x - place) + defined(this.heights[lowest]);
      nearest[row + x] = defined(inColumn[row + place]) * this.width + place;
    }
  }
}
