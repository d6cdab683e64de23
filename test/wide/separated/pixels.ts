/** What is told of a stack from the pixels of a general renderer (@resvg/resvg-js) alone. Nothing of the engine is used here. */
import { rasterise } from '../../outside/raster';
import { islandsAmong, type Mask, paintOf, piecesOf } from '../bridge-sense/pixels';

export interface PixelRule {
  /** Pixels to the mm. */
  readonly fineness: number;
  /** mm. */
  readonly bridge: number;
  readonly opening: number;
  readonly slip: number;
}

/** Of bare sheet round the print, mm: what is held there is held. */
const RIM = 3;

/** Pixels that widths may be off by, at each of two edges half of one. */
const BLUR = 1;

/** mm²: smaller parts beyond a thin place are none. */
const SPECK = 0.05;

/** The paint of each layer, with a rim of sheet round it. */
export function layersOf(text: string, { fineness }: PixelRule): Mask[] {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(text)!.map(Number) as [number, number, number];
  const view = `viewBox="${-RIM} ${-RIM} ${width + 2 * RIM} ${height + 2 * RIM}"`;
  const groups = [...text.matchAll(/^ {2}<g .*?^ {2}<\/g>/gms)].map(([group]) => group);
  const across = Math.round((width + 2 * RIM) * fineness);
  return groups.map((group) =>
    paintOf(rasterise(`<svg xmlns="http://www.w3.org/2000/svg" ${view}>${group}</svg>`, across)),
  );
}

/** What hangs on nothing. */
export function islandsOf(layer: Mask): number {
  return islandsAmong(piecesOf(layer)).length;
}

/** Parts of the sheet that hold on by less than the limit, and openings that are not as wide somewhere. */
export function thinPlaces(layer: Mask, { fineness, bridge, opening }: PixelRule): { sheet: number; openings: number } {
  const isPaint = (at: number): boolean => layer.on[at] === 1;
  const isSheet = (at: number): boolean => layer.on[at] === 0;
  return {
    sheet: partsBeyond(layer, isSheet, (bridge / 2) * fineness - BLUR, fineness),
    openings: partsBeyond(layer, isPaint, (opening / 2) * fineness - BLUR, fineness),
  };
}

/** How many more parts a region has where a disc does not pass; a part that no disc enters counts as one. */
function partsBeyond(layer: Mask, isIn: (at: number) => boolean, radius: number, fineness: number): number {
  const depth = squaredDepths(layer, isIn);
  const whole = parts(layer, isIn);
  const deep = parts(layer, (at) => depth[at]! > radius * radius);
  const least = SPECK * fineness ** 2;
  const inside = new Map<number, number>();
  for (const { size, pixel } of deep.list) {
    const own = whole.number[pixel]!;
    if (size >= least / 4) inside.set(own, (inside.get(own) ?? 0) + 1);
  }
  return whole.list.reduce((sum, { size, pixel }) => {
    if (size < least) return sum;
    const many = inside.get(whole.number[pixel]!) ?? 0;
    return sum + (many === 0 ? 1 : many - 1);
  }, 0);
}

function parts({ width, height }: Mask, isIn: (at: number) => boolean) {
  const number = new Int32Array(width * height).fill(-1);
  const list: { size: number; pixel: number }[] = [];
  const stack: number[] = [];
  for (let start = 0; start < number.length; start += 1) {
    if (number[start]! >= 0 || !isIn(start)) continue;
    const own = list.length;
    const visit = (at: number): void => {
      if (number[at]! >= 0 || !isIn(at)) return;
      number[at] = own;
      stack.push(at);
    };
    visit(start);
    let size = 0;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      size += 1;
      const x = at % width;
      if (x > 0) visit(at - 1);
      if (x + 1 < width) visit(at + 1);
      if (at >= width) visit(at - width);
      if (at + width < number.length) visit(at + width);
    }
    list.push({ size, pixel: start });
  }
  return { number, list };
}

/** Squared distance of each pixel to the nearest one outside, by the lower envelope of parabolas, rows after columns. */
export function squaredDepths({ width, height }: Mask, isIn: (at: number) => boolean): Float64Array {
  const far = width + height;
  const column = new Float64Array(width * height);
  for (let x = 0; x < width; x += 1) {
    let distance = far;
    for (let y = 0; y < height; y += 1) {
      distance = isIn(y * width + x) ? Math.min(far, distance + 1) : 0;
      column[y * width + x] = distance;
    }
    distance = far;
    for (let y = height - 1; y >= 0; y -= 1) {
      distance = isIn(y * width + x) ? Math.min(far, distance + 1) : 0;
      column[y * width + x] = Math.min(column[y * width + x]!, distance);
    }
  }
  const squared = new Float64Array(width * height);
  const places = new Int32Array(width);
  const starts = new Float64Array(width + 1);
  for (let y = 0; y < height; y += 1) {
    const row = y * width;
    const value = (x: number): number => column[row + x]! ** 2;
    let last = 0;
    places[0] = 0;
    starts[0] = -Infinity;
    for (let x = 1; x < width; x += 1) {
      let from = 0;
      for (;;) {
        const other = places[last]!;
        from = (value(x) + x * x - value(other) - other * other) / (2 * (x - other));
        if (last === 0 || from > starts[last]!) break;
        last -= 1;
      }
      if (from <= starts[last]!) last -= 1;
      last += 1;
      places[last] = x;
      starts[last] = from;
    }
    starts[last + 1] = Infinity;
    for (let x = 0, at = 0; x < width; x += 1) {
      while (starts[at + 1]! < x) at += 1;
      squared[row + x] = (x - places[at]!) ** 2 + value(places[at]!);
    }
  }
  return squared;
}

/** mm² of the print that nothing paints, the rim aside. */
export function bareArea(layers: readonly Mask[], rule: PixelRule): number {
  return bareWhere(coverOf(layers), layers[0]!, Math.ceil(RIM * rule.fineness) + 1) / rule.fineness ** 2;
}

/** The largest area in mm² that comes out bare where one sheet lands off its place by so many mm, two slips from the frame. */
export function bareAtSlip(layers: readonly Mask[], slip: number, rule: PixelRule): number {
  const cover = coverOf(layers);
  const step = Math.floor(slip * rule.fineness);
  const rim = Math.ceil((RIM + 2 * slip) * rule.fineness) + 1;
  let most = 0;
  for (const layer of layers) {
    for (const by of [step, -step, step * layer.width, -step * layer.width]) {
      const moved = cover.slice();
      for (let at = 0; at < moved.length; at += 1) {
        moved[at] = moved[at]! - layer.on[at]! + (layer.on[at - by] ?? 0);
      }
      most = Math.max(most, bareWhere(moved, layer, rim));
    }
  }
  return most / rule.fineness ** 2;
}

function coverOf(layers: readonly Mask[]): Int8Array {
  const cover = new Int8Array(layers[0]!.on.length);
  for (const { on } of layers) for (let at = 0; at < cover.length; at += 1) cover[at] = cover[at]! + on[at]!;
  return cover;
}

function bareWhere(cover: Int8Array, { width, height }: Mask, rim: number): number {
  let bare = 0;
  for (let y = rim; y < height - rim; y += 1) {
    for (let x = rim; x < width - rim; x += 1) if (cover[y * width + x] === 0) bare += 1;
  }
  return bare;
}
