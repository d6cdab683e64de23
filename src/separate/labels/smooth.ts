/** Labels of photos, without their grain. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { oklabOf } from '../colour/oklab';
import type { LabelMap, Picture, Rgb, SoftLabels } from '../raster';
import { blur } from './box-blur';

/** Squared distance in OKLab: what is farther from a colour is no worse for it. Else a single glint would win a whole neighbourhood. */
const WORST = 0.02;

/**
 * For each colour how far every pixel is from it, blurred; the least wins.
 * A. Hosni, C. Rhemann, M. Bleyer, C. Rother, M. Gelautz, "Fast cost-volume filtering for visual correspondence and
 * beyond", IEEE TPAMI 35(2), 2013; with boxes for the guided filter.
 * @param radius pixels, half-width of the boxes
 */
export function smoothLabels(picture: Picture, colours: readonly Rgb[], radius: number): LabelMap {
  const { width, height } = picture;
  const places = oklabPlanes(picture);
  const labels = new Uint8Array(width * height);
  const least = new Float32Array(width * height).fill(Infinity);
  const cost = new Float32Array(width * height);
  const spare = new Float32Array(width * height);
  colours.forEach((colour, label) => {
    const [l, a, b] = oklabOf(colour);
    for (let at = 0; at < cost.length; at += 1) {
      const dl = defined(places[3 * at]) - l;
      const da = defined(places[3 * at + 1]) - a;
      const db = defined(places[3 * at + 2]) - b;
      cost[at] = Math.min(WORST, dl * dl + da * da + db * db);
    }
    blur(cost, picture, radius, spare);
    for (let at = 0; at < cost.length; at += 1) {
      const value = defined(cost[at]);
      if (value >= defined(least[at])) continue;
      least[at] = value;
      labels[at] = label;
    }
  });
  return { width, height, labels };
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

/**
 * One step of threshold dynamics: each label's own area is blurred, the greatest wins. Borders lose their ripples, and how
 * near the two greatest come tells where between two pixels the border runs.
 * B. Merriman, J. Bence, S. Osher, "Diffusion generated motion by mean curvature", 1992.
 * @param radius pixels, half-width of the boxes
 */
export function evened({ width, height, labels: before }: LabelMap, count: number, radius: number): SoftLabels {
  const grid = { width, height };
  const labels = new Uint8Array(before.length);
  const other = new Uint8Array(before.length);
  const first = new Float32Array(before.length);
  const second = new Float32Array(before.length);
  const area = new Float32Array(before.length);
  const spare = new Float32Array(before.length);
  for (let label = 0; label < count; label += 1) {
    if (!before.includes(label)) continue;
    for (let at = 0; at < area.length; at += 1) area[at] = before[at] === label ? 1 : 0;
    blur(area, grid, radius, spare);
    for (let at = 0; at < area.length; at += 1) {
      const value = defined(area[at]);
      if (value > defined(first[at])) {
        second[at] = defined(first[at]);
        other[at] = defined(labels[at]);
        first[at] = value;
        labels[at] = label;
      } else if (value > defined(second[at])) {
        second[at] = value;
        other[at] = label;
      }
    }
  }
  for (let at = 0; at < area.length; at += 1) {
    const most = defined(first[at]);
    const next = defined(second[at]);
    area[at] = next > 1e-6 ? most / (most + next) : 1;
  }
  return { ...grid, labels, other, share: area };
}
