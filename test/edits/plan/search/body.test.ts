import { describe, expect, it } from 'vitest';
import { bodyOf } from '../../../../src/edits/plan/search/body';
import { ringOfPoints } from '../../../../src/geometry/base/ring';
import type { Piece } from '../../../../src/sheet/types';

const square = (x: number, y: number, side: number) =>
  ringOfPoints([
    { x, y },
    { x: x + side, y },
    { x: x + side, y: y + side },
    { x, y: y + side },
  ]);

function piece(polygon: Piece['polygon'], area: number): Piece {
  return { polygon, area, island: true, label: { x: 0, y: 0 } };
}

describe('a body', () => {
  it('has its mass where it is material: an opening in it weighs nothing', () => {
    // 20 × 20 less 10 × 10 in a corner: 400 × 10 less 100 × 5, of 300.
    const { middle, mass } = bodyOf(piece({ outer: square(0, 0, 20), holes: [square(0, 0, 10)] }, 300));
    expect(mass.x).toBeCloseTo((400 * 10 - 100 * 5) / 300, 9);
    expect(mass.y).toBeCloseTo((400 * 10 - 100 * 5) / 300, 9);
    expect(middle).toEqual({ x: 10, y: 10 });
  });
});
