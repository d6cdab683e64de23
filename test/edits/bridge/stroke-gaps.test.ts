import { describe, expect, it } from 'vitest';
import type { PaintedLine } from '../../../src/edits/bridge/painted-line';
import { gapsInLine } from '../../../src/edits/bridge/stroke-gaps';
import { type Strip, stripAlong } from '../../../src/edits/strip/strip';
import type { Curve, Point } from '../../../src/geometry/base/curve-types';

/** Upright, from 4 to 5 mm. */
const STRIP: Strip = stripAlong({ x: 4.5, y: -5 }, { x: 4.5, y: 5 }, 1, 0);

const line = (start: Point, end: Point): Curve => ({ kind: 'line', start, end });
const chain = (...points: readonly Point[]): Curve[] =>
  points.slice(1).map((point, i) => line(points[i] as Point, point));

const painted = (...points: readonly Point[]): PaintedLine => ({
  curves: chain(...points),
  closed: false,
  width: 1,
  cap: 'butt',
});

describe('the gap of a line in a strip', () => {
  it('ends at the sides of the strip where the line crosses it squarely', () => {
    const [gap] = gapsInLine(painted({ x: 0, y: 0 }, { x: 10, y: 0 }), STRIP) ?? [];
    expect(gap?.from).toBeCloseTo(0.4, 6);
    expect(gap?.to).toBeCloseTo(0.5, 6);
  });

  it('goes on behind a corner where the next stretch would begin in the strip', () => {
    const [gap] = gapsInLine(painted({ x: 0, y: 0 }, { x: 5.1, y: 0 }, { x: 10.1, y: 5 }), STRIP) ?? [];
    // On the slanted stretch an end reaches 0.5 sin 45° to the side: clear from x = 5 + 0.5 sin 45° on.
    expect(gap?.to).toBeCloseTo(1 + (Math.SQRT1_2 / 2 - 0.1) / 5, 6);
    expect(gap?.from).toBeCloseTo(4 / 5.1, 6);
  });

  it('is the same the other way round', () => {
    const [gap] = gapsInLine(painted({ x: 10.1, y: 5 }, { x: 5.1, y: 0 }, { x: 0, y: 0 }), STRIP) ?? [];
    expect(gap?.from).toBeCloseTo(1 - (Math.SQRT1_2 / 2 - 0.1) / 5, 6);
    expect(gap?.to).toBeCloseTo(1 + 1.1 / 5.1, 6);
  });

  it('ends before a corner that is far enough from the strip', () => {
    const [gap] = gapsInLine(painted({ x: 0, y: 0 }, { x: 5.8, y: 0 }, { x: 10.8, y: 5 }), STRIP) ?? [];
    expect(gap?.to).toBeCloseTo(5 / 5.8, 6);
  });

  // It comes back to 5.7 and turns there by 128 degrees: with a mitre its corner reaches to 4.55, round it reaches to 5.2.
  const jagged = painted({ x: 0, y: 0 }, { x: 5.9, y: 0 }, { x: 6.2, y: 0.3 }, { x: 5.7, y: 0.6 }, { x: 8, y: 1.46 });

  it('goes on behind a corner whose mitre reaches back into the strip', () => {
    const [gap] = gapsInLine({ ...jagged, miterLimit: 4 }, STRIP) ?? [];
    expect(gap?.to).toBeGreaterThan(3);
    expect(gapsInLine(jagged, STRIP)?.[0]?.to).toBeCloseTo(5 / 5.9, 6);
  });

  it('is there where a line passes beside the strip and reaches in with its side', () => {
    const beside = painted({ x: 5.3, y: -9 }, { x: 5.3, y: -2 }, { x: 7, y: 0 });
    const [gap] = gapsInLine(beside, STRIP) ?? [];
    expect(gap?.from).toBe(0);
    expect(gap?.to).toBeGreaterThan(1);
    expect(gapsInLine(painted({ x: 5.6, y: -9 }, { x: 5.6, y: 9 }), STRIP)).toEqual([]);
  });

  it('takes no direction from a piece without length', () => {
    const at = { x: 5, y: 0 };
    const [gap] = gapsInLine(painted({ x: 0, y: 0 }, at, at, { x: 10, y: 0 }), STRIP) ?? [];
    expect(gap?.from).toBeCloseTo(4 / 5, 6);
    expect(gap?.to).toBeCloseTo(2, 6);
  });
});
