import { describe, expect, it } from 'vitest';
import { brailleOf, type DotWindow, dotsIn, dotsOf, hatched, joined } from '../../../src/format/snippet/dots';
import type { Polygon } from '../../../src/geometry/base/polygon-types';
import { reverseRing, ringOfPoints } from '../../../src/geometry/base/ring';

const box = (minX: number, minY: number, maxX: number, maxY: number) =>
  ringOfPoints([
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ]);
const polygon = (outer: Polygon['outer'], ...holes: Polygon['holes']): Polygon => ({ outer, holes });
const window = (changes: Partial<DotWindow> = {}): DotWindow => ({
  x: 0,
  y: 0,
  step: 1,
  columns: 8,
  rows: 4,
  ...changes,
});
const textOf = (dots: readonly Uint8Array[]) => dots.map((row) => [...row].map((dot) => (dot ? '#' : '.')).join(''));

describe('dotsOf', () => {
  it('fills the dots whose middles lie in the region, holes left out', () => {
    const frame = polygon(box(1, 0, 7, 4), reverseRing(box(3, 1, 5, 3)));
    expect(textOf(dotsOf([frame], window()))).toEqual(['.######.', '.##..##.', '.##..##.', '.######.']);
  });

  it('takes a window of another place and scale', () => {
    const bars = [polygon(box(10, 0, 10.4, 9)), polygon(box(11, 0, 11.2, 9))];
    const there = window({ x: 9.8, y: 3, step: 0.2 });
    expect(textOf(dotsOf(bars, there))).toEqual(Array(4).fill('.##...#.'));
  });

  it('is cut off at the edges of the window, and empty beside the region', () => {
    expect(textOf(dotsOf([polygon(box(-9, -9, 99, 99))], window()))).toEqual(Array(4).fill('########'));
    expect(textOf(dotsOf([polygon(box(-9, 0, -1, 4))], window()))).toEqual(Array(4).fill('........'));
    expect(textOf(dotsOf([polygon(box(20, 20, 30, 30))], window()))).toEqual(Array(4).fill('........'));
  });

  it('counts as many dots as a disc has area, wherever it lies', () => {
    const points = Array.from({ length: 720 }, (_, i) => ({
      x: 31.37 + 20 * Math.cos((i * Math.PI) / 360),
      y: 28.11 + 20 * Math.sin((i * Math.PI) / 360),
    }));
    const dots = dotsOf([polygon(ringOfPoints(points))], window({ columns: 640, rows: 640, step: 0.1 }));
    const count = dots.reduce((sum, row) => sum + row.reduce((all, dot) => all + dot, 0), 0);
    expect(count / 100).toBeCloseTo(Math.PI * 400, 0);
  });
});

describe('brailleOf', () => {
  it('numbers the dots of a character as the standard does', () => {
    const only = (row: number, column: number) =>
      Array.from({ length: 4 }, (_, y) => Uint8Array.from([0, 1].map((x) => Number(y === row && x === column))));
    // Unicode names them by these numbers: U+2801 is DOTS-1, U+2880 is DOTS-8.
    const cells = [0, 1, 2, 3].flatMap((row) => [0, 1].map((column) => brailleOf(only(row, column)).join('')));
    expect(cells).toEqual(['\u2801', '\u2808', '\u2802', '\u2810', '\u2804', '\u2820', '\u2840', '\u2880']);
  });

  it('has a character for two dots across and four down', () => {
    const full = Array.from({ length: 6 }, () => new Uint8Array(5).fill(1));
    expect(brailleOf(full)).toEqual(['⣿⣿⡇', '⠛⠛⠃']);
    expect([...'⣿⡇⠃⠀'].map(dotsIn)).toEqual([8, 4, 2, 0]);
  });

  it('hatches with half of the dots, and lays one over the other', () => {
    const full = Array.from({ length: 4 }, () => new Uint8Array(2).fill(1));
    const none = Array.from({ length: 4 }, () => new Uint8Array(2));
    expect(brailleOf(hatched(full)).map(dotsIn)).toEqual([4]);
    expect(brailleOf(joined(none, hatched(full)))).toEqual(brailleOf(hatched(full)));
    expect(brailleOf(joined(full, hatched(full)))).toEqual(['⣿']);
  });
});
