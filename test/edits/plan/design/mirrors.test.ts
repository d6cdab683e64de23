import { describe, expect, it, it as test } from 'vitest';
import type { Mirror } from '../../../../src/edits/plan/design/index';
import { designOf } from '../../../../src/edits/plan/design/index';
import type { Point } from '../../../../src/geometry/base/curve-types';
import { cross, subtract } from '../../../../src/geometry/base/vector';
import { box, circle, designed, POSES, type Pose, path, placeOf, posed } from './drawings';

/** An axis through two points of the drawing, and how far an axis that was found is off it: in mm and as a sine. */
function offAxis(mirror: Mirror, a: Point, b: Point, pose: Pose): number {
  const [from, to] = [placeOf(a, pose), placeOf(b, pose)];
  const away = (place: Point) => Math.abs(cross(subtract(place, mirror.point), mirror.along));
  return Math.max(away(from), away(to));
}

const has = (mirrors: readonly Mirror[], a: Point, b: Point, pose: Pose, whole?: boolean) =>
  mirrors.some((mirror) => offAxis(mirror, a, b, pose) < 0.25 && (whole === undefined || mirror.whole === whole));

/** A face: two eyes and a mouth, each an island in a slot of its own. */
const FACE = path(
  circle(60, 60, 50) +
    circle(60, 60, 46) +
    circle(45, 50, 9) +
    circle(45, 50, 6) +
    circle(75, 50, 9) +
    circle(75, 50, 6) +
    box(45, 75, 30, 12) +
    box(48, 78, 24, 6),
);
/** Two hearts beside something that is not mirrored. */
const HEART =
  'M30 52C6 34 6 8 19 8C25 8 30 13 30 18C30 13 35 8 41 8C54 8 54 34 30 52z' +
  'M30 48C50 32 50 11 41 11C36 11 32 17 30 23C28 17 24 11 19 11C10 11 10 32 30 48z';

describe.each(POSES)('mirror axes, %s', (_, pose) => {
  test('of a face is its middle, with the eyes as a pair', () => {
    const { mirrors } = designed(FACE, pose);
    expect(has(mirrors, { x: 60, y: 0 }, { x: 60, y: 120 }, pose, true)).toBe(true);
    const [first] = mirrors;
    expect(first?.images.size).toBe(4);
    expect([...(first?.images ?? [])].filter(([a, b]) => a !== b)).toHaveLength(2);
  });

  test('of a part are found where the whole is not mirrored', () => {
    const { mirrors } = designed(path(HEART + box(60, 60, 50, 20) + box(64, 63, 30, 12)), pose);
    expect(has(mirrors, { x: 30, y: 0 }, { x: 30, y: 60 }, pose, false)).toBe(true);
    expect(mirrors.every(({ whole }) => !whole)).toBe(true);
  });

  test('of a square frame are four, all of the whole', () => {
    const { mirrors } = designed(path(box(30, 30, 60, 60) + box(36, 36, 48, 48)), pose);
    for (const [a, b] of [
      [
        { x: 60, y: 0 },
        { x: 60, y: 120 },
      ],
      [
        { x: 0, y: 60 },
        { x: 120, y: 60 },
      ],
      [
        { x: 0, y: 0 },
        { x: 120, y: 120 },
      ],
      [
        { x: 0, y: 120 },
        { x: 120, y: 0 },
      ],
    ] as const) {
      expect(has(mirrors, a, b, pose, true)).toBe(true);
    }
    expect(mirrors).toHaveLength(4);
  });

  test('of an island that is mirrored in a gap that is not are none', () => {
    expect(designed(path('M20 20H90V100L70 60H20z' + box(30, 26, 30, 24)), pose).mirrors).toEqual([]);
  });

  test('of a parallelogram are none, though it looks the same after half a turn', () => {
    expect(designed(path('M20 40H80L100 80H40zM32 46H77L90 74H45z'), pose).mirrors).toEqual([]);
  });
});

describe('the tolerance of a mirror axis', () => {
  it('grows with the drawing, up to half a millimetre', () => {
    const off = (by: number) =>
      path(circle(60, 60, 50) + circle(60, 60, 46) + circle(45, 50, 6) + circle(75, 50 + by, 6));
    const has = (by: number) =>
      designed(off(by)).mirrors.some(({ along, point, whole }) => whole && Math.abs(along.x) < 1e-6 && point.x > 0);
    expect(has(0)).toBe(true);
    expect(has(0.3)).toBe(true);
    expect(has(1.2)).toBe(false);
  });
});

describe('a layer without islands', () => {
  it('has no design', () => {
    const sheet = posed(path(box(20, 20, 40, 40)));
    expect(designOf(sheet)).toEqual({ mirrors: [], alike: [], rows: [], nests: [] });
  });
});
