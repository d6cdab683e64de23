import { describe, expect, it } from 'vitest';
import { cutSheet } from '../../src/cut/cut-sheet';
import { check } from '../../src/engine/index';
import { regionContains } from '../../src/geometry/boolean/index';
import { lengthOf } from '../../src/geometry/curve/index';

const sheet = check(
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">' +
    '<circle cx="15" cy="15" r="8"/><path d="M30 10H50V30H30Z"/><rect x="5" y="34" width="40" height="0.9"/></svg>',
).sheets[0]!;

describe('a drag knife', () => {
  const plain = cutSheet(sheet, { number: 1, count: 1 });
  const cut = cutSheet(sheet, { number: 1, count: 1 }, { leadIn: 0.6, overcut: 1 });

  it('goes down on the side that falls away, and ends beyond where it began', () => {
    expect(cut.contours).toHaveLength(4);
    for (const { curves, closed, length, kind } of cut.contours) {
      expect(closed).toBe(false);
      const [lead] = curves;
      const at = { x: lead!.start.x + cut.origin.x, y: lead!.start.y + cut.origin.y };
      expect(regionContains(sheet.material, at)).toBe(false);
      expect(lengthOf(lead!)).toBeLessThanOrEqual(0.6 + 1e-9);
      expect(lengthOf(lead!)).toBeGreaterThanOrEqual(0.15 - 1e-9);
      const own = plain.contours.find((each) => each.kind === kind && Math.abs(each.length - length) < 2)!;
      expect(length - own.length - lengthOf(lead!)).toBeCloseTo(1, 6);
    }
  });

  it('comes in slantwise where the line is smooth: it is as far from the line as half the square root of two', () => {
    const circle = cut.contours.find(({ length }) => Math.abs(length - 16 * Math.PI) < 2)!;
    const { start } = circle.curves[0]!;
    const centre = { x: 15 - cut.origin.x, y: 15 - cut.origin.y };
    // √(r² + l² − 2rl·cos 45°)
    expect(Math.hypot(start.x - centre.x, start.y - centre.y)).toBeCloseTo(
      Math.sqrt(64 + 0.36 - 9.6 * Math.SQRT1_2),
      6,
    );
  });

  it('needs room beside the sheet for its edge: the page has it', () => {
    expect(cut.width * cut.height).toBeGreaterThan(plain.width * plain.height);
    const all = cut.contours.flatMap(({ curves }) => curves).flatMap(({ start, end }) => [start, end]);
    expect(Math.min(...all.map(({ x }) => x), ...all.map(({ y }) => y))).toBeGreaterThanOrEqual(-1e-9);
  });
});
