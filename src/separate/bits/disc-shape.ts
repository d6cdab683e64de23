/** Sets of pixels grown and shrunk by discs, a word at a time. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import { Bitmap } from './bitmap';

/** A disc of pixels, its rim included. */
export class DiscShape {
  /** How far it reaches to the left and to the right, so many rows from its middle. */
  readonly reaches: Int32Array;

  /** @param radius pixels, from centre to centre */
  constructor(radius: number) {
    const rows = Math.floor(radius);
    this.reaches = Int32Array.from({ length: rows + 1 }, (_, row) =>
      Math.floor(Math.sqrt(radius * radius - row * row)),
    );
  }

  /** The pixels that are no farther than the radius from some pixel of the set. */
  dilated(set: Bitmap): Bitmap {
    const made = new Bitmap(set, set.words.slice());
    // Nearest to a pixel beyond the set is one at its edge.
    const edge = set.edge(false).words;
    const { stride, height } = set;
    const span = Math.max(1, (defined(this.reaches[0]) + 31) >> 5);
    const row = new Int32Array(2 * span + 1);
    for (let y = 0, i = 0; y < height; y += 1) {
      checkpoint(stride);
      for (let column = 0; column < stride; column += 1, i += 1) {
        const bits = defined(edge[i]);
        if (bits !== 0) this.spread(bits, row, made, y, column);
      }
    }
    made.clearBeyond();
    return made;
  }

  /** The pixels round which the disc lies in the set; the frame is no edge. */
  eroded(set: Bitmap): Bitmap {
    return this.dilated(set.complement()).complement();
  }

  /** Of the pixels of a set those that no disc within it covers; the frame is no edge. */
  uncovered(set: Bitmap): Bitmap {
    return set.without(this.dilated(this.eroded(set)));
  }

  /** @param row room for the words that the disc's middle row reaches */
  private spread(bits: number, row: Int32Array, into: Bitmap, y: number, column: number): void {
    const { words, stride, height } = into;
    const middle = row.length >> 1;
    checkpoint(this.reaches.length * 2);
    row.fill(0);
    row[middle] = bits;
    // The rows farthest from the middle reach least: what they have the next ones have too.
    for (let away = this.reaches.length - 1, reach = 0; away >= 0; away -= 1) {
      for (const most = defined(this.reaches[away]); reach < most; ) {
        reach += 1;
        widen(row, middle, bits, reach);
      }
      const wide = (reach + 31) >> 5;
      const first = Math.max(-wide, -column);
      const last = Math.min(wide, stride - 1 - column);
      if (y >= away) addWords(words, (y - away) * stride + column, row, middle, first, last);
      if (away > 0 && y + away < height) addWords(words, (y + away) * stride + column, row, middle, first, last);
    }
  }
}

function addWords(into: Int32Array, at: number, row: Int32Array, middle: number, first: number, last: number): void {
  for (let k = first; k <= last; k += 1) into[at + k] = defined(into[at + k]) | defined(row[middle + k]);
}

/** Adds to a row the bits of a word, moved by so many pixels to either side. */
function widen(row: Int32Array, middle: number, bits: number, by: number): void {
  const away = by >> 5;
  const shift = by & 31;
  row[middle + away] = defined(row[middle + away]) | (bits << shift);
  row[middle - away] = defined(row[middle - away]) | (bits >>> shift);
  if (shift === 0) return;
  row[middle + away + 1] = defined(row[middle + away + 1]) | (bits >>> (32 - shift));
  row[middle - away - 1] = defined(row[middle - away - 1]) | (bits << (32 - shift));
}
