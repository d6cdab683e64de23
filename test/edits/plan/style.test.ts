import { expect, it as test } from 'vitest';
import { planBridges } from '../../../src/edits/plan/index';
import { optionsForStyle } from '../../../src/edits/plan/style';
import { polygonOfBox } from '../../../src/geometry/base/ring';
import { box, path, posed } from './design/drawings';

/** An island with a gap of 8 mm on its left, under later paint, of 3 mm on its right and 6 mm above and below. */
const sheet = posed(path(box(10, 10, 51, 40) + box(18, 16, 40, 28)));
const hidden = [polygonOfBox({ minX: 45, minY: 45, maxX: 57.9, maxY: 95 })];

const sides = (style: Parameters<typeof optionsForStyle>[0], count: number) =>
  planBridges(
    sheet,
    sheet.pieces.filter(({ island }) => island),
    { width: 0.8, hidden, count, ...optionsForStyle(style) },
  ).bridges.map(({ from, to }) =>
    Math.abs(to.x - from.x) < 0.01 ? 'upright' : to.x < from.x ? 'left, hidden' : 'right, short',
  );

test.each([
  ['shortest', 1, ['right, short']],
  ['hidden', 1, ['left, hidden']],
  ['upright', 2, ['upright', 'upright']],
] as const)('style %s, asked for %d, gives %s', (style, count, expected) => {
  expect(sides(style, count)).toEqual(expected);
});
