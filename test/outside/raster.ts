/**
 * The independent way: what a general renderer (@resvg/resvg-js) paints, as pixels, and the pieces of what it leaves.
 * Nothing of the engine is used here.
 */
import { Resvg } from '@resvg/resvg-js';

export interface Raster {
  readonly width: number;
  readonly height: number;
  /** Coverage 0..255 of each pixel, row by row. */
  readonly coverage: Uint8Array;
}

/** @param widthPixels width of the picture; the height follows the file's own ratio */
export function rasterise(svg: string, widthPixels: number): Raster {
  const image = new Resvg(svg, { fitTo: { mode: 'width', value: widthPixels } }).render();
  const { width, height, pixels } = image;
  const coverage = new Uint8Array(width * height);
  for (let i = 0; i < coverage.length; i += 1) coverage[i] = pixels[4 * i + 3] as number;
  return { width, height, coverage };
}

/** Painted area in pixels: the sum of partial coverages, so that edges count by their share. */
export function paintedPixels({ coverage }: Raster): number {
  let sum = 0;
  for (const value of coverage) sum += value;
  return sum / 255;
}

export interface RasterPiece {
  readonly pixels: number;
  readonly touchesBorder: boolean;
  /** The darkest thing that can be said of it: the largest share of bare sheet in any of its pixels, 0..1. */
  readonly clearest: number;
}

/**
 * Connected pieces of the sheet: pixels less than half covered, joined along edges (corner contact joins nothing).
 * Flood fill with an explicit stack.
 */
export function bareSheetPieces({ width, height, coverage }: Raster): RasterPiece[] {
  const seen = new Uint8Array(coverage.length);
  const pieces: RasterPiece[] = [];
  const stack: number[] = [];
  const visit = (pixel: number) => {
    if (seen[pixel] || (coverage[pixel] as number) >= 128) return;
    seen[pixel] = 1;
    stack.push(pixel);
  };
  for (let start = 0; start < coverage.length; start += 1) {
    visit(start);
    if (stack.length === 0) continue;
    let pixels = 0;
    let touchesBorder = false;
    let clearest = 0;
    for (let pixel = stack.pop(); pixel !== undefined; pixel = stack.pop()) {
      const x = pixel % width;
      const y = (pixel - x) / width;
      pixels += 1;
      clearest = Math.max(clearest, 1 - (coverage[pixel] as number) / 255);
      touchesBorder ||= x === 0 || y === 0 || x === width - 1 || y === height - 1;
      if (x > 0) visit(pixel - 1);
      if (x < width - 1) visit(pixel + 1);
      if (y > 0) visit(pixel - width);
      if (y < height - 1) visit(pixel + width);
    }
    pieces.push({ pixels, touchesBorder, clearest });
  }
  return pieces;
}

/** Pieces that touch no border: what would fall out. */
export function rasterIslands(raster: Raster): RasterPiece[] {
  return bareSheetPieces(raster).filter((piece) => !piece.touchesBorder);
}
