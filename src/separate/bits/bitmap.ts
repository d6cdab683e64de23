/** Sets of pixels, 32 to a word: what is asked of all of them is asked of a word at a time. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Grid } from '../labels/box-blur';

export class Bitmap {
  readonly width: number;
  readonly height: number;
  /** Words of a row. */
  readonly stride: number;
  /** The lowest bit of a word is its leftmost pixel. Bits beyond the end of a row are never set. */
  readonly words: Int32Array;

  constructor({ width, height }: Grid, words?: Int32Array) {
    this.width = width;
    this.height = height;
    this.stride = (width + 31) >> 5;
    this.words = words ?? new Int32Array(this.stride * height);
  }

  static ofPixels(grid: Grid, pixels: readonly number[]): Bitmap {
    const made = new Bitmap(grid);
    for (const at of pixels) made.add(at);
    return made;
  }

  has(at: number): boolean {
    const y = Math.floor(at / this.width);
    const x = at - y * this.width;
    return ((defined(this.words[y * this.stride + (x >> 5)]) >>> (x & 31)) & 1) === 1;
  }

  add(at: number): void {
    const y = Math.floor(at / this.width);
    const x = at - y * this.width;
    const word = y * this.stride + (x >> 5);
    this.words[word] = defined(this.words[word]) | (1 << (x & 31));
  }

  get isEmpty(): boolean {
    return this.words.every((word) => word === 0);
  }

  /** Whether the same pixels are in both. */
  equals(other: Bitmap): boolean {
    return this.words.every((word, i) => word === other.words[i]);
  }

  and(other: Bitmap): Bitmap {
    const words = this.words.slice();
    for (let i = 0; i < words.length; i += 1) words[i] = defined(words[i]) & defined(other.words[i]);
    return new Bitmap(this, words);
  }

  or(other: Bitmap): Bitmap {
    const made = new Bitmap(this, this.words.slice());
    made.addAll(other);
    return made;
  }

  /** Those of this set that are not in the other one. */
  without(other: Bitmap): Bitmap {
    const words = this.words.slice();
    for (let i = 0; i < words.length; i += 1) words[i] = defined(words[i]) & ~defined(other.words[i]);
    return new Bitmap(this, words);
  }

  addAll({ words: others }: Bitmap): void {
    const { words } = this;
    checkpoint(words.length >> 3);
    for (let i = 0; i < words.length; i += 1) words[i] = defined(words[i]) | defined(others[i]);
  }

  /** All other pixels. */
  complement(): Bitmap {
    const words = this.words.slice();
    for (let i = 0; i < words.length; i += 1) words[i] = ~defined(words[i]);
    const made = new Bitmap(this, words);
    made.clearBeyond();
    return made;
  }

  /** Takes out what lies beyond the ends of rows. */
  clearBeyond(): void {
    const { words, stride, width } = this;
    const beyond = width & 31;
    if (beyond === 0) return;
    for (let last = stride - 1; last < words.length; last += stride) {
      words[last] = defined(words[last]) & ((1 << beyond) - 1);
    }
  }

  /**
   * The pixels that have one at their four sides that is not in the set.
   * @param frame whether what lies beyond the frame is not
   */
  edge(frame: boolean): Bitmap {
    const { words, stride, width, height } = this;
    const beyond = frame ? 0 : -1;
    const lastBit = 1 << ((width - 1) & 31);
    const made = new Bitmap(this);
    for (let y = 0, i = 0; y < height; y += 1) {
      checkpoint(stride);
      for (let column = 0; column < stride; column += 1, i += 1) {
        const own = defined(words[i]);
        if (own === 0) continue;
        const above = y > 0 ? defined(words[i - stride]) : beyond;
        const below = y + 1 < height ? defined(words[i + stride]) : beyond;
        const before = column > 0 ? defined(words[i - 1]) : beyond;
        const isLast = column + 1 === stride;
        const after = isLast ? beyond : defined(words[i + 1]);
        const left = (own << 1) | (before >>> 31);
        const right = (own >>> 1) | (after << 31) | (isLast ? beyond & lastBit : 0);
        made.words[i] = own & ~(above & below & left & right);
      }
    }
    return made;
  }

  /** All pixels, ascending. */
  pixels(): number[] {
    const all: number[] = [];
    const { words, stride, width, height } = this;
    for (let y = 0, i = 0; y < height; y += 1) {
      checkpoint(stride);
      for (let column = 0; column < stride; column += 1, i += 1) {
        const first = y * width + 32 * column;
        for (let bits = defined(words[i]); bits !== 0; bits &= bits - 1)
          all.push(first + 31 - Math.clz32(bits & -bits));
      }
    }
    return all;
  }
}
