/** What must hold of a cut file that another program has read. */
import { expect } from 'vitest';
import { boxOfChain } from '../../../src/cut/chains';
import { type Bow, bowsOf, centreOf, middleOf } from '../../../src/cut/write/arcs';
import { ARC_TOLERANCE } from '../../../src/cut/write/dxf';
import type { CutSheet } from '../../../src/engine/index';
import { nearestOn, pointAt } from '../../../src/geometry/curve/index';
import { signedAreaOf } from '../../../src/geometry/curve/measure';
import type { Measured } from './readers';

/** mm², and mm: what a file may lose. */
const [AREA, BOX] = [1e-3, 1e-3];

/** By the closed forms of the sheet's own curves. */
export function contoursOf({ contours }: CutSheet): Measured[] {
  return contours.map(({ curves }) => {
    const { minX, minY, maxX, maxY } = boxOfChain(curves);
    return { area: curves.reduce((sum, curve) => sum + signedAreaOf(curve), 0), box: [minX, minY, maxX, maxY] };
  });
}

/** As lines and arcs: the area of a segment of a circle, r²·(θ − sin θ)/2, lies between a bow and its chord. */
export function bowsOfContours({ contours }: CutSheet): Measured[] {
  return contours.map(({ curves }) => {
    const bows = curves.flatMap((curve) => bowsOf(curve, ARC_TOLERANCE));
    const area = bows.reduce((sum, bow) => sum + areaOf(bow), 0);
    const points = bows.flatMap(extremesOf);
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    return { area, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] };
  });
}

function areaOf({ start, end, bulge }: Bow): number {
  const triangle = (start.x * end.y - start.y * end.x) / 2;
  if (Math.abs(bulge) < 1e-9) return triangle;
  const turn = 4 * Math.atan(bulge);
  const radius = Math.hypot(end.x - start.x, end.y - start.y) / (2 * Math.sin(turn / 2));
  return triangle + (radius ** 2 * (turn - Math.sin(turn))) / 2;
}

function extremesOf(bow: Bow) {
  const { start, end, bulge } = bow;
  if (Math.abs(bulge) < 1e-9) return [start, end];
  const centre = centreOf(bow);
  const radius = Math.hypot(start.x - centre.x, start.y - centre.y);
  const turn = 4 * Math.atan(bulge);
  const from = Math.atan2(start.y - centre.y, start.x - centre.x);
  const inside = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]
    .map((i) => ((i - 5) * Math.PI) / 2)
    .filter((angle) => {
      const ahead = (angle - from) * Math.sign(turn);
      return ((ahead % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI) < Math.abs(turn);
    });
  return [
    start,
    end,
    ...inside.map((a) => ({ x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) })),
  ];
}

/** How far the arcs of a sheet lie from its curves, and its curves from the arcs, in mm. */
export function worstBow({ contours }: CutSheet): number {
  let worst = 0;
  for (const curve of contours.flatMap(({ curves }) => curves)) {
    const bows = bowsOf(curve, ARC_TOLERANCE);
    for (const bow of bows) worst = Math.max(worst, nearestOn(curve, middleOf(bow)).distance);
    for (let i = 0; i <= 60; i += 1) {
      const point = pointAt(curve, i / 60);
      worst = Math.max(worst, Math.min(...bows.map((bow) => awayFrom(point, bow))));
    }
  }
  return worst;
}

function awayFrom(point: { x: number; y: number }, bow: Bow): number {
  const { start, end, bulge } = bow;
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  if (Math.abs(bulge) > 1e-9) {
    const centre = centreOf(bow);
    return Math.abs(
      Math.hypot(point.x - centre.x, point.y - centre.y) - Math.hypot(start.x - centre.x, start.y - centre.y),
    );
  }
  const share = Math.max(
    0,
    Math.min(1, ((point.x - start.x) * dx + (point.y - start.y) * dy) / (dx * dx + dy * dy || 1)),
  );
  return Math.hypot(start.x + share * dx - point.x, start.y + share * dy - point.y);
}

/**
 * The same rings in the same order, each with its area and its box.
 * @param grid mm: what the reader rounds places by
 */
export function expectSame(found: readonly Measured[], wanted: readonly Measured[], what: string, grid = 0): void {
  expect(found.length, what).toBe(wanted.length);
  for (const [i, { area, box }] of wanted.entries()) {
    const around = 2 * (box[2] - box[0] + box[3] - box[1]);
    expect(Math.abs(found[i]!.area - area), `${what}, area of cut ${i + 1}`).toBeLessThan(AREA + grid * around);
    for (const side of [0, 1, 2, 3]) {
      expect(Math.abs(found[i]!.box[side]! - box[side]!), `${what}, box of cut ${i + 1}`).toBeLessThan(BOX);
    }
  }
}
