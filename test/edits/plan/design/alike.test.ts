import { describe, expect, it as test } from 'vitest';
import { defined } from '../../../../src/base/defined';
import { designOf } from '../../../../src/edits/plan/design/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { apply } from '../../../../src/geometry/base/matrix';
import { centroidOfRing } from '../../../../src/geometry/base/ring';
import { distance } from '../../../../src/geometry/base/vector';
import type { Piece } from '../../../../src/sheet/types';
import { box, circle, POSES, path, posed } from './drawings';

/** An uneven island in a slot of even width. */
const UNEVEN = path('M2 2H34V12H22V30H2zM5 5V27H19V9H31V5z');
const at = (x: number, y: number, turn: number) => `<g transform="translate(${x} ${y}) rotate(${turn})">${UNEVEN}</g>`;

function middleOf(piece: Piece | undefined): Point {
  return centroidOfRing(defined(piece).polygon.outer) as Point;
}

describe.each(POSES)('equal islands, %s', (_, pose) => {
  test('are one class, however they are turned, and their motions lay one on the other', () => {
    const sheet = posed(at(0, 0, 0) + at(70, 10, 0) + at(110, 60, 121) + at(0, 75, -33), pose);
    const { alike } = designOf(sheet);
    expect(alike).toHaveLength(1);
    const [{ members } = { members: [] }] = alike;
    expect(members).toHaveLength(4);
    const [first] = members;
    const from = sheet.pieces[first?.piece ?? 0];
    for (const { piece, motion } of members) {
      const to = sheet.pieces[piece];
      expect(motion.a * motion.d - motion.b * motion.c).toBeCloseTo(1, 9);
      expect(distance(apply(motion, middleOf(from)), middleOf(to))).toBeLessThan(0.02);
    }
  });

  test('with other gaps are apart', () => {
    const inSlots = path(circle(30, 30, 12) + circle(30, 30, 8) + circle(80, 30, 15) + circle(80, 30, 8));
    expect(designOf(posed(inSlots, pose)).alike).toEqual([]);
  });

  test('turned over are apart', () => {
    const over = `<g transform="translate(110 40) scale(-1 1)">${UNEVEN}</g>`;
    expect(designOf(posed(at(0, 0, 0) + over, pose)).alike).toEqual([]);
  });
});

test('one shape in many sizes is many classes of one, and one in many places is one', () => {
  const sizes = Array.from({ length: 9 }, (_, i) => circle(7 + 13 * i, 20, 5) + circle(7 + 13 * i, 20, 2 + i / 8));
  const places = Array.from({ length: 9 }, (_, i) => circle(7 + 13 * i, 60, 5) + circle(7 + 13 * i, 60, 4));
  const { alike } = designOf(posed(path(sizes.join('') + places.join('') + box(0, 90, 20, 20))));
  expect(alike.map(({ members }) => members.length)).toEqual([9]);
});
