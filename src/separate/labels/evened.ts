/**
 * One step of threshold dynamics: each label's own area is blurred, the greatest wins. Borders lose their ripples, and how
 * near the two greatest come tells where between two pixels the border runs.
 * B. Merriman, J. Bence, S. Osher, "Diffusion generated motion by mean curvature", 1992.
 */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Bitmap } from '../bits/bitmap';
import { hardLabels, type LabelMap, type SoftLabels } from '../raster';
import { BLURS, blur } from './box-blur';
import { mostInWindow, type Tile, tilesOf, type Window } from './tiles';

/**
 * @param radius pixels, half-width of the boxes
 * @param where only what it says of these pixels is needed; else of all
 */
export function evened(map: LabelMap, radius: number, where?: Bitmap): SoftLabels {
  const soft = hardLabels({ ...map, labels: map.labels.slice() });
  const margin = BLURS * radius;
  const evening = new Evening(map, soft, radius, mostInWindow(margin));
  for (const tile of tilesOf(map, margin)) if (!where || reaches(where, tile)) evening.add(tile);
  return soft;
}

function reaches(set: Bitmap, { minX, minY, maxX, maxY }: Tile): boolean {
  for (let y = minY; y < maxY; y += 1) {
    for (let i = y * set.stride + (minX >> 5); i <= y * set.stride + ((maxX - 1) >> 5); i += 1) {
      if (set.words[i] !== 0) return true;
    }
  }
  return false;
}

class Evening {
  private readonly map: LabelMap;
  private readonly into: SoftLabels;
  private readonly radius: number;
  private readonly area: Float32Array;
  private readonly spare: Float32Array;
  /** Of each pixel of a window: how much it has of the greatest label and of the second. */
  private readonly first: Float32Array;
  private readonly second: Float32Array;

  /** @param most pixels of a window */
  constructor(map: LabelMap, into: SoftLabels, radius: number, most: number) {
    this.map = map;
    this.into = into;
    this.radius = radius;
    this.area = new Float32Array(most);
    this.spare = new Float32Array(most);
    this.first = new Float32Array(most);
    this.second = new Float32Array(most);
  }

  add(tile: Tile): void {
    const { window } = tile;
    const labels = this.labelsIn(window);
    if (labels.length === 1) return;
    this.first.fill(0);
    this.second.fill(0);
    for (const label of labels) {
      checkpoint(8 * window.width * window.height);
      this.fillArea(window, label);
      blur(this.area, window, this.radius, this.spare);
      this.compare(tile, label);
    }
    this.share(tile);
  }

  private labelsIn({ left, top, width, height }: Window): number[] {
    const seen: number[] = [];
    let last = -1;
    for (let y = top; y < top + height; y += 1) {
      const row = y * this.map.width;
      for (let at = row + left; at < row + left + width; at += 1) {
        const label = defined(this.map.labels[at]);
        if (label !== last && !seen.includes(label)) seen.push(label);
        last = label;
      }
    }
    return seen.sort((one, other) => one - other);
  }

  private fillArea({ left, top, width, height }: Window, label: number): void {
    const { labels } = this.map;
    for (let y = 0, i = 0; y < height; y += 1) {
      const row = (top + y) * this.map.width + left;
      for (let at = row; at < row + width; at += 1, i += 1) this.area[i] = labels[at] === label ? 1 : 0;
    }
  }

  private compare({ minX, minY, maxX, maxY, window }: Tile, label: number): void {
    const { first, second } = this;
    const { labels, other } = this.into;
    for (let y = minY; y < maxY; y += 1) {
      const row = y * this.map.width;
      let i = (y - window.top) * window.width + minX - window.left;
      for (let at = row + minX; at < row + maxX; at += 1, i += 1) {
        const value = defined(this.area[i]);
        if (value > defined(first[i])) {
          second[i] = defined(first[i]);
          other[at] = defined(labels[at]);
          first[i] = value;
          labels[at] = label;
        } else if (value > defined(second[i])) {
          second[i] = value;
          other[at] = label;
        }
      }
    }
  }

  private share({ minX, minY, maxX, maxY, window }: Tile): void {
    for (let y = minY; y < maxY; y += 1) {
      const row = y * this.map.width;
      let i = (y - window.top) * window.width + minX - window.left;
      for (let at = row + minX; at < row + maxX; at += 1, i += 1) {
        const most = defined(this.first[i]);
        const next = defined(this.second[i]);
        this.into.share[at] = next > NOTHING ? most / (most + next) : 1;
      }
    }
  }
}

/** What rounding leaves of an area that does not reach a pixel. */
const NOTHING = 1e-6;
