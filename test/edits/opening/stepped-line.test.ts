import { describe, expect, it } from 'vitest';
import type { Demand } from '../../../src/edits/opening/demands';
import { steppedLine } from '../../../src/edits/opening/stepped-line';
import type { Line } from '../../../src/geometry/base/curve-types';

const line: Line = { kind: 'line', start: { x: 0, y: 0 }, end: { x: 10, y: 0 } };
const STILL = { x: 0, y: 0 };
const up = (need: number) => ({ x: 0, y: -need });

/** What is needed at 21 places of the line, upwards. */
const demands = (need: (t: number) => number): Demand[] =>
  Array.from({ length: 21 }, (_, i) => ({ t: i / 20, outward: up(1), need: need(i / 20) }));
const between = (from: number, to: number) => demands((t) => (t >= from && t <= to ? 0.5 : 0));
const ends = (parts: readonly Line[] | undefined) => parts?.map(({ end: { x, y } }) => [x, y]);

describe('a line of which a part moves aside', () => {
  it('stays straight there, with a slope at either end', () => {
    expect(ends(steppedLine(line, between(0.3, 0.6), STILL, STILL))).toEqual([
      [2.5, 0],
      [3, -0.5],
      [6, -0.5],
      [6.5, 0],
      [10, 0],
    ]);
  });

  it('begins where its corner goes', () => {
    expect(ends(steppedLine(line, between(0, 0.6), up(0.5), STILL))).toEqual([
      [6, -0.5],
      [6.5, 0],
      [10, 0],
    ]);
    expect(ends(steppedLine(line, between(0.6, 1), STILL, up(0.5)))).toEqual([
      [5.5, 0],
      [6, -0.5],
      [10, -0.5],
    ]);
  });

  it('is left to others where the demand is not the same all over', () => {
    expect(
      steppedLine(
        line,
        demands((t) => Math.max(0, 0.5 - Math.abs(t - 0.5))),
        STILL,
        STILL,
      ),
    ).toBeUndefined();
    expect(
      steppedLine(
        line,
        demands(() => 0),
        STILL,
        STILL,
      ),
    ).toBeUndefined();
  });
});
