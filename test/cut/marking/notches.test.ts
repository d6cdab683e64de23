import { describe, expect, it } from 'vitest';
import { DEFAULT_CONFIG } from '../../../src/config/types';
import { cutSheet } from '../../../src/cut/cut-sheet';
import { notchedEdge } from '../../../src/cut/marking/notches';
import { check } from '../../../src/engine/index';
import type { Point } from '../../../src/geometry/base/curve-types';
import { pointsOf } from '../../../src/geometry/base/ring';
import { areaOf, difference } from '../../../src/geometry/boolean/index';
import { findThinPlaces } from '../../../src/sheet/thin-places';

const BOX = { minX: 0, minY: 0, maxX: 148, maxY: 105 };

/** What somebody reads who holds the sheet in the hand and knows the rule alone. */
function readNotches(outline: readonly Point[]) {
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const isInner = ({ x, y }: Point) => x > left + 0.01 && x < right - 0.01 && y > top + 0.01 && y < bottom - 0.01;
  const runs: Point[][] = [];
  const start = outline.findIndex((point) => !isInner(point));
  const turned = [...outline.slice(start), ...outline.slice(0, start)];
  turned.forEach((point, i) => {
    if (!isInner(point)) return;
    if (isInner(turned[i - 1]!)) runs.at(-1)!.push(point);
    else runs.push([point]);
  });
  const sideOf = ({ x, y }: Point) => {
    const away = [y - top, right - x, bottom - y, x - left];
    return away.indexOf(Math.min(...away));
  };
  const sidesOf = (size: number) => [
    ...new Set(runs.filter((run) => run.length === size).map((run) => sideOf(run[0]!))),
  ];
  const [pointed, square] = [sidesOf(1), sidesOf(2)];
  expect([pointed.length, square.length]).toEqual([1, 1]);
  return {
    number: runs.filter((run) => run.length === 1).length,
    count: runs.filter((run) => run.length === 2).length,
    // Sides are counted clockwise: the pointed ones follow the square ones where the face is up.
    faceUp: (square[0]! + 1) % 4 === pointed[0],
    up: pointed[0],
  };
}

/** Quarter turns, then mirrored; the outline's course is turned round where it is seen from behind. */
function held(outline: readonly Point[], quarters: number, mirrored: boolean): Point[] {
  const turned = outline.map(({ x, y }) => {
    let [u, v] = [x, y];
    for (let i = 0; i < quarters; i += 1) [u, v] = [-v, u];
    return { x: mirrored ? -u : u, y: v };
  });
  return mirrored ? turned.reverse() : turned;
}

describe('notches', () => {
  it('tell which sheet of how many it is, the face and which way is up, however it is held', () => {
    for (let count = 1; count <= 8; count += 1) {
      for (let number = 1; number <= count; number += 1) {
        const outline = pointsOf(notchedEdge(BOX, { upper: 6, left: 6 }, { number, count }));
        for (const quarters of [0, 1, 2, 3]) {
          expect(readNotches(held(outline, quarters, false))).toEqual({ number, count, faceUp: true, up: quarters });
          expect(readNotches(held(outline, quarters, true))).toMatchObject({ number, count, faceUp: false });
        }
      }
    }
  });

  const text = (content: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="148mm" height="105mm" viewBox="0 0 148 105">${content}</svg>`;
  const sheetOf = (content: string) => check(text(content)).sheets[0]!;

  it('are cut in the edge, clear of openings, and make nothing thin or loose', () => {
    const sheet = sheetOf('<rect x="20" y="1" width="30" height="30"/><circle cx="100" cy="60" r="20"/>');
    const edge = cutSheet(sheet, { number: 2, count: 5 }, { notches: true }).contours.at(-1)!;
    const outline = edge.curves.map(({ start }) => start);
    expect(readNotches(outline)).toMatchObject({ number: 2, count: 5, faceUp: true, up: 0 });
    const notched = [{ outer: Float64Array.from(outline.flatMap(({ x, y }) => [x, y])), holes: [] }];
    const before = areaOf(sheet.material);
    const after = difference(notched, sheet.openings);
    expect(before - areaOf(after)).toBeCloseTo(2 * 2 + 5 * 4, 6);
    expect(after).toHaveLength(1);
    const thin = (region: typeof after) => findThinPlaces(region, 0.8, 0).length;
    expect(thin(after)).toBe(thin(sheet.material));
  });

  it('move along the edge where an opening is in the way, and are left out where there is no room', () => {
    const place = { number: 1, count: 2 };
    const near = cutSheet(sheetOf('<rect x="2" y="2" width="30" height="4"/>'), place, { notches: true });
    const xs = near.contours
      .at(-1)!
      .curves.map(({ start }) => start)
      .filter(({ y }) => y === 2)
      .map(({ x }) => x);
    expect(xs[0]).toBeGreaterThan(32.8);
    const full = cutSheet(sheetOf('<rect x="2" y="2" width="144" height="101"/>'), place, { notches: true });
    expect(full.notes).toEqual(['no room for notches at the upper left corner; a margin of 5 mm would give it']);
    expect(full.contours.at(-1)!.curves).toHaveLength(4);
    const margin = { ...DEFAULT_CONFIG, margin: 5 };
    const wide = check(text('<rect x="2" y="2" width="144" height="101"/>'), { config: margin }).sheets[0]!;
    expect(cutSheet(wide, place, { notches: true }, margin).notes).toEqual([]);
  });
});
