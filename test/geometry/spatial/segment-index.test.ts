import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reverseRing, ringOfBox, ringsOf } from '../../../src/geometry/base/ring';
import { regionFromRings } from '../../../src/geometry/boolean/index';
import {
  buildSegmentIndex,
  nearestSegment,
  placeOnSegment,
  segmentsNear,
} from '../../../src/geometry/spatial/segment-index';
import { looseRing, point } from '../arbitraries';

const sample = regionFromRings(
  [
    ringOfBox({ minX: 0, minY: 0, maxX: 10, maxY: 10 }),
    reverseRing(ringOfBox({ minX: 3, minY: 3, maxX: 7, maxY: 7 })),
    ringOfBox({ minX: 20, minY: 0, maxX: 25, maxY: 5 }),
  ],
  'nonzero',
);
const region = fc.array(looseRing, { minLength: 1, maxLength: 4 }).map((rings) => regionFromRings(rings, 'evenodd'));

describe('buildSegmentIndex', () => {
  it('lists each edge once, chained round its ring', () => {
    const index = buildSegmentIndex(sample);
    expect(index.count).toBe(12);
    sample.flatMap(ringsOf).forEach((ring, number) => {
      const edges = [...Array(index.count).keys()].filter((edge) => index.ring[edge] === number);
      expect(edges.map((edge) => index.position[edge])).toEqual([0, 1, 2, 3]);
      edges.forEach((edge, place) => {
        const next = index.next[edge] ?? -1;
        expect([index.x0[edge], index.y0[edge]]).toEqual([ring[2 * place], ring[2 * place + 1]]);
        expect([index.x1[edge], index.y1[edge]]).toEqual([index.x0[next], index.y0[next]]);
        expect(index.previous[next]).toBe(edge);
      });
    });
    expect([...index.polygon]).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1]);
  });

  it('is empty for an empty region', () => {
    const index = buildSegmentIndex([]);
    expect(index.count).toBe(0);
    expect(nearestSegment(index, { x: 0, y: 0 })).toBeUndefined();
    expect(segmentsNear(index, { x: 0, y: 0 }, 5)).toEqual([]);
  });
});

describe('queries', () => {
  it('find the nearest edge, as looking at each does', () => {
    fc.assert(
      fc.property(region, point, (shape, place) => {
        const index = buildSegmentIndex(shape);
        const distances = [...Array(index.count).keys()].map((edge) => placeOnSegment(index, edge, place).distance);
        const found = nearestSegment(index, place);
        if (index.count === 0) expect(found).toBeUndefined();
        else expect(found?.distance).toBe(Math.min(...distances));
      }),
      { numRuns: 200 },
    );
  });

  it('find all edges within a distance', () => {
    fc.assert(
      fc.property(region, point, fc.double({ min: 0, max: 60, noNaN: true }), (shape, place, distance) => {
        const index = buildSegmentIndex(shape);
        const near = segmentsNear(index, place, distance)
          .map((found) => found.edge)
          .sort((a, b) => a - b);
        const wanted = [...Array(index.count).keys()].filter(
          (edge) => placeOnSegment(index, edge, place).distance <= distance,
        );
        expect(near).toEqual(wanted);
      }),
      { numRuns: 200 },
    );
  });

  it('respect limit and choice', () => {
    const index = buildSegmentIndex(sample);
    expect(nearestSegment(index, { x: 15, y: 2 }, 4)).toBeUndefined();
    const found = nearestSegment(index, { x: 15, y: 2 }, Infinity, (edge) => index.polygon[edge] === 1);
    expect(found?.point).toEqual({ x: 20, y: 2 });
    expect(found?.distance).toBe(5);
  });
});
