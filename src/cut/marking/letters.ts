/**
 * Single-stroke letters on a grid of 4 × 7, drawn for this program: a pen or an engraving laser follows them. Each is some
 * lines through grid points, x before y, from the upper left corner.
 */
import { defined } from '../../base/defined';
import type { Point } from '../../geometry/base/curve-types';

const LETTERS: Readonly<Record<string, string>> = {
  A: '07 02 20 42 47, 04 44',
  B: '04 00 30 41 42 34 04 07 37 46 45 34',
  C: '41 30 10 01 06 17 37 46',
  D: '00 07 27 45 42 20 00',
  E: '40 00 07 47, 03 33',
  F: '40 00 07, 03 33',
  G: '41 30 10 01 06 17 37 46 44 24',
  H: '00 07, 40 47, 03 43',
  I: '10 30, 20 27, 17 37',
  J: '40 46 37 17 06',
  K: '00 07, 40 04, 13 47',
  L: '00 07 47',
  M: '07 00 24 40 47',
  N: '07 00 47 40',
  O: '10 30 41 46 37 17 06 01 10',
  P: '07 00 30 41 43 34 04',
  Q: '10 30 41 46 37 17 06 01 10, 25 47',
  R: '07 00 30 41 43 34 04, 24 47',
  S: '41 30 10 01 02 13 33 44 46 37 17 06',
  T: '00 40, 20 27',
  U: '00 06 17 37 46 40',
  V: '00 27 40',
  W: '00 17 23 37 40',
  X: '00 47, 40 07',
  Y: '00 23 40, 23 27',
  Z: '00 40 07 47',
  0: '10 30 41 46 37 17 06 01 10, 31 16',
  1: '02 20 27, 07 47',
  2: '01 10 30 41 42 07 47',
  3: '01 10 30 41 42 33 13, 33 44 46 37 17 06',
  4: '37 30 05 45',
  5: '40 00 03 33 44 46 37 17 06',
  6: '41 30 10 01 06 17 37 46 44 33 03',
  7: '00 40 17',
  8: '13 02 01 10 30 41 42 33 13 04 06 17 37 46 44 33',
  9: '43 34 14 03 01 10 30 41 46 37 17 06',
  '#': '10 17, 30 37, 02 42, 05 45',
  '-': '13 33',
  '.': '26 27',
  ',': '26 17',
  ':': '22 23, 25 26',
  '/': '40 07',
  '(': '30 11 16 37',
  ')': '10 31 36 17',
  '&': '46 27 07 05 32 31 20 11 12 47',
  '+': '22 26, 04 44',
  '?': '01 10 30 41 42 23 24, 26 27',
  '↑': '27 20, 03 20 43',
  ' ': '',
};

/** Of the grid: a letter's height, and from one letter to the next. */
const [HEIGHT, ADVANCE] = [7, 6];

/** Letters as they can be drawn: capitals without marks; what has no letter here becomes a question mark. */
export function drawable(text: string): string {
  const plain = text.replaceAll('ß', 'ss').normalize('NFD').replace(/\p{M}/gu, '').toUpperCase();
  return [...plain].map((letter) => (Object.hasOwn(LETTERS, letter) ? letter : '?')).join('');
}

/** mm */
export function widthOfText(text: string, height: number): number {
  return ((Math.max(1, [...text].length) * ADVANCE - (ADVANCE - 4)) * height) / HEIGHT;
}

/** @param at the upper left corner of the first letter; mm */
export function strokesOfText(text: string, at: Point, height: number): Point[][] {
  const unit = height / HEIGHT;
  return [...text].flatMap((letter, place) =>
    defined(LETTERS[letter])
      .split(',')
      .filter((line) => line.trim() !== '')
      .map((line) =>
        line
          .trim()
          .split(' ')
          .map((point) => ({
            x: at.x + (place * ADVANCE + Number(point[0])) * unit,
            y: at.y + Number(point[1]) * unit,
          })),
      ),
  );
}
