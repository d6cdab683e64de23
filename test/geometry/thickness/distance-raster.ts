/**
 * A third way to thin parts, by pixels: exact Euclidean distance transform, after P. F. Felzenszwalb and
 * D. P. Huttenlocher, "Distance Transforms of Sampled Functions", Theory of Computing 8 (2012). Shares no code with the
 * search.
 */
import type { Point } from '../../../src/geometry/base/curve-types';
import type { Polygon, Ring } from '../../../src/geometry/base/polygon-types';

export interface Raster {
  readonly columns: number;
  readonly rows: number;
  /** mm: side of a pixel, and the middle of the first one. */
  readonly pitch: number;
  readonly x: number;
  readonly y: number;
}

export interface Picture extends Raster {
  readonly inside: Uint8Array;
}

/** Two pixels of outside all round. Pixels count as inside if their middle is, by crossing parity. */
export function rasterise(polygon: Polygon, pitch: number): Picture {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let at = 0; at < polygon.outer.length; at += 2) {
    minX = Math.min(minX, polygon.outer[at]!);
    maxX = Math.max(maxX, polygon.outer[at]!);
    minY = Math.min(minY, polygon.outer[at + 1]!);
    maxY = Math.max(maxY, polygon.outer[at + 1]!);
  }
  const [x, y] = [minX - 2 * pitch, minY - 2 * pitch];
  const [columns, rows] = [Math.ceil((maxX - minX) / pitch) + 5, Math.ceil((maxY - minY) / pitch) + 5];
  const picture = { columns, rows, pitch, x, y, inside: new Uint8Array(columns * rows) };
  for (const ring of [polygon.outer, ...polygon.holes]) flipRightOf(picture, ring);
  return picture;
}

/** Turns over every pixel to the right of each edge. */
function flipRightOf({ columns, pitch, x, y, inside }: Picture, ring: Ring): void {
  for (let at = 0; at < ring.length; at += 2) {
    const next = (at + 2) % ring.length;
    const [ax, ay, bx, by] = [ring[at]!, ring[at + 1]!, ring[next]!, ring[next + 1]!];
    const [low, high] = [Math.ceil((Math.min(ay, by) - y) / pitch), Math.ceil((Math.max(ay, by) - y) / pitch)];
    for (let row = low; row < high; row += 1) {
      const crossing = ax + ((y + row * pitch - ay) * (bx - ax)) / (by - ay);
      for (let column = Math.max(0, Math.ceil((crossing - x) / pitch)); column < columns; column += 1) {
        inside[row * columns + column]! ^= 1;
      }
    }
  }
}

/** mm from each pixel's middle to that of the nearest pixel for which `target` holds. */
export function distances({ columns, rows, pitch }: Raster, target: (pixel: number) => boolean): Float64Array {
  const far = 4 * (columns + rows) ** 2;
  const squares = Float64Array.from({ length: columns * rows }, (_, pixel) => (target(pixel) ? 0 : far));
  for (let column = 0; column < columns; column += 1) transform(squares, column, columns, rows);
  for (let row = 0; row < rows; row += 1) transform(squares, row * columns, 1, columns);
  return squares.map((square) => pitch * Math.sqrt(square));
}

/** One line of the transform: the lower envelope of parabolas, one from each sample. */
function transform(values: Float64Array, start: number, step: number, count: number): void {
  const samples = Float64Array.from({ length: count }, (_, at) => values[start + at * step]!);
  const roots = new Int32Array(count);
  const bounds = new Float64Array(count + 1);
  let last = 0;
  bounds[0] = -Infinity;
  bounds[1] = Infinity;
  const meets = (p: number, q: number): number => (samples[q]! + q * q - samples[p]! - p * p) / (2 * (q - p));
  for (let at = 1; at < count; at += 1) {
    let bound = meets(roots[last]!, at);
    while (bound <= bounds[last]!) {
      last -= 1;
      bound = meets(roots[last]!, at);
    }
    last += 1;
    roots[last] = at;
    bounds[last] = bound;
    bounds[last + 1] = Infinity;
  }
  for (let at = 0, piece = 0; at < count; at += 1) {
    while (bounds[piece + 1]! < at) piece += 1;
    values[start + at * step] = (at - roots[piece]!) ** 2 + samples[roots[piece]!]!;
  }
}

/**
 * mm from each pixel to the nearest source by steps to the eight neighbours that are in: up to 8 % more than straight.
 */
export function pathLengths(
  { columns, rows, pitch }: Raster,
  isIn: (pixel: number) => boolean,
  isSource: (pixel: number) => boolean,
): Float64Array {
  const lengths = Float64Array.from({ length: columns * rows }, (_, pixel) => (isSource(pixel) ? 0 : Infinity));
  let front = [...lengths.keys()].filter(isSource);
  while (front.length > 0) {
    const reached = new Set<number>();
    for (const from of front) {
      for (let step = 0; step < 9; step += 1) {
        const [down, across] = [Math.floor(step / 3) - 1, (step % 3) - 1];
        const to = from + down * columns + across;
        const length = lengths[from]! + pitch * Math.hypot(down, across);
        if (to < 0 || to >= lengths.length || !isIn(to) || length >= lengths[to]! - 1e-9) continue;
        lengths[to] = length;
        reached.add(to);
      }
    }
    front = [...reached];
  }
  return lengths;
}

export interface Labels {
  /** The number of each pixel's piece, from 1 on; 0 for pixels that are not in. */
  readonly of: Int32Array;
  readonly count: number;
}

/** Connected pieces; corners join pixels only if `corners`. */
export function labels({ columns, rows }: Raster, isIn: (pixel: number) => boolean, corners: boolean): Labels {
  const of = new Int32Array(columns * rows);
  const steps = [1, -1, columns, -columns, ...(corners ? [columns + 1, columns - 1, -columns + 1, -columns - 1] : [])];
  let count = 0;
  const stack: number[] = [];
  for (let pixel = 0; pixel < of.length; pixel += 1) {
    if (of[pixel] !== 0 || !isIn(pixel)) continue;
    count += 1;
    of[pixel] = count;
    stack.push(pixel);
    for (let from = stack.pop(); from !== undefined; from = stack.pop()) {
      for (const step of steps) {
        const to = from + step;
        if (to < 0 || to >= of.length || of[to] !== 0 || !isIn(to)) continue;
        of[to] = count;
        stack.push(to);
      }
    }
  }
  return { of, count };
}

export function pixelAt({ columns, rows, pitch, x, y }: Raster, point: Point): number {
  const column = Math.min(columns - 1, Math.max(0, Math.round((point.x - x) / pitch)));
  return Math.min(rows - 1, Math.max(0, Math.round((point.y - y) / pitch))) * columns + column;
}

export function pointAt({ columns, pitch, x, y }: Raster, pixel: number): Point {
  return { x: x + pitch * (pixel % columns), y: y + pitch * Math.floor(pixel / columns) };
}
