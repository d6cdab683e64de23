import { expect, it as test } from 'vitest';
import { turned } from '../../../src/separator/file/turn';
import { painted } from '../../separate/pictures';

/** Where the file's first row and first column belong (Exif 2.32, tag 0x0112, table 4). */
const CORNERS: readonly (readonly [orientation: number, row: 'top' | 'bottom' | 'left' | 'right', column: string])[] = [
  [1, 'top', 'left'],
  [2, 'top', 'right'],
  [3, 'bottom', 'right'],
  [4, 'bottom', 'left'],
  [5, 'left', 'top'],
  [6, 'right', 'top'],
  [7, 'right', 'bottom'],
  [8, 'left', 'bottom'],
];

test.each(CORNERS)(
  'a picture of orientation %d has its first row at the %s, its first column at the %s',
  (orientation, row, column) => {
    // The first row has red, the first column green.
    const { width, height, data } = turned(
      painted(5, 3, (x, y) => [y === 0 ? 255 : 0, x === 0 ? 255 : 0, 7]),
      orientation,
    );
    expect([width, height]).toEqual(orientation >= 5 ? [3, 5] : [5, 3]);
    const isAt = (side: string, x: number, y: number): boolean =>
      ({ top: y === 0, bottom: y === height - 1, left: x === 0, right: x === width - 1 })[side] ?? false;
    for (let at = 0; at < width * height; at += 1) {
      const [x, y] = [at % width, Math.floor(at / width)];
      expect([data[4 * at], data[4 * at + 1]]).toEqual([isAt(row, x, y) ? 255 : 0, isAt(column, x, y) ? 255 : 0]);
    }
  },
);
