/** Islands that lie one in another, and the lines through all of them. */
import { describe, expect, it } from 'vitest';
import { designOf, type Nest } from '../../../../src/edits/plan/design/index';
import { type Bridge, planBridges } from '../../../../src/edits/plan/index';
import type { Sheet } from '../../../../src/sheet/types';
import { box, circle, designed, path, posed } from './drawings';

/** Gaps between circles about three middles, none of which lies level with or above another. */
const RIPPLES = path(
  circle(60, 60, 40) +
    circle(60, 60, 35) +
    circle(61.5, 59, 28) +
    circle(61.5, 59, 23) +
    circle(60.5, 56, 14) +
    circle(60.5, 56, 10),
);
/** The same about one middle. */
const TARGET = path([40, 35, 28, 23, 14, 10].map((radius) => circle(60, 60, radius)).join(''));

const piecesOn = ({ lines }: Nest) => lines.map((line) => line.map(({ piece }) => piece));

function planned(sheet: Sheet): readonly Bridge[] {
  const islands = sheet.pieces.filter(({ island }) => island);
  return planBridges(sheet, islands, { width: 0.8 }).bridges;
}

describe('islands that lie one in another', () => {
  it('have an upright and a level line through all of them, with a way across on either side of each', () => {
    const { nests } = designed(RIPPLES);
    expect(nests).toHaveLength(1);
    const [nest] = nests as [Nest];
    expect(piecesOn(nest)).toEqual([
      [1, 2, 3],
      [1, 2, 3],
    ]);
    for (const [i, line] of nest.lines.entries()) {
      const ends = line.flatMap(({ places }) => places.flatMap(({ from, to }) => [from, to]));
      expect(ends).toHaveLength(12);
      const across = ends.map(({ x, y }) => (i === 0 ? x : y));
      expect(Math.max(...across) - Math.min(...across)).toBeLessThan(1e-6);
    }
  });

  it.each([1, 0.5])('are bridged on those lines alone, at %d of the size', (scale) => {
    const sheet = posed(RIPPLES, { scale });
    const bridges = planned(sheet);
    const { lines } = designOf(sheet).nests[0] as Nest;
    const [upright, level] = lines.map(([first]) => first!.at);
    for (const { from, to } of bridges) {
      const off = Math.abs(from.x - to.x) < Math.abs(from.y - to.y) ? from.x - upright!.x : from.y - level!.y;
      expect(Math.abs(off)).toBeLessThan(0.05);
    }
    for (const piece of [1, 2, 3]) {
      expect(bridges.filter(({ island }) => island === sheet.pieces[piece]).length % 2).toBe(0);
    }
  });

  it('about one middle have their lines on axes', () => {
    const sheet = posed(TARGET);
    for (const { lines } of designOf(sheet).nests)
      for (const line of lines)
        for (const { at } of line) expect([at.x, at.y]).toEqual([expect.closeTo(100, 2), expect.closeTo(100, 2)]);
    for (const { from, to } of planned(sheet)) {
      const isOnAxis = [from.x, from.y].some((place, i) => {
        return Math.abs(place - 100) < 0.05 && Math.abs([to.x, to.y][i]! - 100) < 0.05;
      });
      expect(isOnAxis).toBe(true);
    }
  });

  it('are none where two lie beside each other in a third, or where one lies in none', () => {
    const frame = box(10, 20, 100, 80) + box(15, 25, 90, 70);
    const eyes = [35, 75].map((x) => circle(x, 60, 15) + circle(x, 60, 10)).join('');
    expect(designed(path(frame + eyes)).nests).toEqual([]);
    expect(designed(path(circle(60, 60, 30) + circle(60, 60, 25))).nests).toEqual([]);
  });

  it('are found in each of two', () => {
    const nest = (x: number, y: number) => [26, 22, 16, 12].map((radius) => circle(x, y, radius)).join('');
    expect(designed(path(nest(28, 28) + nest(88, 90))).nests).toHaveLength(2);
  });
});
