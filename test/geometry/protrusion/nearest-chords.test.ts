/** The nearest chords, beside all chords of the ring. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ringOfPoints } from '../../../src/geometry/base/ring';
import { type ChordQuery, NearestChords } from '../../../src/geometry/protrusion/nearest-chords';
import { type ArcLengthRing, arcLengthRingsOf } from '../../../src/geometry/protrusion/ring-arclength';
import { buildSegmentIndex, placeOnSegment, type SegmentIndex } from '../../../src/geometry/spatial/segment-index';
import { drawFrom } from '../thickness/shapes';

/** Where areas or ways are equal to the last digit, either answer may come; so corners fall anywhere. */
const ring = fc.tuple(fc.integer(), fc.integer({ min: 3, max: 120 })).map(([seed, corners]) => {
  const draw = drawFrom(seed);
  const points = Array.from({ length: corners }, () => ({ x: 200 * draw(), y: 200 * draw() }));
  const index = buildSegmentIndex([{ outer: ringOfPoints(points), holes: [] }]);
  return { index, ring: arcLengthRingsOf(index)[0] as ArcLengthRing };
});

const share = fc.integer({ min: 0, max: 999 }).map((value) => value / 1000);

const startOf = ({ x0, y0 }: SegmentIndex, edge: number) => ({ x: x0[edge] ?? 0, y: y0[edge] ?? 0 });

function distanceToBox({ x0, y0, x1, y1 }: SegmentIndex, edge: number, { x, y }: { x: number; y: number }): number {
  const [ax, ay, bx, by] = [x0[edge] ?? 0, y0[edge] ?? 0, x1[edge] ?? 0, y1[edge] ?? 0];
  const dx = Math.max(Math.min(ax, bx) - x, x - Math.max(ax, bx), 0);
  return Math.hypot(dx, Math.max(Math.min(ay, by) - y, y - Math.max(ay, by), 0));
}

/** All edges are asked. */
function nearestOf(
  index: SegmentIndex,
  { gapBetween }: Pick<ArcLengthRing, 'gapBetween'>,
  query: ChordQuery,
): number[] {
  const from = startOf(index, query.edge);
  return [...Array(index.count).keys()]
    .filter((other) => gapBetween(query.edge, other) >= query.minGap)
    .filter((other) => distanceToBox(index, other, from) <= query.maxDistance)
    .map((other) => placeOnSegment(index, other, from))
    .filter(({ edge, t, distance }) => query.mayEnd(edge, t, distance))
    .map(({ distance }) => distance)
    .sort((a, b) => a - b)
    .slice(0, query.maxCount);
}

describe('NearestChords', () => {
  it('gives the nearest of all that may be', () => {
    const some = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(ring, share, share, share, some, ({ index, ring: one }, a, b, c, most) => {
        const query: ChordQuery = {
          edge: Math.floor(a * index.count),
          minGap: (b * one.length) / 2,
          maxDistance: 400 * c,
          maxCount: most,
          mayEnd: (other, t) => other % 3 > 0 || t > 0.5,
        };
        const from = startOf(index, query.edge);
        const found = new NearestChords(index, one)
          .search(query)
          .map((other) => placeOnSegment(index, other, from).distance);
        const gapBetween = (edge: number, other: number) => one.gapBetween(edge, other);
        expect(found.map((far) => far.toFixed(9))).toEqual(
          nearestOf(index, { gapBetween }, query).map((far) => far.toFixed(9)),
        );
      }),
      { numRuns: 400 },
    );
  });
});

describe('mayCutOff', () => {
  it('says what the two ways round say', () => {
    fc.assert(
      fc.property(ring, share, share, share, share, ({ index, ring: one }, a, b, t, least) => {
        const [edge, other] = [Math.floor(a * index.count), Math.floor(b * index.count)];
        // A chord that lies on the boundary cuts off nothing, or all: only rounding tells.
        fc.pre(Math.abs(edge - other) > 1 && Math.abs(edge - other) < index.count - 1);
        const [here, there] = [one.placeOf(edge, 0), one.placeOf(other, t)];
        const says = (start: number, end: number) =>
          one.lengthBetween(start, end) >= least * one.length && one.cutsOff(start, end);
        expect(one.mayCutOff(edge, other, t, least * one.length)).toBe(says(here, there) || says(there, here));
      }),
      { numRuns: 400 },
    );
  });
});
