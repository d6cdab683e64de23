/** The pixel of a set that is nearest to another one, among those nearby. */
import { checkpoint } from '../../base/checkpoint';
import { defined } from '../../base/defined';
import type { Bitmap } from './bitmap';

export class NearestPixel {
  private readonly set: Bitmap;
  private readonly reach: number;
  private best = -1;
  private squared = Infinity;

  /** @param reach pixels: what is farther away is not found */
  constructor(set: Bitmap, reach: number) {
    this.set = set;
    this.reach = reach;
  }

  /** Of those as near the first, row by row; -1 where there is none. */
  to(at: number): number {
    const { width, height } = this.set;
    const y = Math.floor(at / width);
    const x = at - y * width;
    this.best = -1;
    this.squared = this.reach * this.reach;
    const rows = Math.floor(this.reach);
    for (let away = 0; away <= rows && away * away <= this.squared; away += 1) {
      checkpoint(2);
      if (y >= away) this.lookInRow(x, y - away, away * away);
      if (away > 0 && y + away < height) this.lookInRow(x, y + away, away * away);
    }
    return this.best;
  }

  private lookInRow(x: number, y: number, high: number): void {
    const { words, stride, width } = this.set;
    const row = y * stride;
    const column = x >> 5;
    const place = x & 31;
    const most = 1 + (this.reach >> 5);
    const left = Math.max(0, column - most);
    for (let at = column, mask = -1 >>> (31 - place); at >= left; at -= 1, mask = -1) {
      const bits = defined(words[row + at]) & mask;
      if (bits === 0) continue;
      this.offer(x, 32 * at + 31 - Math.clz32(bits), high, y * width);
      break;
    }
    const right = Math.min(stride - 1, column + most);
    for (let at = column, mask = -1 << place; at <= right; at += 1, mask = -1) {
      const bits = defined(words[row + at]) & mask;
      if (bits === 0) continue;
      this.offer(x, 32 * at + 31 - Math.clz32(bits & -bits), high, y * width);
      break;
    }
  }

  private offer(x: number, column: number, high: number, row: number): void {
    const squared = (x - column) ** 2 + high;
    const pixel = row + column;
    if (squared > this.squared || (squared === this.squared && this.best >= 0 && pixel > this.best)) return;
    this.squared = squared;
    this.best = pixel;
  }
}
