/** The pixels of each label of a map, as sets. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { LabelMap } from '../raster';
import { Bitmap } from './bitmap';

/** Four bytes of one value. */
const FOUR_TIMES = 0x01010101;

export class LabelSets {
  private readonly map: LabelMap;
  private readonly sets = new Map<number, Bitmap>();

  constructor(map: LabelMap) {
    this.map = map;
    const { width, height, labels } = map;
    const view = new DataView(labels.buffer, labels.byteOffset, labels.length);
    const stride = (width + 31) >> 5;
    for (let y = 0; y < height; y += 1) {
      checkpoint(width >> 2);
      const row = y * width;
      for (let word = y * stride, at = row; at < row + width; at += 32, word += 1) {
        const label = defined(labels[at]);
        // Most words lie within one area.
        if (at + 32 <= row + width && isEven(view, at, label * FOUR_TIMES)) this.wordsOf(label)[word] = -1;
        else this.addPixels(word, at, Math.min(at + 32, row + width));
      }
    }
  }

  private addPixels(word: number, start: number, stop: number): void {
    const { labels } = this.map;
    let last = -1;
    let words: Int32Array = NONE;
    for (let at = start; at < stop; at += 1) {
      const label = defined(labels[at]);
      if (label !== last) words = this.wordsOf(label);
      last = label;
      words[word] = defined(words[word]) | (1 << (at - start));
    }
  }

  private wordsOf(label: number): Int32Array {
    let set = this.sets.get(label);
    if (!set) {
      set = new Bitmap(this.map);
      this.sets.set(label, set);
    }
    return set.words;
  }

  /** Those that some pixel has. */
  get labels(): number[] {
    return [...this.sets.keys()].sort((one, other) => one - other);
  }

  of(label: number): Bitmap {
    return this.sets.get(label) ?? new Bitmap(this.map);
  }

  /** The pixels of all labels that are asked for. */
  where(isWanted: (label: number) => boolean): Bitmap {
    const all = new Bitmap(this.map);
    for (const [label, set] of this.sets) if (isWanted(label)) all.addAll(set);
    return all;
  }
}

const NONE: Int32Array = new Int32Array(0);

function isEven(view: DataView, at: number, four: number): boolean {
  for (let step = 0; step < 32; step += 4) if (view.getUint32(at + step) !== four) return false;
  return true;
}
