import { describe, expect, it } from 'vitest';
import { type Bridge, planBridges } from '../../../../src/edits/plan/index';
import { path, posed } from '../design/drawings';

function planned(data: string, turn = 0): readonly Bridge[] {
  const sheet = posed(path(data), { turn });
  const islands = sheet.pieces.filter(({ island }) => island);
  return planBridges(sheet, islands, { width: 0.8 }).bridges;
}

/** Sheet mm: drawings of 120 mm lie in the middle of the sheet. */
const OFFSET = 40;

/** Degrees off level. */
const rise = ({ from, to }: Bridge): number =>
  (Math.atan2(Math.abs(to.y - from.y), Math.abs(to.x - from.x)) * 180) / Math.PI;

describe('an island that reaches out with points', () => {
  /** Two peaks on one line, far below the upper edge of their frame. */
  const PEAKS = 'M14.5 27H97.5V85.2H14.5zM27 72.7L41.6 54.2L51.8 66.7L66.6 47.9L85 72.7z';

  it('is held level at its feet rather than by a comb below them', () => {
    const bridges = planned(PEAKS);
    const level = bridges.filter((bridge) => rise(bridge) < 1);
    const ends = level.map(({ to }) => Math.floor(to.x - OFFSET)).sort((a, b) => a - b);
    expect(ends).toEqual([14, 97]);
    expect(bridges.length).toBeLessThanOrEqual(5);
  });

  /** A triangle in a disc: its sides are farther from the edge than a bridge is long. */
  const TRIANGLE = 'M60 2a58 58 0 1 0 0 116a58 58 0 1 0 0-116zM106 60L37 99.8V20.2z';

  it.each([0, 30, 90, 211])('is held at each of them, turned by %i°', (turn) => {
    const bridges = planned(TRIANGLE, turn);
    const angles = bridges.map(({ to }) => {
      const away = (Math.atan2(to.y - 100, to.x - 100) * 180) / Math.PI - turn;
      return Math.round((((away % 360) + 360) % 360) / 30) % 12;
    });
    expect(angles.sort((a, b) => a - b)).toEqual([0, 4, 8]);
  });

  /** Two triangles in a disc, one behind the other. */
  const BUTTON = 'M60 2a58 58 0 1 0 0 116a58 58 0 1 0 0-116zM99 60L60.7 94.6V67.5L36 94.6V25.4L60.7 52.5V25.4z';

  it('that lies on its axis is held on the axis', () => {
    const bridges = planned(BUTTON);
    const [onAxis] = bridges.filter(({ from }) => from.x > 130);
    expect(bridges).toHaveLength(3);
    expect(onAxis?.from.y).toBeCloseTo(100, 2);
    expect(onAxis?.width).toBeGreaterThan(1.2);
  });
});
