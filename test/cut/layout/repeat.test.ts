import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { HOLE_RADIUS, mismatchAfter, repeatHoles } from '../../../src/cut/layout/repeat';
import { check, cutStack, repeatPlan } from '../../../src/engine/index';

const svg = (content: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="40mm" viewBox="0 0 100 40">${content}</svg>`;
const config = { ...DEFAULT_CONFIG, margin: 10 };
const drawn = (content: string) => check(svg(content), { config });
const sheetOf = (content: string) => drawn(content).sheets[0]!;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A band from edge to edge, and a sun. */
const BAND = '<rect y="18" width="100" height="4"/><circle cx="50" cy="8" r="5"/>';

describe('register holes of a repeat', () => {
  it('fall on the last print, one step on', () => {
    const holes = repeatHoles([sheetOf(BAND)], { axis: 'x', step: 100 }, config)!;
    expect(holes).toHaveLength(4);
    const [a, b, c, d] = holes.map(({ centre }) => centre) as [Point, Point, Point, Point];
    expect([c.x - a.x, c.y - a.y, d.x - b.x, d.y - b.y]).toEqual([100, 0, 100, 0]);
    expect(Math.abs(b.y - a.y)).toBeGreaterThan(40);
    for (const { x, y } of [a, b, c, d]) {
      expect(Math.min(x + 10, 110 - x, y + 10, 50 - y)).toBeGreaterThan(HOLE_RADIUS + 0.8 - 1e-9);
    }
  });

  it('are the same on every sheet, and clear of the openings of each', () => {
    const layers =
      '<g id="a"><rect x="-9" y="-9" width="18" height="18"/></g><g id="b"><circle cx="50" cy="20" r="5"/></g>';
    const report = drawn(layers);
    const { holes } = repeatPlan(report, { axis: 'x', step: 100 })!;
    for (const { centre } of holes.slice(0, 2)) expect(centre.x > 9 || centre.y > 9).toBe(true);
    const cut = cutStack(report, { holes });
    for (const { contours, origin } of cut) {
      const marks = contours.filter(({ kind }) => kind === 'mark');
      expect(marks).toHaveLength(4);
      for (const { curves, length } of marks) {
        expect(curves.map(({ kind }) => kind)).toEqual(['arc', 'arc', 'arc', 'arc']);
        expect(length).toBeCloseTo(2 * Math.PI * HOLE_RADIUS, 6);
        const { start } = curves[0]!;
        const at = { x: start.x + origin.x, y: start.y + origin.y };
        expect(
          holes.some(({ centre }) => Math.abs(Math.hypot(at.x - centre.x, at.y - centre.y) - HOLE_RADIUS) < 1e-6),
        ).toBe(true);
      }
    }
  });

  it('go down as well, and with a kerf come out as large', () => {
    const report = drawn(BAND);
    const { holes } = repeatPlan(report, { axis: 'y', step: 40 })!;
    expect(holes[2]!.centre.y - holes[0]!.centre.y).toBe(40);
    const marks = cutStack(report, { holes, kerf: 0.2 })[0]!.contours.filter(({ kind }) => kind === 'mark');
    expect(marks).toHaveLength(4);
    for (const { length } of marks) expect(length).toBeCloseTo(2 * Math.PI * 1.4, 1);
  });

  it('are none where the sheet is no longer than the step', () => {
    expect(repeatPlan(check(svg(BAND)), { axis: 'x', step: 100 })).toBeUndefined();
  });
});

describe('a pattern', () => {
  const mismatch = (content: string, step: number, axis: 'x' | 'y' = 'x') =>
    mismatchAfter(sheetOf(content), { axis, step });

  it('closes where both edges have the same', () => {
    expect(mismatch(BAND, 100)).toBe(0);
    expect(mismatch('<path d="M0 10L100 10L100 20L0 20Z"/>', 100)).toBe(0);
    expect(mismatch('<rect x="10" width="20" height="40"/>', 40, 'y')).toBe(0);
  });

  it('does not where they differ, by so many mm of the edge', () => {
    // The left edge is painted from 10 to 20, the right one from 13 to 23.
    expect(mismatch('<path d="M0 10L100 13L100 23L0 20Z"/>', 100)).toBeCloseTo(6, 1);
    expect(mismatch('<rect y="10" width="50" height="7"/>', 100)).toBeCloseTo(7, 3);
    expect(repeatPlan(drawn('<rect y="10" width="50" height="7"/>'), { axis: 'x', step: 100 })!.notes[0]).toMatch(
      /: 7\.0 mm of its paint do not go on in the next print$/,
    );
  });

  it('is compared over the whole overlap where prints lie over each other', () => {
    const dots = (...places: number[]) => places.map((x) => `<rect x="${x}" y="10" width="5" height="5"/>`).join('');
    expect(mismatch(dots(5, 25, 45, 65, 85), 80)).toBe(0);
    expect(mismatch(dots(5, 25, 45, 65, 87), 80)).toBeCloseTo(2 * 2 * 5, 3);
  });

  it('has nothing to meet where prints stand apart', () => {
    expect(mismatch('<rect y="10" width="50" height="7"/>', 120)).toBe(0);
  });
});
