/**
 * The reference: a stencil checked by pixels. A renderer at 20 px/mm, the pieces of what it leaves bare, and the
 * distance of every bare pixel from paint. It measures to a twentieth of a millimetre at best.
 */
import { bareSheetPieces, rasterise } from '../outside/raster';

export const PIXELS_PER_MM = 20;

/** A renderer's picture has to fit in memory: above this side, in pixels, the way is not taken. */
export const MAX_SIDE = 12_000;

export function checkByRaster(svg: string, widthMm: number): { pieces: number; thinnest: number } {
  const raster = rasterise(svg, Math.round(widthMm * PIXELS_PER_MM));
  const pieces = bareSheetPieces(raster).length;
  const distances = distanceToPaint(raster.coverage, raster.width, raster.height);
  let thinnest = 0;
  for (const squared of distances) if (squared > thinnest) thinnest = squared;
  return { pieces, thinnest: Math.sqrt(thinnest) / PIXELS_PER_MM };
}

/**
 * Squared distances in pixels to the nearest painted pixel, exactly, in linear time: P. Felzenszwalb, D. Huttenlocher,
 * "Distance Transforms of Sampled Functions", Theory of Computing 8 (2012).
 */
export function distanceToPaint(coverage: Uint8Array, width: number, height: number): Float32Array {
  const far = width * width + height * height;
  const grid = Float32Array.from(coverage, (value) => (value >= 128 ? 0 : far));
  const line = new Line(Math.max(width, height));
  for (let x = 0; x < width; x += 1) line.transform(grid, x, width, height);
  for (let y = 0; y < height; y += 1) line.transform(grid, y * width, 1, width);
  return grid;
}

/** The lower envelope of parabolas along one row or column. */
class Line {
  private readonly values: Float64Array;
  private readonly roots: Int32Array;
  private readonly bounds: Float64Array;

  constructor(longest: number) {
    this.values = new Float64Array(longest);
    this.roots = new Int32Array(longest);
    this.bounds = new Float64Array(longest + 1);
  }

  transform(grid: Float32Array, offset: number, stride: number, length: number): void {
    const [values, roots, bounds] = [this.values, this.roots, this.bounds];
    for (let i = 0; i < length; i += 1) values[i] = grid[offset + i * stride]!;
    let k = 0;
    roots[0] = 0;
    bounds[0] = -Infinity;
    bounds[1] = Infinity;
    for (let q = 1; q < length; q += 1) {
      let s = meet(values, q, roots[k]!);
      while (s <= bounds[k]!) {
        k -= 1;
        s = meet(values, q, roots[k]!);
      }
      k += 1;
      roots[k] = q;
      bounds[k] = s;
      bounds[k + 1] = Infinity;
    }
    k = 0;
    for (let q = 0; q < length; q += 1) {
      while (bounds[k + 1]! < q) k += 1;
      const root = roots[k]!;
      grid[offset + q * stride] = (q - root) ** 2 + values[root]!;
    }
  }
}

/** Where the parabolas rooted at p and q meet. */
function meet(values: Float64Array, q: number, p: number): number {
  return (values[q]! + q * q - (values[p]! + p * p)) / (2 * (q - p));
}
