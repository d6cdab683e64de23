/** Labels of photos, without their grain. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { type Oklab, oklabOf } from '../colour/oklab';
import type { LabelMap, Picture, Rgb } from '../raster';
import { BLURS, blur } from './box-blur';
import { mostInWindow, type Tile, tilesOf, type Window } from './tiles';

/**
 * Squared distance in OKLab: what is farther from a colour is hardly worse for it. Else a single glint would win a whole
 * neighbourhood. The little that it is worse tells which is nearest to what is far from all: nothing is farther than 1, white from
 * black, so that no pixel counts more than four that only just are as far as counts.
 */
const WORST = 0.02;
const HARDLY = 0.05;

/**
 * For each colour how far every pixel is from it, blurred; the least wins.
 * A. Hosni, C. Rhemann, M. Bleyer, C. Rother, M. Gelautz, "Fast cost-volume filtering for visual correspondence and
 * beyond", IEEE TPAMI 35(2), 2013; with boxes for the guided filter.
 * @param radius pixels, half-width of the boxes
 */
export function smoothLabels(picture: Picture, colours: readonly Rgb[], radius: number): LabelMap {
  const { width, height } = picture;
  const places = oklabPlanes(picture);
  const centres = colours.map(oklabOf);
  const labels = new Uint8Array(width * height);
  const margin = BLURS * radius;
  const [least, cost, spare] = [0, 0, 0].map(() => new Float32Array(mostInWindow(margin))) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  for (const tile of tilesOf(picture, margin)) {
    least.fill(Infinity);
    centres.forEach((centre, label) => {
      checkpoint(10 * tile.window.width * tile.window.height);
      costsOf(places, width, tile.window, centre, cost);
      blur(cost, tile.window, radius, spare);
      keepLeast(tile, width, label, cost, least, labels);
    });
  }
  return { width, height, labels };
}

/** How far each pixel of a window is from a colour. */
function costsOf(places: Float32Array, width: number, window: Window, [l, a, b]: Oklab, into: Float32Array): void {
  for (let y = 0, i = 0; y < window.height; y += 1) {
    let from = 3 * ((window.top + y) * width + window.left);
    for (let x = 0; x < window.width; x += 1, i += 1, from += 3) {
      const dl = defined(places[from]) - l;
      const da = defined(places[from + 1]) - a;
      const db = defined(places[from + 2]) - b;
      const squared = dl * dl + da * da + db * db;
      into[i] = squared <= WORST ? squared : WORST + HARDLY * (squared - WORST);
    }
  }
}

function keepLeast(
  { minX, minY, maxX, maxY, window }: Tile,
  width: number,
  label: number,
  cost: Float32Array,
  least: Float32Array,
  labels: Uint8Array,
): void {
  for (let y = minY; y < maxY; y += 1) {
    let i = (y - window.top) * window.width + minX - window.left;
    for (let at = y * width + minX; at < y * width + maxX; at += 1, i += 1) {
      const value = defined(cost[i]);
      if (value >= defined(least[i])) continue;
      least[i] = value;
      labels[at] = label;
    }
  }
}

/** L, a and b of each pixel. */
function oklabPlanes({ width, height, data }: Picture): Float32Array {
  const places = new Float32Array(3 * width * height);
  let key = -1;
  let [l, a, b] = [0, 0, 0] as readonly [number, number, number];
  for (let y = 0; y < height; y += 1) {
    checkpoint(8 * width);
    for (let at = y * width; at < (y + 1) * width; at += 1) {
      const next = (defined(data[4 * at]) << 16) | (defined(data[4 * at + 1]) << 8) | defined(data[4 * at + 2]);
      if (next !== key) [l, a, b] = oklabOf([next >> 16, (next >> 8) & 255, next & 255]);
      key = next;
      places[3 * at] = l;
      places[3 * at + 1] = a;
      places[3 * at + 2] = b;
    }
  }
  return places;
}
